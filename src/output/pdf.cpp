#include "output/pdf.h"

#include <filesystem>
#include <map>
#include <optional>
#include <span>
#include <stdexcept>
#include <utility>

#include <fmt/format.h>

#include "disk/process.h"
#include "disk/read.h"
#include "measure/require.h"
#include "output/packet_reader.h"
#include "output/pdf_archive.h"
#include "output/pdf_file.h"
#include "output/pdf_fonts.h"
#include "output/pdf_form.h"
#include "output/pdf_outline.h"
#include "output/pdf_page.h"
#include "output/pdf_structure.h"
#include "output/pdf_text.h"
#include "output/seal.h"
#include "page/letters.h"

namespace kerfpacket::output {
namespace {

void check_size(const page::Page& page, std::size_t number) {
    // The limits of PDF 1.7 viewers without UserUnit (ISO 32000-1, annex C).
    const auto fits = [](Length side) { return side.points() >= 3 && thousandths(side) <= 14400000; };
    if (!fits(page.width) || !fits(page.height))
        throw std::runtime_error(
            fmt::format("page {} is too small or too large: a PDF page is 3 to 14400 points "
                        "(200 in) a side",
                        number));
}

/// The pages keep the numbers they have in the whole packet (ISO 32000-1, 12.4.2): a range of labels begins where the
/// numbers do not go on by one.
std::string page_labels(const page::Document& document) {
    std::string ranges;
    std::size_t expected = 0;
    for (std::size_t i = 0; i < document.pages.size(); ++i) {
        const std::size_t number = document.pages[i].number != 0 ? document.pages[i].number : i + 1;
        if (number != expected)
            ranges += fmt::format("{} <</S/D{}>>", i, number == 1 ? "" : fmt::format("/St {}", number));
        expected = number + 1;
    }
    return ranges;
}

/// What goes into the file besides the pages, what these set and how they wait.
struct Extras {
    std::vector<Attachment> attachments;
    page::Letters letters;
    unsigned threads = 1;
    std::span<page::Folded> folded = {};  ///< as in page::opened; each is let go when it is written
    const page::Form* form = nullptr;     ///< what can be filled in, in the face below
    std::string form_face = {};           ///< a TrueType file
};

constexpr std::size_t most_bytes = 1U << 20U;
constexpr std::size_t usual_page_bytes = 6000;

std::string profile_of(const fonts::Faces& faces) {
    std::string bytes = disk::must_read(faces.colour_profile(), most_bytes);
    if (bytes.empty())
        throw disk::Failure(
            fmt::format("the colour profile {} is empty: build the program again", faces.colour_profile().string()));
    return bytes;
}

/// A page with its content. One that waits folded is open only while it is written.
struct Written {
    std::optional<page::Page> opened;
    Drawn drawn;
};

/// A document on its way into a file.
class Writer {
public:
    Writer(const page::Document& document, const fonts::Faces& faces, const Extras& extras)
        : document_(document),
          faces_(faces),
          extras_(extras),
          // A form that is filled in is no PDF/A any more, and would go on calling itself one.
          part_(extras.form != nullptr       ? 0
                : extras.attachments.empty() ? 1
                                             : 3),
          file_(part_ == 1 ? "1.4" : "1.7", part_ == 3 ? PdfFile::Form::packed : PdfFile::Form::plain),
          structure_(file_, document.pages.size()) {
        measure::require(!document.pages.empty(), "a document has pages");
        file_.expect(usual_page_bytes * document.pages.size());
        if (extras.form != nullptr) fields_.emplace(file_, *extras.form);
        for (std::size_t i = 0; i < document.pages.size(); ++i) {
            check_size(document.pages[i], i + 1);
            pages_.push_back(file_.reserve());
        }
    }

    std::string write() &&;

private:
    void give_codes();
    void write_pages();
    void write_page(std::size_t number, const page::Page& page, const Drawn& drawn);
    std::vector<Ref> add_links(const Drawn& drawn, PageTree& tree);
    std::string fonts_of(const Drawn& drawn) const;
    std::string contents_of(const Drawn& drawn);
    Ref write_catalogue();
    Ref write_information();

    const page::Document& document_;
    const fonts::Faces& faces_;
    const Extras& extras_;
    int part_;  ///< of ISO 19005, 0 for none
    PdfFile file_;
    Structure structure_;
    std::optional<FormWriter> fields_;
    FaceCodes codes_;
    Ref page_tree_ = file_.reserve();
    std::vector<Ref> pages_;
    std::vector<Ref> fonts_;
    std::map<std::string, Ref> frames_;  ///< by what is drawn
};

void Writer::give_codes() {
    for (const page::Face face : page::all_faces) {
        const std::string& letters = extras_.letters.of(face);
        faces_.width(face, letters, Length::points(1));  // throws for what the face cannot print
        codes_.at(static_cast<std::size_t>(face)).take(letters);
    }
}

std::string Writer::fonts_of(const Drawn& drawn) const {
    std::string fonts;
    for (std::size_t i = 0; i < drawn.fonts.size(); ++i)
        if (drawn.fonts[i]) fonts += fmt::format("/F{} {}", i, named(fonts_.at(i)));
    return fonts.empty() ? "" : "/Font<<" + fonts + ">>";
}

/// Frames that are alike stand in the file once.
std::string Writer::contents_of(const Drawn& drawn) {
    const Ref own = file_.add_packed_stream("", drawn.content);
    if (drawn.frame.empty()) return named(own);
    const auto [frame, is_new] = frames_.try_emplace(drawn.frame);
    if (is_new) frame->second = file_.add_stream("", drawn.frame);
    return list_of({own, frame->second});
}

/// Links are printed as they stand (ISO 19005-1, 6.5.3).
std::vector<Ref> Writer::add_links(const Drawn& drawn, PageTree& tree) {
    std::vector<Ref> links(drawn.links.size());
    for (Ref& annotation : links) annotation = file_.reserve();
    for (std::size_t i = 0; i < links.size(); ++i) {
        const page::LinkItem* link = drawn.links[i];
        measure::require(link->page < pages_.size(), "a link leads to a page of the document");
        file_.put(links[i],
                  fmt::format("<</Type/Annot/Subtype/Link/F 4/Rect{}/Border[0 0 0]/Dest[{} /Fit]"
                              "/Contents{}/StructParent {}>>",
                              corners(link->area), named(pages_[link->page]),
                              text_string(told_of(document_, link->page)), tree.add_link(link->node, links[i])));
    }
    return links;
}

void Writer::write_page(std::size_t number, const page::Page& page, const Drawn& drawn) {
    PageTree tree(file_, structure_, page, drawn.marks, pages_[number]);
    std::vector<Ref> annotations = add_links(drawn, tree);
    if (fields_) fields_->add_page(number, pages_[number], tree, annotations);
    tree.write();
    std::string entries;
    // Readers go from one to the next in the order of the tree (ISO 32000-1, 12.5.1).
    if (!annotations.empty() || fields_) entries += "/Tabs/S";
    if (!annotations.empty()) entries += "/Annots" + list_of(annotations);
    file_.put(pages_[number],
              fmt::format("<</Type/Page/Parent {}/MediaBox{}/Resources<<{}>>/Contents {}/StructParents {}{}>>",
                          named(page_tree_), corners({{}, {page.width, page.height}}), fonts_of(drawn),
                          contents_of(drawn), number, entries));
}

Ref Writer::write_catalogue() {
    std::string entries = output_intents(file_, profile_of(faces_));
    if (!document_.outline.empty())
        entries += "/PageMode/UseOutlines/Outlines " + named(add_outline(file_, document_, pages_));
    // One after the other: in which order a call's arguments are made is the compiler's to choose, and objects are
    // numbered as they are made.
    const Ref structure = structure_.write();
    // A packet is read back from here on, and that is all that is read of it.
    file_.close_together();
    if (part_ == 3) entries += attached(file_, document_, extras_.attachments);
    if (fields_) entries += "/AcroForm " + named(fields_->write(extras_.form_face));
    const Ref metadata = add_metadata(file_, document_, part_);
    return file_.add(
        fmt::format("<</Type/Catalog/Pages {}/StructTreeRoot {}/MarkInfo<</Marked true>>"
                    "/ViewerPreferences<</PrintScaling/None/Enforce[/PrintScaling]"
                    "/PickTrayByPDFSize true/DisplayDocTitle true>>/PageLabels<</Nums[{}]>>/Lang{}"
                    "/Metadata {}{}>>",
                    named(page_tree_), named(structure), page_labels(document_), text_string(document_.language),
                    named(metadata), entries));
}

Ref Writer::write_information() {
    std::string entries = "/Title" + text_string(document_.title);
    if (!document_.subject.empty()) entries += "/Subject" + text_string(document_.subject);
    // By this a form that was flattened is still known for one.
    if (fields_) entries += "/Keywords" + text_string(form_keyword);
    if (!document_.date.empty()) entries += fmt::format("/CreationDate({0})/ModDate({0})", pdf_date(document_.date));
    return file_.add("<<" + entries + "/Producer(kerfpacket " KERFPACKET_VERSION ")>>");
}

void Writer::write_pages() {
    disk::SideBySide<Written> pages(document_.pages.size(), extras_.threads);
    const auto new_maker = [&] {
        return [&](std::size_t number) {
            Written written;
            written.drawn = drawn(page::opened(document_, extras_.folded, number, written.opened), codes_);
            return written;
        };
    };
    pages.run(new_maker, [&](std::size_t number, const Written& written) {
        write_page(number, written.opened ? *written.opened : document_.pages[number], written.drawn);
        if (!written.opened) return;
        extras_.folded[number] = {};
        if (number % page::many_folded == 0) disk::give_memory_back();
    });
}

std::string Writer::write() && {
    give_codes();
    fonts_ = reserve_fonts(file_, codes_);
    write_pages();
    file_.put(page_tree_, fmt::format("<</Type/Pages/Count {}/Kids{}>>", pages_.size(), list_of(pages_)));
    write_fonts(file_, fonts_, codes_, faces_);
    const Ref catalogue = write_catalogue();
    const Ref information = write_information();
    std::string bytes = std::move(file_).finish(catalogue, information);
    return part_ == 3 ? sealed(std::move(bytes)) : bytes;
}

page::Letters letters_of(const page::Document& document) {
    page::Letters letters;
    for (const page::Page& page : document.pages) letters.take(page);
    return letters;
}

}  // namespace

std::string pdf(const page::Document& document, const fonts::Faces& faces, const std::vector<Attachment>& attachments,
                unsigned threads) {
    return Writer(document, faces, {attachments, letters_of(document), threads}).write();
}

std::string pdf(page::FoldedDocument&& document, const fonts::Faces& faces, const std::vector<Attachment>& attachments,
                unsigned threads) {
    return Writer(document.document, faces, {attachments, std::move(document.letters), threads, document.folded})
        .write();
}

std::string form_pdf(const page::Document& document, const page::Form& form, const fonts::Faces& faces) {
    // Beside the faces: it is no face of the sheets, only of what is typed into them.
    std::filesystem::path face = faces.colour_profile();
    face.replace_filename("form.ttf");
    return Writer(document, faces, {{}, letters_of(document), 1, {}, &form, disk::must_read(face, most_bytes)}).write();
}

}  // namespace kerfpacket::output
