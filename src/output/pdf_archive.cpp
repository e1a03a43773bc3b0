#include "output/pdf_archive.h"

#include <algorithm>
#include <string_view>

#include <fmt/format.h>
#include <qpdf/Pl_Buffer.hh>
#include <qpdf/Pl_Flate.hh>
#include <qpdf/QPDFEFStreamObjectHelper.hh>
#include <qpdf/QPDFEmbeddedFileDocumentHelper.hh>
#include <qpdf/QPDFFileSpecObjectHelper.hh>

#include "measure/require.h"
#include "output/xml_text.h"

namespace kerfpacket::output {
namespace {

using Object = QPDFObjectHandle;

std::shared_ptr<Buffer> packed(const std::string& bytes) {
    Pl_Buffer result("packed");
    Pl_Flate flate("packing", &result, Pl_Flate::a_deflate);
    flate.writeString(bytes);
    flate.finish();
    return result.getBufferSharedPointer();
}

/// dc:title and dc:description are texts in several languages (Adobe XMP specification, part 1, 8.2.2.4).
std::string in_every_language(std::string_view property, std::string_view text) {
    return fmt::format("<{0}><rdf:Alt><rdf:li xml:lang=\"x-default\">{1}</rdf:li></rdf:Alt></{0}>\n", property,
                       xml_text(text));
}

/// The identifier of ISO 14289-1, clause 5, and its schema, which PDF/A-3 wants described (ISO 19005-3, 6.6.2.3).
constexpr std::string_view for_readers =
    "<rdf:Description rdf:about=\"\" xmlns:pdfuaid=\"http://www.aiim.org/pdfua/ns/id/\">"
    "<pdfuaid:part>1</pdfuaid:part></rdf:Description>\n"
    "<rdf:Description rdf:about=\"\" xmlns:pdfaExtension=\"http://www.aiim.org/pdfa/ns/extension/\""
    " xmlns:pdfaSchema=\"http://www.aiim.org/pdfa/ns/schema#\""
    " xmlns:pdfaProperty=\"http://www.aiim.org/pdfa/ns/property#\">\n"
    "<pdfaExtension:schemas><rdf:Bag><rdf:li rdf:parseType=\"Resource\">"
    "<pdfaSchema:schema>PDF/UA identification</pdfaSchema:schema>"
    "<pdfaSchema:namespaceURI>http://www.aiim.org/pdfua/ns/id/</pdfaSchema:namespaceURI>"
    "<pdfaSchema:prefix>pdfuaid</pdfaSchema:prefix>"
    "<pdfaSchema:property><rdf:Seq><rdf:li rdf:parseType=\"Resource\">"
    "<pdfaProperty:name>part</pdfaProperty:name><pdfaProperty:valueType>Integer</pdfaProperty:valueType>"
    "<pdfaProperty:category>internal</pdfaProperty:category>"
    "<pdfaProperty:description>part of ISO 14289</pdfaProperty:description>"
    "</rdf:li></rdf:Seq></pdfaSchema:property></rdf:li></rdf:Bag></pdfaExtension:schemas></rdf:Description>\n";

std::string xmp(const page::Document& document, int part) {
    std::string text =
        "<?xpacket begin=\"\xEF\xBB\xBF\" id=\"W5M0MpCehiHzreSzNTczkc9d\"?>\n"
        "<x:xmpmeta xmlns:x=\"adobe:ns:meta/\"><rdf:RDF xmlns:rdf=\"http://www.w3.org/1999/02/22-rdf-syntax-ns#\">\n"
        "<rdf:Description rdf:about=\"\" xmlns:dc=\"http://purl.org/dc/elements/1.1/\""
        " xmlns:pdf=\"http://ns.adobe.com/pdf/1.3/\" xmlns:xmp=\"http://ns.adobe.com/xap/1.0/\""
        " xmlns:pdfaid=\"http://www.aiim.org/pdfa/ns/id/\">\n";
    if (part != 0)
        text += fmt::format("<pdfaid:part>{}</pdfaid:part>\n<pdfaid:conformance>B</pdfaid:conformance>\n", part);
    text += in_every_language("dc:title", document.title);
    if (!document.subject.empty()) text += in_every_language("dc:description", document.subject);
    text +=
        fmt::format("<dc:language><rdf:Bag><rdf:li>{}</rdf:li></rdf:Bag></dc:language>\n", xml_text(document.language));
    text += "<pdf:Producer>kerfpacket " KERFPACKET_VERSION "</pdf:Producer>\n";
    if (!document.date.empty())
        text += fmt::format(
            "<xmp:CreateDate>{0}T00:00:00Z</xmp:CreateDate>\n<xmp:ModifyDate>{0}T00:00:00Z"
            "</xmp:ModifyDate>\n",
            document.date);
    text += "</rdf:Description>\n";
    if (part == 3) text += for_readers;  // written by the rules of PDF 1.7
    return text + "</rdf:RDF></x:xmpmeta>\n<?xpacket end=\"r\"?>";
}

/// The stream holds the text packed; libqpdf tells the size and the checksum of the text itself.
QPDFEFStreamObjectHelper embedded_file(QPDF& pdf, const Attachment& attachment, const std::string& date) {
    auto file = QPDFEFStreamObjectHelper::createEFStream(pdf, attachment.text);
    file.setCreationDate(date).setModDate(date);
    file.setSubtype(attachment.name.ends_with(".toml")   ? "application/toml"
                    : attachment.name.ends_with(".json") ? "application/json"
                                                         : "text/plain");
    file.getObjectHandle().replaceStreamData(packed(attachment.text), Object::newName("/FlateDecode"),
                                             Object::newNull());
    return file;
}

}  // namespace

std::string pdf_date(const std::string& day) {
    std::string digits = day;
    std::erase(digits, '-');
    return "D:" + digits + "000000Z";
}

QPDFObjectHandle packed_stream(QPDF& pdf, const std::string& bytes) {
    Object stream = pdf.newStream();
    stream.replaceStreamData(packed(bytes), Object::newName("/FlateDecode"), Object::newNull());
    return stream;
}

void add_metadata(QPDF& pdf, const page::Document& document, int part) {
    Object metadata = pdf.newStream(xmp(document, part));  // never packed: ISO 19005-1, 6.7.2
    metadata.getDict().replaceKey("/Type", Object::newName("/Metadata"));
    metadata.getDict().replaceKey("/Subtype", Object::newName("/XML"));
    pdf.getRoot().replaceKey("/Metadata", metadata);
}

void add_output_intent(QPDF& pdf, const std::string& profile) {
    Object stream = packed_stream(pdf, profile);
    stream.getDict().replaceKey("/N", Object::newInteger(3));
    Object intent = Object::parse(
        "<< /Type /OutputIntent /S /GTS_PDFA1 /OutputConditionIdentifier (sRGB) /RegistryName (http://www.color.org)"
        " /Info (sRGB) >>");
    intent.replaceKey("/DestOutputProfile", stream);
    Object intents = Object::newArray();
    intents.appendItem(intent);
    pdf.getRoot().replaceKey("/OutputIntents", intents);
}

void add_attachments(QPDF& pdf, const page::Document& document, const std::vector<Attachment>& attachments) {
    measure::require(!document.date.empty(), "a document with attachments has a date");
    QPDFEmbeddedFileDocumentHelper files(pdf);
    Object associated = Object::newArray();
    for (const Attachment& attachment : attachments) {
        measure::require(!files.getEmbeddedFile(attachment.name), "each attachment has a name of its own");
        auto file = QPDFFileSpecObjectHelper::createFileSpec(pdf, attachment.name,
                                                             embedded_file(pdf, attachment, pdf_date(document.date)));
        file.setDescription(attachment.description);
        Object specification = file.getObjectHandle();
        specification.replaceKey("/AFRelationship", Object::newName("/" + attachment.relationship));
        files.replaceEmbeddedFile(attachment.name, file);
        associated.appendItem(specification);
    }
    pdf.getRoot().replaceKey("/AF", associated);
}

}  // namespace kerfpacket::output
