#include "sheets/templates/casing_sheet.h"

#include <algorithm>
#include <array>
#include <optional>
#include <set>
#include <string>

#include <gtest/gtest.h>

#include "../../support/kit.h"
#include "sheets/templates/casing_drawing.h"
#include "sheets/templates/template_tile.h"
#include "sheets/templates/template_ways.h"

namespace kerfpacket::sheets {
namespace {

using namespace tests;
using page::Role;

/// A low arch, its casing in three segments.
plan::Plan cased(Length span, Length rise, int segments, int quantity = 1) {
    job::Opening opening = lantern_court();
    opening.span.value = span;
    opening.rise.value = rise;
    opening.quantity = quantity;
    opening.casing =
        job::Casing{at_line(3.5_in, 51), at_line(0.1875_in, 52), job::WallSide::room, at_line(segments, 53), {}};
    return planned(job_of(opening));
}

const std::vector<plan::CasingSegment>& segments_of(const plan::Plan& plan) {
    return std::get<plan::ArchLines>(plan.pieces.front().lines).segments;
}

Drafts drawn(const plan::Plan& plan) {
    Drafts drafts;
    add_casing(drafts, plan, plan.pieces.front(), kit());
    return drafts;
}

std::set<std::string> words_on(const page::Page& page) {
    std::set<std::string> all;
    for (const page::TextItem& text : texts(page)) all.insert(text.text);
    return all;
}

TEST(CasingSheet, an_opening_without_casing_has_none) { EXPECT_TRUE(drawn(planned(job_of(lantern_court()))).empty()); }

TEST(CasingSheet, a_segment_that_fits_a_page_is_one_page_without_tiles) {
    const plan::Plan plan = cased(30_in, 6_in, 5);
    const Drafts drafts = drawn(plan);
    ASSERT_EQ(drafts.size(), 2U);
    EXPECT_FALSE(drafts.front().outline.empty());
    EXPECT_EQ(drafts[0].title, "Casing segment 1, 5 of 5");
    EXPECT_EQ(drafts[1].title, "Casing segment 2, 3, 4 of 5");
    for (const Draft& draft : drafts) {
        EXPECT_EQ(draft.scale, Scale::full);
        EXPECT_EQ(words_on(draft.page).count("A1"), 0U) << "the only tile needs no name";
    }
}

TEST(CasingSheet, many_alike_segments_are_named_as_a_range) {
    const Drafts drafts = drawn(cased(60_in, 12_in, 12));
    ASSERT_GE(drafts.size(), 2U);
    EXPECT_EQ(drafts.back().title.rfind("Casing segment 2-11 of 12", 0), 0U) << drafts.back().title;
}

std::string all_words(const page::Page& page) {
    std::string all;
    for (const page::TextItem& text : texts(page)) all += text.text + " ";
    return all;
}

TEST(CasingSheet, a_template_that_serves_several_segments_says_how) {
    const Drafts drafts = drawn(cased(30_in, 6_in, 5));
    const std::string ends = all_words(drafts.at(0).page), middles = all_words(drafts.at(1).page);
    EXPECT_NE(ends.find("and segment 5 of 5, TURNED OVER"), std::string::npos) << ends;
    EXPECT_NE(middles.find("and segment 3 of 5 "), std::string::npos) << middles;
    EXPECT_NE(middles.find("and segment 4 of 5 "), std::string::npos) << middles;
    // Joint 1 is at the right of segment 1, joint 4 at the left of 5: the same end, turned over.
    EXPECT_NE(ends.find("1|2, 4|5"), std::string::npos) << ends;
    EXPECT_NE(middles.find("1|2, 2|3, 3|4"), std::string::npos) << middles;
    EXPECT_NE(middles.find("2|3, 3|4, 4|5"), std::string::npos) << middles;
}

/// Half an ellipse on a splayed jamb, cased on both sides in segments so small that their names find no room in them.
plan::Plan many_small_ones(job::WallSide side) {
    job::Opening opening = quarry_road();
    opening.legs = {{at_line(72_in, 25), at_line(72_in, 25)}};
    opening.splay = job::Splay{at_line(measure::Angle::degrees(12), 41), job::Edge::narrow, job::Toward::room, {40, 1}};
    opening.casing = job::Casing{at_line(3_in, 51), at_line(0.1875_in, 52), side, at_line(20, 53), {}};
    return planned(job_of(opening));
}

TEST(CasingSheet, says_of_every_template_its_side_and_what_is_turned_over) {
    const plan::Plan plan = many_small_ones(job::WallSide::both);
    for (const auto& [language, room, far, turned] :
         {std::array<std::string, 4>{"en", "ROOM SIDE", "FAR SIDE", "TURNED OVER: "},
          {"es", "LADO DEL CUARTO", "LADO OPUESTO", "VOLTEADA: "}}) {
        Drafts drafts;
        add_casing(drafts, plan, plan.pieces.front(), kit(language));
        const auto groups = alike_segments(segments_of(plan));
        ASSERT_EQ(drafts.size(), groups.size()) << "a page each, or this reads the wrong one";
        int over = 0;
        for (std::size_t i = 0; i < groups.size(); ++i) {
            const std::string words = all_words(drafts[i].page);
            const bool at_room = groups[i].drawn->side == job::Toward::room;
            EXPECT_EQ(words.find(room) != std::string::npos, at_room) << words;
            EXPECT_EQ(words.find(far) != std::string::npos, !at_room) << words;
            const std::vector<int> numbers = groups[i].turned();
            EXPECT_EQ(words.find(turned + segment_numbers(numbers)) != std::string::npos, !numbers.empty()) << words;
            over += static_cast<int>(numbers.size());
        }
        EXPECT_EQ(over, 20) << "one of each pair";
    }
    // Where the two sides are alike and one alone is cased, nobody needs to be told which.
    const plan::Plan square = cased(30_in, 6_in, 5);
    EXPECT_EQ(all_words(drawn(square).front().page).find("SIDE"), std::string::npos);
}

TEST(CasingSheet, of_a_square_jamb_one_template_serves_both_sides) {
    job::Opening opening = lantern_court();
    opening.casing = job::Casing{at_line(3.5_in, 51), at_line(0.1875_in, 52), job::WallSide::both, at_line(5, 53), {}};
    const plan::Plan plan = planned(job_of(opening));
    ASSERT_EQ(segments_of(plan).size(), 10U);
    EXPECT_EQ(alike_segments(segments_of(plan)).size(), 2U);
    const Drafts drafts = drawn(plan);
    EXPECT_EQ(drafts.front().title.rfind("Casing segment 1, 5, 6, 10 of 10", 0), 0U) << drafts.front().title;
    const std::string words = all_words(drafts.front().page);
    EXPECT_NE(words.find("and segment 6 of 10, FAR SIDE of the wall"), std::string::npos) << words;
    EXPECT_NE(words.find("TURNED OVER: 5, 10."), std::string::npos) << words;
}

/// Independent of the sheets: the largest distance between two segments' corners and crowns, one laid on the other.
TEST(AlikeSegments, are_those_that_cover_each_other) {
    for (const int count : {1, 2, 3, 4, 5, 7}) {
        const plan::Plan plan = cased(58.75_in, 13.625_in, count);
        const auto groups = alike_segments(segments_of(plan));
        int served = 0;
        for (const AlikeSegments& group : groups) {
            ++served;
            for (const AlikeSegments::Other& other : group.others) {
                ++served;
                EXPECT_NEAR((group.drawn->inside.length() - other.segment->inside.length()).mm(), 0, 1e-6);
                EXPECT_NEAR((group.drawn->outside.length() - other.segment->outside.length()).mm(), 0, 1e-6);
                EXPECT_NEAR((group.drawn->board_width - other.segment->board_width).mm(), 0, 1e-6);
                EXPECT_EQ(group.drawn->left_joint,
                          other.turned ? other.segment->right_joint : other.segment->left_joint);
            }
        }
        EXPECT_EQ(served, count);
        // The two ends are mirror images, and all between them are alike: one arc in even parts.
        EXPECT_EQ(groups.size(), count < 3 ? 1U : 2U);
    }
}

TEST(AlikeSegments, a_head_whose_springs_differ_has_none_at_its_ends) {
    job::Opening opening = lantern_court();
    opening.legs = {{at_line(70_in, 25), at_line(68_in, 25)}};
    opening.casing = job::Casing{at_line(3.5_in, 51), at_line(0.1875_in, 52), job::WallSide::room, at_line(3, 53), {}};
    const plan::Plan plan = planned(job_of(opening));
    ASSERT_FALSE(std::get<plan::ArchLines>(plan.pieces.front().lines).symmetric);
    for (const AlikeSegments& group : alike_segments(segments_of(plan)))
        for (const AlikeSegments::Other& other : group.others) EXPECT_FALSE(other.turned);
}

TEST(CasingSheet, a_segment_in_tiles_says_on_the_first_how_they_join) {
    const plan::Plan plan = cased(58.75_in, 13.625_in, 3);
    const Drafts drafts = drawn(plan);
    std::set<std::string> begun;
    for (const Draft& draft : drafts) {
        const std::string segment = draft.title.substr(0, draft.title.find(','));
        std::string all;
        for (const page::TextItem& text : texts(draft.page)) all += text.text + " ";
        EXPECT_EQ(all.find("Tiles join on dotted lines.") != std::string::npos, begun.insert(segment).second)
            << draft.title;
    }
    EXPECT_EQ(begun.size(), 2U) << "the last is the first turned over";
}

TEST(CasingSheet, every_segment_shows_its_grain_and_its_board_on_its_first_page) {
    for (const int segments : {2, 3, 4, 5, 7}) {
        std::set<std::string> begun;
        for (const Draft& draft : drawn(cased(58.75_in, 13.625_in, segments))) {
            if (!begun.insert(draft.title.substr(0, draft.title.find(','))).second) continue;
            std::string all;
            for (const page::TextItem& text : texts(draft.page)) all += text.text + " ";
            EXPECT_NE(all.find("Board or sheet at least"), std::string::npos) << draft.title;
            EXPECT_NE(all.find("GRAIN"), std::string::npos) << draft.title;
        }
    }
}

TEST(CasingSheet, lies_at_full_size_with_its_grain_along_the_page) {
    const plan::Plan plan = cased(58.75_in, 13.625_in, 3);
    for (const plan::CasingSegment& segment : segments_of(plan)) {
        const auto lines = segment_lines(segment, kit().style);
        ASSERT_EQ(lines.size(), 4U);
        EXPECT_NEAR((lines[0].path.length() - segment.inside.length()).mm(), 0, 1e-9);
        EXPECT_NEAR((lines[1].path.length() - segment.outside.length()).mm(), 0, 1e-9);
        geom::Rect bounds = lines[0].path.bounds();
        for (const DrawnLine& line : lines) bounds = geom::united(bounds, line.path.bounds());
        EXPECT_NEAR((bounds.width() - segment.board_length).mm(), 0, 1e-6);
        EXPECT_NEAR((bounds.height() - segment.board_width).mm(), 0, 1e-6);
        EXPECT_LT(lines[0].path.start().x, lines[0].path.end().x) << "left end at the left";
        EXPECT_GT(lines[1].path.at(lines[1].path.length() / 2).point.y,
                  lines[0].path.at(lines[0].path.length() / 2).point.y)
            << "outside edge above";
    }
}

TEST(CasingSheet, along_the_edge_its_grain_is_turned_back_on_every_sheet) {
    plan::Plan plan = cased(58.75_in, 13.625_in, 1);
    plan.pieces.front().template_wish.sheets = job::Sheets::along;
    std::size_t sheets = 0;
    for (const Draft& draft : drawn(plan)) {
        double turned = 0;
        std::optional<double> grain;
        for (const page::TextItem& text : texts(draft.page)) {
            if (text.text == "GRAIN") grain = text.angle.degrees();
            if (!text.text.starts_with("turned ")) continue;
            turned = std::stod(text.text.substr(7)) * (text.text.ends_with("to the left") ? 1 : -1);
        }
        if (!grain) continue;
        ++sheets;
        EXPECT_NEAR(*grain, -turned, 0.051) << draft.title;
    }
    EXPECT_GE(sheets, 4U);
}

TEST(CasingSheet, the_centre_mark_stands_square_on_the_middle_of_each_joint) {
    const plan::Plan plan = cased(58.75_in, 13.625_in, 3);
    const Tape tape(measure::Unit::inch);
    page::Page scratch;
    for (const plan::CasingSegment& segment : segments_of(plan)) {
        const Tiling tiling = template_ways(plan, kit(), segment_shape(segment, kit().style), std::nullopt).tiling();
        const TemplateDrawing drawing =
            casing_drawing(Pen(scratch, kit()), {&segment, {}}, {3, plan.pieces.at(0), "A", tiling}, tape);
        const int joints = (segment.left_joint ? 1 : 0) + (segment.right_joint ? 1 : 0);
        ASSERT_EQ(drawing.lines.size(), 4U + static_cast<std::size_t>(joints));
        ASSERT_EQ(drawing.figures.size(), static_cast<std::size_t>(joints));
        for (std::size_t i = 4; i < drawing.lines.size(); ++i) {
            const Path& mark = drawing.lines[i].path;
            const bool at_left = segment.left_joint && i == 4;
            const Path& joint = drawing.lines[at_left ? 2 : 3].path;
            EXPECT_NEAR(geom::distance(mark.start(), geom::middle(joint.start(), joint.end())).mm(), 0, 1e-9);
            const Direction a = geom::direction(mark.start(), mark.end());
            const Direction b = geom::direction(joint.start(), joint.end());
            EXPECT_NEAR(a.x * b.x + a.y * b.y, 0, 1e-12);
            EXPECT_EQ(a.x > 0, at_left) << "into the segment";
        }
    }
}

TEST(CasingSheet, tells_how_many_to_cut_and_rounds_the_board_up) {
    const plan::Plan plan = cased(30_in, 6_in, 5, 3);
    const plan::CasingSegment& segment = segments_of(plan).front();
    const auto up = [](Length size) { return Length::inches(std::ceil(size.inches() * 16 - 1e-6) / 16); };
    const Tape tape(measure::Unit::inch);
    EXPECT_GE(up(segment.board_width), segment.board_width - 1e-6_in);
    std::string all;
    for (const page::TextItem& text : texts(drawn(plan).front().page)) all += text.text + " ";
    EXPECT_NE(all.find("cut 3 of each."), std::string::npos) << all;
    const std::string board =
        tape.with_unit(up(segment.board_length)) + " x " + tape.with_unit(up(segment.board_width));
    EXPECT_NE(all.find(board), std::string::npos) << all;
}

TEST(JointName, CannotBeTakenForAPieceOrATile) {
    EXPECT_EQ(joint_name(1, kit()), "1|2");
    EXPECT_EQ(joint_name(27, kit()), "27|28");
    EXPECT_EQ(joint_name(1, kit("es")), "1|2");
}

}  // namespace
}  // namespace kerfpacket::sheets
