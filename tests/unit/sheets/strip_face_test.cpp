// What stands on the strips, as drawn: asked of every strip of a wide spread of boards.

#include "sheets/strips/strip_drawing.h"

#include <gtest/gtest.h>

#include <array>
#include <map>

#include "plan/strip_room.h"
#include "sheets/layout/furniture.h"
#include "sheets/packet.h"
#include "sheets/strips/strip_ends.h"
#include "sheets/strips/strips.h"
#include "sheets/words/wording.h"
#include "support/boxes.h"
#include "support/pieces.h"
#include "support/shapes.h"

namespace kerfpacket::sheets {
namespace {

using namespace tests;

struct Sheet {
    std::string name;
    plan::Piece piece;
    page::Page page;
};

void add_sheets(std::vector<Sheet>& made, const std::string& name, const plan::Plan& plan) {
    for (const plan::Piece& piece : plan.pieces) {
        Drafts drafts;
        add_strips(drafts, plan, piece, kit());
        for (std::size_t i = 0; i < drafts.size(); ++i) {
            add_furniture(drafts[i], plan, kit(), i + 1, drafts.size());
            made.push_back({name + ", " + piece.id, piece, std::move(drafts[i].page)});
        }
    }
}

/// All strip sheets of the spread and of every shape, header and footer included. Drawn once a test program.
const std::vector<Sheet>& strip_sheets() {
    static const std::vector<Sheet> all = [] {
        std::vector<Sheet> made;
        for (const Case& one : spread_of_cases()) add_sheets(made, one.name, planned(one.job, one.media.c_str()));
        for (const measure::Length trim : {3_in, 1.5_in})
            for (const std::string& media : spread::media) {
                job::Job job = every_shape();
                for (job::Opening& opening : job.openings) opening.liner.trim.value = trim;
                job.header.units = media.starts_with("iso") ? measure::Unit::millimetre : measure::Unit::inch;
                add_sheets(made, "every shape on " + media + ", trim " + std::to_string(trim.inches()),
                           planned(job, media.c_str()));
            }
        return made;
    }();
    return all;
}

/// Outlines of the strips: closed, and as high as a strip, or as one that is drawn low to save a sheet.
std::vector<Rect> strips_on(const page::Page& page) {
    std::vector<Rect> found;
    for (const page::PathItem& item : paths(page, Role::outline))
        for (const measure::Length height : {72_pt, plan::least_face_strip})
            if (item.path.closed() && measure::abs(item.path.bounds().height() - height) < 1e-6_mm)
                found.push_back(item.path.bounds());
    return found;
}

std::vector<Point> ticks_on(const page::Page& page) {
    std::vector<Point> found;
    for (const page::PathItem& item : paths(page, Role::tick)) found.push_back(item.path.start());
    return found;
}

TEST(FaceStrip, EveryKerfHasItsTickAndFootOnceOnAStrip) {
    std::map<std::string, std::size_t> ticks;
    std::map<std::string, std::size_t> kerfs;
    for (const Sheet& sheet : strip_sheets()) {
        SCOPED_TRACE(sheet.name);
        const std::vector<Rect> strips = strips_on(sheet.page);
        ASSERT_FALSE(strips.empty());
        for (const Point tick : ticks_on(sheet.page))
            EXPECT_EQ(std::count_if(strips.begin(), strips.end(), [&](const Rect& r) { return r.contains(tick); }), 1);
        for (const page::PathItem& foot : paths(sheet.page, Role::foot))
            EXPECT_NEAR(foot.path.bounds().width().mm(), sheet.piece.cut.kerf.mm(), 1e-9);
        EXPECT_EQ(paths(sheet.page, Role::foot).size(), ticks_on(sheet.page).size());
        ticks[sheet.name] += ticks_on(sheet.page).size();
        kerfs[sheet.name] = sheet.piece.blank().kerfs.size();
    }
    EXPECT_EQ(ticks, kerfs);
}

/// How near a tick nothing else may stand: half a gap, less half a kerf by which a tick on the blade's side is nearer
/// the joint; where gaps are wide, the width of two numerals.
Length clear_of_tick(const plan::Piece& piece) {
    return std::min((piece.cut.least_spacing - piece.cut.kerf) / 2, 12_pt) - 0.01_mm;
}

TEST(FaceStrip, NothingButTicksStandsWhereTheyAreMeasured) {
    for (const Sheet& sheet : strip_sheets()) {
        SCOPED_TRACE(sheet.name);
        const Length clear = clear_of_tick(sheet.piece);
        std::vector<Rect> windows;
        for (const Point tick : ticks_on(sheet.page))
            windows.push_back({{tick.x - clear, tick.y + 3.1_pt}, {tick.x + clear, tick.y + 11.9_pt}});
        for (const page::Item& item : sheet.page.items) {
            if (const auto* path = std::get_if<page::PathItem>(&item)) {
                if (path->role == Role::tick) continue;
                for (const Rect& window : windows) {
                    if (!overlap(window.grown(1_pt), path->path.bounds().grown(0.1_pt))) continue;
                    const bool area = path->filled && overlap(window, path->path.bounds());
                    EXPECT_FALSE(area || !geom::clip(path->path, window).empty())
                        << page::role_name(path->role) << " in the way of a tick at " << window.low.x.points() << ","
                        << window.low.y.points() << " pt";
                }
            } else if (const auto* text = std::get_if<page::TextItem>(&item)) {
                for (const Rect& window : windows)
                    EXPECT_FALSE(overlap(window, box_of(*text))) << placed(*text) << " in the way of a tick";
            }
        }
    }
}

TEST(FaceStrip, TextsKeepApartAndOnThePage) {
    for (const Sheet& sheet : strip_sheets())
        for (const std::string& fault : text_faults(sheet.page)) ADD_FAILURE() << sheet.name << ": " << fault;
}

/// A bend long enough, with kerfs near enough to each other, that no strip is too short for the words of its marks.
bool has_room(const plan::Piece& piece) {
    return piece.blank().bend_length() >= 12_in && piece.cut.spacing <= 1_in && piece.blank().reverses().size() <= 2;
}

TEST(FaceStrip, MarksOfABendOfSomeLengthHaveTheirWords) {
    std::map<std::string, std::map<std::string, int>> found;
    std::map<std::string, const plan::Piece*> pieces;
    for (const Sheet& sheet : strip_sheets()) {
        if (!has_room(sheet.piece)) continue;
        pieces[sheet.name] = &sheet.piece;
        for (const page::TextItem& text : texts(sheet.page))
            for (const char* words : {"BEND STARTS", "CENTER", "BEND ENDS"})
                if (text.text.starts_with(words)) ++found[sheet.name][words];
    }
    EXPECT_GT(pieces.size(), 200U);
    for (const auto& [name, piece] : pieces)
        for (const char* words : {"BEND STARTS", "CENTER", "BEND ENDS"})
            EXPECT_EQ(found[name][words], 1) << words << ", " << name;
}

bool upright(const page::PathItem& item) { return !item.filled && item.path.bounds().width() < 0.01_mm; }

TEST(FaceStrip, EveryTapeMarkHasItsFigureAndEveryTapeCheckItsBox) {
    std::size_t marks = 0;
    std::size_t without_figure = 0;
    for (const Sheet& sheet : strip_sheets()) {
        SCOPED_TRACE(sheet.name);
        std::vector<page::TextItem> figures = texts(sheet.page);
        std::erase_if(figures, [](const page::TextItem& text) { return text.role != Role::tape_mark; });
        const std::vector<page::PathItem> boxes = paths(sheet.page, Role::box);
        const auto beside_box = [&](const page::TextItem& text) {
            return std::any_of(boxes.begin(), boxes.end(), [&](const page::PathItem& box) {
                const Length gap = box_of(text).low.x - box.path.bounds().high.x;
                return gap > 0_pt && gap < 6_pt && overlap(box.path.bounds().grown(6_pt), box_of(text));
            });
        };
        EXPECT_EQ(std::count_if(figures.begin(), figures.end(), beside_box), static_cast<std::ptrdiff_t>(boxes.size()));
        for (const page::TextItem& text : figures)
            EXPECT_TRUE(!text.text.starts_with("TAPE CHECK") || beside_box(text)) << placed(text);
        const std::vector<page::PathItem> lines = paths(sheet.page, Role::tape_mark);
        const auto marked = static_cast<std::size_t>(std::count_if(lines.begin(), lines.end(), upright));
        EXPECT_GE(marked, figures.size());
        without_figure += marked - figures.size();
        marks += marked;
    }
    // A strip before the last may be left so short that a tape check keeps its arrow alone; the caption tells the mark.
    EXPECT_GT(marks, 1000U);
    EXPECT_LE(without_figure, marks / 1000);
}

TEST(FaceStrip, BothEndsSayTheirTrimAndTheirMitre) {
    std::map<std::string, std::array<std::size_t, 2>> said;
    std::map<std::string, std::array<std::size_t, 2>> wanted;
    for (const Sheet& sheet : strip_sheets()) {
        for (const page::TextItem& text : texts(sheet.page)) {
            if (text.role != Role::limit) continue;
            // Where an end is short its trim stands in one line with the words of the end.
            said[sheet.name][0] += text.text.find("TRIM ") != std::string::npos ? 1U : 0U;
            said[sheet.name][1] += text.text.starts_with("MITER ") ? 1U : 0U;
        }
        const auto& ends = sheet.piece.blank().ends;
        const auto mitred = [](const plan::BoardEnd& end) { return end.mitre.radians() != 0; };
        wanted[sheet.name] = {sheet.piece.blank().trims[0] > 0_mm ? 2U : 0U,
                              static_cast<std::size_t>(std::count_if(ends.begin(), ends.end(), mitred))};
    }
    for (const auto& [name, count] : wanted) {
        EXPECT_GE(said[name][0], count[0]) << "TRIM, " << name;
        EXPECT_GE(said[name][1], count[1]) << "MITER, " << name;
    }
}

/// Where a kerf or two stand in the trim, beside the words of the zero end.
TEST(FaceStrip, TrimIsSaidBesideACrowdedEndWhicheverIsZero) {
    std::size_t boards = 0;
    for (const job::End zero : {job::End::left, job::End::right})
        for (const measure::Length spacing : {0.375_in, 0.4375_in, 0.5_in})
            for (int tenths = 12; tenths <= 22; ++tenths) {
                job::Wall wall = harbor_stair();
                wall.chord.reset();
                wall.rise.reset();
                wall.radius = at_line(40_in, 12);
                wall.angle = at_line(measure::Angle::degrees(70), 13);
                wall.tails = {at_line(0_in, 15), at_line(0_in, 15)};
                wall.board.zero = zero;
                wall.board.spacing.given = spacing;
                wall.board.trim.value = 0.1_in * tenths;
                std::vector<Sheet> sheets;
                add_sheets(sheets, "", planned(job_of(wall), "iso_a4_210x297mm"));
                std::size_t said = 0;
                for (const Sheet& sheet : sheets)
                    for (const page::TextItem& text : texts(sheet.page))
                        said += text.role == Role::limit && text.text.find("TRIM ") != std::string::npos ? 1U : 0U;
                EXPECT_EQ(said, 2U) << "trim " << tenths << " tenths, spacing " << spacing.inches()
                                    << (zero == job::End::left ? ", left" : ", right");
                ++boards;
            }
    EXPECT_EQ(boards, 66U);
}

TEST(FaceStrip, NumeralsAreLargeAndCentredOrNudgedInside) {
    std::size_t numerals = 0;
    for (const Sheet& sheet : strip_sheets()) {
        SCOPED_TRACE(sheet.name);
        const std::vector<Rect> strips = strips_on(sheet.page);
        for (const page::TextItem& text : texts(sheet.page)) {
            if (text.role != Role::numeral) continue;
            ++numerals;
            EXPECT_GE(text.size.points(), 13) << placed(text);
            const Rect box = box_of(text);
            EXPECT_TRUE(std::any_of(strips.begin(), strips.end(), [&](const Rect& strip) {
                return strip.contains(box.low) && strip.contains(box.high);
            })) << placed(text);
        }
    }
    EXPECT_GT(numerals, 10000U);
}

TEST(FaceStrip, NoLineRunsThroughANumeral) {
    for (const Sheet& sheet : strip_sheets()) {
        SCOPED_TRACE(sheet.name);
        std::vector<page::TextItem> numerals = texts(sheet.page);
        std::erase_if(numerals, [](const page::TextItem& text) { return text.role != Role::numeral; });
        for (const page::Item& item : sheet.page.items) {
            const auto* path = std::get_if<page::PathItem>(&item);
            if (path == nullptr) continue;
            const Rect line = path->path.bounds().grown(path->width / 2);
            for (const page::TextItem& numeral : numerals) {
                if (!overlap(line, box_of(numeral))) continue;
                EXPECT_TRUE(geom::clip(path->path, box_of(numeral)).empty())
                    << page::role_name(path->role) << " through " << placed(numeral);
            }
        }
    }
}

std::vector<std::string> words_of(const plan::Piece& piece, const std::string& start) {
    std::vector<std::string> found;
    for (const Sheet& sheet : strip_sheets())
        if (sheet.piece.id == piece.id && sheet.name.starts_with("every shape on na_letter_8.5x11in, trim 3"))
            for (const page::TextItem& text : texts(sheet.page))
                if (text.text.starts_with(start)) found.push_back(text.text);
    return found;
}

plan::Piece piece_named(const plan::Plan& plan, const std::string& id) {
    for (const plan::Piece& piece : plan.pieces)
        if (piece.id == id) return piece;
    throw std::runtime_error("no piece " + id);
}

TEST(FaceStrip, AMitreIsMarkedWithItsAngleAndItsSlope) {
    const plan::Plan plan = planned(every_shape());
    // An equilateral pointed head: both sides arrive at the point at 60 degrees to its axis, so each board is cut at
    // 30. Outside the point the wood is longer than inside, and the plain face is inside.
    for (const char* id : {"E/1", "E/2"})
        EXPECT_EQ(words_of(piece_named(plan, id), "MITER"), std::vector<std::string>{"MITER 30.0°, plain face shorter"})
            << id;
    EXPECT_TRUE(words_of(piece_named(plan, "B"), "MITER").empty()) << "a semicircle ends square";
}

TEST(FaceStrip, WasteBeginsBeyondTheMitre) {
    std::size_t mitres = 0;
    for (const Sheet& sheet : strip_sheets()) {
        const plan::Piece& piece = sheet.piece;
        for (const plan::BoardEnd& end : piece.blank().ends) {
            if (end.mitre.radians() == 0) continue;
            ++mitres;
            EXPECT_NE(end.kerf_face, end.plain_face) << sheet.name;
        }
        if (piece.blank().ends[0].mitre.radians() != 0) {
            EXPECT_LE(waste_until(piece), std::min(piece.blank().ends[0].kerf_face, piece.blank().ends[0].plain_face))
                << sheet.name;
        } else {
            EXPECT_EQ(waste_until(piece), piece.blank().trims[0]) << sheet.name;
        }
        if (piece.blank().ends[1].mitre.radians() != 0) {
            EXPECT_GE(waste_from(piece), std::max(piece.blank().ends[1].kerf_face, piece.blank().ends[1].plain_face))
                << sheet.name;
        } else {
            EXPECT_EQ(waste_from(piece), piece.blank().length - piece.blank().trims[0]) << sheet.name;
        }
    }
    EXPECT_GT(mitres, 20U);
}

TEST(FaceStrip, ABoardThatBendsBothWaysSaysWhereItChanges) {
    const plan::Plan plan = planned(every_shape());
    // The eyebrow's ends are reverse curves: seen from the room its kerfs close there and open over the crown.
    EXPECT_EQ(words_of(piece_named(plan, "L"), "Kerfs ").front(), "Kerfs CLOSE, then OPEN, then CLOSE where marked");
    EXPECT_EQ(words_of(piece_named(plan, "L"), "REVERSE").size(), 2U);
    EXPECT_EQ(words_of(piece_named(plan, "W"), "Kerfs ").front(), "Kerfs OPEN, then CLOSE where marked");
    ASSERT_EQ(words_of(piece_named(plan, "W"), "REVERSE").size(), 1U);
    EXPECT_TRUE(words_of(piece_named(plan, "W"), "REVERSE").front().ends_with("kerfs CLOSE from here"));
}

TEST(FaceStrip, ASpacingThatVariesIsTold) {
    const plan::Plan plan = planned(every_shape());
    EXPECT_TRUE(varied_spacing(piece_named(plan, "C")));
    EXPECT_FALSE(words_of(piece_named(plan, "C"), "Arch liner, 1/4 to 1/2 in spacing").empty());
    EXPECT_FALSE(words_of(piece_named(plan, "B"), "Arch liner, 1/2 in spacing").empty());
}

}  // namespace
}  // namespace kerfpacket::sheets
