#include "output/packet_reader.h"

#include <charconv>
#include <fstream>
#include <new>
#include <stdexcept>
#include <system_error>

#include <fmt/format.h>

#include "measure/require.h"
#include "output/child.h"
#include "output/qpdf.h"

namespace kerfpacket::output {
namespace {

namespace fs = std::filesystem;
using Object = QPDFObjectHandle;

constexpr const char* damaged = "is damaged: it was cut short or changed, so that it is no whole PDF";

/// What is wrong with a file, in words of ours; what else is thrown is the library's.
class Refusal : public std::runtime_error {
public:
    using std::runtime_error::runtime_error;
};

/// Keeps what comes out of a stream, and stops it where it becomes too much.
class Capped : public Pipeline {
public:
    Capped() : Pipeline("capped", nullptr) {}
    void write(unsigned char const* data, std::size_t size) override {
        over_ = over_ || size > most_embedded_bytes - text_.size();
        if (over_) throw std::runtime_error("too much");
        text_.append(reinterpret_cast<const char*>(data), size);  // NOLINT(*-reinterpret-cast): a char is a byte
    }
    void finish() override {}

    bool over() const { return over_; }
    std::string take() { return std::move(text_); }

private:
    std::string text_;
    bool over_ = false;
};

std::string text_of(Object stream) {
    Capped sink;
    bool unpacked = false;
    const bool whole = stream.pipeStreamData(&sink, &unpacked, 0, qpdf_dl_generalized, true);
    if (sink.over()) throw Refusal("is no packet: a file in it is over 1 MB");
    if (!whole || !unpacked) throw Refusal("is damaged: a file in it cannot be unpacked");
    return sink.take();
}

/// The first of the two keys that holds what is wanted (ISO 32000-1, 7.11.3: the one in Unicode counts).
Object either(Object dictionary, bool (Object::*wanted)()) {
    for (const char* key : {"/UF", "/F"}) {
        Object value = dictionary.getKey(key);
        if ((value.*wanted)()) return value;
    }
    return Object::newNull();
}

/// The associated files alone: neither page tree nor name tree is walked, so none can be endless.
std::vector<EmbeddedFile> files_of(Object root) {
    std::vector<EmbeddedFile> files;
    Object associated = root.isDictionary() ? root.getKey("/AF") : Object::newNull();
    if (!associated.isArray()) return files;
    const int count = associated.getArrayNItems();
    if (count > static_cast<int>(most_embedded_files)) throw Refusal("is no packet: it holds too many files");
    for (int i = 0; i < count; ++i) {
        Object specification = associated.getArrayItem(i);
        if (!specification.isDictionary()) continue;
        Object name = either(specification, &Object::isString);
        Object embedded = specification.getKey("/EF");
        Object stream = embedded.isDictionary() ? either(embedded, &Object::isStream) : Object::newNull();
        if (name.isString() && stream.isStream()) files.push_back({name.getUTF8Value(), text_of(stream)});
    }
    return files;
}

bool made_here(Object trailer) {
    Object info = trailer.getKey("/Info");
    Object producer = info.isDictionary() ? info.getKey("/Producer") : Object::newNull();
    return producer.isString() && producer.getUTF8Value().starts_with("kerfpacket");
}

// Between the two processes a text goes as its size, a colon and itself.
std::string packed(const std::string& text) { return fmt::format("{}:", text.size()) + text; }

std::string unpacked(std::string_view& rest) {
    std::size_t size = 0;
    const auto [end, failed] = std::from_chars(rest.data(), rest.data() + rest.size(), size);
    const auto from = static_cast<std::size_t>(end - rest.data()) + 1;
    measure::require(failed == std::errc{} && from + size <= rest.size(), "the child's answer is whole");
    std::string text(rest.substr(from, size));
    rest.remove_prefix(from + size);
    return text;
}

}  // namespace

std::string load_packet(const fs::path& file) {
    std::error_code failed;
    const fs::file_status status = fs::status(file, failed);
    if (status.type() == fs::file_type::not_found)
        throw std::runtime_error(fmt::format("{}: there is no such file", file.string()));
    if (status.type() != fs::file_type::regular)
        throw std::runtime_error(fmt::format("{} is not a file; expected a packet", file.string()));
    std::ifstream stream(file, std::ios::binary);
    const std::uintmax_t size = fs::file_size(file, failed);
    if (!stream || failed) throw std::runtime_error(fmt::format("{} cannot be read", file.string()));
    if (size > most_packet_bytes)
        throw std::runtime_error(
            fmt::format("{} is over {} MB; no packet is", file.string(), most_packet_bytes >> 20U));
    // No more than that, should the file grow meanwhile.
    std::string bytes(size, '\0');
    stream.read(bytes.data(), static_cast<std::streamsize>(bytes.size()));
    if (stream.bad()) throw std::runtime_error(fmt::format("{} could not be read to its end", file.string()));
    bytes.resize(static_cast<std::size_t>(stream.gcount()));
    return bytes;
}

PacketContents parse_packet(const std::string& bytes) {
    if (!bytes.starts_with("%PDF-")) throw Refusal("is no PDF");
    try {
        QPDF pdf;
        pdf.setSuppressWarnings(true);
        // What has to be guessed is no packet as it was written.
        pdf.setAttemptRecovery(false);
        pdf.processMemoryFile("the packet", bytes.data(), bytes.size());
        if (pdf.isEncrypted()) throw Refusal("is encrypted; no packet is");
        return {made_here(pdf.getTrailer()), files_of(pdf.getTrailer().getKey("/Root"))};
    } catch (const Refusal&) { throw; } catch (const std::bad_alloc&) {
        throw;
    } catch (const QPDFExc& error) {
        throw Refusal(error.getErrorCode() == qpdf_e_password ? "is encrypted; no packet is" : damaged);
    } catch (const std::exception&) { throw Refusal(damaged); }
}

PacketContents read_packet(const std::string& bytes) {
    const auto work = [&] {
        const PacketContents contents = parse_packet(bytes);
        std::string answer = contents.ours ? "1" : "0";
        for (const EmbeddedFile& file : contents.files) answer += packed(file.name) + packed(file.text);
        return answer;
    };
    const Limits limits{512U << 20U, 10, 64U << 20U};
    const std::string answer =
        in_child(work, limits, "is no packet: reading it takes more memory or time than any packet");
    PacketContents contents;
    contents.ours = answer.front() == '1';
    for (std::string_view rest = std::string_view(answer).substr(1); !rest.empty();) {
        std::string name = unpacked(rest);
        contents.files.push_back({std::move(name), unpacked(rest)});
    }
    return contents;
}

}  // namespace kerfpacket::output
