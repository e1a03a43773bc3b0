#pragma once
// Strip pages read as a carpenter reads them: how a strip is set on the blank, and where its ticks then stand.

#include <gtest/gtest.h>

#include <algorithm>
#include <regex>
#include <string>
#include <vector>

#include "sheets/layout/furniture.h"
#include "sheets/strips/strip_ends.h"
#include "sheets/strips/strips.h"
#include "support/boxes.h"

namespace kerfpacket::tests {

using geom::Point;
using geom::Rect;
using measure::Length;
using page::Role;

/// All strip pages of a plan's piece, with what stands on every page.
inline std::vector<page::Page> strip_pages(const plan::Plan& plan, const plan::Piece& piece) {
    sheets::Drafts drafts;
    sheets::add_strips(drafts, plan, piece, kit());
    std::vector<page::Page> pages;
    for (std::size_t i = 0; i < drafts.size(); ++i) {
        sheets::add_furniture(drafts[i], plan, kit(), i + 1, drafts.size());
        pages.push_back(std::move(drafts[i].page));
    }
    return pages;
}

/// Outlines of the strips, in the order in which they were drawn: closed, and wider than a kerf.
inline std::vector<Rect> strip_outlines(const page::Page& page) {
    std::vector<Rect> found;
    for (const page::PathItem& item : paths(page, Role::outline))
        if (item.path.closed() && item.width > 0.6_pt) found.push_back(item.path.bounds());
    return found;
}

/// "tape from zero: set the mark at 19 in" and the like, one a strip.
inline std::vector<std::string> settings_of(const page::Page& page) {
    std::vector<std::string> found;
    for (const page::TextItem& text : texts(page))
        if (text.text.find("set the mark at") != std::string::npos ||
            text.text.find("zero line flush") != std::string::npos)
            found.push_back(text.text);
    return found;
}

/// Where a strip's zero lies when it is set as its caption says: at its end, or at a tape mark of it. Of marks that it
/// may mean the one with which `tick` comes where it belongs is meant; the others must then agree with it.
inline Length zero_of(const page::Page& page, const Rect& strip, const std::string& how, const plan::Piece& piece,
                      Point tick, Length mark) {
    const bool right = piece.blank().zero == job::End::left;
    const double way = right ? 1 : -1;
    static const std::regex set("set the mark at ([0-9]+) (in|mm)");
    std::smatch match;
    if (!std::regex_search(how, match, set)) return right ? strip.low.x : strip.high.x;
    const Length at = match[2] == "in" ? Length::inches(std::stod(match[1])) : Length::mm(std::stod(match[1]));
    Length best = 1e9_mm;
    for (const page::PathItem& pointer : paths(page, Role::tape_mark)) {
        if (pointer.filled || !strip.grown(0.1_mm).contains(pointer.path.start())) continue;
        const Length zero = pointer.path.start().x - at * way;
        if (measure::abs(zero + mark * way - tick.x) < measure::abs(best + mark * way - tick.x)) best = zero;
    }
    return best;
}

/// Every kerf of the piece has one tick, where the strips, set as their captions say, put it: its distance from zero,
/// within 1e-9 mm; and one foot, a kerf wide, with its middle on the kerf.
inline void expect_marks_from_zero(const std::vector<page::Page>& pages, const plan::Piece& piece) {
    const double way = piece.blank().zero == job::End::left ? 1 : -1;
    std::size_t next = 0;
    for (const page::Page& page : pages) {
        const std::vector<Rect> strips = strip_outlines(page);
        const std::vector<std::string> settings = settings_of(page);
        ASSERT_EQ(strips.size(), settings.size());
        const std::vector<page::PathItem> ticks = paths(page, Role::tick);
        const std::vector<page::PathItem> feet = paths(page, Role::foot);
        ASSERT_EQ(ticks.size(), feet.size());
        std::size_t i = 0;
        for (std::size_t s = 0; s < strips.size(); ++s) {
            if (i == ticks.size()) break;  // a strip of straight wood beyond the last kerf
            const Length zero =
                zero_of(page, strips[s], settings[s], piece, ticks[i].path.start(), piece.blank().kerfs.at(next).mark);
            for (; i < ticks.size() && strips[s].contains(ticks[i].path.start()); ++i, ++next) {
                const plan::Kerf& kerf = piece.blank().kerfs.at(next);
                const Rect foot = feet[i].path.bounds();
                ASSERT_NEAR((ticks[i].path.start().x - zero).mm() * way, kerf.mark.mm(), 1e-9) << "kerf " << kerf.n;
                ASSERT_NEAR(((foot.low.x + foot.high.x) / 2 - zero).mm() * way, kerf.at.mm(), 1e-9);
                ASSERT_NEAR(foot.width().mm(), piece.cut.kerf.mm(), 1e-9);
            }
        }
        ASSERT_EQ(i, ticks.size()) << "a tick off its strip";
    }
    EXPECT_EQ(next, piece.blank().kerfs.size());
}

/// Nothing of a joint or a lap lies on a tick, a foot or a numeral, and neither does the next strip on its lap.
inline void expect_joints_hide_nothing(const page::Page& page) {
    std::vector<Rect> marks;
    for (const Role role : {Role::tick, Role::foot})
        for (const page::PathItem& item : paths(page, role)) marks.push_back(item.path.bounds().grown(0.05_pt));
    for (const page::TextItem& text : texts(page))
        if (text.role == Role::numeral) marks.push_back(box_of(text));
    std::vector<Rect> joints;
    for (const page::PathItem& item : paths(page, Role::joint)) joints.push_back(item.path.bounds());
    for (const page::TextItem& text : texts(page))
        if (text.role == Role::joint) joints.push_back(box_of(text));
    for (const Rect& joint : joints)
        for (const Rect& mark : marks)
            EXPECT_FALSE(overlap(joint, mark))
                << "a joint hides a mark at " << mark.low.x.points() << "," << mark.low.y.points() << " pt";
}

inline void expect_numerals_of_13_pt(const page::Page& page) {
    for (const page::TextItem& text : texts(page)) {
        if (text.role != Role::numeral) continue;
        EXPECT_GE(text.size.points(), 13) << placed(text);
    }
}

/// No line runs through a numeral.
inline void expect_numerals_clear(const page::Page& page) {
    for (const page::TextItem& text : texts(page)) {
        if (text.role != Role::numeral) continue;
        const Rect box = box_of(text);
        for (const page::Item& item : page.items) {
            const auto* path = std::get_if<page::PathItem>(&item);
            if (path == nullptr || !overlap(path->path.bounds().grown(path->width / 2 + 0.06_pt), box)) continue;
            EXPECT_TRUE(geom::clip(path->path, box).empty())
                << page::role_name(path->role) << " through " << placed(text);
        }
    }
}

/// Draws every strip of a plan on a page of its own: `ask` is called with the piece, the strip, its lanes, where it
/// lies, and the page.
template <class Ask>
void on_each_strip(const plan::Plan& plan, const std::string& language, Ask ask) {
    using namespace sheets;
    const Kit& words = tests::kit(language);
    const Tape tape(plan.header.units, words.words);
    for (const plan::Piece& piece : plan.pieces) {
        if (piece.blank().kerfs.empty()) continue;
        const bool edge = piece.strip == job::StripOn::edge;
        const Lanes lanes = edge ? edge_lanes(piece) : face_lanes(72_pt);
        const std::vector<Strip> strips = cut_strips(piece, 9_in, tape, words);
        for (const Strip& strip : strips) {
            page::Page page;
            page.width = 2000_pt;
            page.height = 200_pt;
            Pen pen(page, words);
            const StripContext context{.plan = plan,
                                       .piece = piece,
                                       .tape = tape,
                                       .strips = static_cast<int>(strips.size()),
                                       .lap = 54_pt,
                                       .lanes = lanes};
            const Point start{1000_pt, 50_pt};
            draw_strip(pen, context, strip, start);
            ask(piece, strip, lanes, StripFrame{start, strip, piece}, page);
        }
    }
}

}  // namespace kerfpacket::tests
