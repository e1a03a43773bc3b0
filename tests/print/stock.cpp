// Cut tickets as poppler reads them off the PDF, counted again: every blank once, no board overfull.

#include <gtest/gtest.h>

#include <cctype>
#include <cmath>
#include <map>
#include <nlohmann/json.hpp>
#include <random>
#include <regex>
#include <sstream>

#include "support/program.h"

namespace kerfpacket::tests {
namespace {

using Json = nlohmann::json;

constexpr double saw_kerf = 1.0 / 8;

/// "60-1/2", "7/8", "1524".
double figure(const std::string& text) {
    static const std::regex parts(R"((?:(\d+)-)?(\d+)/(\d+)|(\d+(?:[.,]\d+)?))");
    std::smatch match;
    if (!std::regex_match(text, match, parts)) throw std::runtime_error("no figure: " + text);
    if (match[4].matched) return std::stod(match[4]);
    const double whole = match[1].matched ? std::stod(match[1]) : 0;
    return whole + std::stod(match[2]) / std::stod(match[3]);
}

struct Row {
    std::string blank;
    double stop = 0;
    double ends = 0;
};
struct Ticket {
    double length = 0;
    std::vector<Row> rows;
    double offcut = 0;
    std::vector<double> coupons{};  ///< that come out of the offcut, each by its length
};

/// The tickets of a packet, in the unit that they are printed in.
std::vector<Ticket> tickets_of(const std::string& pdf) {
    static const std::regex head(R"(\s*(?:Board|Tabla) \d+: .* \(?([\d./-]+) (?:in\)?|mm|pulg\)?)(?:,.*?)?\s{2,})"
                                 R"((?:offcut|retazo)(?: after its coupons| tras las probetas)? ([\d/-]+) )"
                                 R"((?:in|mm|pulg)(?:: (?:KEEP|GUARDAR))?)");
    static const std::regex row(R"(\s*\d+\s{2,}(\S.*?)\s{2,}([\d/-]+) (?:in|mm|pulg)\s{2,}([\d/-]+) (?:in|mm|pulg))");
    static const std::regex coupons(
        R"(\s*\S.*: (\d+)\s{2,}([\d/-]+) (?:in|mm|pulg)\s{2,}(?:from the offcut|del retazo))");
    const Outcome text = run_program({"pdftotext", "-layout", pdf, "-"});
    std::vector<Ticket> tickets;
    std::istringstream lines(text.out);
    std::smatch match;
    for (std::string line; std::getline(lines, line);) {
        const std::string bare = std::regex_replace(line, std::regex(R"([\f\r]|\s+$)"), "");
        if (std::regex_match(bare, match, head)) {
            tickets.push_back({figure(match[1]), {}, figure(match[2]), {}});
        } else if (!tickets.empty() && std::regex_match(bare, match, row)) {
            tickets.back().rows.push_back({match[1], figure(match[2]), figure(match[3])});
        } else if (!tickets.empty() && std::regex_match(bare, match, coupons)) {
            tickets.back().coupons.insert(tickets.back().coupons.end(), std::stoul(match[1]), figure(match[2]));
        }
    }
    return tickets;
}

struct Sheet {
    const char* units;
    const char* language;
    double unit_mm;    ///< of the printed figures
    double tolerance;  ///< what rounding for the tape leaves
};

std::string house(const Sheet& sheet, const std::string& stock = {}) {
    const bool inch = std::string(sheet.units) == "in";
    const auto length = [&](double inches) {
        return inch ? std::to_string(inches) : std::to_string(std::round(inches * 25.4));
    };
    std::string text =
        "[job]\nnumber = \"52\"\ntitle = \"Tannery row\"\nrevision = \"A\"\ndate = 2026-11-28\nunits = \"" +
        std::string(sheet.units) + "\"\nlanguage = \"" + sheet.language + "\"\n[saw]\nblade_diameter = " + length(10) +
        "\nkerf = \"1/8 in\"\n";
    const auto arch = [&](const char* id, double span, double rise, int quantity) {
        text += "[[opening]]\nid = \"" + std::string(id) + "\"\nshape = \"segmental\"\nspan = " + length(span) +
                "\nrise = " + length(rise) + "\nmeasured_to = \"wall\"\ndepth = " + length(4.5625) +
                "\nquantity = " + std::to_string(quantity) +
                "\n[opening.liner]\nmaterial = \"mdf\"\nthickness = \"3/4 in\"\ntrim = " + length(3) + "\n";
    };
    arch("A", 58.75, 13.625, 3);
    arch("C", 40, 7, 2);
    arch("N", 71, 15, 1);
    if (!stock.empty()) return text + stock;
    return text + "[stock]\nlengths = [" + length(96) + ", " + length(144) + ", " + length(192) + "]\n";
}

class PrintedTickets : public testing::TestWithParam<Sheet> {};

TEST_P(PrintedTickets, HaveEveryBlankOnceAndNoBoardOverfull) {
    const Sheet& sheet = GetParam();
    const Folder folder;
    const std::string job = (folder / "job.toml").string();
    const std::string pdf = (folder / "stock.pdf").string();
    spill(job, house(sheet));
    const Outcome built = run_program({KERFPACKET_PROGRAM, "build", job, "--only", "stock", "--out", pdf});
    ASSERT_TRUE(built.status == 0 || built.status == 3) << built.err;
    const Json checked = Json::parse(run_program({KERFPACKET_PROGRAM, "check", "--json", job}).out);

    std::map<std::string, int> seen;
    const double trim = std::string(sheet.units) == "in" ? 0.5 : 12;
    const double kerf = saw_kerf * 25.4 / sheet.unit_mm;
    const std::vector<Ticket> tickets = tickets_of(pdf);
    EXPECT_GE(tickets.size(), 2U);
    for (const Ticket& ticket : tickets) {
        ASSERT_FALSE(ticket.rows.empty());
        double at = -kerf;
        for (const Row& row : ticket.rows) {
            at += kerf + row.stop;
            EXPECT_NEAR(row.ends, at, sheet.tolerance) << row.blank;
            ++seen[row.blank];
        }
        EXPECT_LE(at + trim * 2, ticket.length + 1e-6);
        double left = ticket.length - trim - at - kerf;
        for (const double coupon : ticket.coupons) left -= coupon + kerf;
        EXPECT_NEAR(ticket.offcut, left, sheet.tolerance);
    }
    std::size_t wanted = 0;
    for (const Json& piece : checked["pieces"]) {
        const std::string id = piece["id"];
        const int quantity = id == "A" ? 3 : id == "C" ? 2 : 1;
        for (int copy = 1; copy <= quantity; ++copy, ++wanted) {
            const std::string of = std::string(sheet.language) == "es" ? " de " : " of ";
            const std::string name =
                quantity == 1 ? id : id + ", " + std::to_string(copy) + of + std::to_string(quantity);
            EXPECT_EQ(seen[name], 1) << name;
            for (const Ticket& ticket : tickets)
                for (const Row& row : ticket.rows)
                    if (row.blank == name) {
                        EXPECT_NEAR(row.stop * sheet.unit_mm, double(piece["blank_length_mm"]),
                                    sheet.tolerance * sheet.unit_mm);
                    }
        }
    }
    EXPECT_EQ(wanted, 6U);
    EXPECT_EQ(seen.size(), wanted);
}

INSTANTIATE_TEST_SUITE_P(All, PrintedTickets,
                         testing::Values(Sheet{"in", "en", 25.4, 1.0 / 32 + 1e-6},
                                         Sheet{"in", "es", 25.4, 1.0 / 32 + 1e-6}, Sheet{"mm", "en", 1, 0.5 + 1e-6},
                                         Sheet{"mm", "es", 1, 0.5 + 1e-6}),
                         [](const auto& one) { return std::string(one.param.units) + one.param.language; });

/// A house that a seed makes up: walls and arches, several alike, some of several blanks; boards of two widths with or
/// without prices, some in the rack. All invented.
struct MadeUp {
    std::string text;
    std::map<std::string, int> quantity;
    std::map<double, int> in_rack;  ///< by length in inches
};

MadeUp made_up(unsigned seed) {
    std::mt19937 random(seed);
    const auto pick = [&](int least, int most) {
        return least + static_cast<int>(random() % unsigned(most - least + 1));
    };
    MadeUp house;
    house.text = "[job]\nnumber = \"" + std::to_string(60 + seed) +
                 "\"\ntitle = \"Fern row\"\nrevision = \"A\"\ndate = 2026-11-28\nunits = \"in\"\n[saw]\nblade_diameter "
                 "= 10\nkerf = "
                 "\"1/8 in\"\n";
    const auto begin = [&](const std::string& kind, const std::string& id) {
        house.quantity[id] = pick(1, 3);
        house.text += "[[" + kind + "]]\nid = \"" + id + "\"\nquantity = " + std::to_string(house.quantity[id]) + "\n";
    };
    for (int i = pick(1, 3); i > 0; --i) {
        begin("opening", "A" + std::to_string(i));
        house.text += "shape = \"segmental\"\nspan = " + std::to_string(pick(40, 90)) +
                      "\nrise = 9\ndepth = " + (pick(0, 1) == 0 ? "4.5" : "5.25") +
                      "\n[opening.liner]\nmaterial = \"mdf\"\nthickness = \"3/4 in\"\n";
    }
    for (int i = pick(1, 3); i > 0; --i) {
        begin("wall", "W" + std::to_string(i));
        house.text += "radius = \"10 ft\"\nangle = " + std::to_string(pick(15, 40)) +
                      "\nside = \"concave\"\ntails = [" + std::to_string(pick(8, 150)) + ", " +
                      std::to_string(pick(8, 60)) +
                      "]\n[wall.board]\nmaterial = \"mdf\"\nthickness = \"3/4 in\"\nwidth = 5.25\n";
    }
    house.text += "[stock]\nend_trim = \"1/2 in\"\n";
    const bool priced = seed % 2 == 0;
    for (const int feet : {8, 12, 16}) {
        house.text += "[[stock.boards]]\nmaterial = \"mdf\"\nthickness = \"3/4 in\"\nwidth = 5.25\nlength = \"" +
                      std::to_string(feet) + " ft\"\n";
        if (priced) house.text += "price = " + std::to_string(feet * pick(15, 22)) + ".00\n";
    }
    house.in_rack[110] = pick(1, 2);
    house.text +=
        "[[stock.boards]]\nmaterial = \"mdf\"\nthickness = \"3/4 in\"\nwidth = 5.25\nlength = 110\non_hand = " +
        std::to_string(house.in_rack[110]) + "\n";
    return house;
}

/// The blanks that the work orders tell, by the names that tickets give them: lengths in inches.
std::map<std::string, double> blanks_of(const Json& checked, const MadeUp& house) {
    std::map<std::string, double> blanks;
    for (const Json& piece : checked["pieces"]) {
        const std::string id = piece["id"];
        std::map<std::string, double> of_one{{id, double(piece["blank_length_mm"]) / 25.4}};
        if (!piece["splices"].empty()) of_one.clear();
        for (const Json& blank : piece["splices"]) of_one[blank["id"]] = double(blank["length_mm"]) / 25.4;
        const int copies = house.quantity.at(id);
        for (const auto& [name, length] : of_one)
            for (int copy = 1; copy <= copies; ++copy)
                blanks[copies == 1 ? name : name + ", " + std::to_string(copy) + " of " + std::to_string(copies)] =
                    length;
    }
    return blanks;
}

TEST(MadeUpHouses, HaveEveryBlankOnceOnTheirPrintedTickets) {
    std::size_t spliced = 0, ripped = 0, racked = 0;
    for (unsigned seed = 0; seed < 12; ++seed) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        const MadeUp house = made_up(seed);
        const Folder folder;
        const std::string job = (folder / "job.toml").string();
        const std::string pdf = (folder / "stock.pdf").string();
        spill(job, house.text);
        const Outcome built = run_program({KERFPACKET_PROGRAM, "build", job, "--only", "stock", "--out", pdf});
        ASSERT_TRUE(built.status == 0 || built.status == 3) << built.err << house.text;
        const auto blanks =
            blanks_of(Json::parse(run_program({KERFPACKET_PROGRAM, "check", "--json", job}).out), house);
        std::map<std::string, int> seen;
        for (const Ticket& ticket : tickets_of(pdf)) {
            double at = -saw_kerf;
            for (const Row& row : ticket.rows) {
                at += saw_kerf + row.stop;
                EXPECT_NEAR(row.ends, at, 1.0 / 32 + 1e-6) << row.blank;
                const std::string name = row.blank.substr(0, row.blank.find(": rip to"));
                ripped += name != row.blank;
                ++seen[name];
                ASSERT_TRUE(blanks.contains(name)) << name;
                EXPECT_NEAR(row.stop, blanks.at(name), 1.0 / 32 + 1e-6) << name;
                spliced += name.find('/') != std::string::npos;
            }
            EXPECT_LE(at + 1, ticket.length + 1e-6);
        }
        EXPECT_EQ(seen.size(), blanks.size());
        for (const auto& [name, count] : seen) EXPECT_EQ(count, 1) << name;
        // Boards of the rack are no more than lie there; the others are as many as are bought.
        const Json plan = Json::parse(run_program({KERFPACKET_PROGRAM, "stock", "--json", job}).out);
        int bought = 0;
        for (const Json& section : plan["sections"])
            for (const Json& buy : section["buy"]) bought += int(buy["count"]);
        const std::string text = run_program({"pdftotext", "-layout", pdf, "-"}).out;
        static const std::regex rack(R"(Board \d+: .*, from the rack)");
        const auto from_rack = std::distance(std::sregex_iterator(text.begin(), text.end(), rack), {});
        EXPECT_LE(from_rack, house.in_rack.at(110));
        EXPECT_EQ(tickets_of(pdf).size(), static_cast<std::size_t>(bought + from_rack));
        racked += static_cast<std::size_t>(from_rack);
    }
    EXPECT_GT(spliced, 0U);
    EXPECT_GT(ripped, 0U);
    EXPECT_GT(racked, 0U);
}

/// Strips of one sheet by number, as its tickets tell them: where each is ripped, and what is cut from it.
struct Strip {
    Row rip;
    std::vector<Row> cuts;
};
std::map<int, Strip> strips_of(const std::string& pdf) {
    static const std::regex rip(
        R"(\s*(\d+)\s{2,}((?:strip|faja) \d+), .*?\s{2,}([\d/-]+) (?:in|mm|pulg)\s{2,}([\d/-]+) (?:in|mm|pulg)\s*)");
    static const std::regex cut(
        R"(\s*(\d+)\.\d+\s{2,}(\S.*?)\s{2,}([\d/-]+) (?:in|mm|pulg)\s{2,}([\d/-]+) (?:in|mm|pulg)\s*)");
    const Outcome text = run_program({"pdftotext", "-layout", pdf, "-"});
    std::map<int, Strip> strips;
    std::istringstream lines(text.out);
    std::smatch match;
    for (std::string line; std::getline(lines, line);) {
        const std::string bare = std::regex_replace(line, std::regex(R"([\f\r]|\s+$)"), "");
        if (std::regex_match(bare, match, rip))
            strips[std::stoi(match[1])].rip = {match[2], figure(match[3]), figure(match[4])};
        else if (std::regex_match(bare, match, cut))
            strips[std::stoi(match[1])].cuts.push_back({match[2], figure(match[3]), figure(match[4])});
    }
    return strips;
}

TEST_P(PrintedTickets, OfASheetHaveEveryBlankOnceWithTrimsAndKerfsKept) {
    const Sheet& sheet = GetParam();
    const Folder folder;
    const std::string job = (folder / "job.toml").string();
    const std::string pdf = (folder / "stock.pdf").string();
    spill(job, house(sheet,
                     "[[stock.sheets]]\nmaterial = \"mdf\"\nthickness = \"3/4 in\"\nwidth = \"49 in\"\n"
                     "length = \"97 in\"\nprice = 48.5\n"));
    const Outcome built = run_program({KERFPACKET_PROGRAM, "build", job, "--only", "stock", "--out", pdf});
    ASSERT_TRUE(built.status == 0 || built.status == 3) << built.err;
    const double trim = std::string(sheet.units) == "in" ? 0.5 : 12;
    const double kerf = saw_kerf * 25.4 / sheet.unit_mm;
    std::map<std::string, int> seen;
    double edge = -kerf;
    for (const auto& [n, strip] : strips_of(pdf)) {
        edge += kerf + strip.rip.stop;
        EXPECT_NEAR(strip.rip.ends, edge, sheet.tolerance) << n;
        double end = -kerf;
        ASSERT_FALSE(strip.cuts.empty()) << n;
        for (const Row& cut : strip.cuts) {
            end += kerf + cut.stop;
            EXPECT_NEAR(cut.ends, end, sheet.tolerance) << cut.blank;
            ++seen[cut.blank];
        }
        EXPECT_LE(end + trim * 2, 97 * 25.4 / sheet.unit_mm + 1e-6);
    }
    EXPECT_LE(edge + trim * 2, 49 * 25.4 / sheet.unit_mm + 1e-6);
    EXPECT_EQ(seen.size(), 6U);
    for (const auto& [blank, count] : seen) EXPECT_EQ(count, 1) << blank;
}

TEST(StockCommand, SheetsStandInJsonAndInTheTable) {
    const Folder folder;
    const std::string job = (folder / "job.toml").string();
    spill(job, house({"in", "en", 25.4, 0},
                     "[[stock.sheets]]\nmaterial = \"mdf\"\nthickness = \"3/4 in\"\n"
                     "width = \"49 in\"\nlength = \"97 in\"\nprice = 48.5\n"));
    const Outcome text = run_program({KERFPACKET_PROGRAM, "stock", job});
    EXPECT_EQ(text.status, 0) << text.err;
    EXPECT_NE(text.out.find("With one width to a strip"), std::string::npos);
    const Json json = Json::parse(run_program({KERFPACKET_PROGRAM, "stock", "--json", job}).out);
    const std::string csv = run_program({KERFPACKET_PROGRAM, "stock", "--csv", job}).out;
    ASSERT_EQ(json["sheets"].size(), 1U);
    EXPECT_TRUE(json["sections"].empty());
    EXPECT_EQ(json["sheets"][0]["price"], 48.5);
    std::size_t blanks = 0;
    std::size_t strips = 0;
    for (const Json& strip : json["sheets"][0]["sheets"][0]["strips"]) {
        ++strips;
        blanks += strip["blanks"].size();
    }
    EXPECT_EQ(blanks, 6U);
    const auto rows = [&](const std::string& what) {
        const std::regex row("S1(/\\d)?,mdf,.*," + what + ",.*");
        std::size_t count = 0;
        std::istringstream lines(csv);
        for (std::string line; std::getline(lines, line);) count += std::regex_match(line, row) ? 1U : 0U;
        return count;
    };
    EXPECT_EQ(rows("blank"), blanks);
    EXPECT_EQ(rows("strip"), strips);
}

/// A house with casings from sheets.
std::string cased(const Sheet& sheet) {
    const std::string liner = "[opening.liner]";
    std::string text = house(sheet);
    for (std::size_t at = 0; (at = text.find(liner, at)) != std::string::npos; at += liner.size() + 80) {
        const std::string casing = std::string("[opening.casing]\nwidth = ") +
                                   (std::string(sheet.units) == "in" ? "3.5" : "89") + "\nsegments = 4\n";
        text.insert(at, casing);
    }
    return text;
}

TEST_P(PrintedTickets, ShowEachCasingSegmentOnceInItsStack) {
    const Sheet& sheet = GetParam();
    const Folder folder;
    const std::string job = (folder / "job.toml").string();
    const std::string pdf = (folder / "stock.pdf").string();
    spill(job, cased(sheet));
    const Outcome built = run_program({KERFPACKET_PROGRAM, "build", job, "--only", "stock", "--out", pdf});
    ASSERT_TRUE(built.status == 0 || built.status == 3) << built.err;
    const std::string text = run_program({"pdftotext", pdf, "-"}).out;
    const std::string of = std::string(sheet.language) == "es" ? " de " : " of ";
    int found = 0;
    for (const auto& [id, quantity] : std::map<std::string, int>{{"A", 3}, {"C", 2}, {"N", 1}})
        for (int copy = 1; copy <= quantity; ++copy)
            for (int n = 1; n <= 4; ++n) {
                std::string name = id + " ?" + std::to_string(n);  // poppler drops a narrow space
                if (quantity > 1) name += ", " + std::to_string(copy) + of + std::to_string(quantity);
                const std::regex alone("(^|\n)" + name + "\r?(\n|$)");
                const auto count = std::distance(std::sregex_iterator(text.begin(), text.end(), alone), {});
                EXPECT_EQ(count, 1) << name;
                found += static_cast<int>(count);
            }
    EXPECT_EQ(found, 24);
}

TEST(StockCommand, CasingSegmentsAreCountedInJsonAndInTheTable) {
    const Folder folder;
    const std::string job = (folder / "job.toml").string();
    spill(job, cased({"in", "en", 25.4, 0}));
    const Json json = Json::parse(run_program({KERFPACKET_PROGRAM, "stock", "--json", job}).out);
    const std::string csv = run_program({KERFPACKET_PROGRAM, "stock", "--csv", job}).out;
    int segments = 0;
    for (const Json& size : json["casing"]["sizes"]) {
        EXPECT_EQ(size["segments"], size["laid"]);
        segments += int(size["segments"]);
    }
    EXPECT_EQ(segments, 24);
    int laid = 0;
    for (const Json& one : json["casing"]["sheets"])
        for (const Json& strip : one["strips"]) laid += static_cast<int>(strip["segments"].size());
    EXPECT_EQ(laid, 24);
    static const std::regex row("C\\d+,.*,segment,");
    EXPECT_EQ(std::distance(std::sregex_iterator(csv.begin(), csv.end(), row), {}), 24);
    const std::string told = run_program({KERFPACKET_PROGRAM, "stock", job}).out;
    EXPECT_NE(told.find("12 segments in nested stacks"), std::string::npos) << told;
}

TEST_P(PrintedTickets, OfCasingBoardsHaveEverySegmentOnce) {
    const Sheet& sheet = GetParam();
    const Folder folder;
    const std::string job = (folder / "job.toml").string();
    const std::string pdf = (folder / "stock.pdf").string();
    const std::string wide = std::string(sheet.units) == "in" ? "11.25" : "286";
    spill(job, std::regex_replace(cased(sheet), std::regex("segments = 4"), "segments = 4\nboard = " + wide));
    const Outcome built = run_program({KERFPACKET_PROGRAM, "build", job, "--only", "stock", "--out", pdf});
    ASSERT_TRUE(built.status == 0 || built.status == 3) << built.err;
    const double trim = std::string(sheet.units) == "in" ? 0.5 : 12;
    const double kerf = saw_kerf * 25.4 / sheet.unit_mm;
    std::map<std::string, int> seen;
    for (const Ticket& ticket : tickets_of(pdf)) {
        double at = -kerf;
        for (const Row& row : ticket.rows) {
            at += kerf + row.stop;
            EXPECT_NEAR(row.ends, at, sheet.tolerance) << row.blank;
            if (row.blank.find(", segment") != std::string::npos) ++seen[row.blank];
        }
        EXPECT_LE(at + trim * 2, ticket.length + 1e-6);
    }
    EXPECT_EQ(seen.size(), 24U);
    for (const auto& [name, count] : seen) EXPECT_EQ(count, 1) << name;
}

TEST(StockCommand, TellsTheSamePlanThreeWays) {
    const Folder folder;
    const std::string job = (folder / "job.toml").string();
    spill(job, house({"in", "en", 25.4, 0}));
    const Outcome text = run_program({KERFPACKET_PROGRAM, "stock", job});
    EXPECT_EQ(text.status, 0) << text.err;
    EXPECT_NE(text.out.find("no way to buy less of it"), std::string::npos);
    const Json json = Json::parse(run_program({KERFPACKET_PROGRAM, "stock", "--json", job}).out);
    const std::string csv = run_program({KERFPACKET_PROGRAM, "stock", "--csv", job}).out;
    std::size_t cuts = 0;
    for (const Json& section : json["sections"]) {
        EXPECT_TRUE(bool(section["proved"]));
        for (const Json& board : section["boards"]) {
            double at = -saw_kerf * 25.4;
            for (const Json& blank : board["blanks"]) {
                at += saw_kerf * 25.4 + double(blank["length_mm"]);
                EXPECT_NEAR(double(blank["ends_at_mm"]), at, 1e-5);
                ++cuts;
            }
            EXPECT_NEAR(double(board["offcut_mm"]), double(board["length_mm"]) - 12.7 - at - saw_kerf * 25.4, 1e-5);
        }
    }
    EXPECT_EQ(cuts, 6U);
    std::size_t lines = 0;
    std::istringstream read(csv);
    for (std::string line; std::getline(read, line);)
        if (std::isdigit(static_cast<unsigned char>(line.at(0))) != 0 && line.find(",blank,") != std::string::npos)
            ++lines;
    EXPECT_EQ(lines, cuts);
}

TEST(StockCommand, JobsOfOneNumberOrOfOtherStockAreNotPlannedTogether) {
    const Folder folder;
    const std::string a = (folder / "a.toml").string(), b = (folder / "b.toml").string();
    const std::string text = house({"in", "en", 25.4, 0});
    spill(a, text);
    spill(b, text);
    const Outcome same = run_program({KERFPACKET_PROGRAM, "stock", a, b});
    EXPECT_EQ(same.status, 2);
    EXPECT_NE(same.err.find("are both job \"52\""), std::string::npos);
    spill(b, std::regex_replace(std::regex_replace(text, std::regex("\"52\""), "\"53\""), std::regex("lengths.*"),
                                "lengths = [96]"));
    const Outcome other = run_program({KERFPACKET_PROGRAM, "stock", a, b});
    EXPECT_EQ(other.status, 2);
    EXPECT_NE(other.err.find("keep it in one shop file"), std::string::npos);
    spill(b, std::regex_replace(text, std::regex("\"52\""), "\"53\""));
    const Outcome both = run_program({KERFPACKET_PROGRAM, "stock", a, b});
    EXPECT_EQ(both.status, 0) << both.err;
    EXPECT_NE(both.out.find("53 A, 3 of 3"), std::string::npos);
}

TEST(StockCommand, ABlankThatNothingHoldsIsToldWithItsLine) {
    const Folder folder;
    const std::string job = (folder / "job.toml").string();
    spill(job, std::regex_replace(house({"in", "en", 25.4, 0}), std::regex("lengths = .*"), "lengths = [\"6 ft\"]"));
    const Outcome told = run_program({KERFPACKET_PROGRAM, "stock", job});
    EXPECT_EQ(told.status, 3);
    EXPECT_NE(told.err.find("no stock holds the blank of N"), std::string::npos) << told.err;
    EXPECT_NE(told.err.find("lengths = [\"6 ft\"]"), std::string::npos) << told.err;
    EXPECT_NE(told.out.find("NOT IN THIS PLAN"), std::string::npos);
}

}  // namespace
}  // namespace kerfpacket::tests
