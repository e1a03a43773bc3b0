#include "job/read.h"

#include <algorithm>
#include <cerrno>
#include <fstream>
#include <iterator>
#include <system_error>

#include "job/text.h"

namespace kerfpacket::job {
namespace {

namespace fs = std::filesystem;

constexpr std::size_t most_bytes = 1'000'000;

Diagnostic whole_file(std::string message, std::string hint) {
    return {Severity::error, {}, std::move(message), std::move(hint)};
}

std::optional<Diagnostic> no_plain_file(const fs::path& file, const std::string& name) {
    std::error_code failed;
    const fs::file_status status = fs::status(file, failed);
    if (status.type() == fs::file_type::not_found) return whole_file("there is no such file", "expected a " + name);
    if (failed) return whole_file("cannot look at the file: " + failed.message(), "expected a readable " + name);
    if (status.type() == fs::file_type::directory)
        return whole_file("this is a folder", "expected a " + name + ", perhaps one inside this folder");
    if (status.type() != fs::file_type::regular)
        return whole_file("this is a device or a pipe", "expected a " + name + " on disk");
    return std::nullopt;
}

bool begins_with_utf16_mark(std::string_view text) {
    return text.starts_with("\xFF\xFE") || text.starts_with("\xFE\xFF");
}

Position position_of_byte(std::string_view text, std::size_t byte) {
    const auto before = text.substr(0, byte);
    const std::size_t newline = before.rfind('\n');
    const auto row = newline == std::string_view::npos ? before : before.substr(newline + 1);
    return {static_cast<int>(std::count(before.begin(), before.end(), '\n')) + 1,
            static_cast<int>(characters(row)) + 1};
}

std::optional<Diagnostic> no_text(std::string_view text, const FileKind& kind) {
    const std::string name(kind.name);
    if (text.size() > most_bytes) return whole_file("the file is over 1 MB", "a " + name + " is a page or two of text");
    if (begins_with_utf16_mark(text))
        return whole_file("the file is UTF-16 text", "save it as UTF-8 in the editor and try again");
    if (text.find('\0') != std::string_view::npos)
        return whole_file("the file is not text: it holds a zero byte", "expected a " + name + " in UTF-8 text");
    if (const auto bad = first_bad_utf8(text))
        return Diagnostic{Severity::error, position_of_byte(text, *bad), "the file is not UTF-8 text from here on",
                          "save it as UTF-8 in the editor and try again"};
    if (text.find_first_not_of(" \t\r\n") == std::string_view::npos)
        return whole_file("the file is empty", "a " + name + " has " + std::string(kind.holds));
    return std::nullopt;
}

}  // namespace

tl::expected<Source, Diagnostic> load(const fs::path& file, const FileKind& kind) {
    const std::string name(kind.name);
    if (auto refused = no_plain_file(file, name)) return tl::unexpected(*std::move(refused));
    std::ifstream stream(file, std::ios::binary);
    if (!stream)
        return tl::unexpected(whole_file("cannot open the file: " + std::generic_category().message(errno),
                                         "expected a readable " + name));
    // One byte more than allowed is enough to know; the size is not asked for, a file can grow in between.
    std::string text(most_bytes + 1, '\0');
    stream.read(text.data(), static_cast<std::streamsize>(text.size()));
    if (stream.bad())
        return tl::unexpected(whole_file("the file could not be read to its end", "is the disk all right?"));
    text.resize(static_cast<std::size_t>(stream.gcount()));
    return checked(file.string(), std::move(text), kind);
}

tl::expected<Source, Diagnostic> checked(std::string name, std::string text, const FileKind& kind) {
    while (text.starts_with("\xEF\xBB\xBF")) text.erase(0, 3);
    if (auto refused = no_text(text, kind)) return tl::unexpected(*std::move(refused));
    return Source{std::move(name), std::move(text)};
}

}  // namespace kerfpacket::job
