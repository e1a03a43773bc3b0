#include "sheets/templates/form_sheet.h"

#include <algorithm>
#include <set>

#include <gtest/gtest.h>

#include "../../support/boxes.h"
#include "../../support/shapes.h"
#include "sheets/layout/furniture.h"
#include "sheets/templates/form_drawing.h"

namespace kerfpacket::sheets {
namespace {

using namespace tests;

/// A liner with its finish measured, so that the rib is the measured arc itself.
plan::Plan liner(Length span, Length rise, measure::Unit units = measure::Unit::inch) {
    job::Opening opening = lantern_court();
    opening.span.value = span;
    opening.rise.value = rise;
    opening.measured_to = job::Surface::finish;
    opening.form = job::Form{};
    job::Job job = job_of(opening);
    job.header.units = units;
    return planned(job);
}

plan::Plan wall(job::Side side, std::optional<Length> step = std::nullopt) {
    job::Wall wall = harbor_stair();
    wall.side.value = side;
    wall.form = job::Form{};
    if (step) wall.form->step = at_line(*step, 41);
    return planned(job_of(wall));
}

Drafts drawn(const plan::Plan& plan) {
    Drafts drafts;
    add_form(drafts, plan, plan.pieces.front(), kit());
    return drafts;
}

std::multiset<std::string> words_on(const page::Page& page) {
    std::multiset<std::string> all;
    for (const page::TextItem& text : texts(page)) all.insert(text.text);
    return all;
}

std::string all_text(const page::Page& page) {
    std::string all;
    for (const page::TextItem& text : texts(page)) all += text.text + " ";
    return all;
}

TEST(FormSheet, a_piece_without_form_has_none) { EXPECT_TRUE(drawn(planned(job_of(harbor_stair()))).empty()); }

TEST(FormSheet, table_of_a_circle_of_thirty) {
    // Chord 48, rise 12: radius 30, centre 18 below the chord (triangle 18, 24, 30). At station 6 the height is
    // sqrt(30^2 - 18^2) - 18 = 6; at 24 the rise; at 12 sqrt(900 - 144) - 18 = 9.4955.
    const Drafts drafts = drawn(liner(48_in, 12_in));
    const auto all = words_on(drafts.front().page);
    EXPECT_TRUE(all.count("30 in")) << "radius";
    EXPECT_TRUE(all.count("24 in")) << "centre at station";
    EXPECT_TRUE(all.count("18 in below"));
    EXPECT_TRUE(all.count("0 in to 48 in"));
    EXPECT_GE(all.count("6.000"), 2U) << "stations 6 and 42";
    EXPECT_TRUE(all.count("12.000"));
    EXPECT_EQ(all.count("9-1/2"), 2U);
    EXPECT_EQ(all.count("9.495"), 2U);
    EXPECT_EQ(all.count("241.2"), 2U);
    EXPECT_TRUE(all.count("rise 12 in"));
    EXPECT_TRUE(all.count("chord 48 in"));
}

TEST(FormSheet, table_in_millimetres) {
    // Chord 960 mm, rise 240: radius 600, centre 360 below; 150 from the left end sqrt(600^2 - 330^2) - 360 = 141.1.
    const auto all = words_on(drawn(liner(960_mm, 240_mm, measure::Unit::millimetre)).front().page);
    EXPECT_TRUE(all.count("600 mm"));
    EXPECT_TRUE(all.count("360 mm below"));
    EXPECT_TRUE(all.count("141"));
    EXPECT_TRUE(all.count("141.1"));
    EXPECT_TRUE(all.count("5.555"));
}

TEST(FormSheet, says_which_face_lies_on_the_form) {
    EXPECT_NE(all_text(drawn(wall(job::Side::concave)).front().page).find("seen face"), std::string::npos);
    const std::string convex = all_text(drawn(wall(job::Side::convex)).front().page);
    EXPECT_NE(convex.find("kerf face"), std::string::npos);
    EXPECT_EQ(convex.find("seen face"), std::string::npos);
}

TEST(FormSheet, says_what_the_kerfs_do_where_a_board_bends_both_ways_and_where_zero_lies) {
    for (const job::Side side : {job::Side::concave, job::Side::convex})
        for (const job::End zero : {job::End::left, job::End::right}) {
            // A bulge into the wall at the left, a smaller one into the room at the right.
            job::Wall wall = swinging();
            wall.ordinates = ordinates_of(12_in, {0, 4, 6.5, 7, 5.5, 2.5, -0.5, -2.5, -3, -2, 0});
            wall.side.value = side;
            wall.board.zero = zero;
            wall.form = job::Form{};
            const plan::Plan plan = planned(job_of(wall));
            const Drafts drafts = drawn(plan);
            const std::string all = all_text(drafts.front().page);
            const bool opens_left = side == job::Side::concave;
            const bool opens_at_zero = opens_left == (zero == job::End::left);
            EXPECT_NE(all.find(opens_at_zero ? "Kerfs OPEN, then CLOSE" : "Kerfs CLOSE, then OPEN"), std::string::npos)
                << all;
            EXPECT_NE(all.find(zero == job::End::left ? "at the LEFT end" : "at the RIGHT end"), std::string::npos);
            EXPECT_EQ(all.find("kerf face"), std::string::npos);
            // On the drawing the left run has its word left of the other's.
            Length open, close;
            for (const page::TextItem& text : texts(drafts.front().page)) {
                if (text.text == "kerfs OPEN") open = text.anchor.x;
                if (text.text == "kerfs CLOSE") close = text.anchor.x;
            }
            ASSERT_GT(open, 0_pt);
            ASSERT_GT(close, 0_pt);
            EXPECT_EQ(open < close, opens_left);
            EXPECT_EQ(plan.pieces.front().form->curve.bounds().high.y > -plan.pieces.front().form->curve.bounds().low.y,
                      opens_left);
        }
}

TEST(FormSheet, a_radius_beyond_a_trammel_is_laid_out_by_ordinates) {
    const plan::Plan plan = wall(job::Side::concave);
    ASSERT_TRUE(plan.pieces.front().form->trammels.empty());
    EXPECT_NE(all_text(drawn(plan).front().page).find("longer than a trammel"), std::string::npos);
}

TEST(FormSheet, a_long_table_runs_on_over_pages_with_every_station_once) {
    const plan::Plan plan = wall(job::Side::concave, 1_in);
    Drafts drafts = drawn(plan);
    const std::size_t pages = static_cast<std::size_t>(
        std::count_if(drafts.begin(), drafts.end(), [](const Draft& d) { return d.title == "Bending form"; }));
    ASSERT_GE(pages, 2U);
    std::multiset<std::string> all;
    for (std::size_t i = 0; i < pages; ++i) {
        add_furniture(drafts[i], plan, kit(), i + 1, drafts.size());
        const auto faults = text_faults(drafts[i].page);
        EXPECT_TRUE(faults.empty()) << faults.front();
        for (const page::TextItem& text : texts(drafts[i].page))
            if (text.role == page::Role::dimension && text.align == page::Align::right &&
                text.face == page::Face::regular && text.size == kit().style.text)
                all.insert(text.text);
    }
    const Tape tape(measure::Unit::inch);
    ASSERT_EQ(all.size(), plan.pieces.front().form->ordinates.size());
    for (const Point p : plan.pieces.front().form->ordinates) EXPECT_EQ(all.count(tape.plain(p.x)), 1U);
}

TEST(FormSheet, the_rib_lies_at_full_size) {
    const plan::Plan plan = liner(48_in, 12_in);
    std::size_t arcs = 0;
    for (const Draft& draft : drawn(plan)) {
        if (draft.scale != Scale::full) continue;
        for (const page::PathItem& item : paths(draft.page, page::Role::outline)) {
            EXPECT_NEAR(item.path.segments().front().radius().inches(), 30, 1e-9);
            ++arcs;
        }
    }
    EXPECT_GE(arcs, 3U);
}

TEST(FormSheet, ordinates_stand_on_the_chord_and_reach_the_edge) {
    const plan::Plan plan = liner(48_in, 12_in);
    page::Page scratch;
    const TemplateDrawing drawing = form_drawing(Pen(scratch, kit()), plan.pieces.front(), Tape(measure::Unit::inch));
    ASSERT_EQ(drawing.ordinates.size(), plan.pieces.front().form->ordinates.size());
    for (const Ordinate& o : drawing.ordinates) {
        // Radius 30 about (24, -18).
        const Length above = geom::distance(o.top, {24_in, -18_in});
        EXPECT_NEAR(above.inches(), 30, 1e-9);
        for (const Path& upright : o.pieces) {
            EXPECT_NEAR(upright.start().y.mm(), 0, 1e-9);
            EXPECT_GT(upright.end().y, o.top.y);
        }
    }
}

TEST(FormSheet, an_arc_beyond_a_trammel_has_its_row_beside_those_that_are_struck) {
    // Three centres over 223-5/8 in, 62-1/4 high: the crown's arc is flatter than 120 in by far.
    job::Opening opening = lantern_court();
    opening.shape.value = job::Shape::three_centred;
    opening.span.value = 223.625_in;
    opening.rise.value = 62.25_in;
    opening.form = job::Form{};
    const plan::Plan plan = planned(job_of(opening));
    const plan::FormRib& rib = *plan.pieces.front().form;
    ASSERT_EQ(rib.trammels.size(), 2U);
    ASSERT_EQ(rib.beyond_reach.size(), 1U);
    const FigureTable table = form_trammels(rib, kit(), Tape(measure::Unit::inch, kit().words));
    ASSERT_EQ(table.rows.size(), 3U);
    EXPECT_NE(table.rows[1][0].text.find("18"), std::string::npos);
    EXPECT_EQ(table.rows[1][1].text, kit().words("form.trammel_long"));
    // The rows go on where the one before ends: the whole edge is told.
    const auto from = [&](std::size_t i) { return table.rows[i][3].text.substr(0, table.rows[i][3].text.find(" in")); };
    const std::string first = table.rows[0][3].text;
    EXPECT_NE(first.find("to " + from(1)), std::string::npos) << first;
    EXPECT_NE(table.rows[1][3].text.find("to " + from(2)), std::string::npos) << table.rows[1][3].text;
    EXPECT_EQ(table.aside, kit().words("form.trammel_part"));
}

}  // namespace
}  // namespace kerfpacket::sheets
