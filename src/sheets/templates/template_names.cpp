#include "sheets/templates/template_names.h"

#include <algorithm>

namespace kerfpacket::sheets {

void TemplateNames::draw() {
    // What stands on the line between two cells belongs to both.
    const Rect cell = cell_.grown(0.01_pt);
    for (const Ordinate& o : drawing_.ordinates)
        if (cell.contains(o.top + shift_)) ordinate(o.label, o.top + shift_);
    for (const Name& n : drawing_.names) name(n);
}

Path TemplateNames::run(const Path& path) const {
    Path longest;
    // What stands on the line between two cells belongs to both.
    for (const Rect& room : {cell_, cell_.grown(0.01_pt)}) {
        for (Path& part : geom::clip(path.moved(shift_), room))
            if (longest.empty() || part.length() > longest.length()) longest = std::move(part);
        if (!longest.empty()) break;
    }
    return longest;
}

bool TemplateNames::along(const Name::Choice& choice, const Path& part) {
    return std::any_of(choice.stands.begin(), choice.stands.end(), [&](const Stand& stand) {
        return labels_.along(Role::text, choice.block, part, stand.side, stand.gap);
    });
}

void TemplateNames::name(const Name& name) {
    Path part;
    for (const Name::Choice& choice : name.choices) {
        part = run(choice.path);
        if (!part.empty() && along(choice, part)) return;
    }
    if (part.empty() || !name.leader_from || part.length() <= *name.leader_from) return;
    const Name::Choice& last = name.choices.back();
    const Rect bounds = part.bounds();
    const bool on_border = !cell_.grown(-1_pt).contains(geom::middle(bounds.low, bounds.high));
    const Length beyond = on_border ? 1.1_pt : Length();
    if (labels_.with_leader(Role::text, last.block, part, last.stands.front().side, beyond)) return;
    if (!name.last_resort) return;
    if (const Path elsewhere = run(name.last_resort->path); !elsewhere.empty()) along(*name.last_resort, elsewhere);
}

bool TemplateNames::ordinate(const Block& block, Point top) {
    const Length half_x = block.width() / 2 + 5_pt;
    const Length half_y = block.height() / 2;
    std::vector<Point> places;
    for (const Length up : {12_pt, 20_pt, 30_pt}) places.push_back({top.x, top.y + up + half_y});
    // On a sheet that is turned the upright leans toward its label.
    for (const Length more : {0_pt, 8_pt, 16_pt}) {
        const Length aside = half_x + more;
        for (const double side : {-1.0, 1.0}) places.push_back({top.x + aside * side, top.y + half_y + 6_pt});
        for (int step = 1; step < 32; ++step)
            for (const double side : {-1.0, 1.0})
                places.push_back({top.x + aside * side, top.y - half_y - 5_pt * step});
    }
    return std::any_of(places.begin(), places.end(), [&](Point p) { return labels_.place(Role::dimension, block, p); });
}

}  // namespace kerfpacket::sheets
