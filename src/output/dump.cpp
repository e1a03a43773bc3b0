#include "output/dump.h"

#include <optional>
#include <span>
#include <variant>

#include <fmt/format.h>

#include "measure/fraction.h"
#include "measure/require.h"

namespace kerfpacket::output {
namespace {

using measure::fixed;
using page::Length;

std::string mm(Length value) { return fixed(value.mm(), 3); }
std::string points(Length value) { return fixed(value.points(), 2) + " pt"; }
std::string at(geom::Point p) { return fmt::format("{},{}", mm(p.x), mm(p.y)); }
const char* ink(page::Ink value) { return value == page::Ink::white ? " white" : ""; }

const char* dash(page::Dash value) {
    switch (value) {
        case page::Dash::solid: return "";
        case page::Dash::dashed: return " dashed";
        case page::Dash::dotted: return " dotted";
        case page::Dash::dash_dot: return " dash-dot";
    }
    throw measure::Bug("a dash without a name");
}

const char* align(page::Align value) {
    switch (value) {
        case page::Align::left: return "left";
        case page::Align::centre: return "centre";
        case page::Align::right: return "right";
    }
    throw measure::Bug("an alignment without a name");
}

/// "path 1,2 3,4 arc 30.000 5,6 closed": where it starts, then each segment's end, an arc's turn in degrees before it.
std::string line(const page::PathItem& item) {
    std::string text = fmt::format("{} path", role_name(item.role));
    if (!item.path.empty()) text += fmt::format(" {}", at(item.path.start()));
    for (const geom::Segment& segment : item.path.segments()) {
        if (!segment.is_line()) text += fmt::format(" arc {}", fixed(segment.turn.degrees(), 3));
        text += fmt::format(" {}", at(segment.to));
    }
    if (item.path.closed()) text += " closed";
    if (item.width > Length{}) text += fmt::format(" stroke {}{}", points(item.width), dash(item.dash));
    if (item.filled) text += " filled";
    return text + ink(item.ink);
}

std::string line(const page::TextItem& item) {
    std::string text = fmt::format("{} text {} {} \"{}\" {} {}", role_name(item.role), at(item.anchor),
                                   align(item.align), item.text, face_name(item.face), points(item.size));
    if (item.angle != geom::Angle{}) text += fmt::format(" turned {}", fixed(item.angle.degrees(), 3));
    return text + fmt::format(" wide {}{}", mm(item.advance), ink(item.ink));
}

std::string line(const page::LinkItem& item) {
    return fmt::format("link {} {} to page {}", at(item.area.low), at(item.area.high), item.page + 1);
}

std::string line(const page::CodeItem& item) {
    return fmt::format("code {} {} \"{}\" {} cells", at(item.area.low), at(item.area.high), item.text, item.side);
}

std::string dump(const page::Document& document, std::span<const page::Folded> folded) {
    std::string text = fmt::format("title {}\nsubject {}\nlanguage {}\ndate {}\n", document.title, document.subject,
                                   document.language, document.date);
    for (const page::OutlineEntry& entry : document.outline)
        text += fmt::format("outline {} page {} {}\n", entry.level, entry.page + 1, entry.title);
    for (std::size_t i = 0; i < document.pages.size(); ++i) {
        std::optional<page::Page> room;
        const page::Page& page = page::opened(document, folded, i, room);
        text += fmt::format("\npage {} {}{}{} {} x {}\n", i + 1, page.sheet, page.piece.empty() ? "" : " ", page.piece,
                            mm(page.width), mm(page.height));
        if (page.correction != page::Correction{})
            text += fmt::format("correction {} {}\n", fixed(page.correction.x, 6), fixed(page.correction.y, 6));
        for (const page::Item& item : page.items)
            text += std::visit([](const auto& one) { return line(one); }, item) + "\n";
    }
    return text;
}

}  // namespace

std::string dump(const page::Document& document) { return dump(document, {}); }
std::string dump(const page::FoldedDocument& document) { return dump(document.document, document.folded); }

}  // namespace kerfpacket::output
