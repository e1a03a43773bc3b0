// The checklist read back: the printed figure and what stands small behind it are the true place of the mark.

#include <gtest/gtest.h>

#include "../support/kit.h"
#include "../support/languages.h"
#include "arbitrary.h"
#include "job/read.h"
#include "sheets/strips/checklist_block.h"

namespace kerfpacket {
namespace {

using measure::Length;
using measure::Unit;
using namespace measure::literals;

/// "5-1/4", "1/16", "133": whole and fraction.
double plain(const std::string& text) {
    const std::size_t slash = text.find('/');
    if (slash == std::string::npos) return std::stod(text);
    const std::size_t dash = text.find('-', 1);
    const double whole = dash == std::string::npos ? 0 : std::stod(text.substr(0, dash));
    const std::size_t top = dash == std::string::npos ? 0 : dash + 1;
    return whole + std::stod(text.substr(top, slash - top)) / std::stod(text.substr(slash + 1));
}

/// ".50" or ",50" with a sign before it.
double residue(std::string text) {
    std::replace(text.begin(), text.end(), ',', '.');
    return std::stod(text);
}

struct Row {
    double tape = 0;   ///< in the job's unit
    double other = 0;  ///< in the other
};

/// The rows of a block as a reader finds them: texts on one base line, left to right.
std::vector<Row> rows_of(const plan::Piece& piece, Unit unit, const std::string& language) {
    page::Page page;
    page.width = 612_pt;
    page.height = 792_pt;
    const sheets::Kit& kit = tests::kit(language);
    const sheets::Tape tape(unit, kit.words);
    {
        sheets::Pen pen(page, kit);
        const sheets::BlockHeights heights;
        const Length width = 200_pt;
        const auto places = sheets::row_places(piece, 1, width, heights.row, tape, kit);
        sheets::ChecklistBlock(pen, piece, tape, heights, places, {})
            .draw({72_pt, 700_pt}, width, 0, piece.blank().kerfs.size());
    }
    std::vector<Row> rows;
    const auto all = tests::texts(page);
    for (std::size_t n = 0; n < piece.blank().kerfs.size(); ++n) {
        const auto number = std::find_if(all.begin(), all.end(), [&](const page::TextItem& t) {
            return t.role == page::Role::numeral && t.text == std::to_string(n + 1);
        });
        std::vector<page::TextItem> line;
        for (const page::TextItem& t : all)
            if (t.role == page::Role::running && measure::abs(t.anchor.y - number->anchor.y) < 1_pt) line.push_back(t);
        std::sort(line.begin(), line.end(), [](const auto& a, const auto& b) { return a.anchor.x < b.anchor.x; });
        std::erase_if(line, [](const page::TextItem& t) { return t.text.empty(); });
        Row row{plain(line.front().text), 0};
        if (line.size() == 3) row.tape += residue(line[1].text);
        std::string other = line.back().text;
        std::replace(other.begin(), other.end(), ',', '.');
        row.other = std::stod(other);
        rows.push_back(row);
    }
    return rows;
}

void expect_true(const plan::Piece& piece, Unit unit, const std::string& language) {
    const std::vector<Row> rows = rows_of(piece, unit, language);
    for (std::size_t i = 0; i < rows.size(); ++i) {
        const Length mark = piece.blank().kerfs[i].mark;
        const bool inch = unit == Unit::inch;
        const double hair = 1e-6;
        EXPECT_NEAR(rows[i].tape, inch ? mark.inches() : mark.mm(), (inch ? 0.0005 : 0.005) + hair) << mark.mm();
        EXPECT_NEAR(rows[i].other, inch ? mark.mm() : mark.inches(), (inch ? 0.05 : 0.0005) + hair) << mark.mm();
    }
}

plan::Piece piece_at(const std::vector<Length>& marks) {
    plan::Piece piece;
    plan::Blank& blank = piece.whole;
    for (const Length mark : marks) {
        plan::Kerf kerf;
        kerf.n = static_cast<int>(blank.kerfs.size()) + 1;
        kerf.at = kerf.mark = mark;
        blank.kerfs.push_back(kerf);
    }
    return piece;
}

/// Whole steps, halves of them, hairs off either, and anything between.
rc::Gen<Length> mark(Unit unit) {
    const Length step = unit == Unit::inch ? Length::inches(1.0 / 16) : Length::mm(1);
    const auto off = rc::gen::element(0.0, 0.5, -0.5, 0.25, 0.5 + 1e-13, 0.5 - 1e-13, 0.499, 0.501, -0.004, 0.004);
    return rc::gen::map(
        rc::gen::tuple(rc::gen::inRange(0, 40000), off, tests::between(-0.5, 0.5), rc::gen::arbitrary<bool>()),
        [step](const auto& t) {
            const double part = std::get<3>(t) ? std::get<1>(t) : std::get<2>(t);
            return step * (std::get<0>(t) + part);
        });
}

RC_GTEST_PROP(Columns, read_back_as_the_true_place, ()) {
    const Unit unit = *rc::gen::element(Unit::inch, Unit::millimetre);
    const auto language = *rc::gen::elementOf(tests::languages());
    std::vector<Length> marks;
    for (int i = 0; i < 10; ++i) marks.push_back(*mark(unit));
    // From a right zero the same marks are what is left of the board.
    if (*rc::gen::arbitrary<bool>())
        for (Length& at : marks) at = Length::mm(12000.5) - at;
    for (Length& at : marks) at = measure::abs(at);
    expect_true(piece_at(marks), unit, language);
    RC_ASSERT(!testing::Test::HasFailure());
}

TEST(Columns, of_a_job_whose_ticks_stand_on_half_millimetres) {
    const job::Reading read =
        job::read_job(job::load(KERFPACKET_SOURCE_DIR "/tests/property/found/ticks-on-half-millimetres.toml").value());
    for (const job::End zero : {job::End::left, job::End::right}) {
        job::Job job = read.job;
        job.walls.at(0).board.zero = zero;
        plan::Piece piece = plan::make_plan(job).value().pieces.at(0);
        ASSERT_GT(piece.blank().kerfs.size(), 20U);
        for (std::size_t first = 0; first < piece.blank().kerfs.size(); first += 10) {
            plan::Piece block;
            plan::Blank& blank = block.whole;
            for (std::size_t i = first; i < std::min(first + 10, piece.blank().kerfs.size()); ++i) {
                blank.kerfs.push_back(piece.blank().kerfs[i]);
                blank.kerfs.back().n = static_cast<int>(i - first) + 1;
            }
            expect_true(block, Unit::millimetre, "en");
        }
    }
}

}  // namespace
}  // namespace kerfpacket
