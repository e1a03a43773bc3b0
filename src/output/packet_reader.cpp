#include "output/packet_reader.h"

#include <new>
#include <stdexcept>

#include "disk/child.h"
#include "output/capped.h"
#include "output/qpdf.h"

namespace kerfpacket::output {
namespace {

namespace fs = std::filesystem;
using Object = QPDFObjectHandle;

constexpr ForeignKind packet{"packet", "a packet", most_packet_bytes};

std::string text_of(Object stream) {
    Capped sink(most_embedded_bytes);
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

bool is_form(Object trailer) {
    Object info = trailer.getKey("/Info");
    Object words = info.isDictionary() ? info.getKey("/Keywords") : Object::newNull();
    return words.isString() && words.getUTF8Value() == form_keyword;
}

/// True where a field of a form, or one below it, holds a value (ISO 32000-1, 12.7.3).
bool filled(Object field, int depth = 0) {
    constexpr int deepest = 32;
    if (!field.isDictionary() || depth > deepest) return false;
    const Object value = field.getKey("/V");
    // What stood there beforehand nobody filled in (table 220: DV).
    const Object before = field.getKey("/DV");
    const bool nothing = (!Object(value).isNull() && Object(value).unparse() == Object(before).unparse()) ||
                         Object(value).isNull() || Object(value).isNameAndEquals("/Off") ||
                         (Object(value).isString() && Object(value).getUTF8Value().empty());
    if (!nothing) return true;
    Object below = field.getKey("/Kids");
    for (int i = 0; below.isArray() && i < below.getArrayNItems(); ++i)
        if (filled(below.getArrayItem(i), depth + 1)) return true;
    return false;
}

/// Somebody has worked on it: filled its form in, or written something behind its end, as those who add notes to a
/// file do (an incremental update: ISO 32000-1, 7.5.6).
bool worked_on(Object root, std::string_view bytes, bool form_of_ours) {
    constexpr std::string_view ending = "startxref";
    if (bytes.find(ending) != bytes.rfind(ending)) return true;
    Object form = root.isDictionary() ? root.getKey("/AcroForm") : Object::newNull();
    Object fields = form.isDictionary() ? form.getKey("/Fields") : Object::newNull();
    // A form of ours without fields was flattened: what was typed is ink now.
    if (form_of_ours && (!fields.isArray() || fields.getArrayNItems() == 0)) return true;
    for (int i = 0; fields.isArray() && i < fields.getArrayNItems(); ++i)
        if (filled(fields.getArrayItem(i))) return true;
    return false;
}

}  // namespace

std::string load_packet(const fs::path& file) { return load_foreign(file, packet); }

PacketContents parse_packet(const std::string& bytes) {
    if (!bytes.starts_with("%PDF-")) throw Refusal("is no PDF");
    try {
        QPDF pdf;
        pdf.setSuppressWarnings(true);
        // What has to be guessed is no packet as it was written.
        pdf.setAttemptRecovery(false);
        pdf.processMemoryFile("the packet", bytes.data(), bytes.size());
        if (pdf.isEncrypted()) throw Refusal("is encrypted; no packet is");
        Object root = pdf.getTrailer().getKey("/Root");
        return {made_here(pdf.getTrailer()), worked_on(root, bytes, is_form(pdf.getTrailer())), files_of(root)};
    } catch (const Refusal&) { throw; } catch (const std::bad_alloc&) {
        throw;
    } catch (const QPDFExc& error) {
        throw Refusal(error.getErrorCode() == qpdf_e_password ? "is encrypted; no packet is" : damaged);
    } catch (const std::exception&) { throw Refusal(damaged); }
}

PacketContents read_packet(const std::string& bytes, const fs::path& file) {
    const auto work = [&] {
        const PacketContents contents = parse_packet(bytes);
        std::string answer{contents.ours ? 'o' : '-', contents.worked_on ? 'w' : '-'};
        for (const EmbeddedFile& one : contents.files) answer += disk::packed(one.name) + disk::packed(one.text);
        return answer;
    };
    const std::string answer =
        read_in_bounds(work, packet, file, "is no packet: reading it takes more memory or time than any packet");
    PacketContents contents{answer.at(0) == 'o', answer.at(1) == 'w', {}};
    for (std::string_view rest = std::string_view(answer).substr(2); !rest.empty();) {
        std::string name = disk::unpacked(rest);
        contents.files.push_back({std::move(name), disk::unpacked(rest)});
    }
    return contents;
}

}  // namespace kerfpacket::output
