// A board that is not to be cut as it stands, or that is scrap, says so on every sheet of its own.

#include <gtest/gtest.h>

#include <algorithm>

#include "../../support/boxes.h"
#include "../../support/kit.h"
#include "../../support/languages.h"
#include "job/read.h"
#include "plan/plan.h"
#include "sheets/packet.h"

namespace kerfpacket::sheets {
namespace {

using namespace measure::literals;

/// A liner that will likely break as its kerfs are given, and a wall board that is ok.
std::string two(const std::string& printer, const std::string& liner) {
    return "[job]\nnumber = \"F-3\"\ntitle = \"Hay loft\"\nrevision = \"A\"\ndate = 2026-04-02\nunits = \"in\"\n"
           "[saw]\nblade_diameter = 10\nkerf = 0.126\n" +
           printer +
           "[[opening]]\nid = \"A\"\nshape = \"pointed\"\nspan = \"30 in\"\nrise = \"30 in\"\ndepth = \"5 in\"\n"
           "[opening.liner]\nmaterial = \"mdf\"\nthickness = \"3/4 in\"\n" +
           liner +
           "[opening.casing]\nwidth = \"3 in\"\nreveal = \"1/4 in\"\n[opening.form]\nstep = \"6 in\"\n"
           "[[wall]]\nid = \"B\"\nchord = \"120 in\"\nrise = \"10 in\"\nside = \"concave\"\n"
           "[wall.board]\nmaterial = \"mdf\"\nthickness = \"1/2 in\"\nwidth = \"4 in\"\n";
}

/// A wall board that is ok, with that about its board.
std::string wall(const std::string& board) {
    return "[job]\nnumber = \"F-4\"\ntitle = \"Hay loft\"\nrevision = \"A\"\ndate = 2026-04-02\n"
           "units = \"in\"\n[saw]\nblade_diameter = 10\nkerf = 0.126\n[[wall]]\nid = \"A\"\n"
           "chord = \"120 in\"\nrise = \"10 in\"\nside = \"concave\"\n[wall.board]\n"
           "material = \"mdf\"\nthickness = \"3/4 in\"\nwidth = \"4 in\"\nkerf_depth = \"3/8 in\"\n"
           "spacing = \"1/2 in\"\n" +
           board;
}

struct Counts {
    int banded = 0;
    int others = 0;
};

/// Every page of A and its boards has the words, none of B's and none that is of no piece.
Counts look_at(const std::string& text, const std::string& language, const std::string& key) {
    const job::Reading reading = job::read_job({"job.toml", text});
    const auto plan = plan::make_plan(reading.job);
    const Kit& kit = tests::kit(language);
    Counts counts;
    if (!plan) {
        ADD_FAILURE() << job::render(plan.error(), {"job.toml", text});
        return counts;
    }
    for (const page::Page& page : make_packet(*plan, kit).pages) {
        const std::vector<page::TextItem> texts = tests::texts(page);
        const bool has = std::any_of(texts.begin(), texts.end(), [&](const page::TextItem& item) {
            // A sheet of both boards names both.
            return item.text == kit.words(key, {{"piece", "A/1"}}) || item.text == kit.words(key, {{"piece", "A/2"}}) ||
                   item.text == kit.words(key, {{"piece", "A/1+2"}});
        });
        const bool of_a = page.piece.starts_with("A");
        EXPECT_EQ(has, of_a) << page.number << " " << page.sheet << " " << page.piece;
        ++(of_a ? counts.banded : counts.others);
        for (const std::string& fault : tests::text_faults(page, 17.9_pt, 17.9_pt))
            if (of_a && page.sheet == "setup") ADD_FAILURE() << page.sheet << ": " << fault;
    }
    return counts;
}

TEST(Forbidden, stands_on_every_sheet_of_a_board_that_will_likely_break) {
    const std::string liner = "kerf_depth = \"3/8 in\"\nspacing = \"1 in\"\n";
    for (const std::string& language : tests::languages()) {
        for (const char* printer : {"", "[printer]\nstrip_media = \"custom_roll_4in\"\n"}) {
            const Counts counts = look_at(two(printer, liner), language, "page.band_break");
            EXPECT_GE(counts.banded, 14);
            EXPECT_GE(counts.others, 7);
        }
    }
}

// Printed with --force alone, and called so nevertheless.
TEST(Forbidden, stands_on_every_sheet_of_a_board_with_weak_links) {
    const std::string text = wall("");
    const job::Reading reading = job::read_job({"job.toml", text});
    auto plan = plan::make_plan(reading.job);
    ASSERT_TRUE(plan);
    ASSERT_EQ(plan->pieces.front().bend.verdict, bend::Verdict::ok);
    plan->pieces.front().weak_links = {40, 41};
    for (const std::string& language : tests::languages()) {
        const Kit& kit = tests::kit(language);
        int banded = 0, banner = 0, verdict = 0;
        for (const page::Page& page : make_packet(*plan, kit).pages) {
            int here = 0;
            for (const page::TextItem& item : tests::texts(page)) {
                here += item.text == kit.words("page.band_weak_link", {{"piece", "A"}}) ? 1 : 0;
                if (page.sheet != "cover") continue;
                banner += item.text == kit.words("cover.banner_weak_link",
                                                 {{"weak", "1"}, {"break", "0"}, {"caution", "0"}, {"ok", "0"}})
                              ? 1
                              : 0;
                verdict += item.text == kit.words("cover.refused_verdict") ? 1 : 0;
            }
            EXPECT_EQ(here, page.piece == "A" ? 1 : 0) << page.sheet;
            banded += here;
        }
        EXPECT_GE(banded, 6);
        EXPECT_EQ(banner, 1);
        EXPECT_EQ(verdict, 1);
    }
}

TEST(Forbidden, a_scrapped_board_is_called_so) {
    const std::string text = wall("too_deep = [[40, \"47/64 in\"]]\n");
    const job::Reading reading = job::read_job({"job.toml", text});
    const auto plan = plan::make_plan(reading.job);
    ASSERT_TRUE(plan);
    ASSERT_EQ(plan->pieces.front().deep_kerfs.front().answer.mend, bend::Mend::scrap);
    const Kit& kit = tests::kit("en");
    int banded = 0, as_it_is = 0, aside = 0;
    for (const page::Page& page : make_packet(*plan, kit).pages)
        for (const page::TextItem& item : tests::texts(page)) {
            banded += item.text == kit.words("page.band_scrap", {{"piece", "A"}}) ? 1 : 0;
            as_it_is += page.sheet == "cover" && item.text.find("A as it is, at kerf 40") != std::string::npos ? 1 : 0;
            aside += page.sheet == "strain" && item.text.starts_with("Leaving aside the kerfs cut too deep") ? 1 : 0;
        }
    EXPECT_GE(banded, 6);
    EXPECT_EQ(as_it_is, 1) << "a chance of boards that are whole is none of this one";
    EXPECT_GE(aside, 1);
}

}  // namespace
}  // namespace kerfpacket::sheets
