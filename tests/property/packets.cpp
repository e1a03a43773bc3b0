// Jobs by chance all the way to their pages: none ends the program, none prints what is no number or words on words.

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <cstdlib>
#include <filesystem>
#include <iostream>
#include <map>
#include <optional>
#include <regex>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "../support/boxes.h"
#include "../support/kit.h"
#include "../support/random_job.h"
#include "cuts_on_strips.h"
#include "job/media.h"
#include "job/read.h"
#include "measure/require.h"
#include "output/dump.h"
#include "plan/plan.h"
#include "sheets/packet.h"
#include "support/languages.h"
#include "template_sheets.h"

namespace kerfpacket {
namespace {

using namespace measure::literals;

/// KERFPACKET_PACKETS asks for more.
int packets() {
    const char* wanted = std::getenv("KERFPACKET_PACKETS");  // NOLINT(concurrency-mt-unsafe): one thread
    return wanted != nullptr ? std::atoi(wanted) : 150;      // NOLINT(cert-err34-c): 0 fails the test
}

constexpr std::array languages{"es", "en", "es, en", "en, es"};

void words_keep_apart(const page::Document& packet, const std::string& language, const std::string& job) {
    for (const page::Page& page : packet.pages) {
        // A narrow page is of a roll, and printed out to the printer's own margin.
        const bool roll = std::min(page.width, page.height) < 8.25_in;
        for (const std::string& fault : tests::text_faults(page, roll ? 4_pt : 18_pt, roll ? 4_pt : 18_pt))
            ADD_FAILURE() << language << ", " << page.sheet << ": " << fault << '\n' << job;
    }
}

/// KERFPACKET_PACKETS_SEED asks for others.
std::uint64_t packets_seed() {
    const char* wanted = std::getenv("KERFPACKET_PACKETS_SEED");  // NOLINT(concurrency-mt-unsafe): one thread
    return wanted != nullptr ? std::strtoull(wanted, nullptr, 10) : 5150;
}

/// What a carpenter finds who bends each kerf as it turns: where the sum of the turns goes the other way.
std::string sides_of(const plan::Piece& piece) {
    std::string sides;
    std::size_t kerf = 0;
    std::vector<measure::Length> ends = piece.blank().reverses();
    ends.push_back(piece.blank().length);
    for (const measure::Length end : ends) {
        double turn = 0;
        for (; kerf < piece.blank().kerfs.size() && piece.blank().kerfs[kerf].at <= end; ++kerf)
            turn += piece.blank().kerfs[kerf].turn.radians() *
                    (piece.blank().kerfs[kerf].on == bend::KerfsOn::outside ? 1 : -1);
        sides += std::string(sides.empty() ? "" : ", then ") + (turn > 0 ? "OPEN" : "CLOSE");
    }
    return sides;
}

TEST(FoundJobs, tell_the_sides_of_a_reverse_in_one_order_from_zero) {
    int boards = 0;
    for (const char* name : {"eyebrow-order-of-sides", "reverse-from-the-right", "rib-of-a-convex-reverse"})
        for (const job::End zero : {job::End::left, job::End::right}) {
            const std::string file = std::string(KERFPACKET_SOURCE_DIR "/tests/property/found/") + name + ".toml";
            job::Job job = job::read_job(job::load(file).value()).job;
            for (job::Opening& opening : job.openings) opening.liner.zero = zero;
            for (job::Wall& wall : job.walls) wall.board.zero = zero;
            const plan::Plan plan = plan::make_plan(job).value();
            const page::Document packet = sheets::make_packet(plan, tests::kit());
            const std::string sides = sides_of(plan.pieces.front());
            SCOPED_TRACE(name + std::string(zero == job::End::left ? " left: " : " right: ") + sides);
            std::set<std::string> sheets;
            std::vector<std::string> marks;  // strip by strip
            const auto times = [](const std::string& all, const std::string& words) {
                int count = 0;
                for (auto at = all.find(words); at != std::string::npos; at = all.find(words, at + 1)) ++count;
                return count;
            };
            for (const page::Page& page : packet.pages) {
                std::string all;  // a sentence may go on on the next line
                for (const page::TextItem& text : tests::texts(page)) {
                    all += text.text + " ";
                    if (page.sheet == "strips" && text.text.starts_with("REVERSE"))
                        marks.push_back(text.text.find("OPEN") != std::string::npos ? "OPEN" : "CLOSE");
                }
                const int told = times(all, "Kerfs " + sides + " where marked");
                EXPECT_EQ(told, times(all, " where marked")) << page.sheet << " tells another order";
                if (told > 0) sheets.insert(page.sheet);
            }
            EXPECT_TRUE(sheets.contains("strips"));
            EXPECT_GE(sheets.size(), 2U);
            std::string after = sides.substr(0, sides.find(','));
            for (const std::string& mark : marks) after += ", then " + mark;
            EXPECT_EQ(after, sides);
            ++boards;
        }
    EXPECT_EQ(boards, 6);
}

// A check beside the name of the joint 10|11; a strip of 2 in between two joints; a mark under 17|18; a check that
// finds no room among the words of an end.
TEST(FoundJobs, give_every_mark_of_a_tape_its_figure) {
    for (const char* name : {"tape-check-beside-two-figures", "tape-mark-on-a-short-strip",
                             "tape-mark-under-a-joint-name", "tape-check-without-room"})
        for (const std::string& language : tests::languages()) {
            SCOPED_TRACE(name + (" in " + language));
            const std::string file = std::string(KERFPACKET_SOURCE_DIR "/tests/property/found/") + name + ".toml";
            job::Job job = job::read_job(job::load(file).value()).job;
            job.header.language = language;
            const page::Document packet = sheets::make_packet(plan::make_plan(job).value(), tests::kit(language));
            std::ptrdiff_t marks = 0;
            std::ptrdiff_t figures = 0;
            for (const page::Page& page : packet.pages) {
                if (page.sheet != "strips") continue;
                for (const page::PathItem& line : tests::paths(page, page::Role::tape_mark))
                    marks += !line.filled && line.path.bounds().width().mm() < 0.01 ? 1 : 0;
                for (const page::TextItem& text : tests::texts(page))
                    figures += text.role == page::Role::tape_mark ? 1 : 0;
            }
            EXPECT_GT(marks, 5);
            EXPECT_EQ(figures, marks);
        }
}

TEST(FoundJobs, have_the_cut_of_every_end_on_a_strip) {
    int mitres = 0;
    for (const char* name : {"mitre-behind-a-long-trim", "trim-beyond-a-long-tail", "horseshoe-plain-face-longer"})
        for (const char* media : {"na_letter_8.5x11in", "custom_roll_24in"})
            for (const std::string& language : tests::languages())
                for (const job::End zero : {job::End::left, job::End::right})
                    for (const job::StripOn on : {job::StripOn::face, job::StripOn::edge}) {
                        const std::string file =
                            std::string(KERFPACKET_SOURCE_DIR "/tests/property/found/") + name + ".toml";
                        job::Job job = job::read_job(job::load(file).value()).job;
                        const auto turn = [&](job::Board& board) {
                            board.zero = zero;
                            board.strip.value = on;
                        };
                        for (job::Opening& opening : job.openings) turn(opening.liner);
                        for (job::Wall& wall : job.walls) turn(wall.board);
                        job.printer.strips = job::find_media(media);
                        const auto made = plan::make_plan(job);
                        if (!made && on == job::StripOn::edge) continue;  // a web under 5/16 in takes no edge strip
                        const plan::Plan& plan = made.value();
                        mitres += tests::cuts_are_on_strips(sheets::make_packet(plan, tests::kit(language)), plan,
                                                            language, std::string(name) + " " + media);
                    }
    EXPECT_GT(mitres, 30);
}

// The line of a scarf leans as the kerfs of its board do, no further.
TEST(FoundJobs, have_the_cuts_of_a_board_that_climbs_on_its_strips) {
    EXPECT_TRUE((tests::CutLine{20_pt, 0.5}.may_be({{}, {29_pt, 20_pt}})));
    EXPECT_FALSE((tests::CutLine{20_pt, 0.5}.may_be({{}, {31_pt, 20_pt}})));
    for (const char* name :
         {"end-cut-words-on-a-leaning-strip", "scarf-words-on-a-leaning-strip", "scarf-on-the-edge-of-a-climb",
          "end-cut-words-at-a-joint-name", "end-cut-words-beside-a-short-waste",
          "end-cut-words-on-a-strip-of-their-own", "square-cut-in-a-long-waste"})
        for (const std::string& language : tests::languages()) {
            const std::string file = std::string(KERFPACKET_SOURCE_DIR "/tests/property/found/") + name + ".toml";
            const plan::Plan plan = plan::make_plan(job::read_job(job::load(file).value()).job).value();
            tests::cuts_are_on_strips(sheets::make_packet(plan, tests::kit(language)), plan, language, name);
        }
}

/// Packets of a board that climbs, both ends cut in every way, whichever is zero, with strips on the face and over the
/// edge. Returns how many.
int every_end_cut_is_told(const char* name) {
    const std::string file = std::string(KERFPACKET_SOURCE_DIR "/tests/property/found/") + name + ".toml";
    job::Job job = job::read_job(job::load(file).value()).job;
    job::Wall& wall = job.walls.front();
    wall.board.thickness.value = 0.75_in;  // an edge strip wants a web of 5/16 in
    int packets = 0;
    for (const job::EndCut cut : {job::EndCut::plumb, job::EndCut::level, job::EndCut::square})
        for (const job::End zero : {job::End::left, job::End::right})
            for (const job::StripOn on : {job::StripOn::face, job::StripOn::edge}) {
                wall.rake->ends = {cut, cut};
                wall.board.zero = zero;
                wall.board.strip.value = on;
                const auto plan = plan::make_plan(job);
                if (!plan) continue;
                for (const std::string& language : tests::languages()) {
                    SCOPED_TRACE(name + (", " + language) + (on == job::StripOn::face ? ", face" : ", edge") +
                                 (zero == job::End::left ? ", left" : ", right") + ", cut " +
                                 std::to_string(static_cast<int>(cut)));
                    tests::cuts_are_on_strips(sheets::make_packet(*plan, tests::kit(language)), *plan, language, file);
                    ++packets;
                }
            }
    return packets;
}

// A cut whose waste is longer than what is drawn of it, and one whose waste is too short for its words, on a strip of
// their own.
TEST(FoundJobs, have_room_for_how_an_end_is_cut_on_a_strip_of_its_own) {
    EXPECT_GE(every_end_cut_is_told("end-cut-words-on-a-strip-of-their-own"), 20);
    EXPECT_GE(every_end_cut_is_told("end-cut-words-beside-a-short-waste"), 12);
}

/// What a page is a part of: a template, a rib, one of the segments of a casing.
std::string drawing_of(const page::Page& page) {
    std::string name = page.sheet + page.piece;
    if (page.sheet != "casing") return name;
    for (const page::TextItem& text : tests::texts(page))
        if (text.role == page::Role::furniture && text.text.find("egment") != std::string::npos)
            return name + text.text.substr(0, text.text.rfind(','));
    return name;
}

/// On sheets along a curve both crosses of a joint have their names, on both sheets that meet there. Returns how many.
int crosses_have_names(const page::Document& packet, const std::string& job) {
    const std::regex name(R"((\d+)\|\d+ \w.*)");
    std::map<std::string, std::map<int, int>> names;  // of each drawing, by the joint
    for (const page::Page& page : packet.pages)
        for (const page::TextItem& text : tests::texts(page)) {
            std::smatch match;
            if (page.sheet == "strips" || text.role != page::Role::registration) continue;
            if (std::regex_match(text.text, match, name)) ++names[drawing_of(page)][std::stoi(match.str(1))];
        }
    int all = 0;
    for (const auto& [drawing, joints] : names)
        for (int joint = 1; joint <= joints.rbegin()->first; ++joint) {
            const auto found = joints.find(joint);
            EXPECT_EQ(found == joints.end() ? 0 : found->second, 4) << drawing << ", joint " << joint << '\n' << job;
            all += 4;
        }
    return all;
}

TEST(FoundJobs, name_both_crosses_of_every_joint_on_both_sheets) {
    for (const char* name : {"crosses-along-without-room", "crosses-at-the-cell-edge", "cross-of-a-lone-segment"}) {
        const job::Reading reading = job::read_job(
            job::load(std::string(KERFPACKET_SOURCE_DIR "/tests/property/found/") + name + ".toml").value());
        for (const char* language : languages)
            EXPECT_GE(crosses_have_names(
                          sheets::make_packet(plan::make_plan(reading.job).value(), tests::kit(language)), language),
                      20)
                << name;
    }
}

// Where the band is wider than a sheet, sheets along it would be 169.
TEST(FoundJobs, take_a_grid_where_sheets_along_the_curve_hold_next_to_nothing) {
    const job::Reading reading =
        job::read_job(job::load(KERFPACKET_SOURCE_DIR "/tests/property/found/band-wider-than-a-sheet.toml").value());
    ASSERT_EQ(reading.job.openings.front().wish.sheets, job::Sheets::along);
    const page::Document packet = sheets::make_packet(plan::make_plan(reading.job).value(), tests::kit());
    const auto tiles = std::count_if(packet.pages.begin(), packet.pages.end(),
                                     [](const page::Page& page) { return page.sheet == "template"; });
    EXPECT_GT(tiles, 10);
    EXPECT_LT(tiles, 30);
}

/// Jobs that once had words on words, found by more chance than a test run has time for.
TEST(FoundJobs, have_words_that_keep_apart) {
    int jobs = 0;
    for (const auto& file : std::filesystem::directory_iterator(KERFPACKET_SOURCE_DIR "/tests/property/found")) {
        const job::Reading reading = job::read_job(job::load(file.path()).value());
        ASSERT_TRUE(reading.diagnostics.empty()) << file;
        for (const bool half : {false, true}) {
            job::Job job = reading.job;
            for (job::Opening& opening : job.openings)
                if (opening.wish.half_at.line == 0) opening.wish.half = half;
            const plan::Plan plan = plan::make_plan(job).value();
            for (const char* language : languages)
                words_keep_apart(sheets::make_packet(plan, tests::kit(language)), language, file.path().filename());
        }
        ++jobs;
    }
    EXPECT_GT(jobs, 4);
}

TEST(RandomPackets, have_pages_of_finite_figures_and_words_that_keep_apart) {
    tests::RandomJobs random(packets_seed());
    int laid_out = 0, compared = 0, mitres = 0, crosses = 0, sheets = 0;
    std::optional<std::pair<std::vector<job::Value>, plan::Plan>> last;  // the revision before, a wholly other job
    for (int i = 0; i < packets(); ++i) {
        const job::Source source{"by chance", random.next()};
        const job::Reading reading = job::read_job(source);
        if (!reading.diagnostics.empty()) continue;
        const std::string language = languages[static_cast<std::size_t>(i) % languages.size()];
        std::optional<plan::Plan> plan;
        page::Document packet;
        try {
            const auto made = plan::make_plan(reading.job);
            if (!made) continue;
            plan = *made;
            packet = sheets::make_packet(*plan, tests::kit(language));
        } catch (const measure::Bug& bug) {
            ADD_FAILURE() << bug.what() << '\n' << source.text;
            continue;
        }
        const std::vector<job::Value> values = job::canonical(reading.job).values;
        if (last && laid_out % 5 == 0) {
            const page::Document revised =
                sheets::make_packet({*plan, values}, {last->second, last->first}, tests::kit(language));
            // A change page and its line on the cover, which may go on to a further page for it.
            const auto others = [](const page::Document& document) {
                return std::count_if(document.pages.begin(), document.pages.end(), [](const page::Page& page) {
                    return page.sheet != "changes" && page.sheet != "cover";
                });
            };
            EXPECT_EQ(others(revised), others(packet)) << source.text;
            const auto changes = std::count_if(revised.pages.begin(), revised.pages.end(),
                                               [](const page::Page& page) { return page.sheet == "changes"; });
            EXPECT_GE(changes, 1) << source.text;
            const auto more = static_cast<std::ptrdiff_t>(revised.pages.size() - packet.pages.size()) - changes;
            EXPECT_TRUE(more == 0 || more == 1) << more << '\n' << source.text;
            for (const page::Page& page : revised.pages)
                if (page.sheet == "changes" || page.sheet == "cover")
                    for (const std::string& fault : tests::text_faults(page, 18_pt, 18_pt))
                        ADD_FAILURE() << language << ", " << page.sheet << ": " << fault << '\n' << source.text;
            ++compared;
        }
        ASSERT_GE(packet.pages.size(), 5U) << source.text;
        const std::string dump = output::dump(packet);
        for (const char* no_figure : {" nan", " -nan", ",nan", " inf", ",inf", " -inf"})
            ASSERT_EQ(dump.find(no_figure), std::string::npos) << source.text;
        words_keep_apart(packet, language, source.text);
        mitres += tests::cuts_are_on_strips(packet, *plan, language, source.text);
        crosses += crosses_have_names(packet, source.text);
        for (const auto& [number, page] : tests::template_sheets(packet)) {
            SCOPED_TRACE(page->piece + ", sheet " + number + '\n' + source.text);
            tests::expect_number_and_top(*page, number);
            ++sheets;
        }
        ++laid_out;
        last.emplace(values, *plan);
    }
    EXPECT_GT(compared, packets() / 20);
    EXPECT_GT(mitres, packets() / 10);
    EXPECT_GT(crosses, packets() / 10);
    EXPECT_GT(sheets, packets() / 20);
    std::cout << laid_out << " laid out\n";
    EXPECT_GT(laid_out, packets() / 3);
}

}  // namespace
}  // namespace kerfpacket
