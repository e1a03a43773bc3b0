#include "print/tamper.h"

#include <stdexcept>

#include <qpdf/Pl_Buffer.hh>
#include <qpdf/Pl_Flate.hh>

#include "output/packet_reader.h"
#include "output/seal.h"

namespace kerfpacket::tests {
namespace {

using Object = QPDFObjectHandle;

std::string text_of(const std::shared_ptr<Buffer>& buffer) {
    return {reinterpret_cast<const char*>(buffer->getBuffer()), buffer->getSize()};
}

Object specification(QPDF& pdf, const std::string& name) {
    for (Object file : pdf.getRoot().getKey("/AF").getArrayAsVector())
        if (file.getKey("/UF").getUTF8Value() == name) return file;
    throw std::runtime_error("the packet has no file " + name);
}

}  // namespace

std::string unsealed(const std::string& packet) {
    const std::size_t from = packet.rfind("%kerfpacket seal ");
    if (from == std::string::npos) return packet;
    return std::string(packet).erase(from, packet.find('\n', from) + 1 - from);
}

std::string resealed(const std::string& packet) { return output::sealed(unsealed(packet)); }

std::string rewritten(const std::string& packet, const std::function<void(QPDF&)>& change) {
    QPDF pdf;
    pdf.processMemoryFile("packet", packet.data(), packet.size());
    change(pdf);
    QPDFWriter writer(pdf);
    writer.setOutputMemory();
    writer.setDeterministicID(true);
    writer.write();
    return text_of(writer.getBufferSharedPointer());
}

std::string embedded(const std::string& packet, const std::string& name) {
    for (const output::EmbeddedFile& file : output::parse_packet(packet).files)
        if (file.name == name) return file.text;
    throw std::runtime_error("the packet has no file " + name);
}

std::string with_embedded(const std::string& packet, const std::string& name, const std::string& text) {
    return resealed(rewritten(packet, [&](QPDF& pdf) {
        specification(pdf, name).getKey("/EF").getKey("/F").replaceStreamData(text, Object::newNull(),
                                                                              Object::newNull());
    }));
}

std::string with_name(const std::string& packet, const std::string& name, const std::string& other) {
    return resealed(rewritten(packet, [&](QPDF& pdf) {
        for (const char* key : {"/F", "/UF"})
            specification(pdf, name).replaceKey(key, Object::newUnicodeString(key[1] == 'F' ? name : other));
    }));
}

std::string replaced(std::string text, const std::string& what, const std::string& by) {
    const std::size_t at = text.find(what);
    if (at == std::string::npos) throw std::runtime_error("nothing to replace: " + what);
    return text.replace(at, what.size(), by);
}

std::string deflated(const std::string& bytes) {
    Pl_Buffer result("result");
    Pl_Flate flate("flate", &result, Pl_Flate::a_deflate);
    flate.writeString(bytes);
    flate.finish();
    return text_of(result.getBufferSharedPointer());
}

std::string deflated_zeros(std::size_t count) {
    Pl_Buffer result("result");
    Pl_Flate flate("flate", &result, Pl_Flate::a_deflate);
    const std::string piece(1U << 20U, '\0');
    for (; count >= piece.size(); count -= piece.size()) flate.writeString(piece);
    flate.finish();
    return text_of(result.getBufferSharedPointer());
}

}  // namespace kerfpacket::tests
