#include "output/pdf_structure.h"

#include <algorithm>
#include <iterator>
#include <numeric>
#include <optional>
#include <string_view>

#include <fmt/format.h>

#include "measure/require.h"
#include "output/pdf_text.h"
#include "page/placing.h"

namespace kerfpacket::output {
namespace {

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
        if (told[i] && !page::is_artifact(tag)) told[structure[i].parent] = true;
    }
    return told;
}

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
    std::string attributes() const {
        if (!box_) return {};
        std::string text = "/A<</O/Layout/Placement/Block/BBox[";
        for (const geom::Length side : {box_->low.x, box_->low.y, box_->high.x, box_->high.y}) {
            add_number(text, side.points(), 2);
            text += ' ';
        }
        text.back() = ']';
        return text + ">>";
    }

private:
    void take(page::Point point) {
        const page::Point at = page::corrected(page_, point);
        box_ = box_ ? geom::united(*box_, {at, at}) : geom::Rect{at, at};
    }

    const page::Page& page_;
    std::optional<geom::Rect> box_;
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
        case Tag::artifact:
        case Tag::frame: return "Artifact";
    }
    throw measure::Bug("a part of a page without a name");
}

Structure::Structure(PdfFile& file, std::size_t pages)
    : file_(file),
      pages_(pages),
      root_(file.reserve()),
      whole_(file.reserve()),
      column_(file.add("<</O/Table/Scope/Column>>")),
      row_(file.add("<</O/Table/Scope/Row>>")) {}

void Structure::add_page(Ref section, const std::vector<Ref>& elements) {
    sections_.push_back(section);
    of_pages_.push_back(file_.add(list_of(elements)));
}

std::size_t Structure::add_annotation(Ref element) {
    of_annotations_.push_back(element);
    return pages_ + of_annotations_.size() - 1;
}

Ref Structure::write() {
    measure::require(of_pages_.size() == pages_, "every page of the file is one of the document");
    std::string numbers;
    std::size_t key = 0;
    for (const std::vector<Ref>* elements : {&of_pages_, &of_annotations_})
        for (const Ref element : *elements)
            fmt::format_to(std::back_inserter(numbers), "{} {} ", key++, named(element));
    numbers.pop_back();
    file_.put(whole_, fmt::format("<</S/Document/P {}/K{}>>", named(root_), list_of(sections_)));
    const Ref tree = file_.add("<</Nums[" + numbers + "]>>");
    file_.put(root_, fmt::format("<</Type/StructTreeRoot/K {}/ParentTree {}/ParentTreeNextKey {}>>", named(whole_),
                                 named(tree), key));
    return root_;
}

PageTree::PageTree(PdfFile& file, Structure& structure, const page::Page& page, const std::vector<std::size_t>& marks,
                   Ref pdf_page)
    : file_(file), structure_(structure), page_(page), pdf_page_(pdf_page), holder_(page.structure.size(), none) {
    elements_.reserve(page.structure.size() + page.structure.size() / 4);
    const std::vector<bool> told = worth_telling(page.structure, marks);
    for (std::size_t i = 0; i < page.structure.size(); ++i)
        if (told[i] && !page::is_artifact(page.structure[i].tag)) add_part(i);
    if (!page.language.empty()) elements_.front().type += "/Lang" + text_string(page.language);
    number();
    add_marks(marks);
    add_boxes();
}

std::size_t PageTree::add(std::string type, std::size_t above) {
    elements_.push_back({above, std::move(type)});
    return elements_.size() - 1;
}

void PageTree::add_part(std::size_t node) {
    const page::Node& part = page_.structure[node];
    std::string type = std::string("/") + structure_type(part.tag);
    if (!part.alternative.empty()) type += "/Alt" + text_string(part.alternative);
    if (part.tag == Tag::header_cell || part.tag == Tag::row_header)
        type += "/A " + named(structure_.head_of(part.tag));
    holder_[node] = add(type, node == 0 ? none : holder_.at(part.parent));
    if (part.tag == Tag::list_item) holder_[node] = add("/LBody", holder_[node]);
}

/// Elements of a kind follow each other in the file: what is alike is packed to little.
void PageTree::number() {
    by_kind_.resize(elements_.size());
    std::iota(by_kind_.begin(), by_kind_.end(), std::size_t{0});
    // No two kinds begin with the same three characters.
    const auto kind = [&](std::size_t i) { return std::string_view(elements_[i].type).substr(0, 3); };
    std::stable_sort(by_kind_.begin(), by_kind_.end(), [&](std::size_t a, std::size_t b) { return kind(a) < kind(b); });
    for (const std::size_t i : by_kind_) elements_[i].self = file_.reserve();
    for (const Element& element : elements_)
        if (element.above != none) elements_[element.above].kids.push_back(element.self.number);
}

void PageTree::add_marks(const std::vector<std::size_t>& marks) {
    for (const std::size_t node : marks) {
        Element& element = elements_.at(holder_.at(node));
        element.has_marks = true;
        of_marks_.push_back(element.self);
        element.kids.push_back(-static_cast<int>(of_marks_.size()));
    }
}

void PageTree::add_boxes() {
    std::vector<Extent> extents(page_.structure.size(), Extent(page_));
    for (const page::Item& item : page_.items)
        if (const auto node = page::read_with(page_, item))
            std::visit([&](const auto& one) { extents[*node].take(one); }, item);
    for (std::size_t i = 0; i < extents.size(); ++i)
        if (page_.structure[i].tag == Tag::figure && holder_[i] != none)
            elements_[holder_[i]].type += extents[i].attributes();
}

/// The part that a link may stand in is told, and holds more than its own kind of parts.
bool PageTree::holds_links(std::size_t node) const {
    const Tag tag = page_.structure[node].tag;
    return holder_[node] != none && tag != Tag::table && tag != Tag::row && tag != Tag::list;
}

Ref PageTree::standing_for(Ref annotation, const char* type, const std::string& more, Ref parent) {
    return file_.add(fmt::format("<</S/{}/P {}{}/K<</Type/OBJR/Obj {}/Pg {}>>>>", type, named(parent), more,
                                 named(annotation), named(pdf_page_)));
}

std::size_t PageTree::add_link(std::size_t node, Ref annotation) {
    while (node > 0 && !holds_links(node)) node = page_.structure[node].parent;
    Element& part = elements_.at(holder_.at(node));
    const Ref element = standing_for(annotation, "Link", "", part.self);
    part.kids.push_back(element.number);
    return structure_.add_annotation(element);
}

std::size_t PageTree::add_field(std::size_t node, Ref annotation, const std::string& told) {
    const bool in_figure = page_.structure.at(node).tag == Tag::figure;
    const std::size_t above = holder_.at(in_figure ? page_.structure[node].parent : node);
    measure::require(above != none, "a field has a label, or a cell, or a page");
    Element& part = elements_.at(above);
    const Ref element = standing_for(annotation, "Form", "/Alt" + text_string(told), part.self);
    auto at = part.kids.end();
    if (in_figure) {
        Element& figure = elements_.at(holder_.at(node));
        at = std::find(part.kids.begin(), part.kids.end(), figure.self.number) + 1 + figure.fields_behind++;
    }
    part.kids.insert(at, element.number);
    return structure_.add_annotation(element);
}

void PageTree::write(const Element& element) {
    const Ref parent = element.above == none ? structure_.document() : elements_[element.above].self;
    std::string text = "<</S" + element.type + "/P " + named(parent);
    if (element.has_marks) text += "/Pg " + named(pdf_page_);
    if (!element.kids.empty()) {
        const bool several = element.kids.size() > 1;
        text += several ? "/K[" : "/K ";
        for (const int kid : element.kids) text += kid < 0 ? std::to_string(-kid - 1) + ' ' : named(Ref{kid}) + ' ';
        text.pop_back();
        if (several) text += ']';
    }
    file_.put(element.self, text + ">>");
}

void PageTree::write() {
    for (const std::size_t i : by_kind_) write(elements_[i]);
    structure_.add_page(elements_.front().self, of_marks_);
}

}  // namespace kerfpacket::output
