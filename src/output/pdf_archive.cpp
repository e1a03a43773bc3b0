#include "output/pdf_archive.h"

#include <algorithm>
#include <map>
#include <string_view>

#include <fmt/format.h>
#include "measure/require.h"
#include "output/pdf_text.h"
#include "output/seal.h"
#include "output/xml_text.h"

namespace kerfpacket::output {
namespace {

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

const char* kind_of(const std::string& name) {
    return name.ends_with(".toml")   ? "application#2Ftoml"
           : name.ends_with(".json") ? "application#2Fjson"
                                     : "text#2Fplain";
}

Ref embedded_file(PdfFile& file, const Attachment& attachment, const std::string& date) {
    return file.add_stream(
        fmt::format("/Type/EmbeddedFile/Subtype/{}/Params<</Size {}/CreationDate({})/ModDate({})"
                    "/CheckSum<{}>>>",
                    kind_of(attachment.name), attachment.text.size(), date, date, md5_of(attachment.text)),
        attachment.text);
}

}  // namespace

std::string pdf_date(const std::string& day) {
    std::string digits = day;
    std::erase(digits, '-');
    return "D:" + digits + "000000Z";
}

Ref add_metadata(PdfFile& file, const page::Document& document, int part) {
    constexpr std::string_view entries = "/Type/Metadata/Subtype/XML";
    // Part 1 wants it as it stands (ISO 19005-1, 6.7.2); part 3 asks this no more.
    if (part == 3) return file.add_stream(entries, xmp(document, part));
    return file.add_bare_stream(entries, xmp(document, part));
}

std::string output_intents(PdfFile& file, const std::string& profile) {
    return fmt::format(
        "/OutputIntents[<</Type/OutputIntent/S/GTS_PDFA1/OutputConditionIdentifier(Custom)"
        "/Info(Gray)/DestOutputProfile {}>>]",
        named(file.add_stream("/N 1", profile)));
}

std::string attached(PdfFile& file, const page::Document& document, const std::vector<Attachment>& attachments) {
    measure::require(!document.date.empty(), "a document with attachments has a date");
    std::string associated, names;
    std::map<std::string, Ref> by_name;  // in the order in which a reader looks for them (7.9.6)
    for (const Attachment& attachment : attachments) {
        const std::string name = text_string(attachment.name);
        const Ref bytes = embedded_file(file, attachment, pdf_date(document.date));
        const Ref one =
            file.add(fmt::format("<</Type/Filespec/F{0}/UF{0}/EF<</F {1}/UF {1}>>/Desc{2}"
                                 "/AFRelationship/{3}>>",
                                 name, named(bytes), text_string(attachment.description), attachment.relationship));
        measure::require(by_name.emplace(attachment.name, one).second, "each attachment has a name of its own");
        associated += named(one) + " ";
    }
    for (const auto& [name, one] : by_name) names += text_string(name) + named(one);
    return fmt::format("/AF[{}]/Names<</EmbeddedFiles<</Names[{}]>>>>", associated, names);
}

}  // namespace kerfpacket::output
