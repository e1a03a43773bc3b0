#include "output/pdf_structure.h"

#include <algorithm>
#include <optional>
#include <utility>

#include "measure/require.h"
#include "output/draw_order.h"
#include "page/placing.h"

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

/// What a figure covers on the paper.
class Extent {
public:
    explicit Extent(const page::Page& page) : page_(page) {}

    void take(const page::PathItem& item) {
        const geom::Rect bounds = item.path.bounds();
        take(bounds.low);
        take(bounds.high);
    }
    void take(const page::TextItem& item) {
        const geom::Direction along = geom::Direction::at(item.angle);
        const double back = item.align == page::Align::left ? 0 : item.align == page::Align::centre ? 0.5 : 1;
        for (const double end : {-back, 1 - back})
            for (const double up : {-0.25, 1.0})
                take(item.anchor + along * (item.advance * end) + along.left() * (item.size * up));
    }
    void take(const page::CodeItem& item) {
        take(item.area.low);
        take(item.area.high);
    }
    void take(const page::LinkItem& /*covers nothing*/) {}

    /// Attributes of a figure (ISO 32000-1, 14.8.5.4.3); none of one with nothing in it.
    std::optional<Object> attributes() const {
        if (!box_) return std::nullopt;
        Object box = Object::newArray();
        for (const geom::Length side : {box_->low.x, box_->low.y, box_->high.x, box_->high.y})
            box.appendItem(Object::newReal(side.points(), 2));
        Object attributes = Object::parse("<< /O /Layout /Placement /Block >>");
        attributes.replaceKey("/BBox", box);
        return attributes;
    }

private:
    void take(page::Point point) {
        const page::Point at = page::corrected(page_, point);
        if (!box_) box_ = geom::Rect{at, at};
        box_->low = {std::min(box_->low.x, at.x), std::min(box_->low.y, at.y)};
        box_->high = {std::max(box_->high.x, at.x), std::max(box_->high.y, at.y)};
    }

    const page::Page& page_;
    std::optional<geom::Rect> box_;
};

/// A link of a page: the part it stands in, and the annotation that a viewer follows.
struct Link {
    std::size_t node = 0;
    std::size_t page = 0;  ///< where it leads
    Object annotation;
};

/// Annotations were added in the order in which the page was drawn.
std::vector<Link> links_of(const page::Page& page, Object pdf_page) {  // looked into, which libqpdf takes for a change
    std::vector<Link> links;
    Object annotations = pdf_page.getKey("/Annots");
    for (const page::Item* item : draw_order(page)) {
        const auto* link = std::get_if<page::LinkItem>(item);
        if (link == nullptr) continue;
        const int n = static_cast<int>(links.size());
        measure::require(annotations.isArray() && n < annotations.getArrayNItems(), "every link has its annotation");
        links.push_back({link->node, link->page, annotations.getArrayItem(n)});
    }
    return links;
}

/// One page's part of the tree.
class PageTree {
public:
    PageTree(QPDF& pdf, const page::Page& page, const std::vector<std::size_t>& marks, const Heads& heads)
        : pdf_(pdf), page_(page), marks_(marks), heads_(heads) {}

    /// Returns the section; `parents` gets for every marked run the element it belongs to, `link_elements` one for
    /// every link; `elements` what holds each part, none for a part with nothing to read.
    Object build(const Object& pdf_page, const Object& above, Object& parents, const std::vector<Link>& links,
                 std::vector<Object>& link_elements, std::vector<Object>& elements) {
        const auto& structure = page_.structure;
        const std::vector<bool> told = worth_telling(structure, marks_);
        elements.resize(structure.size());
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
        for (const Link& link : links) {
            const std::size_t part = part_of(link.node, told);
            Object made = simple("/Link", elements[part]);
            Object object = Object::parse("<< /Type /OBJR >>");
            object.replaceKey("/Obj", link.annotation);
            object.replaceKey("/Pg", pdf_page);
            made.replaceKey("/K", object);
            kids[part].push_back(made);
            link_elements.push_back(made);
        }
        add_boxes(elements);
        for (std::size_t i = 0; i < structure.size(); ++i)
            if (!kids[i].empty())
                elements[i].replaceKey("/K", kids[i].size() == 1 ? kids[i].front() : Object::newArray(kids[i]));
        return elements[0];
    }

private:
    /// The part that a link may stand in: one that is told, and holds more than its own kind of parts.
    std::size_t part_of(std::size_t node, const std::vector<bool>& told) const {
        const auto holds_links = [&](std::size_t i) {
            const Tag tag = page_.structure[i].tag;
            return told[i] && tag != Tag::artifact && tag != Tag::table && tag != Tag::row && tag != Tag::list;
        };
        while (node > 0 && !holds_links(node)) node = page_.structure[node].parent;
        return node;
    }

    void add_boxes(std::vector<Object>& elements) const {
        std::vector<Extent> extents(page_.structure.size(), Extent(page_));
        for (const page::Item& item : page_.items)
            if (const auto node = page::read_with(page_, item))
                std::visit([&](const auto& one) { extents[*node].take(one); }, item);
        for (std::size_t i = 0; i < extents.size(); ++i)
            if (page_.structure[i].tag == Tag::figure && elements[i].isInitialized())
                if (const auto attributes = extents[i].attributes()) elements[i].replaceKey("/A", *attributes);
    }

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

namespace {

/// What a reader says of a link: the name of the sheet that it leads to, and its page.
std::string told_of(const page::Document& document, std::size_t page) {
    std::string title;
    for (const page::OutlineEntry& entry : document.outline)
        if (entry.page <= page) title = entry.title;
    const std::size_t number = document.pages.at(page).number;
    return title + (title.empty() ? "" : ", ") + std::to_string(number == 0 ? page + 1 : number);
}

}  // namespace

std::vector<std::vector<Object>> add_structure(QPDF& pdf, const page::Document& document,
                                               const std::vector<std::vector<std::size_t>>& marks) {
    const Heads heads{pdf.makeIndirectObject(Object::parse("<< /O /Table /Scope /Column >>")),
                      pdf.makeIndirectObject(Object::parse("<< /O /Table /Scope /Row >>"))};
    Object root = pdf.makeIndirectObject(Object::newDictionary({{"/Type", Object::newName("/StructTreeRoot")}}));
    Object whole = pdf.makeIndirectObject(Object::newDictionary(
        {{"/Type", Object::newName("/StructElem")}, {"/S", Object::newName("/Document")}, {"/P", root}}));
    std::vector<Object> sections;
    std::vector<Object> link_elements;          // of all pages
    std::vector<std::vector<Object>> elements;  // of each page
    Object numbers = Object::newArray();
    std::vector<Object> pdf_pages = pdf.getAllPages();
    measure::require(pdf_pages.size() == document.pages.size() && marks.size() == pdf_pages.size(),
                     "every page of the file is one of the document");
    for (std::size_t i = 0; i < pdf_pages.size(); ++i) {
        Object parents = Object::newArray();
        PageTree tree(pdf, document.pages[i], marks[i], heads);
        const std::vector<Link> links = links_of(document.pages[i], pdf_pages[i]);
        const std::size_t first = link_elements.size();
        sections.push_back(tree.build(pdf_pages[i], whole, parents, links, link_elements, elements.emplace_back()));
        for (std::size_t n = 0; n < links.size(); ++n) {
            Object annotation = links[n].annotation;
            annotation.replaceKey("/Contents", Object::newUnicodeString(told_of(document, links[n].page)));
            annotation.replaceKey("/StructParent",
                                  Object::newInteger(static_cast<long long>(pdf_pages.size() + first + n)));
        }
        // Readers go from link to link in the order of the tree (ISO 32000-1, 12.5.1).
        if (!links.empty()) pdf_pages[i].replaceKey("/Tabs", Object::newName("/S"));
        const Object number = Object::newInteger(static_cast<long long>(i));
        pdf_pages[i].replaceKey("/StructParents", number);
        numbers.appendItem(number);
        numbers.appendItem(pdf.makeIndirectObject(parents));
    }
    for (std::size_t n = 0; n < link_elements.size(); ++n) {
        numbers.appendItem(Object::newInteger(static_cast<long long>(pdf_pages.size() + n)));
        numbers.appendItem(link_elements[n]);
    }
    whole.replaceKey("/K", Object::newArray(sections));
    root.replaceKey("/K", whole);
    root.replaceKey("/ParentTree", pdf.makeIndirectObject(Object::newDictionary({{"/Nums", numbers}})));
    root.replaceKey("/ParentTreeNextKey",
                    Object::newInteger(static_cast<long long>(pdf_pages.size() + link_elements.size())));
    pdf.getRoot().replaceKey("/StructTreeRoot", root);
    pdf.getRoot().replaceKey("/MarkInfo", Object::parse("<< /Marked true >>"));
    return elements;
}

}  // namespace kerfpacket::output
