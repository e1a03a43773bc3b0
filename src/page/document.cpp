#include "page/document.h"

#include "measure/require.h"

namespace kerfpacket::page {

std::optional<std::size_t> read_with(const Page& page, const Item& item) {
    const auto* text = std::get_if<TextItem>(&item);
    const std::size_t own = std::visit([](const auto& one) { return one.node; }, item);
    for (std::size_t node = own; node != 0; node = page.structure.at(node).parent) {
        const Tag tag = page.structure.at(node).tag;
        if (is_artifact(tag)) return std::nullopt;
        if (tag == Tag::figure) return node;
    }
    return text != nullptr ? std::optional(own) : std::nullopt;
}

bool in_frame(const Page& page, const Item& item) {
    if (page.structure.at(std::visit([](const auto& one) { return one.node; }, item)).tag == Tag::frame) return true;
    if (const auto* path = std::get_if<PathItem>(&item)) return path->role == Role::check_bar;
    if (const auto* text = std::get_if<TextItem>(&item)) return text->role == Role::check_bar;
    return std::holds_alternative<CodeItem>(item);
}

const char* role_name(Role role) {
    switch (role) {
        case Role::furniture: return "furniture";
        case Role::text: return "text";
        case Role::box: return "box";
        case Role::tick: return "tick";
        case Role::foot: return "foot";
        case Role::numeral: return "numeral";
        case Role::running: return "running";
        case Role::tape_mark: return "tape-mark";
        case Role::joint: return "joint";
        case Role::limit: return "limit";
        case Role::centre: return "centre";
        case Role::outline: return "outline";
        case Role::dimension: return "dimension";
        case Role::hatch: return "hatch";
        case Role::check_bar: return "check-bar";
        case Role::registration: return "registration";
        case Role::caution: return "caution";
    }
    throw measure::Bug("a role without a name");
}

const char* face_name(Face face) {
    switch (face) {
        case Face::regular: return "regular";
        case Face::bold: return "bold";
        case Face::condensed: return "condensed";
        case Face::condensed_bold: return "condensed-bold";
    }
    throw measure::Bug("a face without a name");
}

}  // namespace kerfpacket::page
