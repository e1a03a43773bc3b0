// What the sheets of full-size drawings must be for a head of any shape.

#include <algorithm>
#include <map>
#include <regex>
#include <set>

#include <gtest/gtest.h>

#include "../../support/boxes.h"
#include "../../support/openings.h"
#include "sheets/layout/furniture.h"
#include "sheets/templates/arch_drawing.h"
#include "sheets/templates/arch_template.h"
#include "sheets/templates/casing_sheet.h"
#include "sheets/templates/form_sheet.h"
#include "sheets/templates/template_tile.h"
#include "sheets/templates/template_ways.h"

namespace kerfpacket::sheets {
namespace {

using namespace tests;

class AllHeads : public testing::TestWithParam<std::size_t> {
protected:
    const HeadCase& head() const { return head_cases().at(GetParam()); }
    plan::Plan plan() const { return planned(head().job, head().media.c_str()); }
};

/// All pages of the template, the casing and the form, headers and footers on them.
Drafts drawn(const plan::Plan& plan) {
    Drafts drafts;
    for (const plan::Piece& piece : plan.pieces) {
        if (piece.board == 1) add_template(drafts, plan, piece, kit());
        if (piece.board == 1) add_casing(drafts, plan, piece, kit());
        add_form(drafts, plan, piece, kit());
    }
    for (std::size_t i = 0; i < drafts.size(); ++i) add_furniture(drafts[i], plan, kit(), i + 1, drafts.size());
    return drafts;
}

std::set<std::string> words_on(const Drafts& drafts, const std::string& sheet) {
    std::set<std::string> all;
    for (const Draft& draft : drafts)
        if (draft.page.sheet == sheet)
            for (const page::TextItem& text : texts(draft.page)) all.insert(text.text);
    return all;
}

bool said(const std::set<std::string>& all, const std::string& start) {
    return std::any_of(all.begin(), all.end(), [&](const std::string& s) { return s.rfind(start, 0) == 0; });
}

bool mentioned(const std::set<std::string>& all, const std::string& part) {
    return std::any_of(all.begin(), all.end(), [&](const std::string& s) { return s.find(part) != std::string::npos; });
}

TEST_P(AllHeads, no_words_overlap_or_leave_the_page) {
    for (const Draft& draft : drawn(plan())) {
        const auto faults = text_faults(draft.page);
        EXPECT_TRUE(faults.empty()) << head().name << ", " << draft.title << ": " << faults.front();
    }
}

TEST_P(AllHeads, no_words_stand_on_a_line_of_wood) {
    for (const Draft& draft : drawn(plan())) {
        if (draft.scale != Scale::full) continue;
        const auto all = texts(draft.page);
        for (const page::Role role : {page::Role::outline, page::Role::tick, page::Role::joint})
            for (const page::PathItem& item : paths(draft.page, role))
                for (const page::TextItem& text : all)
                    ASSERT_FALSE(crosses(item.path, text)) << head().name << ", " << draft.title << ": " << text.text;
    }
}

TEST_P(AllHeads, the_template_names_its_lines_and_a_radius_only_where_there_is_one) {
    const plan::Plan plan = this->plan();
    const plan::Piece& piece = plan.pieces.front();
    const auto& arch = std::get<plan::ArchLines>(piece.lines);
    const auto all = words_on(drawn(plan), "template");
    for (const char* name : {"WALL LINE", "FINISHED LINE", "SPRING LINE", "CENTER LINE", "at the center"})
        EXPECT_TRUE(said(all, name)) << head().name << ": " << name;
    EXPECT_EQ(mentioned(all, "   R "), piece.circular && piece.boards == 1) << head().name;
    EXPECT_EQ(said(all, "Or set out with a trammel"), arch.arcs.size() > 1) << head().name;
    EXPECT_EQ(mentioned(all, "DO NOT FLIP"), !arch.symmetric) << head().name;
    EXPECT_EQ(mentioned(all, " higher"), !arch.springs_level()) << head().name;
    EXPECT_EQ(said(all, "liner MITER"), !arch.liner_mitres.empty()) << head().name;
    EXPECT_EQ(said(all, "MITER at the point"), piece.boards > 1) << head().name;
    for (int board = 1; board <= piece.boards && piece.boards > 1; ++board)
        EXPECT_TRUE(said(all, "BOARD A/" + std::to_string(board))) << head().name;
}

TEST_P(AllHeads, ordinates_stand_on_the_line_they_are_measured_to) {
    const plan::Plan plan = this->plan();
    const ArchOpening arch(plan, plan.pieces.front());
    const Tape tape(plan.header.units);
    page::Page scratch;
    const Tiling tiling = template_ways(plan, kit(), arch_shape(arch, kit().style), std::nullopt).tiling();
    const TemplateDrawing drawing = arch_drawing(Pen(scratch, kit()), arch, tape, tiling);
    EXPECT_GE(drawing.ordinates.size(), 5U);
    const Path& line = arch.ordinate_line();
    for (const Ordinate& o : drawing.ordinates) {
        Length nearest = 1000_in;
        for (const geom::Segment& s : line.segments()) {
            nearest = std::min({nearest, geom::distance(s.from, o.top), geom::distance(s.to, o.top)});
            if (s.is_line() || !s.bounds().grown(1e-6_mm).contains(o.top)) continue;
            nearest = std::min(nearest, measure::abs(geom::distance(s.centre(), o.top) - s.radius()));
        }
        EXPECT_LT(nearest.mm(), 1e-6) << head().name << " at " << o.top.x.inches();
        // Topmost: the upright meets nothing above.
        for (const geom::Segment& s : line.segments())
            for (const double f : geom::crossings(s, o.top, {0, 1})) EXPECT_LE(s.point(f).y, o.top.y + 1e-6_mm);
    }
}

TEST_P(AllHeads, casing_segments_are_whole_and_their_joints_have_the_same_name) {
    const plan::Plan plan = this->plan();
    const auto& segments = std::get<plan::ArchLines>(plan.pieces.front().lines).segments;
    ASSERT_FALSE(segments.empty());
    Drafts drafts;
    add_casing(drafts, plan, plan.pieces.front(), kit());
    std::map<std::string, int> names;
    std::map<std::string, std::set<std::string>> by_segment;
    for (const Draft& draft : drafts) {
        const std::string segment = draft.title.substr(0, draft.title.find(" of "));
        for (const page::TextItem& text : texts(draft.page)) by_segment[segment].insert(text.text);
    }
    // "Casing segment 1, 3": one template serves those that are alike.
    std::size_t served = 0;
    for (const auto& [segment, words] : by_segment)
        served += 1 + static_cast<std::size_t>(std::count(segment.begin(), segment.end(), ','));
    ASSERT_EQ(served, segments.size()) << head().name;
    for (const auto& [segment, words] : by_segment) {
        EXPECT_TRUE(words.count("GRAIN")) << head().name << segment;
        EXPECT_TRUE(mentioned(words, "segment ")) << head().name << segment;
        EXPECT_TRUE(mentioned(words, "Board or sheet at least")) << head().name << segment;
        static const std::regex joints("[0-9]+\\|[0-9]+(, [0-9]+\\|[0-9]+)*"), joint("[0-9]+\\|[0-9]+");
        const auto serves = 1 + std::count(segment.begin(), segment.end(), ',');
        for (const std::string& word : words) {
            if (!std::regex_match(word, joints)) continue;
            const auto commas = std::count(word.begin(), word.end(), ',');
            // Two segments that meet at the joint have its name once.
            const int each = commas == 0 ? static_cast<int>(serves) : 1;
            for (auto name = std::sregex_iterator(word.begin(), word.end(), joint); name != std::sregex_iterator();
                 ++name)
                names[name->str()] += each;
        }
    }
    EXPECT_EQ(names.size(), segments.size() - 1) << head().name;
    for (const auto& [name, count] : names) EXPECT_EQ(count, 2) << head().name << name;
}

TEST_P(AllHeads, the_form_has_its_table_and_its_rib) {
    const plan::Plan plan = this->plan();
    for (const plan::Piece& piece : plan.pieces) {
        ASSERT_TRUE(piece.form);
        Drafts drafts;
        add_form(drafts, plan, piece, kit());
        if (piece.board == 2) {
            // The first board's ribs, turned over.
            EXPECT_TRUE(drafts.empty()) << head().name;
            continue;
        }
        ASSERT_GE(drafts.size(), 2U);
        EXPECT_EQ(drafts.front().scale, Scale::none);
        EXPECT_EQ(drafts.back().scale, Scale::full);
        const Tape tape(plan.header.units);
        std::multiset<std::string> figures;
        for (const page::TextItem& text : texts(drafts.front().page)) figures.insert(text.text);
        for (const Point p : piece.form->ordinates) {
            EXPECT_TRUE(figures.count(tape.plain(p.x))) << head().name << ": station " << p.x.inches();
            EXPECT_TRUE(figures.count(tape.plain(p.y))) << head().name << ": height " << p.y.inches();
        }
    }
}

INSTANTIATE_TEST_SUITE_P(Shapes, AllHeads, testing::Range<std::size_t>(0, head_cases().size()));

}  // namespace
}  // namespace kerfpacket::sheets
