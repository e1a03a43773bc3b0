// Strips from sheets: nothing lies over anything, trims and kerfs are kept, and no fewer sheets would do, against a
// count of this test's own.

#include "plan/sheet_plan.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <map>
#include <random>
#include <set>

#include "job/read.h"
#include "plan/make_stock_plan.h"

namespace kerfpacket::plan {
namespace {

using namespace measure::literals;

const std::string head =
    "[job]\nnumber = \"7\"\ntitle = \"t\"\nrevision = \"A\"\ndate = 2026-11-28\nunits = \"in\"\n"
    "[saw]\nblade_diameter = 10\nkerf = 0.126\n";

std::string wall(const std::string& id, const std::string& tail, const std::string& width,
                 const std::string& material = "mdf", int quantity = 1) {
    return "[[wall]]\nid = \"" + id + "\"\nradius = \"10 ft\"\nangle = 20\nside = \"concave\"\ntails = [\"" + tail +
           "\", \"8 in\"]\nquantity = " + std::to_string(quantity) + "\n[wall.board]\nmaterial = \"" + material +
           "\"\nthickness = \"3/4 in\"\nwidth = \"" + width + "\"\n";
}

std::string row(const std::string& list, const std::string& width, const std::string& length,
                const std::string& more = "", const std::string& material = "mdf") {
    return "[[stock." + list + "]]\nmaterial = \"" + material + "\"\nthickness = \"3/4 in\"\nwidth = \"" + width +
           "\"\nlength = \"" + length + "\"\n" + more;
}

StockPlan planned(const std::string& text) {
    const job::Reading reading = job::read_job({"job.toml", head + text});
    EXPECT_TRUE(reading.complete) << job::render(reading.diagnostics, {"job.toml", head + text});
    return make_plan(reading.job).value().stock_plan.value();
}

/// What lies where on a sheet: each strip below the one before it, a kerf between, all of it within the trims; the
/// same along each strip. Returns what is cut, by name and copy.
std::multiset<std::pair<std::string, int>> laid_out(const StockPlan& plan, const SheetSection& section) {
    std::multiset<std::pair<std::string, int>> cut;
    const Length slack = 1e-6_mm;
    for (const CutSheet& sheet : section.sheets) {
        Length edge = plan.end_trim - plan.kerf;
        for (const CutStrip& strip : sheet.strips) {
            EXPECT_GE(strip.from - edge, plan.kerf - slack);
            edge = strip.from + strip.width;
            Length end = plan.end_trim - plan.kerf;
            for (const StockBlank& blank : strip.cut.blanks) {
                EXPECT_NEAR(blank.width.mm(), strip.width.mm(), 1e-6) << "one width to a strip";
                end = end + plan.kerf + blank.length;
                cut.insert({blank.id, blank.copy});
            }
            EXPECT_EQ(strip.cut.length, sheet.length);
            EXPECT_LE(end, sheet.length - plan.end_trim + slack);
            EXPECT_NEAR(strip.cut.offcut.mm(), std::max(0.0, (sheet.length - end - plan.kerf).mm()), 1e-6);
        }
        EXPECT_LE(edge, sheet.width - plan.end_trim + slack);
        EXPECT_NEAR(sheet.offcut.mm(), std::max(0.0, (sheet.width - edge - plan.kerf).mm()), 1e-6);
    }
    return cut;
}

/// The fewest bins of that room, a kerf between two of a bin: all subsets, by this test's own hand.
int fewest_bins(const std::vector<double>& lengths, double room, double kerf) {
    const std::size_t all = std::size_t{1} << lengths.size();
    std::vector<double> need(all, 0);
    for (std::size_t set = 1; set < all; ++set)
        for (std::size_t i = 0; i < lengths.size(); ++i)
            if ((set >> i & 1U) != 0) need[set] += lengths[i] + kerf;
    std::vector<int> least(all, 1000);
    least[0] = 0;
    for (std::size_t set = 1; set < all; ++set)
        for (std::size_t part = set; part > 0; part = (part - 1) & set)
            if (need[part] <= room + kerf + 1e-9) least[set] = std::min(least[set], least[set ^ part] + 1);
    return least.back();
}

StockPlan bare(Length trim) {
    StockPlan plan;
    plan.kerf = 0.125_in;
    plan.end_trim = trim;
    plan.least_offcut = 24_in;
    return plan;
}

job::StockBoard sheet(Length width, Length length, std::optional<int> cents = {}, std::optional<int> on_hand = {}) {
    job::StockBoard row;
    row.material.value = "plywood";
    row.thickness.value = 0.75_in;
    row.width.value = width;
    row.length.value = length;
    row.cents = cents;
    row.on_hand = on_hand;
    return row;
}

FromSheets random_blanks(std::mt19937& random, int most) {
    const std::vector<Length> widths{3.5_in, 5.5_in, 7.25_in};
    FromSheets wanted{"plywood", false, true, 0.75_in, {}};
    const int count = 3 + static_cast<int>(random() % static_cast<unsigned>(most - 2));
    for (int i = 0; i < count; ++i) {
        StockBlank blank;
        blank.id = std::string(1, static_cast<char>('A' + i));
        blank.length = Length::inches(12 + static_cast<double>(random() % (16 * 80)) / 16);
        blank.width = widths[random() % widths.size()];
        wanted.blanks.push_back(blank);
    }
    std::sort(wanted.blanks.begin(), wanted.blanks.end(), [](const StockBlank& a, const StockBlank& b) {
        return std::pair(b.length, a.id) < std::pair(a.length, b.id);
    });
    return wanted;
}

TEST(SheetPlan, NoFewerSheetsWouldDoAndNothingLiesOverAnything) {
    std::mt19937 random(20);
    for (int job = 0; job < 150; ++job) {
        const FromSheets wanted = random_blanks(random, 11);
        const StockPlan plan = bare(job % 2 == 0 ? 0.5_in : Length());
        job::Stock stock;
        stock.sheets = {sheet(24_in, 97_in)};
        job::Diagnostics refused;
        const SheetSection section = plan_sheets(wanted, stock, plan, refused);
        EXPECT_TRUE(refused.empty());
        EXPECT_EQ(laid_out(plan, section).size(), wanted.blanks.size());

        std::map<Length, std::vector<double>> by_width;
        for (const StockBlank& blank : wanted.blanks) by_width[blank.width].push_back(blank.length.inches());
        std::vector<double> strips;
        for (const auto& [width, lengths] : by_width)
            strips.insert(strips.end(),
                          static_cast<std::size_t>(fewest_bins(lengths, 97 - 2 * plan.end_trim.inches(), 0.125)),
                          width.inches());
        const int fewest = fewest_bins(strips, 24 - 2 * plan.end_trim.inches(), 0.125);
        EXPECT_TRUE(section.proved());
        EXPECT_EQ(section.sheets.size(), static_cast<std::size_t>(fewest));
        EXPECT_EQ(section.to_buy.at(0).count, fewest);
    }
}

TEST(SheetPlan, SizesPricesAndTheRackTogether) {
    std::mt19937 random(7);
    for (int job = 0; job < 60; ++job) {
        const FromSheets wanted = random_blanks(random, 20);
        const StockPlan plan = bare(0.5_in);
        job::Stock stock;
        stock.sheets = {sheet(49_in, 97_in, 5400, 1), sheet(61_in, 121_in, 8800), sheet(30_in, 97_in, {}, 2)};
        job::Diagnostics refused;
        const SheetSection section = plan_sheets(wanted, stock, plan, refused);
        EXPECT_TRUE(refused.empty());
        EXPECT_EQ(laid_out(plan, section).size(), wanted.blanks.size());
        std::map<std::pair<Length, Length>, int> from_rack;
        for (const CutSheet& one : section.sheets)
            if (one.in_rack) ++from_rack[{one.width, one.length}];
        for (const auto& [size, count] : from_rack) EXPECT_LE(count, size.first == 30_in ? 2 : 1);
        std::int64_t paid = 0;
        for (const BoughtSheets& bought : section.to_buy) paid += std::int64_t{*bought.cents} * bought.count;
        EXPECT_EQ(paid, section.cost);
        EXPECT_GE(section.at_most, 0);
        EXPECT_LE(section.at_most, section.cost);

        // The same of the rows in any order.
        std::reverse(stock.sheets.begin(), stock.sheets.end());
        const SheetSection again = plan_sheets(wanted, stock, plan, refused);
        EXPECT_EQ(again.cost, section.cost);
        ASSERT_EQ(again.sheets.size(), section.sheets.size());
        for (std::size_t i = 0; i < again.sheets.size(); ++i) {
            EXPECT_EQ(again.sheets[i].length, section.sheets[i].length);
            EXPECT_EQ(again.sheets[i].offcut, section.sheets[i].offcut);
        }
    }
}

TEST(SheetPlan, PiecesInAnyOrderOfTheFileGiveTheSamePlan) {
    const std::string stock = row("sheets", "49 in", "97 in", "price = 48\n");
    const std::vector<std::string> pieces{wall("A", "8 in", "7 1/4 in", "mdf", 3), wall("B", "20 in", "5 in"),
                                          wall("C", "3 in", "5 in", "mdf", 2)};
    const StockPlan one = planned(pieces[0] + pieces[1] + pieces[2] + stock);
    const StockPlan other = planned(pieces[2] + pieces[0] + pieces[1] + stock);
    ASSERT_EQ(one.sheets.size(), 1U);
    EXPECT_TRUE(one.sections.empty());
    EXPECT_EQ(laid_out(one, one.sheets[0]).size(), 6U);
    EXPECT_EQ(one.sheets[0].cost, 4800);
    ASSERT_EQ(one.sheets[0].sheets.size(), other.sheets.at(0).sheets.size());
    const auto& strips = one.sheets[0].sheets[0].strips;
    const auto& others = other.sheets[0].sheets[0].strips;
    ASSERT_EQ(strips.size(), others.size());
    for (std::size_t i = 0; i < strips.size(); ++i) {
        ASSERT_EQ(strips[i].cut.blanks.size(), others[i].cut.blanks.size());
        for (std::size_t n = 0; n < strips[i].cut.blanks.size(); ++n) {
            EXPECT_EQ(strips[i].cut.blanks[n].id, others[i].cut.blanks[n].id);
            EXPECT_EQ(strips[i].cut.blanks[n].copy, others[i].cut.blanks[n].copy);
        }
    }
}

TEST(SheetPlan, BoardsForSaleAreTakenBeforeSheets) {
    const StockPlan plan = planned(wall("A", "8 in", "7 1/4 in") + wall("B", "8 in", "9 in") +
                                   row("boards", "7 1/4 in", "12 ft") + row("sheets", "49 in", "97 in"));
    ASSERT_EQ(plan.sections.size(), 1U);
    EXPECT_EQ(plan.sections[0].sticks.at(0).blanks.at(0).id, "A");
    ASSERT_EQ(plan.sheets.size(), 1U);
    EXPECT_EQ(plan.sheets[0].sheets.at(0).strips.at(0).cut.blanks.at(0).id, "B");
}

TEST(SheetPlan, PlywoodGoesWithTheGrainAndMdfEitherWay) {
    // A blank of some 58 in: a sheet of which 49 in run along the grain holds it across alone.
    const auto text = [](const std::string& material) {
        return "[[opening]]\nid = \"A\"\nshape = \"segmental\"\nspan = \"46 in\"\nrise = \"8 in\"\ndepth = \"5 in\"\n"
               "[opening.liner]\nmaterial = \"" +
               material + "\"\nthickness = \"3/4 in\"\ntrim = \"4 in\"\n" +
               row("sheets", "97 in", "49 in", "", material);
    };
    const StockPlan mdf = planned(text("mdf"));
    EXPECT_TRUE(mdf.refused.empty());
    EXPECT_EQ(mdf.sheets.at(0).sheets.at(0).length, 97_in);
    EXPECT_EQ(mdf.sheets[0].to_buy.at(0).length, 49_in);
    const StockPlan plywood = planned(text("plywood"));
    ASSERT_EQ(plywood.refused.size(), 1U);
    EXPECT_NE(plywood.refused[0].message.find("no sheet holds the blank of A"), std::string::npos);
    EXPECT_EQ(plywood.sheets.at(0).no_room.size(), 1U);
}

TEST(SheetPlan, AWallLongerThanTheSheetIsSpliced) {
    const StockPlan plan = planned(wall("A", "90 in", "7 1/4 in") + row("sheets", "49 in", "97 in"));
    EXPECT_TRUE(plan.refused.empty());
    const auto cut = laid_out(plan, plan.sheets.at(0));
    EXPECT_EQ(cut.size(), 2U);
    EXPECT_EQ(cut.count({"A/1", 1}), 1U);
    EXPECT_EQ(cut.count({"A/2", 1}), 1U);
}

TEST(SheetPlan, WhereTheRackIsUsedUpItIsTold) {
    const StockPlan plan =
        planned(wall("A", "8 in", "7 1/4 in", "mdf", 3) + row("sheets", "16 in", "97 in", "on_hand = 1\n"));
    ASSERT_EQ(plan.refused.size(), 1U);
    EXPECT_NE(plan.refused[0].message.find("no sheet is left for the blank of A"), std::string::npos);
    EXPECT_EQ(plan.sheets.at(0).sheets.size(), 1U);
    EXPECT_EQ(plan.sheets[0].no_room.size(), 1U);
}

}  // namespace
}  // namespace kerfpacket::plan
