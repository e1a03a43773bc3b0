#include "output/pdf_finish.h"

#include <exception>
#include <stdexcept>

#include <fmt/format.h>

#include "output/packet_reader.h"
#include "output/pdf_archive.h"
#include "output/pdf_fonts.h"
#include "output/pdf_form.h"
#include "output/pdf_structure.h"
#include "output/qpdf.h"
#include "output/seal.h"

namespace kerfpacket::output {
namespace {

using Object = QPDFObjectHandle;

/// The pages keep the numbers they have in the whole packet (ISO 32000-1, 12.4.2): a range of labels begins where the
/// numbers do not go on by one.
Object page_labels(const page::Document& document) {
    Object ranges = Object::newArray();
    std::size_t expected = 0;
    for (std::size_t i = 0; i < document.pages.size(); ++i) {
        const std::size_t number = document.pages[i].number != 0 ? document.pages[i].number : i + 1;
        if (number != expected) {
            ranges.appendItem(Object::newInteger(static_cast<long long>(i)));
            ranges.appendItem(Object::parse(number == 1 ? "<< /S /D >>" : fmt::format("<< /S /D /St {} >>", number)));
        }
        expected = number + 1;
    }
    Object labels = Object::newDictionary();
    labels.replaceKey("/Nums", ranges);
    return labels;
}

void set_catalogue(QPDF& pdf, const page::Document& document) {
    Object root = pdf.getRoot();
    root.replaceKey("/ViewerPreferences", Object::parse("<< /PrintScaling /None /Enforce [/PrintScaling]"
                                                        " /PickTrayByPDFSize true /DisplayDocTitle true >>"));
    root.replaceKey("/PageLabels", page_labels(document));
    root.replaceKey("/Lang", Object::newUnicodeString(document.language));
}

void set_information(QPDF& pdf, const page::Document& document, bool form) {
    Object info = Object::newDictionary();
    info.replaceKey("/Title", Object::newUnicodeString(document.title));
    if (!document.subject.empty()) info.replaceKey("/Subject", Object::newUnicodeString(document.subject));
    info.replaceKey("/Producer", Object::newUnicodeString("kerfpacket " KERFPACKET_VERSION));
    // By this a form that was flattened is still known for one.
    if (form) info.replaceKey("/Keywords", Object::newUnicodeString(form_keyword));
    if (!document.date.empty()) {
        const Object date = Object::newString(pdf_date(document.date));
        info.replaceKey("/CreationDate", date);
        info.replaceKey("/ModDate", date);
    }
    pdf.getTrailer().replaceKey("/Info", pdf.makeIndirectObject(info));
}

/// Destinations stand where they are used: PDFBox takes them for broken otherwise.
void inline_destination(Object user) {
    Object destination = user.getKey("/Dest");
    if (destination.isArray()) user.replaceKey("/Dest", destination.shallowCopy());
}

void inline_destinations(Object outline) {
    for (Object entry = outline.getKey("/First"); entry.isDictionary(); entry = entry.getKey("/Next")) {
        inline_destination(entry);
        inline_destinations(entry);
    }
}

/// Links are printed as they stand (ISO 19005-1, 6.5.3).
void repair_annotations(QPDF& pdf) {
    for (Object page : pdf.getAllPages()) {
        Object annotations = page.getKey("/Annots");
        if (!annotations.isArray()) continue;
        for (Object annotation : annotations.getArrayAsVector()) {
            annotation.replaceKey("/F", Object::newInteger(4));
            inline_destination(annotation);
        }
    }
}

/// Without object streams, which PDF/A-1 (PDF 1.4) has not; with them libqpdf takes twice the time.
std::string write(QPDF& pdf, int part) {
    QPDFWriter writer(pdf);
    writer.setOutputMemory();
    writer.setDeterministicID(true);
    writer.setNewlineBeforeEndstream(true);
    writer.setObjectStreamMode(qpdf_o_disable);
    // Streams pass as libharu compressed them: libqpdf would unpack and pack them all again, most of the finish's time.
    writer.setCompressStreams(false);
    writer.forcePDFVersion(part == 1 ? "1.4" : "1.7");
    writer.write();
    const auto buffer = writer.getBufferSharedPointer();
    return {reinterpret_cast<const char*>(buffer->getBuffer()), buffer->getSize()};  // NOLINT(*-reinterpret-cast)
}

}  // namespace

std::string finish_pdf(const Drawn& drawn, const page::Document& document, const Extras& extras) {
    try {
        QPDF pdf;
        pdf.setSuppressWarnings(true);
        pdf.processMemoryFile("the PDF", drawn.bytes.data(), drawn.bytes.size());
        // A form that is filled in is no PDF/A any more, and would go on calling itself one.
        const int part = extras.form != nullptr ? 0 : extras.attachments.empty() ? 1 : 3;
        set_catalogue(pdf, document);
        set_information(pdf, document, extras.form != nullptr);
        repair_annotations(pdf);
        if (pdf.getRoot().hasKey("/Outlines")) inline_destinations(pdf.getRoot().getKey("/Outlines"));
        repair_fonts(pdf, document, drawn.fonts, part);
        const auto elements = add_structure(pdf, document, drawn.marks);
        if (extras.form != nullptr) add_form(pdf, document, *extras.form, extras.form_face, elements);
        add_metadata(pdf, document, part);
        add_output_intent(pdf, extras.colour_profile);
        if (part == 3) add_attachments(pdf, document, extras.attachments);
        std::string bytes = write(pdf, part);
        if (pdf.anyWarnings()) throw std::runtime_error(pdf.getWarnings().front().what());
        return part == 3 ? sealed(bytes) : bytes;
    } catch (const std::exception& error) {
        throw std::runtime_error(fmt::format("the PDF library failed while finishing the PDF: {}", error.what()));
    }
}

}  // namespace kerfpacket::output
