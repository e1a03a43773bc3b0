#pragma once
// The inert display list: what stands where on every page. Sheets fill it, writers read it, nothing computes in it.

#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "geom/path.h"

namespace kerfpacket::page {

using geom::Angle;
using geom::Length;
using geom::Point;
using geom::Rect;

/// A role that a font file plays; fonts/faces.toml says which file.
enum class Face { regular, bold, condensed, condensed_bold };
inline constexpr std::array all_faces{Face::regular, Face::bold, Face::condensed, Face::condensed_bold};

/// What an item is for. Tests and the text dump read it; the page looks the same without it.
enum class Role {
    furniture,  ///< header, footer, rules, headings
    text,       ///< words to read
    box,        ///< tick boxes, blanks to fill in, table lines
    tick,       ///< where a kerf goes
    foot,       ///< the black foot, exactly one kerf wide
    numeral,    ///< a kerf's number
    running,    ///< distance from zero
    tape_mark,  ///< a whole-inch mark or a tape check
    joint,      ///< where strips meet; laps
    limit,      ///< ends of the blank, bend start and end
    centre,     ///< centre line
    outline,    ///< outlines of wood, wall, strips
    dimension,  ///< dimension lines and their figures
    hatch,      ///< wood that goes away, blank tiles
    check_bar,
    registration,
    caution,
};

/// What a part of a page is to one who cannot see it; the names of ISO 32000-1, 14.8.4. Writers of plain pictures pay
/// no heed to it.
enum class Tag {
    section,  ///< the page itself
    title,    ///< its heading, H1
    heading,  ///< a heading on it, H2
    paragraph,
    list,
    list_item,
    table,
    row,
    header_cell,  ///< the head of a column
    row_header,   ///< the cell that names a row
    cell,
    figure,    ///< a drawing with all its lines and words
    artifact,  ///< furniture, which nobody reads
    frame,     ///< the same, and alike on every page of a size
};
inline bool is_artifact(Tag tag) { return tag == Tag::artifact || tag == Tag::frame; }

/// A part of a page inside another. The order of the parts is the order to read them in.
struct Node {
    Tag tag = Tag::section;
    std::size_t parent = 0;   ///< index into Page::structure, before this one
    std::string alternative;  ///< what a figure shows, in words
};

enum class Ink { black, white };
enum class Dash { solid, dashed, dotted, dash_dot };

/// A line drawn along a path, or an area filled, or both.
struct PathItem {
    Role role = Role::furniture;
    geom::Path path;
    Length width;  ///< stroke width; 0 means no stroke
    Dash dash = Dash::solid;
    bool filled = false;  ///< filled inside (even for an open path: closed by a straight line)
    Ink ink = Ink::black;
    std::size_t node = 0;  ///< index into Page::structure, here as in every item
    bool operator==(const PathItem&) const = default;
};

enum class Align { left, centre, right };

/// One line of text. The anchor is on the baseline: its left end, middle or right end.
struct TextItem {
    Role role = Role::text;
    std::string text;  ///< UTF-8
    Face face = Face::regular;
    Length size;  ///< type size (em)
    Point anchor;
    Align align = Align::left;
    Angle angle;     ///< turned about the anchor
    Length advance;  ///< measured width of the text, for writers and tests
    Ink ink = Ink::black;
    std::size_t node = 0;
    bool operator==(const TextItem&) const = default;
};

/// An area that leads to another page of the document.
struct LinkItem {
    Rect area;
    std::size_t page = 0;  ///< index into Document::pages
    std::size_t node = 0;
    bool operator==(const LinkItem&) const = default;
};

/// A square code for machines (ISO/IEC 18004). Four cells around it stay white; who places it sees to that.
struct CodeItem {
    Rect area;
    std::string text;        ///< what it says
    std::vector<bool> dark;  ///< its cells, row by row from the top, from the left
    std::size_t side = 0;    ///< cells in a row
    std::size_t node = 0;
    bool operator==(const CodeItem&) const = default;
};

using Item = std::variant<PathItem, TextItem, LinkItem, CodeItem>;

/// How much larger than life a page is written, about its middle, so that a printer that errs prints it true.
struct Correction {
    double x = 1;
    double y = 1;
    bool operator==(const Correction&) const = default;
};

struct Page {
    std::string sheet;  ///< which kind of sheet, a word of ours: "cover", "strips", ...
    std::string piece;  ///< id of the piece, empty for sheets about the whole job
    Length width;
    Length height;
    std::vector<Item> items;
    Correction correction{};
    std::size_t number = 0;               ///< in the whole packet, from 1, also where only a part of it is printed
    std::string language{};               ///< BCP 47; empty where it is the document's
    std::vector<Node> structure{Node{}};  ///< its parts; the first is the page itself
    std::size_t open = 0;                 ///< the part that what is drawn next belongs to
};

/// One entry of the outline (bookmarks).
struct OutlineEntry {
    std::string title;
    std::size_t page = 0;
    int level = 0;
};

struct Document {
    std::string title;
    std::string subject;
    std::string language;  ///< BCP 47, "en-US"
    std::string date;      ///< the job's date, YYYY-MM-DD; writers never read a clock
    std::vector<Page> pages;
    std::vector<OutlineEntry> outline;
};

/// The part that an item is read with: the figure around it, else for words the part they stand in. Nothing for
/// artifacts, among them all lines, areas, links and codes outside figures.
std::optional<std::size_t> read_with(const Page& page, const Item& item);

/// True of what is likely to stand on other pages too, of codes in part: the frame, check bars, square codes.
bool in_frame(const Page& page, const Item& item);

/// Role as the word the text dump prints.
const char* role_name(Role role);
const char* face_name(Face face);

}  // namespace kerfpacket::page
