#pragma once
// The logical structure of the pages (ISO 32000-1, 14.7 and 14.8).

#include <cstddef>
#include <string>
#include <vector>

#include "output/pdf_file.h"
#include "page/document.h"

namespace kerfpacket::output {

/// The standard structure type that stands for a part of a page: "H1", "TH".
const char* structure_type(page::Tag tag);

/// The tree of a whole document, to which its pages come one by one.
class Structure {
public:
    Structure(PdfFile& file, std::size_t pages);

    Ref document() const { return whole_; }
    /// What a header cell is the head of (ISO 32000-1, table 349).
    Ref head_of(page::Tag cell) const { return cell == page::Tag::row_header ? row_ : column_; }
    /// The next page: its section, and of each of its marked runs the element it belongs to.
    void add_page(Ref section, const std::vector<Ref>& elements);
    /// An annotation's element. Returns the key by which the annotation tells it (StructParent).
    std::size_t add_annotation(Ref element);
    /// Writes what is above the pages; returns the root.
    Ref write();

private:
    PdfFile& file_;
    std::size_t pages_;
    Ref root_, whole_, column_, row_;
    std::vector<Ref> sections_;
    std::vector<Ref> of_pages_;        ///< the elements of each page, an array
    std::vector<Ref> of_annotations_;  ///< their keys come after those of all pages
};

/// One page's part of the tree: its parts in the order to read them in, until it is written.
class PageTree {
public:
    /// `marks` are the parts that the marked runs belong to, by their numbers.
    PageTree(PdfFile& file, Structure& structure, const page::Page& page, const std::vector<std::size_t>& marks,
             Ref pdf_page);

    /// Gives an annotation an element in the part where its link stands; returns its StructParent.
    std::size_t add_link(std::size_t node, Ref annotation);
    /// The same of a field, which stands behind a figure, whose parts nobody reads; `told` is what it asks for.
    std::size_t add_field(std::size_t node, Ref annotation, const std::string& told);
    void write();

private:
    static constexpr std::size_t none = static_cast<std::size_t>(-1);
    struct Element {
        std::size_t above = none;
        std::string type{};  ///< "/TD", and what else its dictionary says
        Ref self{};
        std::vector<int> kids{};  ///< numbers of elements; marked runs are told as -1, -2...
        bool has_marks = false;
        int fields_behind = 0;
    };

    /// Adds an element at the end of the one above it; returns its place.
    std::size_t add(std::string type, std::size_t above);
    void add_part(std::size_t node);
    void number();
    void add_marks(const std::vector<std::size_t>& marks);
    void add_boxes();
    bool holds_links(std::size_t node) const;
    /// An element that stands for an annotation, in no other yet.
    Ref standing_for(Ref annotation, const char* type, const std::string& more, Ref parent);
    void write(const Element& element);

    PdfFile& file_;
    Structure& structure_;
    const page::Page& page_;
    Ref pdf_page_;
    std::vector<Element> elements_;     ///< in the order to read them in
    std::vector<std::size_t> by_kind_;  ///< the same in the order of their numbers
    std::vector<std::size_t>
        holder_;  ///< of each part: the element that holds what is in it; none where it is not told
    std::vector<Ref> of_marks_;
};

}  // namespace kerfpacket::output
