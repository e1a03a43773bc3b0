// Labels of what is cut: everything has one, none has two, and each lies within its label and its sheet.

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <random>
#include <set>

#include "../../support/boxes.h"
#include "../../support/kit.h"
#include "../../support/openings.h"
#include "job/read.h"
#include "plan/make_stock_plan.h"
#include "sheets/labels/label_sheets.h"
#include "sheets/labels/label_words.h"
#include "sheets/layout/sheet_code.h"
#include "sheets/words/wording.h"

namespace kerfpacket::sheets {
namespace {

using geom::Rect;
using namespace tests;
using Of = plan::Label::Of;

/// Two columns of five on Letter; the gap between the columns is 3/16 in.
job::LabelStock ten_on_letter() {
    job::LabelStock stock;
    stock.paper = job::find_media("na_letter_8.5x11in").value();
    stock.columns = 2;
    stock.rows = 5;
    stock.width = 4_in;
    stock.height = stock.down = 2_in;
    stock.across = 4.1875_in;
    stock.left = 0.15625_in;
    stock.top = 0.5_in;
    return stock;
}

job::LabelStock roll(const char* name, Length height = {}) {
    job::LabelStock stock;
    stock.paper = job::find_media(name).value();
    stock.width = stock.across = stock.paper.width;
    stock.height = stock.down = height;
    return stock;
}

/// An arch three times, with casing, and a long wall of two blanks.
plan::Plan house() {
    job::Opening arch = alder_court();
    arch.quantity = 3;
    arch.casing.emplace();
    arch.casing->width = at_line(3_in, 41);
    arch.casing->reveal = at_line(0.1875_in, 42);
    arch.casing->segments = at_line(4, 43);
    job::Job job = job_of(arch);
    job::Wall wall = harbor_stair();
    wall.id.value = "W";
    wall.form.emplace();
    job.walls.push_back(wall);
    return planned(job);
}

std::vector<Rect> codes(const page::Page& page) {
    std::vector<Rect> found;
    for (const page::Item& item : page.items)
        if (const auto* code = std::get_if<page::CodeItem>(&item)) found.push_back(code->area);
    return found;
}

/// What a label is of, in words that no two may share.
std::string name_of(const plan::Label& label) {
    const std::string piece = label.piece == nullptr ? "" : label.piece->id;
    return std::to_string(static_cast<int>(label.of)) + " " + piece + " " + std::to_string(label.part) + " " +
           std::to_string(label.copy) + " " + std::to_string(label.n);
}

TEST(BoardLabels, EverythingThatIsCutHasOneAndNothingHasTwo) {
    const plan::Plan plan = house();
    const std::vector<plan::Label> labels = plan::labels_of(plan);
    std::map<Of, std::size_t> counts;
    std::set<std::string> names;
    for (std::size_t i = 0; i < labels.size(); ++i) {
        ++counts[labels[i].of];
        EXPECT_EQ(labels[i].number, static_cast<int>(i) + 1);
        EXPECT_TRUE(names.insert(name_of(labels[i])).second) << name_of(labels[i]);
    }
    std::size_t blanks = 0, legs = 0, ribs = 0, segments = 0;
    for (const plan::Piece& piece : plan.pieces) {
        const auto copies = static_cast<std::size_t>(piece.quantity);
        blanks += piece.blanks.size() * copies;
        legs += piece.leg_boards.size() * copies;
        ribs += piece.form ? 1U : 0U;
        if (const auto* arch = std::get_if<plan::ArchLines>(&piece.lines); arch != nullptr && piece.board == 1)
            segments += arch->segments.size() * copies;
    }
    EXPECT_GT(blanks, 3U);
    EXPECT_GT(segments, 3U);
    EXPECT_GT(ribs, 0U);
    EXPECT_EQ(counts[Of::blank], blanks);
    EXPECT_EQ(counts[Of::left_leg] + counts[Of::right_leg], legs);
    EXPECT_EQ(counts[Of::segment], segments);
    EXPECT_EQ(counts[Of::rib], ribs);
    ASSERT_TRUE(plan.stock_plan);
    std::size_t kept = 0;
    for (const plan::StockSection& section : plan.stock_plan->sections)
        for (const plan::CutStick& stick : section.sticks) kept += stick.kept ? 1U : 0U;
    EXPECT_EQ(counts[Of::offcut], kept);
}

/// That every item of the page lies within the label whose code it stands beside, as `labels` places them.
void expect_within(const page::Page& page, const std::vector<Rect>& labels) {
    EXPECT_EQ(text_faults(page, 5_pt, 5_pt), std::vector<std::string>{});
    for (const page::Item& item : page.items) {
        const auto* text = std::get_if<page::TextItem>(&item);
        if (text == nullptr) continue;
        EXPECT_GE(text->size, 9_pt) << text->text;
        const Rect box = box_of(*text);
        EXPECT_EQ(std::count_if(labels.begin(), labels.end(),
                                [&](const Rect& label) { return label.contains(box.low) && label.contains(box.high); }),
                  1)
            << text->text;
    }
}

/// The labels of a sheet, row by row.
std::vector<Rect> places(const job::LabelStock& stock) {
    std::vector<Rect> all;
    for (int row = 0; row < stock.rows; ++row)
        for (int column = 0; column < stock.columns; ++column) {
            const Length left = stock.left + stock.across * column;
            const Length top = stock.paper.height - stock.top - stock.down * row;
            all.push_back({{left, top - stock.height}, {left + stock.width, top}});
        }
    return all;
}

TEST(BoardLabels, LieWithinTheirLabelInBothLanguages) {
    const plan::Plan plan = house();
    for (const char* language : {"en", "es"}) {
        const auto document = make_labels(plan, ten_on_letter(), 1, kit(language));
        ASSERT_TRUE(document) << language;
        std::size_t codes_found = 0;
        for (const page::Page& page : document->pages) {
            expect_within(page, places(ten_on_letter()));
            codes_found += codes(page).size();
        }
        EXPECT_EQ(codes_found, plan::labels_of(plan).size());
    }
}

/// As wide to as high as the segment is in the plan, and within its own label.
TEST(BoardLabels, ShowASegmentInItsOwnProportions) {
    const plan::Plan plan = house();
    const auto document = make_labels(plan, ten_on_letter(), 1, kit());
    ASSERT_TRUE(document);
    std::multiset<int> drawn;  // hundredths of width to height
    for (const page::Page& page : document->pages)
        for (const Rect& label : places(ten_on_letter())) {
            std::vector<Rect> lines;
            for (const page::PathItem& item : paths(page, page::Role::outline))
                if (!item.path.closed() && label.contains(item.path.bounds().low) &&
                    label.contains(item.path.bounds().high))
                    lines.push_back(item.path.bounds());
            if (lines.size() != 4) continue;  // a board's front edge is one line, a rib is two
            Rect all = lines.front();
            for (const Rect& line : lines) all = geom::united(all, line);
            drawn.insert(static_cast<int>(std::lround(all.width() / all.height() * 100)));
        }
    std::multiset<int> wanted;
    for (const plan::Label& label : plan::labels_of(plan)) {
        if (label.of != Of::segment) continue;
        const plan::CasingSegment& one =
            std::get<plan::ArchLines>(label.piece->lines).segments.at(static_cast<std::size_t>(label.n - 1));
        Rect all = one.inside.bounds();
        for (const geom::Path* line : {&one.outside, &one.left, &one.right}) all = geom::united(all, line->bounds());
        wanted.insert(static_cast<int>(std::lround(all.width() / all.height() * 100)));
    }
    EXPECT_GT(wanted.size(), 3U);
    EXPECT_EQ(drawn, wanted);
}

TEST(BoardLabels, AHalfUsedSheetGoesOnAtItsNextLabel) {
    const plan::Plan plan = house();
    const job::LabelStock stock = ten_on_letter();
    const std::size_t count = plan::labels_of(plan).size();
    for (const int from : {1, 2, 7, 10}) {
        const auto document = make_labels(plan, stock, from, kit());
        ASSERT_TRUE(document);
        EXPECT_EQ(document->pages.size(), (count + static_cast<std::size_t>(from) - 1 + 9) / 10);
        const std::vector<Rect> all = places(stock);
        const std::vector<Rect> first = codes(document->pages.front());
        ASSERT_EQ(first.size(), std::min(count, 11 - static_cast<std::size_t>(from)));
        for (std::size_t i = 0; i < first.size(); ++i)
            EXPECT_TRUE(all.at(static_cast<std::size_t>(from) - 1 + i).contains(first[i].low)) << from << " " << i;
    }
}

TEST(BoardLabels, ARollHasAPageForEachAsWideAsItIs) {
    const plan::Plan plan = house();
    for (const char* name : {"custom_roll_25mm", "custom_roll_38mm", "custom_roll_62mm", "custom_roll_4in"})
        for (const char* language : {"en", "es"}) {
            const job::LabelStock stock = roll(name);
            const auto document = make_labels(plan, stock, 1, kit(language));
            ASSERT_TRUE(document) << name << " " << language << ": " << document.error().width.mm() << " x "
                                  << document.error().height.mm();
            ASSERT_EQ(document->pages.size(), plan::labels_of(plan).size());
            for (const page::Page& page : document->pages) {
                EXPECT_NEAR(page.width.mm(), stock.paper.width.mm(), 1e-6);
                expect_within(page, {Rect{{}, {page.width, page.height}}});
            }
        }
}

TEST(BoardLabels, TellTheLeastThatWouldDoAndThatDoes) {
    const plan::Plan plan = house();
    job::LabelStock stock = ten_on_letter();
    stock.columns = stock.rows = 1;
    for (const auto& [width, height] : {std::pair{2_in, 1_in}, std::pair{1_in, 1_in}, std::pair{4_in, 0.5_in}}) {
        stock.width = stock.across = width;
        stock.height = stock.down = height;
        const auto refused = make_labels(plan, stock, 1, kit());
        ASSERT_FALSE(refused);
        EXPECT_GE(refused.error().width, width);
        stock.width = stock.across = refused.error().width;
        stock.height = stock.down = refused.error().height;
        EXPECT_TRUE(make_labels(plan, stock, 1, kit())) << stock.width.inches() << " x " << stock.height.inches();
        stock.height = stock.down = refused.error().height - 0.125_in;
        EXPECT_FALSE(make_labels(plan, stock, 1, kit()));
    }
}

TEST(BoardLabels, OfWhateverSizeTheyLieWithinOrAreRefused) {
    const plan::Plan plan = house();
    std::mt19937 random(20);  // NOLINT(cert-msc51-cpp): the same every time
    int printed = 0;
    for (int i = 0; i < 60; ++i) {
        const auto upto = [&](double most) { return most * static_cast<double>(random() % 1000) / 1000; };
        job::LabelStock stock = ten_on_letter();
        stock.columns = 1 + static_cast<int>(random() % 3);
        stock.rows = 1 + static_cast<int>(random() % 8);
        stock.left = Length::inches(upto(0.5));
        stock.top = Length::inches(upto(1));
        stock.across = (8.5_in - stock.left) / stock.columns;
        stock.down = (11_in - stock.top) / stock.rows;
        stock.width = stock.across - Length::inches(upto(0.25));
        stock.height = stock.down - Length::inches(upto(0.25));
        const int from = 1 + static_cast<int>(random() % static_cast<unsigned>(stock.on_sheet()));
        const auto document = make_labels(plan, stock, from, kit(i % 2 == 0 ? "en" : "es"));
        if (!document) {
            EXPECT_TRUE(document.error().width > stock.width || document.error().height > stock.height);
            continue;
        }
        ++printed;
        for (const page::Page& page : document->pages) expect_within(page, places(stock));
    }
    EXPECT_GT(printed, 20);
}

TEST(BoardLabels, ABoardThatThePacketStopsIsNotToBeCut) {
    plan::Plan plan = house();
    const auto told = [&] { return label_text(plan::labels_of(plan).front(), kit()).what; };
    plan.pieces.front().bend.verdict = bend::Verdict::ok;
    plan.pieces.front().weak_links.clear();
    EXPECT_EQ(told().find("DO NOT CUT"), std::string::npos);
    plan.pieces.front().weak_links = {3};
    EXPECT_EQ(told().find("DO NOT CUT"), 0U);
    plan.pieces.front().weak_links.clear();
    plan.pieces.front().bend.verdict = bend::Verdict::break_likely;
    EXPECT_EQ(told().find("DO NOT CUT"), 0U);
}

TEST(BoardLabels, OfSeveralJobsAreThoseOfEachAndOffcutsOfWhatIsBoughtTogether) {
    const plan::Plan one = house();
    plan::Plan other = house();
    other.header.number = "B-2";
    other.header.revision = "C";
    const plan::StockPlan stock = plan::make_stock_plan({&one, &other});
    const plan::House both({&one, &other}, &stock);
    const auto told = [](const plan::House& of, bool offcuts) {
        std::vector<std::vector<std::string>> all;
        for (const plan::Label& label : plan::labels_of(of))
            if ((label.of == Of::offcut) == offcuts) all.push_back(label_text(label, kit()).lines);
        return all;
    };
    auto alone = told(one, false);
    for (const auto& lines : told(other, false)) alone.push_back(lines);
    EXPECT_EQ(told(both, false), alone) << "a label is the same whoever else is printed with it";
    std::size_t kept = 0;
    for (const plan::StockSection& section : stock.sections)
        for (const plan::CutStick& stick : section.sticks) kept += stick.kept ? 1U : 0U;
    const auto offcuts = told(both, true);
    ASSERT_EQ(offcuts.size(), kept);
    ASSERT_GT(kept, 0U);
    EXPECT_EQ(offcuts.front().back().find(one.header.number + " and 1 more, label "), 0U) << offcuts.front().back();
    std::set<std::string> codes;
    const auto document = make_labels(both, ten_on_letter(), 7, kit("es"));
    ASSERT_TRUE(document);
    for (const page::Page& page : document->pages) {
        expect_within(page, places(ten_on_letter()));
        for (const page::Item& item : page.items) {
            const auto* code = std::get_if<page::CodeItem>(&item);
            if (code == nullptr) continue;
            EXPECT_TRUE(codes.insert(code->text).second) << code->text;
        }
    }
    EXPECT_EQ(codes.size(), plan::labels_of(both).size());
}

TEST(BoardLabels, ACodeTellsJobRevisionAndLabel) {
    const plan::Plan plan = house();
    const auto document = make_labels(plan, ten_on_letter(), 7, kit());
    ASSERT_TRUE(document);
    std::size_t n = 0;
    for (const page::Page& page : document->pages)
        for (const page::Item& item : page.items) {
            const auto* code = std::get_if<page::CodeItem>(&item);
            if (code == nullptr) continue;
            EXPECT_EQ(code->text, sheet_code_words(plan, ++n, "labels"));
        }
    EXPECT_EQ(n, plan::labels_of(plan).size());
}

std::string told(const LabelText& text) {
    std::string all = text.tag + "|" + text.what + "|" + text.length;
    for (const std::string& line : text.lines) all += "|" + line;
    return all;
}

/// A board may not be smaller than the segment that is sawn from it: label, template and stock plan go up alike.
TEST(BoardLabels, TellASegmentsBoardAsTheOtherSheetsDo) {
    const plan::Plan plan = house();
    int off = 0;
    for (const plan::Label& label : plan::labels_of(plan)) {
        if (label.of != Of::segment) continue;
        for (const auto& [least, shown] : {std::pair(label.segment->board_length, label.length),
                                           std::pair(label.segment->board_width, label.width)}) {
            EXPECT_GE(shown.inches(), least.inches() - 1e-9);
            EXPECT_LT(shown.inches(), least.inches() + 1.0 / 16);
            EXPECT_NEAR(shown.inches() * 16, std::round(shown.inches() * 16), 1e-6);
            // Rounded to the nearest it would be less.
            off += measure::round_to_tape(least, Unit::inch) < shown ? 1 : 0;
        }
    }
    EXPECT_GT(off, 0);
}

/// A splayed board lies at the saw as its cards say, and its legs have no miter.
TEST(BoardLabels, OfASplayedOpeningSayWhatItsCardsSay) {
    const job::Reading read = job::read_job(
        {"job.toml",
         "[job]\nnumber = \"7\"\ntitle = \"t\"\nrevision = \"A\"\ndate = 2026-11-28\nunits = \"in\"\n[saw]\n"
         "blade_diameter = 10\nkerf = 0.118\n[[opening]]\nid = \"A\"\nshape = \"semicircular\"\nspan = \"36 in\"\n"
         "measured_to = \"finish\"\ndepth = \"8 in\"\nlegs = \"70 in\"\n[opening.liner]\nmaterial = \"mdf\"\n"
         "thickness = \"1/2 in\"\nkerf_depth = \"5/16 in\"\nspacing = \"1/2 in\"\n[opening.splay]\nangle = 20\n"
         "measured = \"narrow\"\ntoward = \"room\"\n"});
    const plan::Plan plan = plan::make_plan(read.job).value();
    const plan::Piece& piece = plan.pieces.front();
    ASSERT_TRUE(piece.splay);
    for (const char* language : {"en", "es"}) {
        const Kit words = kit(language);
        int blanks = 0, legs = 0;
        for (const plan::Label& label : plan::labels_of(plan)) {
            const std::string text = told(label_text(label, words));
            const bool left =
                words.words("piece.zero_left", {{"edge", words.words("piece.front_splay")}}) == zero_end(piece, words);
            if (label.of == Of::blank) {
                ++blanks;
                EXPECT_NE(text.find(words.words(left ? "labels.zero_left" : "labels.zero_right",
                                                {{"edge", words.words("labels.edge_splay")}})),
                          std::string::npos)
                    << text;
            } else if (label.of == Of::left_leg || label.of == Of::right_leg) {
                ++legs;
                EXPECT_NE(text.find(words.words("labels.bevel", {{"angle", degrees_text(piece.splay->alpha, words)}})),
                          std::string::npos)
                    << text;
                EXPECT_EQ(text.find(std::string(language) == "en" ? "miter" : "inglete"), std::string::npos) << text;
            }
        }
        EXPECT_GT(blanks, 0);
        EXPECT_EQ(legs, 2);
    }
}

}  // namespace
}  // namespace kerfpacket::sheets
