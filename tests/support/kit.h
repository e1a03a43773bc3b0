#pragma once
// The packet's own faces, words and style, and what tests of drawn pages ask of a page.

#include <array>
#include <filesystem>
#include <map>
#include <stdexcept>
#include <string>
#include <vector>

#include "jobs.h"
#include "plan/plan.h"
#include "sheets/layout/kit.h"

namespace kerfpacket::tests {

/// Of one language, or of two: the cards are in both then.
inline const sheets::Kit& kit(const std::string& language = "en") {
    static const fonts::Faces faces(std::filesystem::path(KERFPACKET_BUILD_DIR) / "fonts");
    static const std::filesystem::path templates = std::filesystem::path(KERFPACKET_SOURCE_DIR) / "templates";
    static const fonts::Words english(templates, "en");
    static const fonts::Words spanish(templates, "es");
    static const fonts::Style style = fonts::read_style(templates);
    static const std::map<std::string, sheets::Kit> all{{"en", {faces, english, style}},
                                                        {"es", {faces, spanish, style}},
                                                        {"en, es", {faces, english, style, &spanish}},
                                                        {"es, en", {faces, spanish, style, &english}}};
    return all.at(language);
}

inline plan::Plan planned(job::Job job, const char* media = "na_letter_8.5x11in") {
    job.printer.media = job::find_media(media).value();
    auto plan = plan::make_plan(job);
    if (!plan) throw std::runtime_error(plan.error().front().message);
    return *plan;
}

inline std::vector<page::TextItem> texts(const page::Page& page) {
    std::vector<page::TextItem> found;
    for (const page::Item& item : page.items)
        if (const auto* text = std::get_if<page::TextItem>(&item)) found.push_back(*text);
    return found;
}

inline std::vector<page::PathItem> paths(const page::Page& page, page::Role role) {
    std::vector<page::PathItem> found;
    for (const page::Item& item : page.items)
        if (const auto* path = std::get_if<page::PathItem>(&item); path != nullptr && path->role == role)
            found.push_back(*path);
    return found;
}

/// A point `along` and `up` from where a text starts on its baseline.
inline geom::Point in_text(const page::TextItem& text, measure::Length along, measure::Length up) {
    const geom::Direction d = geom::Direction::at(text.angle);
    const double back = text.align == page::Align::left ? 0 : text.align == page::Align::centre ? 0.5 : 1;
    return text.anchor + d * (along - text.advance * back) + d.left() * up;
}

/// Whether a point lies in the ink of a text: between its ends, from the baseline to the height of a capital.
inline bool covers(const page::TextItem& text, geom::Point p) {
    const geom::Point from = p - in_text(text, {}, {});
    const geom::Direction d = geom::Direction::at(text.angle);
    const measure::Length along = from.x * d.x + from.y * d.y;
    const measure::Length up = from.y * d.x - from.x * d.y;
    return along >= 0_mm && along <= text.advance && up >= 0_mm && up <= text.size * 0.73;
}

/// Points all over a text's ink, close enough together that nothing of a letter's size slips between.
inline std::vector<geom::Point> grid(const page::TextItem& text) {
    std::vector<geom::Point> points;
    for (measure::Length along; along <= text.advance; along += 2_pt)
        for (const double up : {0.0, 0.25, 0.5, 0.73}) points.push_back(in_text(text, along, text.size * up));
    return points;
}

/// Whether a line runs through a text's ink.
inline bool crosses(const geom::Path& path, const page::TextItem& text) {
    const geom::Rect line = path.bounds();
    const geom::Point middle = in_text(text, text.advance / 2, text.size * 0.35);
    if (!line.grown(text.advance / 2 + text.size).contains(middle)) return false;
    for (measure::Length at; at < path.length(); at += 1_pt)
        if (covers(text, path.at(at).point)) return true;
    return false;
}

}  // namespace kerfpacket::tests
