#include "job/read.h"

#include <algorithm>

#include "disk/near_name.h"
#include "disk/read.h"
#include "job/text.h"
#include "text/toml.h"

namespace kerfpacket::job {
namespace {

namespace fs = std::filesystem;

Diagnostic whole_file(std::string message, std::string hint) {
    return {Severity::error, {}, Told(std::move(message)), Told(std::move(hint))};
}

Diagnostic too_large(const std::string& name) {
    return whole_file("the file is over 1 MB", "a " + name + " is a page or two of text");
}

std::string did_you_mean(const fs::path& file) {
    const std::string near = disk::near_name(file, ".toml");
    return near.empty() ? "" : "; did you mean " + in_quotes(near) + "?";
}

Diagnostic unreadable(const disk::Unread& unread, const std::string& name, const fs::path& file) {
    using Kind = disk::Unread::Kind;
    switch (unread.kind) {
        case Kind::absent: return whole_file(unread.why, "expected a " + name + did_you_mean(file));
        case Kind::folder: return whole_file(unread.why, "expected a " + name + ", perhaps one inside this folder");
        case Kind::special: return whole_file(unread.why, "expected a " + name + " on disk");
        case Kind::too_large: return too_large(name);
        case Kind::failed: break;
    }
    return whole_file("cannot read the file: " + unread.why, "expected a readable " + name);
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
    if (text.size() > text::most_bytes) return too_large(name);
    if (begins_with_utf16_mark(text))
        return whole_file("the file is UTF-16 text", "save it as UTF-8 in the editor and try again");
    if (text.find('\0') != std::string_view::npos)
        return whole_file("the file is not text: it holds a zero byte", "expected a " + name + " in UTF-8 text");
    if (const auto bad = first_bad_utf8(text))
        return Diagnostic{Severity::error, position_of_byte(text, *bad),
                          Told("the file is not UTF-8 text from here on"),
                          Told("save it as UTF-8 in the editor and try again")};
    if (text.find_first_not_of(" \t\r\n") == std::string_view::npos)
        return whole_file("the file is empty", "a " + name + " has " + std::string(kind.holds));
    return std::nullopt;
}

}  // namespace

tl::expected<Source, Diagnostic> load(const fs::path& file, const FileKind& kind) {
    // A mark of byte order does not count.
    tl::expected<std::string, disk::Unread> text = disk::read(file, text::most_bytes + 3);
    if (!text) return tl::unexpected(unreadable(text.error(), std::string(kind.name), file));
    return checked(file.string(), *std::move(text), kind);
}

tl::expected<Source, Diagnostic> load_input() {
    tl::expected<std::string, disk::Unread> text = disk::read_input(text::most_bytes + 3);
    if (!text) return tl::unexpected(unreadable(text.error(), std::string(job_file.name), ""));
    return checked("standard input", *std::move(text), job_file);
}

tl::expected<Source, Diagnostic> checked(std::string name, std::string text, const FileKind& kind) {
    while (text.starts_with("\xEF\xBB\xBF")) text.erase(0, 3);
    if (auto refused = no_text(text, kind)) return tl::unexpected(*std::move(refused));
    return Source{std::move(name), std::move(text)};
}

}  // namespace kerfpacket::job
