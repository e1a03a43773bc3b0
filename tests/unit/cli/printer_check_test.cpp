// The page a printer is measured by, what is stored of it, and how a job uses that.
#include "cli/printer_check.h"

#include <cmath>

#include <gtest/gtest.h>

#include <set>

#include "../../support/languages.h"
#include "cli/label_check.h"
#include "cli/measured_printer.h"
#include "cli/printers.h"
#include "job/read_profile.h"
#include "session.h"
#include "sheets/blanks/label_check.h"
#include "sheets/blanks/printer_check.h"
#include "support/boxes.h"
#include "support/variable.h"

namespace kerfpacket::tests {
namespace {

using cli::Edge;
using measure::Length;
using measure::Unit;

class PrinterCheck : public testing::Test {
protected:
    static Outcome check(std::vector<std::string> more) {
        more.insert(more.begin(), "printer-check");
        return run_in_process(more);
    }
    static Outcome store(const std::string& name, const std::vector<std::string>& more = {}) {
        std::vector<std::string> words = {"--profile", name,       "--first",   "top",
                                          "--level",   "6.972 in", "--upright", "9.018 in"};
        words.insert(words.end(), more.begin(), more.end());
        return check(words);
    }
    fs::path file(const std::string& name) const { return folder_ / "kerfpacket/printers" / (name + ".toml"); }
    Outcome check_job(const std::string& printer_lines) const {
        std::string text = good_job;
        text.insert(text.find("[[opening]]"), printer_lines + "\n");
        spill(folder_ / "job.toml", text);
        return run_in_process({"check", (folder_ / "job.toml").string()});
    }

    const Folder folder_;
    const Variable configuration_{"XDG_CONFIG_HOME", folder_.path().string()};
};

constexpr std::array<Length, 4> no_margins{};

/// What a ruler finds on a page from a printer that errs, straight or with the top pushed aside by `e`.
cli::Measured measured_from(double level, double upright, Length e, Edge first) {
    const sheets::CheckBars bars = sheets::printer_check_bars(job::all_media().front(), Unit::inch);
    const Length w = bars.level * level, h = bars.upright * upright;
    return {first,
            w,
            measure::hypot(e, h),
            bars.level,
            bars.upright,
            no_margins,
            std::array{measure::hypot(w + e, h), measure::hypot(w - e, h)}};
}

TEST(MeasuredPrinter, ThatPrintsShortAcrossAndLongAlongIsFound) {
    const job::Profile up = cli::profile_of(measured_from(0.996, 1.002, 0_in, Edge::top), "p");
    EXPECT_NEAR(up.across, 0.996, 1e-12);
    EXPECT_NEAR(up.along, 1.002, 1e-12);
    EXPECT_EQ(up.feed, job::Feed::short_edge);
    // Fed by its long edge, the level bar runs along the feed.
    const job::Profile side = cli::profile_of(measured_from(1.002, 0.996, 0_in, Edge::left), "p");
    EXPECT_NEAR(side.across, 0.996, 1e-12);
    EXPECT_NEAR(side.along, 1.002, 1e-12);
    EXPECT_EQ(side.feed, job::Feed::long_edge);
}

TEST(MeasuredPrinter, SkewFollowsFromTheDiagonals) {
    for (const Length e : {0_in, 0.03125_in, 0.1_in, -0.05_in})
        EXPECT_NEAR(cli::out_of_square(measured_from(0.996, 1.002, e, Edge::top)).inches(), e.inches(), 1e-9);
}

TEST(MeasuredPrinter, MarginsTurnWithTheSheet) {
    cli::Measured measured = measured_from(1, 1, 0_in, Edge::top);
    measured.lost = {1_mm, 2_mm, 3_mm, 4_mm};  // top, bottom, left, right
    const auto as_fed = [&](Edge first) {
        measured.first = first;
        const job::Margins m = cli::profile_of(measured, "p").margins;
        return std::array{m.left.mm(), m.right.mm(), m.leading.mm(), m.trailing.mm()};
    };
    // A sheet of paper turned in the hand until the edge is away from one.
    EXPECT_EQ(as_fed(Edge::top), (std::array{3.0, 4.0, 1.0, 2.0}));
    EXPECT_EQ(as_fed(Edge::bottom), (std::array{4.0, 3.0, 2.0, 1.0}));
    EXPECT_EQ(as_fed(Edge::left), (std::array{2.0, 1.0, 3.0, 4.0}));
    EXPECT_EQ(as_fed(Edge::right), (std::array{1.0, 2.0, 4.0, 3.0}));
}

TEST(CheckPage, HasItsBarsTrueAndItsWordsInTheirPlaces) {
    std::vector<job::Media> papers = job::all_media();
    papers.push_back(*job::find_media("custom_least_8.25x10.75in"));
    papers.push_back(*job::find_media("custom_roll_8.5in"));
    papers.push_back(*job::find_media("custom_roll_44in"));
    for (const job::Media& media : papers)
        for (const Unit unit : {Unit::inch, Unit::millimetre}) {
            SCOPED_TRACE(media.name);
            const page::Page page = sheets::make_printer_check(media, unit, kit()).pages.at(0);
            EXPECT_DOUBLE_EQ(page.width.mm(), media.width.mm());
            const sheets::CheckBars bars = sheets::printer_check_bars(media, unit);
            int level = 0, upright = 0;
            for (const page::PathItem& line : paths(page, page::Role::check_bar)) {
                const geom::Rect box = line.path.bounds();
                if (std::abs((box.width() - bars.level).mm()) < 1e-9) ++level;
                if (std::abs((box.height() - bars.upright).mm()) < 1e-9) ++upright;
                EXPECT_GE(box.low.x, 0.5_in);
                EXPECT_LE(box.high.x, page.width - 0.3_in);
            }
            EXPECT_GE(level, 1);
            EXPECT_GE(upright, 1);
            // A 1/64 in of reading is at most 0.3 % of the shorter bar.
            EXPECT_GE(bars.level, 150_mm);
            EXPECT_EQ(text_faults(page), std::vector<std::string>{});
            EXPECT_EQ(text_faults(sheets::make_printer_check(media, unit, kit("es")).pages.at(0)),
                      std::vector<std::string>{});
        }
}

TEST(CheckPage, ShowsTheSizesAndLinesOfStripsForAnArmsLength) {
    const page::Page page =
        sheets::make_printer_check(*job::find_media("na_letter_8.5x11in"), Unit::inch, kit()).pages.at(0);
    std::set<double> sizes, lines;
    for (const page::TextItem& text : texts(page))
        if (text.role == page::Role::numeral) sizes.insert(text.size.points());
    for (const page::PathItem& line : paths(page, page::Role::outline)) lines.insert(line.width.points());
    EXPECT_EQ(sizes.size(), 4U);
    EXPECT_NEAR(*sizes.rbegin(), 17, 1e-9);
    EXPECT_NEAR(*sizes.begin(), 9, 1e-9);
    EXPECT_EQ(lines.size(), 4U);
}

/// A label roll's strip: one bar along the feed, and all words beside it, on 1 in of paper too.
TEST(CheckPage, OfANarrowRollIsAStripWithOneBarAlongTheFeed) {
    for (const char* roll : {"custom_roll_1in", "custom_roll_62mm", "custom_roll_4in", "custom_roll_8.4in"})
        for (const Unit unit : {Unit::inch, Unit::millimetre})
            for (const std::string& language : tests::languages()) {
                SCOPED_TRACE(std::string(roll) + " " + language);
                const job::Media media = *job::find_media(roll);
                const page::Page page = sheets::make_printer_check(media, unit, kit(language)).pages.at(0);
                EXPECT_DOUBLE_EQ(page.width.mm(), media.width.mm());
                const double feed = page.height / 6_pt;
                EXPECT_NEAR(feed, std::round(feed), 1e-9) << "whole dots";
                const sheets::CheckBars bars = sheets::printer_check_bars(media, unit);
                EXPECT_EQ(bars.level, unit == Unit::inch ? 24_in : 600_mm);
                EXPECT_EQ(bars.upright, Length());
                int along = 0;
                for (const page::PathItem& line : paths(page, page::Role::check_bar))
                    if (std::abs((line.path.bounds().height() - bars.level).mm()) < 1e-9) ++along;
                EXPECT_EQ(along, 1);
                EXPECT_EQ(text_faults(page, 18_pt, 4_pt), std::vector<std::string>{});
            }
}

TEST_F(PrinterCheck, MeasuresANarrowRollAlongItsFeedAlone) {
    const std::string out = (folder_ / "label.pdf").string();
    const Outcome page = check({"--media", "custom_roll_62mm", "--out", out});
    EXPECT_EQ(page.status, 0) << page.err;
    EXPECT_NE(page.out.find("bar 600 mm along the feed"), std::string::npos) << page.out;
    const std::vector<std::string> label = {"--media", "custom_roll_62mm", "--units", "in", "--profile", "labels"};
    const auto with = [&](std::vector<std::string> more) {
        more.insert(more.begin(), label.begin(), label.end());
        return check(more);
    };
    EXPECT_NE(with({}).err.find("needs --level"), std::string::npos);
    EXPECT_NE(with({"--level", "24.048 in", "--upright", "2 in"}).err.find("measured by --level alone"),
              std::string::npos);
    EXPECT_NE(with({"--level", "23 in"}).err.find("more than 2 %"), std::string::npos);
    EXPECT_FALSE(fs::exists(file("labels")));
    const Outcome stored = with({"--level", "24.048 in"});
    EXPECT_EQ(stored.status, 0) << stored.err;
    EXPECT_NE(stored.out.find("prints 0.20 % long along the feed; across it was not measured"), std::string::npos)
        << stored.out;
    const auto profile = job::read_profile({"labels.toml", slurp(file("labels"))}, "labels").profile;
    ASSERT_TRUE(profile);
    EXPECT_NEAR(profile->along, 1.002, 1e-5);
    EXPECT_EQ(profile->across, 1);
}

TEST_F(PrinterCheck, WritesThePage) {
    const std::string out = (folder_ / "page.pdf").string();
    const Outcome outcome = check({"--media", "iso_a4_210x297mm", "--out", out});
    EXPECT_EQ(outcome.status, 0) << outcome.err;
    EXPECT_NE(outcome.out.find("level bar 170 mm, upright bar 250 mm"), std::string::npos) << outcome.out;
    EXPECT_EQ(slurp(out).substr(0, 5), "%PDF-");
    EXPECT_EQ(check({"--out", out}).status, 0) << "a page of ours may be replaced";
    spill(out, "notes");
    EXPECT_EQ(check({"--out", out}).status, 2);
    EXPECT_EQ(slurp(out), "notes");
    EXPECT_NE(check({"--out", (folder_ / "no/page.pdf").string()}).err.find("its folder does not exist"),
              std::string::npos);
}

TEST_F(PrinterCheck, StoresWhatWasMeasured) {
    const Outcome outcome = store("office", {"--margins", "1/4 in, 1/2 in, 3/16 in, 3/16 in"});
    EXPECT_EQ(outcome.status, 0) << outcome.err;
    EXPECT_NE(outcome.out.find("bars 7 in and 9 in when true; prints 0.40 % short across the feed, 0.20 % long along "
                               "it, short edge first"),
              std::string::npos)
        << outcome.out;
    const auto profile = job::read_profile({"office.toml", slurp(file("office"))}, "office").profile;
    ASSERT_TRUE(profile);
    EXPECT_NEAR(profile->across, 0.996, 1e-5);
    EXPECT_NEAR(profile->along, 1.002, 1e-5);
    EXPECT_NEAR(profile->margins.trailing.inches(), 0.5, 1e-6);
    EXPECT_NEAR(profile->margins.left.inches(), 0.1875, 1e-6);
}

TEST_F(PrinterCheck, ReplacesAProfileOnlyWhenForced) {
    EXPECT_EQ(store("office").status, 0);
    const std::string before = slurp(file("office"));
    const Outcome again = store("office", {"--level", "7 in"});
    EXPECT_EQ(again.status, 2);
    EXPECT_EQ(slurp(file("office")), before);
    const Outcome outcome = check({"--profile", "office", "--first", "top", "--level", "7 in", "--upright", "9 in"});
    EXPECT_NE(outcome.err.find("is there already; --force replaces it"), std::string::npos) << outcome.err;
    EXPECT_EQ(
        check({"--profile", "office", "--first", "top", "--level", "7 in", "--upright", "9 in", "--force"}).status, 0);
    EXPECT_NE(slurp(file("office")), before);
}

TEST_F(PrinterCheck, APageMadeToFitIsRefused) {
    const Outcome outcome = check({"--profile", "office", "--first", "top", "--level", "6-25/32 in", "--upright", "9"});
    EXPECT_EQ(outcome.status, 2);
    EXPECT_NE(outcome.err.find("the level bar is 7 in when true and was measured as 6-25/32 in, 3.13 % short"),
              std::string::npos)
        << outcome.err;
    EXPECT_NE(outcome.err.find("switch off \"fit to page\""), std::string::npos);
    EXPECT_FALSE(fs::exists(file("office")));
}

TEST_F(PrinterCheck, SkewIsACaution) {
    const Outcome square = store("office", {"--diagonals", "11.4 in, 11.4 in"});
    EXPECT_EQ(square.status, 0) << square.err;
    EXPECT_NE(square.out.find("Square within 0 in over the page."), std::string::npos) << square.out;
    const Outcome skewed = store("crooked", {"--diagonals", "11-15/32 in, 11-3/8 in"});
    EXPECT_EQ(skewed.status, 3);
    EXPECT_NE(skewed.out.find("set the tray's guides"), std::string::npos) << skewed.out;
    EXPECT_NE(store("other", {"--diagonals", "9 in, 9 in"}).err.find("does not go with these bars"), std::string::npos);
}

TEST_F(PrinterCheck, WrongWordsAreTold) {
    for (const auto& [words, what] : std::vector<std::pair<std::vector<std::string>, std::string>>{
             {{"--profile", "a b", "--first", "top", "--level", "7", "--upright", "9"}, "letters, digits and hyphens"},
             {{"--profile", "a", "--level", "7", "--upright", "9"}, "needs --first, --level and --upright"},
             {{"--profile", "a", "--first", "top", "--level", "x", "--upright", "9"},
              "--level \"x\": expected a number"},
             {{"--profile", "a", "--first", "top", "--level", "-7", "--upright", "9"}, "is negative"},
             {{"--profile", "a", "--first", "up", "--level", "7", "--upright", "9"}, "--first"},
             {{"--level", "7 in"}, "needs a name to be stored under"},
             {{"--media", "na_leter_8.5x11in"}, "did you mean \"na_letter_8.5x11in\"?"}}) {
        const Outcome outcome = check(words);
        EXPECT_EQ(outcome.status, 2) << what;
        EXPECT_NE(outcome.err.find(what), std::string::npos) << outcome.err;
    }
    EXPECT_NE(store("a", {"--margins", "1/4 in, 1/4 in"}).err.find("expected four lengths: top, bottom, left, right"),
              std::string::npos);
    EXPECT_NE(store("a", {"--margins", "2 in, 0, 0, 0"}).err.find("at most 1/2 in"), std::string::npos);
    EXPECT_FALSE(fs::exists(file("a")));
}

TEST_F(PrinterCheck, AFolderThatCannotBeMadeIsTold) {
    spill(folder_ / "kerfpacket", "a file in the way");
    const Outcome outcome = store("office");
    EXPECT_EQ(outcome.status, 2);
    EXPECT_NE(outcome.err.find("cannot make the folder"), std::string::npos) << outcome.err;
}

TEST_F(PrinterCheck, AJobTakesItsPrinterByName) {
    ASSERT_EQ(store("office").status, 0);
    const Outcome outcome = check_job("profile = \"office\"");
    EXPECT_EQ(outcome.status, 0) << outcome.err;
    EXPECT_NE(outcome.out.find("office: prints 0.40 % short across the feed, 0.20 % long along it"), std::string::npos)
        << outcome.out;
    EXPECT_EQ(check_job("").out.find("Printed on"), std::string::npos);
    EXPECT_NE(check_job("adhesive = true").out.find("strips Letter 8-1/2 x 11 in, self-adhesive"), std::string::npos);
}

TEST_F(PrinterCheck, APrinterThatIsNotThereIsToldInTheJob) {
    Outcome outcome = check_job("profile = \"office\"");
    EXPECT_EQ(outcome.status, 2);
    EXPECT_NE(outcome.err.find("job.toml:15:11: error: there is no printer profile \"office\""), std::string::npos)
        << outcome.err;
    EXPECT_NE(outcome.err.find("where none is; \"kerfpacket printer-check\" tells"), std::string::npos) << outcome.err;
    ASSERT_EQ(store("office").status, 0);
    ASSERT_EQ(store("plotter").status, 0);
    outcome = check_job("profile = \"ofice\"");
    EXPECT_NE(outcome.err.find("did you mean \"office\"? looked in " + (folder_ / "kerfpacket/printers").string() +
                               ", where there are office, plotter"),
              std::string::npos)
        << outcome.err;
    spill(folder_ / "shop.toml", "[printer]\nprofile = \"laser\"\n");
    EXPECT_NE(check_job("").err.find("there is no printer profile \"laser\" (the shop file names it)"),
              std::string::npos);
}

TEST_F(PrinterCheck, AFaultyProfileIsToldWithItsFile) {
    ASSERT_EQ(store("office").status, 0);
    std::string text = slurp(file("office"));
    text.replace(text.find("0.99600"), 7, "0.94000");
    spill(file("office"), text);
    const Outcome outcome = check_job("profile = \"office\"");
    EXPECT_EQ(outcome.status, 2);
    EXPECT_NE(outcome.err.find("office.toml:5:10: error: across says that the printer prints 6.00 % short"),
              std::string::npos)
        << outcome.err;
    EXPECT_NE(outcome.err.find("job.toml:15:11: error: the printer profile \"office\" cannot be used"),
              std::string::npos);
}

/// Two columns of five, as the shop's rule has them.
const std::string label_sheet =
    "[printer.labels]\nmedia = \"na_letter_8.5x11in\"\ncolumns = 2\nrows = 5\nwidth = \"4 in\"\nheight = \"2 in\"\n"
    "left = \"5/32 in\"\ntop = \"1/2 in\"\nacross = \"4 3/16 in\"\n";

class LabelCheck : public PrinterCheck {
protected:
    LabelCheck() { spill(shop_, label_sheet); }
    Outcome check(std::vector<std::string> more) const {
        more.insert(more.begin(), {"--labels", shop_});
        return PrinterCheck::check(more);
    }
    const Folder here_;
    const std::string shop_ = (here_ / "shop.toml").string();
};

/// A printer of which the shift and the error both ways are known, and a ruler on what it prints: told the figures that
/// the command answers, it prints each label where it lies.
TEST(MeasuredLabels, AreToldSoThatTheyAreHit) {
    struct Error {
        Length right, down;
        double across, along;
    };
    job::LabelStock cut;
    cut.paper = job::all_media().front();
    cut.columns = 3;
    cut.rows = 8;
    cut.width = 2.5_in;
    cut.height = 1.25_in;
    cut.across = 2.625_in;
    cut.down = 1.25_in;
    cut.left = 0.375_in;
    cut.top = 0.5_in;
    const Length mark = 0.5_in;
    for (const Error& error : {Error{0.03_in, -0.05_in, 1.004, 0.997}, Error{-0.06_in, 0.02_in, 0.99, 1.01}}) {
        const auto printed = [&](Length x, Length y) {
            return geom::Point{x * error.across + error.right, y * error.along + error.down};
        };
        const auto found = [&](int column, int row) {
            const Length left = cut.left + cut.across * column, top = cut.top + cut.down * row;
            const geom::Point at = printed(left + mark, top + mark);
            return cli::MarkAt{at.x - left, at.y - top};
        };
        const job::LabelStock told = cli::as_measured(cut, mark, found(0, 0), found(2, 7));
        for (int column = 0; column < 3; ++column)
            for (int row = 0; row < 8; ++row) {
                const geom::Point at =
                    printed(told.left + told.across * column + mark, told.top + told.down * row + mark);
                // What is left is the printer's error of its own error: 1 % of 1 % of the sheet.
                EXPECT_NEAR((at.x - cut.left - cut.across * column - mark).inches(), 0, 0.002);
                EXPECT_NEAR((at.y - cut.top - cut.down * row - mark).inches(), 0, 0.002);
            }
    }
}

TEST(MeasuredLabels, OfOneColumnKeepTheirStep) {
    job::LabelStock one;
    one.rows = 4;
    one.across = one.width = 4_in;
    one.down = one.height = 2_in;
    one.left = one.top = 1_in;
    const job::LabelStock told = cli::as_measured(one, 0.5_in, {0.25_in, 0.5_in}, {0.25_in, 0.8_in});
    EXPECT_EQ(told.across, 4_in);
    EXPECT_NEAR(told.left.inches(), 1.25, 1e-9);
    EXPECT_NEAR(told.down.inches(), 1.9, 1e-9);
    EXPECT_EQ(told.height, told.down) << "they touched, and lie not over each other";
    EXPECT_EQ(told.width, 4_in);
    EXPECT_NEAR(told.top.inches(), 1, 1e-9);
}

TEST(LabelCheckSheet, OutlinesEachLabelAndMarksTheFirstAndTheLast) {
    job::LabelStock labels;
    labels.paper = job::all_media().front();
    for (const auto& [columns, rows, width, height] : {std::tuple{2, 5, 4.0, 2.0},
                                                       {3, 10, 2.625, 1.0},
                                                       {1, 1, 8.0, 10.5},
                                                       {4, 20, 1.75, 0.5},
                                                       {10, 40, 0.75, 0.25}}) {
        labels.columns = columns;
        labels.rows = rows;
        labels.width = labels.across = Length::inches(width);
        labels.height = labels.down = Length::inches(height);
        labels.left = 0.25_in;
        labels.top = 0.25_in;
        for (const Unit unit : {Unit::inch, Unit::millimetre})
            for (const std::string& language : tests::languages()) {
                SCOPED_TRACE(std::to_string(columns) + " x " + std::to_string(rows) + " " + language);
                const page::Page page = sheets::make_label_check(labels, unit, kit(language)).pages.at(0);
                EXPECT_EQ(text_faults(page, 4_pt, 4_pt), std::vector<std::string>{});
                std::size_t outlines = 0;
                for (const page::PathItem& path : paths(page, page::Role::outline)) {
                    const geom::Rect box = path.path.bounds();
                    const double column = (box.low.x - labels.left) / labels.across;
                    const double row = (page.height - labels.top - box.high.y) / labels.down;
                    EXPECT_NEAR(column, std::round(column), 1e-6);
                    EXPECT_NEAR(row, std::round(row), 1e-6);
                    EXPECT_NEAR((box.width() - labels.width).mm(), 0, 1e-6);
                    EXPECT_NEAR((box.height() - labels.height).mm(), 0, 1e-6);
                    ++outlines;
                }
                EXPECT_EQ(outlines, static_cast<std::size_t>(labels.on_sheet()));
                const Length mark = sheets::label_check_mark(labels, unit);
                EXPECT_LE(mark * 2, std::min(labels.width, labels.height));
                const auto marks = paths(page, page::Role::check_bar);
                ASSERT_EQ(marks.size(), labels.on_sheet() == 1 ? 2U : 4U);
                EXPECT_NEAR((marks[0].path.start().y - (page.height - labels.top - mark)).mm(), 0, 1e-6);
                EXPECT_NEAR((marks[1].path.start().x - (labels.left + mark)).mm(), 0, 1e-6);
            }
    }
}

TEST_F(LabelCheck, WritesTheSheetAndTellsWhatIsMeasured) {
    const std::string out = (folder_ / "sheet.pdf").string();
    const Outcome sheet = check({"--out", out});
    EXPECT_EQ(sheet.status, 0) << sheet.err;
    EXPECT_NE(sheet.out.find("the mark of label 1 and of label 10 is 1/2 in from its left"), std::string::npos)
        << sheet.out;
    EXPECT_EQ(slurp(out).substr(0, 5), "%PDF-");
    const Outcome told = check({"--first-label", "17/32 in, 1/2 in", "--last-label", "9/16 in, 0.46 in"});
    EXPECT_EQ(told.status, 0) << told.err;
    // 5/32 - 1/32; 1/2; 4-3/16 - 1/32; 2 + 0.04 / 4.
    EXPECT_EQ(told.out,
              "[printer.labels]\nleft = \"0.125 in\"\ntop = \"0.500 in\"\nacross = \"4.156 in\"\ndown = \"2.010 in\"\n"
              "width = \"4.000 in\"\nheight = \"2.000 in\"\n");
}

TEST_F(LabelCheck, OfAJobTakesTheLabelsOfItsShop) {
    spill(here_ / "job.toml", good_job);
    const Outcome of_job = PrinterCheck::check(
        {"--labels", (here_ / "job.toml").string(), "--first-label", "1/2, 1/2", "--last-label", "1/2, 1/2"});
    EXPECT_EQ(of_job.status, 0) << of_job.err;
    EXPECT_NE(of_job.out.find("across = \"4.188 in\""), std::string::npos) << of_job.out;
}

TEST_F(LabelCheck, WhatCannotBeIsTold) {
    const auto refused = [&](const Outcome& outcome, const std::string& why) {
        EXPECT_EQ(outcome.status, 2) << why;
        EXPECT_NE(outcome.err.find(why), std::string::npos) << outcome.err;
    };
    const auto measured = [&](const std::string& first, const std::string& last) {
        return check({"--first-label", first, "--last-label", last});
    };
    refused(check({"--first-label", "1/2 in, 1/2 in"}), "--first-label and --last-label");
    refused(measured("1/2 in", "1/2 in, 1/2 in"), "expected two lengths");
    refused(measured("3 in, 1/2 in", "1/2 in, 1/2 in"), "is on another label");
    refused(measured("3/8 in, 1/2 in", "5/8 in, 1/2 in"), "across would change by 5.97 % short: more than 2 %");
    refused(measured("3/4 in, 1/2 in", "3/4 in, 1/2 in"), "beyond the edge of their sheet");
    refused(check({"--profile", "office"}), "excludes");
    spill(shop_, "[printer.labels]\nmedia = \"custom_roll_62mm\"\n");
    refused(check({}), "kerfpacket printer-check --media custom_roll_62mm");
    spill(shop_, "[printer]\nmargin = \"1/4 in\"\n");
    refused(check({}), "expected [printer.labels]");
    spill(shop_, "[printer.labels]\nmedia = \"na_letter_8.5x11in\"\ncolums = 2\n");
    refused(check({}), "shop.toml:1:1: error: width of the labels is not given");
    refused(PrinterCheck::check({"--first-label", "1/2, 1/2"}), "--labels");
    fs::remove(shop_);
    refused(check({}), "shop.toml");
}

}  // namespace
}  // namespace kerfpacket::tests
