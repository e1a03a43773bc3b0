// Of a moulded board: thickness and web at heights across it, and what its thickest and thinnest places bear.

#include <algorithm>
#include <array>
#include <cmath>

#include "sheets/cards/setup_drawing.h"
#include "sheets/cards/setup_section.h"
#include "sheets/layout/furniture.h"

namespace kerfpacket::sheets {
namespace {

using Profile = std::vector<bend::ProfilePoint>;

constexpr std::size_t most_columns = 8;

/// Whether the board is thickest or thinnest there.
bool is_extreme(const bend::ProfilePoint& point, const plan::Cutting& cut) {
    return point.thickness == cut.thickness || point.thickness == cut.thinnest();
}

/// Thickness between two points of a profile.
Length thickness_at(const bend::ProfilePoint& a, const bend::ProfilePoint& b, Length height) {
    const Length wide = b.height - a.height;
    if (wide <= 0_mm) return b.thickness;
    return a.thickness + (b.thickness - a.thickness) * ((height - a.height) / wide);
}

/// The profile's own heights; where they are few, more between those where it slopes; where they are many, the
/// thickest, the thinnest and an even choice of the others. What is worked out is rounded to `fine`.
Profile columns_of(const plan::Cutting& cut, Length fine) {
    Profile points = cut.profile;
    while (points.size() < most_columns) {
        std::size_t widest = 0;
        for (std::size_t i = 1; i < points.size(); ++i) {
            const bool slopes = points[i].thickness != points[i - 1].thickness;
            const auto wide = [&](std::size_t at) { return points[at].height - points[at - 1].height; };
            if (slopes && wide(i) > 0.25_in && (widest == 0 || wide(i) > wide(widest))) widest = i;
        }
        if (widest == 0) break;
        const Length height = (points[widest - 1].height + points[widest].height) / 2;
        points.insert(points.begin() + static_cast<std::ptrdiff_t>(widest),
                      {height, fine * std::round(thickness_at(points[widest - 1], points[widest], height) / fine)});
    }
    for (std::size_t i = points.size() - 2; points.size() > most_columns && i > 0; --i)
        if (!is_extreme(points[i], cut)) points.erase(points.begin() + static_cast<std::ptrdiff_t>(i));
    while (points.size() > most_columns) points.erase(points.begin() + static_cast<std::ptrdiff_t>(points.size() / 2));
    return points;
}

}  // namespace

FigureTable across_table(const plan::Piece& piece, const Kit& kit, const Tape& tape) {
    const fonts::Words::Values unit{{"unit", tape.unit_name()}};
    FigureTable table;
    table.heading = kit.words("setup.across");
    table.aside = kit.words("setup.across_aside");
    table.shares = {0.2};
    table.heads = {kit.words("setup.across_height", unit)};
    table.rows = {{{kit.words("setup.across_thickness", unit), false}},
                  {{kit.words("setup.across_web", unit), false}},
                  {{kit.words("setup.across_measured"), false}}};
    const Length fine = tape.unit() == Unit::inch ? Length::inches(1.0 / 64) : Length::mm(0.1);
    const Profile columns = columns_of(piece.cut, fine);
    for (const bend::ProfilePoint& point : columns) {
        table.shares.push_back(0.8 / static_cast<double>(columns.size()));
        table.heads.push_back(tape.exact_plain(point.height));
        table.rows[0].emplace_back(tape.exact_plain(point.thickness), false);
        table.rows[1].emplace_back(tape.exact_plain(point.thickness - piece.cut.depth), is_extreme(point, piece.cut));
        table.rows[2].emplace_back("______", false);
    }
    return table;
}

bool thinnest_governs(const plan::Piece& piece) { return piece.moulded_use[1] > piece.moulded_use[0]; }

Length bears_height(const plan::Piece& piece, const fonts::Style& style) {
    return std::max(piece.cut.thickness + 10_pt, style.text * 2.9);
}

void draw_bears(Pen& pen, const plan::Piece& piece, const Tape& tape, Length top) {
    const auto& style = pen.kit().style;
    const auto& words = pen.kit().words;
    const Scope figure = pen.figure(words("figure.bears"));
    const Length half = (pen.page_width() - side_margin * 2) / 2;
    const std::array thickness{piece.cut.thickness, piece.cut.thinnest()};
    for (std::size_t i = 0; i < thickness.size(); ++i) {
        const Length left = side_margin + half * static_cast<double>(i);
        const Length right = left + std::min(2_in, half - 118_pt);
        draw_grooves(pen, piece, {{left, top - 8_pt - thickness.at(i)}, {right, top - 8_pt}});
        const Length x = right + 10_pt;
        const Length room = left + half - 8_pt - x;
        const std::string web = words(i == 0 ? "setup.bears_thickest" : "setup.bears_thinnest",
                                      {{"web", tape.exact(thickness.at(i) - piece.cut.depth)}});
        const bool judged = (i == 1) == thinnest_governs(piece);
        const std::string use =
            words(judged ? "setup.bears_judged" : "setup.bears_u", {{"u", tape.number(piece.moulded_use.at(i), 2)}});
        pen.text(Role::text, {x, top - 8_pt - style.text}, web, pen.fitting(web, {Face::bold, style.text}, room));
        pen.text(Role::text, {x, top - 8_pt - style.text * 2.3}, use,
                 pen.fitting(use, {Face::regular, style.small}, room));
    }
}

}  // namespace kerfpacket::sheets
