#include "output/pdf_structure.h"

#include <utility>

#include "measure/require.h"

namespace kerfpacket::output {
namespace {

using Object = QPDFObjectHandle;
using page::Tag;

bool is_cell(Tag tag) { return tag == Tag::cell || tag == Tag::header_cell || tag == Tag::row_header; }

/// Empty cells stay, or the cells after them would slip into other columns; what else has nothing to read goes.
std::vector<bool> worth_telling(const std::vector<page::Node>& structure, const std::vector<std::size_t>& marks) {
    std::vector<bool> told(structure.size());
    told.front() = true;
    for (const std::size_t node : marks) told.at(node) = true;
    for (std::size_t i = structure.size() - 1; i > 0; --i) {
        const Tag tag = structure[i].tag;
        measure::require(structure[i].parent < i, "a part of a page comes after the one around it");
        if (is_cell(tag)) told[i] = true;
        if (told[i] && tag != Tag::artifact) told[structure[i].parent] = true;
    }
    return told;
}

/// What a header cell is the head of (ISO 32000-1, table 349).
struct Heads {
    Object column;
    Object row;
};

/// One page's part of the tree.
class PageTree {
public:
    PageTree(QPDF& pdf, const page::Page& page, const std::vector<std::size_t>& marks, const Heads& heads)
        : pdf_(pdf), page_(page), marks_(marks), heads_(heads) {}

    /// Returns the section; `parents` gets for every marked run the element it belongs to.
    Object build(const Object& pdf_page, const Object& above, Object& parents) {
        const auto& structure = page_.structure;
        const std::vector<bool> told = worth_telling(structure, marks_);
        std::vector<Object> elements(structure.size());  // that hold what belongs to the part
        std::vector<std::vector<Object>> kids(structure.size());
        for (std::size_t i = 0; i < structure.size(); ++i) {
            if (!told[i] || structure[i].tag == Tag::artifact) continue;
            const std::size_t parent = structure[i].parent;
            elements[i] = element(structure[i], i == 0 ? above : elements[parent]);
            if (i > 0) kids[parent].push_back(elements[i]);
            if (structure[i].tag == Tag::list_item) {
                const Object body = simple("/LBody", elements[i]);
                elements[i].replaceKey("/K", body);
                elements[i] = body;
            }
        }
        if (!page_.language.empty()) elements[0].replaceKey("/Lang", Object::newUnicodeString(page_.language));
        for (std::size_t mark = 0; mark < marks_.size(); ++mark) {
            Object& element = elements.at(marks_[mark]);
            element.replaceKey("/Pg", pdf_page);
            kids[marks_[mark]].push_back(Object::newInteger(static_cast<long long>(mark)));
            parents.appendItem(element);
        }
        for (std::size_t i = 0; i < structure.size(); ++i)
            if (!kids[i].empty())
                elements[i].replaceKey("/K", kids[i].size() == 1 ? kids[i].front() : Object::newArray(kids[i]));
        return elements[0];
    }

private:
    Object simple(const char* type, const Object& parent) {
        return pdf_.makeIndirectObject(Object::newDictionary({{"/S", Object::newName(type)}, {"/P", parent}}));
    }

    Object element(const page::Node& node, const Object& parent) {
        Object made = simple((std::string("/") + structure_type(node.tag)).c_str(), parent);
        if (!node.alternative.empty()) made.replaceKey("/Alt", Object::newUnicodeString(node.alternative));
        if (node.tag == Tag::header_cell) made.replaceKey("/A", heads_.column);
        if (node.tag == Tag::row_header) made.replaceKey("/A", heads_.row);
        return made;
    }

    QPDF& pdf_;
    const page::Page& page_;
    const std::vector<std::size_t>& marks_;
    const Heads& heads_;
};

}  // namespace

const char* structure_type(Tag tag) {
    switch (tag) {
        case Tag::section: return "Sect";
        case Tag::title: return "H1";
        case Tag::heading: return "H2";
        case Tag::paragraph: return "P";
        case Tag::list: return "L";
        case Tag::list_item: return "LI";
        case Tag::table: return "Table";
        case Tag::row: return "TR";
        case Tag::header_cell:
        case Tag::row_header: return "TH";
        case Tag::cell: return "TD";
        case Tag::figure: return "Figure";
        case Tag::artifact: return "Artifact";
    }
    throw measure::Bug("a part of a page without a name");
}

void add_structure(QPDF& pdf, const page::Document& document, const std::vector<std::vector<std::size_t>>& marks) {
    const Heads heads{pdf.makeIndirectObject(Object::parse("<< /O /Table /Scope /Column >>")),
                      pdf.makeIndirectObject(Object::parse("<< /O /Table /Scope /Row >>"))};
    Object root = pdf.makeIndirectObject(Object::newDictionary({{"/Type", Object::newName("/StructTreeRoot")}}));
    Object whole = pdf.makeIndirectObject(Object::newDictionary(
        {{"/Type", Object::newName("/StructElem")}, {"/S", Object::newName("/Document")}, {"/P", root}}));
    std::vector<Object> sections;
    Object numbers = Object::newArray();
    std::vector<Object> pdf_pages = pdf.getAllPages();
    measure::require(pdf_pages.size() == document.pages.size() && marks.size() == pdf_pages.size(),
                     "every page of the file is one of the document");
    for (std::size_t i = 0; i < pdf_pages.size(); ++i) {
        Object parents = Object::newArray();
        PageTree tree(pdf, document.pages[i], marks[i], heads);
        sections.push_back(tree.build(pdf_pages[i], whole, parents));
        const Object number = Object::newInteger(static_cast<long long>(i));
        pdf_pages[i].replaceKey("/StructParents", number);
        numbers.appendItem(number);
        numbers.appendItem(pdf.makeIndirectObject(parents));
    }
    whole.replaceKey("/K", Object::newArray(sections));
    root.replaceKey("/K", whole);
    root.replaceKey("/ParentTree", pdf.makeIndirectObject(Object::newDictionary({{"/Nums", numbers}})));
    root.replaceKey("/ParentTreeNextKey", Object::newInteger(static_cast<long long>(pdf_pages.size())));
    pdf.getRoot().replaceKey("/StructTreeRoot", root);
    pdf.getRoot().replaceKey("/MarkInfo", Object::parse("<< /Marked true >>"));
}

}  // namespace kerfpacket::output
