// The structure tree as libqpdf reads it back, against ISO 32000-1, 14.7 and 14.8.

#include <gtest/gtest.h>

#include <map>
#include <regex>
#include <set>

#include "output/pdf.h"
#include "output/sample.h"

namespace kerfpacket::output {
namespace {

using namespace measure::literals;
using Object = QPDFObjectHandle;
using page::Tag;

page::TextItem in(std::size_t node, const std::string& text) {
    page::TextItem item = words(text);
    item.node = node;
    return item;
}

page::PathItem line_in(std::size_t node) {
    page::PathItem item{page::Role::outline, geom::Path::line({10_mm, 10_mm}, {50_mm, 10_mm}), 1_mm};
    item.node = node;
    return item;
}

/// A title drawn last, a table with an empty cell, a list, a figure of lines and words, an artifact.
page::Document told() {
    page::Document document = one_item(in(4, "head"));
    page::Page& page = document.pages.front();
    page.structure = {{Tag::section, 0, {}},       // 0
                      {Tag::title, 0, {}},         // 1
                      {Tag::table, 0, {}},         // 2
                      {Tag::row, 2, {}},           // 3
                      {Tag::header_cell, 3, {}},   // 4
                      {Tag::cell, 3, {}},          // 5
                      {Tag::list, 0, {}},          // 6
                      {Tag::list_item, 6, {}},     // 7
                      {Tag::figure, 0, "a line"},  // 8
                      {Tag::artifact, 0, {}},      // 9
                      {Tag::paragraph, 0, {}}};    // 10
    page.items = {in(4, "head"), in(7, "item"), line_in(8), in(8, "12"), in(9, "page 1"), line_in(0), in(1, "title")};
    return document;
}

/// The element as "H1(...)", its marked runs as numbers.
std::string told_by(Object element) {
    if (element.isInteger()) return std::to_string(element.getIntValue());
    std::string text = element.getKey("/S").getName().substr(1);
    Object kids = element.getKey("/K");
    if (kids.isNull()) return text;
    text += "(";
    for (Object kid : kids.isArray() ? kids.getArrayAsVector() : std::vector<Object>{kids})
        text += (text.back() == '(' ? "" : " ") + told_by(kid);
    return text + ")";
}

TEST(Structure, PartsComeInTheOrderOfTheirNodesAndEmptyCellsStay) {
    const std::string bytes = output::pdf(told(), test_faces());
    const auto pdf = open_pdf(bytes);
    Object whole = pdf->getRoot().getKey("/StructTreeRoot").getKey("/K");
    const std::string said = std::regex_replace(told_by(whole), std::regex("\\b[0-9]+"), "n");
    // The paragraph with nothing in it is not told.
    EXPECT_EQ(said, "Document(Sect(H1(n) Table(TR(TH(n) TD)) L(LI(LBody(n))) Figure(n n)))");
    EXPECT_TRUE(pdf->getRoot().getKey("/MarkInfo").getKey("/Marked").getBoolValue());
}

TEST(Structure, FiguresHaveTheirWordsAndHeadsTheirScope) {
    const std::string bytes = output::pdf(told(), test_faces());
    const auto pdf = open_pdf(bytes);
    std::map<std::string, Object> by_type;
    for (Object object : pdf->getAllObjects())
        if (object.isDictionary() && object.hasKey("/S") && object.hasKey("/P"))
            by_type[object.getKey("/S").getName()] = object;
    EXPECT_EQ(by_type.at("/Figure").getKey("/Alt").getUTF8Value(), "a line");
    EXPECT_EQ(by_type.at("/TH").getKey("/A").getKey("/Scope").getName(), "/Column");
    EXPECT_FALSE(by_type.at("/TD").hasKey("/A"));
}

/// All elements of a type.
std::vector<Object> elements_of(QPDF& pdf, const std::string& type) {
    std::vector<Object> found;
    for (Object object : pdf.getAllObjects())
        if (object.isDictionary() && object.hasKey("/P") && object.getKey("/S").isName() &&
            object.getKey("/S").getName() == type)
            found.push_back(object);
    return found;
}

TEST(Structure, FiguresSayWhereTheyStand) {
    const std::string bytes = output::pdf(told(), test_faces());
    const auto pdf = open_pdf(bytes);
    const auto figures = elements_of(*pdf, "/Figure");
    ASSERT_EQ(figures.size(), 1U);
    Object attributes = Object(figures[0]).getKey("/A");
    EXPECT_EQ(attributes.getKey("/O").getName(), "/Layout");
    const auto box = attributes.getKey("/BBox").getArrayAsVector();
    ASSERT_EQ(box.size(), 4U);
    // The line runs from 10 to 50 mm; the word may stick out of it.
    EXPECT_LE(Object(box[0]).getNumericValue(), 10 / 25.4 * 72 + 0.01);
    EXPECT_GE(Object(box[2]).getNumericValue(), 50 / 25.4 * 72 - 0.01);
    EXPECT_LE(Object(box[1]).getNumericValue(), 10 / 25.4 * 72 + 0.01);
    EXPECT_GE(Object(box[2]).getNumericValue(), Object(box[0]).getNumericValue());
    EXPECT_GE(Object(box[3]).getNumericValue(), Object(box[1]).getNumericValue());
}

TEST(Structure, LinksAreElementsThatLeadToTheirAnnotationsAndBack) {
    page::Document document = told();
    document.outline = {{"A sheet", 0, 0}};
    page::LinkItem inside{{{10_mm, 10_mm}, {20_mm, 20_mm}}, 0, 7};  // in the list item
    page::LinkItem in_row = inside;
    in_row.node = 3;  // a row holds cells alone
    page::LinkItem in_artifact = inside;
    in_artifact.node = 9;
    for (const page::LinkItem& link : {inside, in_row, in_artifact}) document.pages.front().items.emplace_back(link);
    const std::string bytes = output::pdf(document, test_faces());
    const auto pdf = open_pdf(bytes);
    Object page = pdf->getAllPages().front();
    EXPECT_EQ(page.getKey("/Tabs").getName(), "/S");
    const auto annotations = page.getKey("/Annots").getArrayAsVector();
    const auto links = elements_of(*pdf, "/Link");
    ASSERT_EQ(annotations.size(), 3U);
    ASSERT_EQ(links.size(), 3U);
    Object numbers = pdf->getRoot().getKey("/StructTreeRoot").getKey("/ParentTree").getKey("/Nums");
    std::map<long long, Object> tree;
    for (int i = 0; i + 1 < numbers.getArrayNItems(); i += 2)
        EXPECT_TRUE(tree.emplace(numbers.getArrayItem(i).getIntValue(), numbers.getArrayItem(i + 1)).second);
    std::multiset<std::string> parents;
    for (Object annotation : annotations) {
        Object element = tree.at(annotation.getKey("/StructParent").getIntValue());
        EXPECT_EQ(element.getKey("/S").getName(), "/Link");
        EXPECT_EQ(element.getKey("/K").getKey("/Type").getName(), "/OBJR");
        EXPECT_EQ(element.getKey("/K").getKey("/Obj").getObjGen(), annotation.getObjGen());
        EXPECT_EQ(annotation.getKey("/Contents").getUTF8Value(), "A sheet, 1");
        parents.insert(element.getKey("/P").getKey("/S").getName());
    }
    EXPECT_EQ(parents, (std::multiset<std::string>{"/LBody", "/Sect", "/Sect"}));
}

/// What a file says of itself, unpacked.
std::string metadata_of(const std::string& bytes, bool packed) {
    const auto pdf = open_pdf(bytes);
    Object stream = pdf->getRoot().getKey("/Metadata");
    EXPECT_EQ(stream.getDict().hasKey("/Filter"), packed);
    const auto buffer = stream.getStreamData();
    return {reinterpret_cast<const char*>(buffer->getBuffer()), buffer->getSize()};  // NOLINT(*-reinterpret-cast)
}

TEST(Structure, APacketSaysThatItIsForReaders) {
    const std::string packet =
        metadata_of(output::pdf(sample_document(), test_faces(), {{"job.toml", "a = 1\n", "a job", "Source"}}), true);
    EXPECT_NE(packet.find("<pdfuaid:part>1</pdfuaid:part>"), std::string::npos);
    EXPECT_NE(packet.find("<pdfaSchema:prefix>pdfuaid</pdfaSchema:prefix>"), std::string::npos);
    // Part 1 wants it as it stands.
    const std::string sheet = metadata_of(output::pdf(sample_document(), test_faces()), false);
    EXPECT_NE(sheet.find("<pdfaid:part>1</pdfaid:part>"), std::string::npos);
    EXPECT_EQ(sheet.find("pdfuaid"), std::string::npos);
}

/// Every run of the content is of the element that the parent tree gives it (14.7.4.4), and of the same type.
void expect_marks_to_lead_home(QPDF& pdf) {
    Object numbers = pdf.getRoot().getKey("/StructTreeRoot").getKey("/ParentTree").getKey("/Nums");
    const auto pages = pdf.getAllPages();
    ASSERT_GE(numbers.getArrayNItems(), static_cast<int>(pages.size() * 2));  // links follow
    for (std::size_t i = 0; i < pages.size(); ++i) {
        Object page = pages[i];
        ASSERT_EQ(page.getKey("/StructParents").getIntValue(), static_cast<long long>(i));
        Object parents = numbers.getArrayItem(static_cast<int>(i) * 2 + 1);
        const std::string content = content_of(pdf, i);
        const std::regex begin("/(\\w+) << /MCID (\\d+) >> BDC");
        std::set<int> numbered;
        for (std::sregex_iterator run(content.begin(), content.end(), begin), end; run != end; ++run) {
            const int number = std::stoi((*run)[2]);
            EXPECT_TRUE(numbered.insert(number).second) << number;
            ASSERT_LT(number, parents.getArrayNItems());
            Object element = parents.getArrayItem(number);
            const std::string type = element.getKey("/S").getName();
            EXPECT_EQ(type == "/LBody" ? "/LI" : type, "/" + (*run)[1].str());
            EXPECT_EQ(element.getKey("/Pg").getObjGen(), page.getObjGen());
        }
        EXPECT_EQ(numbered.size(), static_cast<std::size_t>(parents.getArrayNItems()));
    }
}

/// Three pages with a figure of lines and words each: on the first two a check bar too, and a foot below it.
page::Document framed() {
    page::Document document = told();
    page::Page& page = document.pages.front();
    page.structure.push_back({Tag::figure, 0, "check"});  // 11
    page.structure.push_back({Tag::frame, 0, {}});        // 12
    page::PathItem bar = line_in(11);
    bar.role = page::Role::check_bar;
    page.items.emplace_back(bar);
    page.items.emplace_back(in(12, "foot"));
    document.pages.push_back(page);
    document.pages.back().items.insert(document.pages.back().items.begin(), in(10, "more words"));
    document.pages.push_back(told().pages.front());
    return document;
}

TEST(Structure, AFrameOfSeveralPagesIsWrittenOnceAndStandsInThePartsOfEach) {
    const std::string bytes = output::pdf(framed(), test_faces());
    const auto pdf = open_pdf(bytes);
    const auto contents = [&](std::size_t page) { return page_of(*pdf, page).getKey("/Contents"); };
    ASSERT_TRUE(contents(0).isArray() && contents(1).isArray());
    EXPECT_EQ(contents(0).getArrayItem(1).getObjGen(), contents(1).getArrayItem(1).getObjGen());
    EXPECT_NE(contents(0).getArrayItem(0).getObjGen(), contents(1).getArrayItem(0).getObjGen());
    EXPECT_TRUE(contents(2).isStream());
    for (const std::size_t page : {0U, 1U}) {
        const std::string content = content_of(*pdf, page);
        EXPECT_GT(content.find("(foot)"), content.find("(page 1)")) << "what nobody reads comes last";
        EXPECT_NE(content.find("(foot)"), std::string::npos);
    }
    expect_marks_to_lead_home(*pdf);
}

TEST(Structure, EveryRunLeadsToItsElement) {
    const std::string bytes = output::pdf(told(), test_faces());
    const auto pdf = open_pdf(bytes);
    expect_marks_to_lead_home(*pdf);
    const std::string more = output::pdf(sample_document(), test_faces());
    const auto other = open_pdf(more);
    expect_marks_to_lead_home(*other);
}

/// Runs and text objects close in the order they opened, and nothing is drawn outside a run (14.6.1, 14.8.2.2).
TEST(Structure, RunsNestWithTextObjectsAndHoldAllThatIsDrawn) {
    for (const page::Document& document : {told(), framed(), sample_document()}) {
        const std::string bytes = output::pdf(document, test_faces());
        const auto pdf = open_pdf(bytes);
        for (std::size_t page = 0; page < document.pages.size(); ++page) {
            const std::string content = content_of(*pdf, page);
            std::string open;  // T for a text object, M for a run
            const std::regex word("\\b(BT|ET|BDC|BMC|EMC|Tj|S|f|B)(?=\\s|$)");
            int drawn = 0;
            // Strings may hold any letters.
            const std::string bare =
                std::regex_replace(content, std::regex("\\((\\\\.|[^()\\\\])*\\)|<[0-9A-F]+>"), "");
            for (std::sregex_iterator at(bare.begin(), bare.end(), word), end; at != end; ++at) {
                const std::string op = at->str();
                if (op == "BT") open += 'T';
                else if (op == "BDC" || op == "BMC") {
                    EXPECT_EQ(open.find('M'), std::string::npos) << "runs do not nest here";
                    open += 'M';
                } else if (op == "ET" || op == "EMC") {
                    ASSERT_FALSE(open.empty()) << bare;
                    ASSERT_EQ(open.back(), op == "ET" ? 'T' : 'M') << bare;
                    open.pop_back();
                } else {
                    EXPECT_NE(open.find('M'), std::string::npos) << op;
                    ++drawn;
                }
            }
            EXPECT_EQ(open, "");
            EXPECT_EQ(drawn > 0, !document.pages[page].items.empty());
        }
    }
}

TEST(Structure, AReaderPutsASpaceBetweenLinesOfOneParagraph) {
    page::Document document = one_item(in(1, "one"));
    page::Page& page = document.pages.front();
    page.structure = {{Tag::section, 0, {}}, {Tag::paragraph, 0, {}}, {Tag::paragraph, 0, {}}};
    page.items = {in(1, "one"), in(1, "two"), in(2, "three")};
    const std::string bytes = output::pdf(document, test_faces());
    const auto pdf = open_pdf(bytes);
    const std::string content = content_of(*pdf, 0);
    std::string shown;
    const std::regex text("\\(([^)]*)\\) Tj");
    for (std::sregex_iterator at(content.begin(), content.end(), text), end; at != end; ++at) shown += (*at)[1];
    EXPECT_EQ(shown, "one twothree");
}

}  // namespace
}  // namespace kerfpacket::output
