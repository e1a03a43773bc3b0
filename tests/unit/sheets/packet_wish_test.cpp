// What the job wants of its packet: sets for boards alike, sheets shared and left out.

#include <gtest/gtest.h>

#include <algorithm>
#include <map>
#include <set>

#include "../../support/boxes.h"
#include "../../support/kit.h"
#include "../../support/languages.h"
#include "job/read.h"
#include "sheets/layout/page_index.h"
#include "sheets/packet.h"

namespace kerfpacket::sheets {
namespace {

using namespace tests;

job::Job three_alike() {
    job::Job job = job_of(alder_court());
    job.openings[0].quantity = 3;
    return job;
}

std::map<std::string, int> counts(const page::Document& document) {
    std::map<std::string, int> kinds;
    for (const page::Page& page : document.pages) ++kinds[page.sheet];
    return kinds;
}

std::string text_of(const page::Page& page) {
    std::string all;
    for (const page::TextItem& text : texts(page)) all += text.text + "\n";
    return all;
}

bool holds(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

TEST(PacketWish, NamesTheKindsThatTheOrderOfSheetsHas) {
    std::set<std::string> names;
    for (const job::SheetKind& kind : job::sheet_kinds) names.emplace(kind.name);
    EXPECT_EQ(names.size(), job::sheet_kinds.size());
    EXPECT_EQ(names, std::set<std::string>(sheet_kinds(kit()).begin(), sheet_kinds(kit()).end()));
}

TEST(PacketWish, EachOfSeveralBoardsHasItsSetOfStripsAndChecklists) {
    job::Job job = three_alike();
    auto three = counts(make_packet(planned(job), kit()));
    job.openings[0].quantity = 1;
    auto one = counts(make_packet(planned(job), kit()));
    for (auto& [kind, pages] : three) {
        const bool each = kind == "strips" || kind == "checklist";
        EXPECT_EQ(pages, one[kind] * (each ? 3 : 1)) << kind;
    }
}

TEST(PacketWish, EveryPageOfASetSaysForWhichBoardInBothLanguages) {
    for (const auto& [language, board] : {std::pair("en", "board "), std::pair("es", "tabla ")}) {
        const page::Document document = make_packet(planned(three_alike()), kit(language));
        std::map<std::string, std::set<std::string>> titles;  // of a piece's strips and checklists
        for (const page::Page& page : document.pages) {
            if (page.sheet != "strips" && page.sheet != "checklist") continue;
            for (const std::string& fault : text_faults(page)) ADD_FAILURE() << fault;
            for (const page::TextItem& text : texts(page))
                if (holds(text.text, std::string(", ") + board)) titles[page.piece + page.sheet].insert(text.text);
        }
        ASSERT_EQ(titles.size(), 4U) << language;
        for (const auto& [sheet, said] : titles) EXPECT_EQ(said.size(), 3U) << sheet;
    }
}

// A board of Alder Court has one page of checklist: four lists are more pages than one for all, three are not.
TEST(PacketWish, BoardsAlikeShareAListWhereThatIsFewerPages) {
    job::Job job = job_of(alder_court());
    auto one = counts(make_packet(planned(job), kit()));
    job.openings[0].quantity = 4;
    for (const auto& [language, all] : {std::pair("en", "boards 1 to 4 of 4"), std::pair("es", "tablas 1 a 4 de 4")}) {
        const page::Document document = make_packet(planned(job), kit(language));
        auto four = counts(document);
        EXPECT_GT(four["checklist"], one["checklist"]);
        EXPECT_LT(four["checklist"], one["checklist"] * 4);
        for (const page::Page& page : document.pages) {
            if (page.sheet == "work-order") {
                std::string order = text_of(page);
                std::replace(order.begin(), order.end(), '\n', ' ');  // a sentence may go on on the next line
                EXPECT_TRUE(holds(order, kit(language).words("work_order.set_columns", {{"n", "4"}}))) << order;
            }
            if (page.sheet != "checklist") continue;
            EXPECT_TRUE(holds(text_of(page), all)) << page.number;
            for (const char* column : {"#1\n", "#3\n", "#4\n"}) EXPECT_TRUE(holds(text_of(page), column));
            for (const std::string& fault : text_faults(page)) ADD_FAILURE() << fault;
        }
    }
}

/// A head whose strips take a sheet and a half, so many times.
job::Job alike(int quantity) {
    job::Opening opening = lantern_court();
    opening.span.value = 58.75_in;
    opening.rise.value = 13.625_in;
    opening.quantity = quantity;
    return job_of(opening);
}

/// How often each caption stands on the sheets of strips.
std::map<std::string, int> captions(const page::Document& document, const fonts::Words& words) {
    const std::string begin = words("strip.caption", {{"n", ""}, {"m", ""}}).substr(0, 4);
    std::map<std::string, int> all;
    for (const page::Page& page : document.pages)
        for (const page::TextItem& text : texts(page))
            if (page.sheet == "strips" && text.role == page::Role::text && text.text.starts_with(begin))
                ++all[text.text];
    return all;
}

TEST(PacketWish, StripsOfBoardsAlikeAndTheirCouponFollowEachOtherWhereThatIsFewerSheets) {
    auto one = counts(make_packet(planned(alike(1)), kit()));
    for (const char* language : {"en", "es"}) {
        const fonts::Words& words = kit(language).words;
        const page::Document document = make_packet(planned(alike(3)), kit(language));
        const auto caption = [&](int n, int m, const std::string& whose) {
            return words("strip.caption", {{"n", std::to_string(n)}, {"m", std::to_string(m)}}) + whose;
        };
        auto three = counts(document);
        EXPECT_LT(three["strips"] + three["coupon"], one["strips"] * 3 + one["coupon"]);
        std::map<std::string, int> expected;
        const auto all = captions(document, words);
        for (int m = 1; m < 40; ++m)
            for (int n = 1; n <= m; ++n) {
                if (all.contains(caption(1, m, words("strip.whose_coupon"))))
                    expected[caption(n, m, words("strip.whose_coupon"))] = 1;
                for (const char* board : {"1", "2", "3"})
                    if (all.contains(caption(1, m, words("strip.whose_board", {{"n", board}}))))
                        expected[caption(n, m, words("strip.whose_board", {{"n", board}}))] = 1;
            }
        EXPECT_EQ(all, expected) << language;
        EXPECT_GT(expected.size(), 20U);
        const std::string boards = words("page.boards", {{"n", "1"}, {"last", "3"}, {"m", "3"}});
        for (const page::Page& page : document.pages) {
            for (const std::string& fault : text_faults(page)) ADD_FAILURE() << page.sheet << ": " << fault;
            EXPECT_TRUE(page.sheet != "strips" || holds(text_of(page), boards)) << page.number;
        }
    }
}

TEST(PacketWish, TheCouponIsToldByThePageOfItsStripsAndPrintedAgainWithThem) {
    const plan::Plan plan = planned(alike(1));
    const page::Document document = make_packet(plan, kit());
    std::vector<std::size_t> pages;
    for (const page::Page& page : document.pages)
        if (page.sheet == "coupon" || (page.sheet == "strips" && holds(text_of(page), ", coupon")))
            pages.push_back(page.number);
    ASSERT_EQ(pages.size(), 2U);
    const std::string told = std::to_string(pages[0]) + ", " + std::to_string(pages[1]);
    for (const page::Page& page : document.pages)
        EXPECT_TRUE(page.sheet != "work-order" || holds(text_of(page), told + "\n")) << text_of(page);
    EXPECT_TRUE(holds(text_of(document.pages.front()) + text_of(document.pages.at(1)), told));
    std::vector<std::size_t> again;
    for (const page::Page& page : make_packet(plan, kit(), {{"coupon"}, {}, {}, {}}).pages)
        again.push_back(page.number);
    EXPECT_EQ(again, pages);
    // A strip of the board is on its own pages alone, whatever numbers the coupon's strips have.
    const page::Document second = make_packet(plan, kit(), {{"strips"}, {}, {}, 2});
    EXPECT_EQ(second.pages.size(), 1U);
    const page::Document last = make_packet(planned(alike(3)), kit(), {{"strips"}, {}, {}, 9});
    EXPECT_EQ(last.pages.size(), 3U);
}

TEST(PacketWish, ABoardThatIsStoppedOrPrintedOnceForAllHasItsCouponApart) {
    job::Job once = alike(3);
    once.packet.one_set = true;
    for (const page::Page& page : make_packet(planned(once), kit()).pages)
        EXPECT_FALSE(page.sheet == "strips" && holds(text_of(page), ", coupon"));
    plan::Plan plan = planned(alike(1));
    EXPECT_EQ(counts(make_packet(plan, kit()))["coupon"], 1);
    plan.pieces.front().bend.verdict = bend::Verdict::break_likely;
    EXPECT_EQ(counts(make_packet(plan, kit()))["coupon"], 2);
}

TEST(PacketWish, OneSetHasABlankForTheBoard) {
    job::Job job = three_alike();
    job.packet.one_set = true;
    const page::Document document = make_packet(planned(job), kit());
    job.openings[0].quantity = 1;
    job.packet.one_set = false;
    EXPECT_EQ(counts(document), counts(make_packet(planned(job), kit())));
    for (const page::Page& page : document.pages) {
        const bool each = page.sheet == "strips" || page.sheet == "checklist";
        EXPECT_EQ(holds(text_of(page), ", board ____ of 3"), each) << page.number;
    }
    for (const page::Page& page : document.pages)
        EXPECT_EQ(holds(text_of(page), "print these pages 3 times"), page.sheet == "work-order");
}

TEST(PacketWish, TheCoverAndTheWorkOrderCountTheSets) {
    const page::Document document = make_packet(planned(three_alike()), kit());
    EXPECT_TRUE(holds(text_of(document.pages.front()), "Mark strips, 3 sets"));
    for (const page::Page& page : document.pages) {
        if (page.sheet != "work-order") continue;
        EXPECT_TRUE(holds(text_of(page), "a set for each of the 3 boards"));
        EXPECT_FALSE(holds(text_of(page), "3 times, a set"));
    }
}

TEST(PacketWish, WhatIsLeftOutIsNotThereAndNoPageSaysReprint) {
    job::Job job = job_of(alder_court());
    const auto whole = counts(make_packet(planned(job), kit()));
    for (const job::SheetKind& kind : job::sheet_kinds) {
        if (!kind.can_be_left_out) continue;
        job.packet.leave_out = {kind.name};
        const page::Document document = make_packet(planned(job), kit());
        auto expected = whole;
        expected.erase(std::string(kind.name));
        EXPECT_EQ(counts(document), expected);
        for (const page::Page& page : document.pages) {
            EXPECT_FALSE(holds(text_of(page), "reprint")) << kind.name;
            for (const std::string& fault : text_faults(page)) ADD_FAILURE() << kind.name << ": " << fault;
        }
        std::string key(kind.name);
        std::replace(key.begin(), key.end(), '-', '_');
        std::string name = kit().words(key + ".outline", {{"piece", "X"}});
        if (name.starts_with("X  ")) name.erase(0, 3);  // the stock plan is of no piece
        const std::string cover = text_of(document.pages[0]) + text_of(document.pages[1]);
        EXPECT_TRUE(holds(cover, "Left out, as the job asks: " + name)) << cover;
    }
}

/// How an opening is checked by its template, up to the first comma: what follows has figures.
std::string held_up(const std::string& language) {
    const std::string how = kit(language).words("work_order.check_how", {{"rise", ""}});
    return how.substr(0, how.find(','));
}

TEST(PacketWish, AStepThatWouldPointToASheetLeftOutSaysSo) {
    job::Job job = job_of(alder_court());
    job.packet.leave_out = {"checklist", "template"};
    for (const std::string& language : std::vector<std::string>{"en", "es"}) {
        const page::Document document = make_packet(planned(job), kit(language));
        const std::string word = kit(language).words("work_order.left_out");
        int said = 0;
        for (const page::Page& page : document.pages) {
            if (page.sheet != "work-order") continue;
            for (const page::TextItem& text : texts(page)) said += text.text == word ? 1 : 0;
            EXPECT_FALSE(holds(text_of(page), held_up(language)));
        }
        // With the template in the packet the same step says it.
        const page::Document whole = make_packet(planned(job_of(alder_court())), kit(language));
        EXPECT_TRUE(std::any_of(whole.pages.begin(), whole.pages.end(), [&](const page::Page& page) {
            return page.sheet == "work-order" && holds(text_of(page), held_up(language));
        }));
        EXPECT_EQ(said, 3) << language;  // the opening is checked once, both boards are kerfed
    }
}

TEST(PacketWish, OpeningsAlikeShareWhatIsTheSameAndSayForWhom) {
    job::Job job = job_of(lantern_court());
    job.openings.push_back(job.openings[0]);
    job.openings.back().id.value = "Z";
    const std::string both = job.openings[0].id.value + ", Z";
    const page::Document document = make_packet(planned(job), kit());
    std::map<std::string, std::set<std::string>> of;  // pieces by kind
    for (const page::Page& page : document.pages) of[page.sheet].insert(page.piece);
    for (const char* kind : {"setup", "coupon", "strain", "install", "template"})
        EXPECT_EQ(of[kind], std::set<std::string>{both}) << kind;
    for (const char* kind : {"strips", "checklist", "work-order"}) EXPECT_EQ(of[kind].size(), 2U) << kind;
    for (const page::Page& page : document.pages)
        for (const std::string& fault : text_faults(page)) ADD_FAILURE() << page.sheet << ": " << fault;
    // What differs in one figure is not shared.
    job.openings.back().liner.trim.value += 0.5_in;
    const page::Document apart = make_packet(planned(job), kit());
    for (const page::Page& page : apart.pages) EXPECT_NE(page.piece, both);
}

TEST(PacketWish, NamesOfPiecesThatShareASheetAreTakenApart) {
    EXPECT_TRUE(is_of("A, B", "A"));
    EXPECT_TRUE(is_of("A, B", "B"));
    EXPECT_FALSE(is_of("A, B", "AB"));
    EXPECT_TRUE(is_of("A, N/1+2", "N/2"));
    EXPECT_FALSE(is_of("A, N/1+2", "A/2"));
    EXPECT_FALSE(is_of("A, N/1+2", "N/3"));
}

TEST(Cover, ListsWhatWasTakenAsUsualInBothLanguages) {
    const job::Reading reading = job::read_job({"job.toml",
                                                R"([job]
number = "K-71"
title = "Ferry Steps"
revision = "A"
date = 2026-06-11
units = "in"
[saw]
blade_diameter = "10 in"
kerf = 0.126
[[opening]]
id = "A"
shape = "segmental"
span = "60 in"
rise = "9 in"
depth = "5 in"
[opening.liner]
material = "mdf"
thickness = "3/4 in"
[opening.casing]
width = "3 in"
)"});
    ASSERT_TRUE(reading.complete);
    const page::Document document = make_packet(planned(reading.job), kit());
    std::string cover = text_of(document.pages.front());
    std::replace(cover.begin(), cover.end(), '\n', ' ');  // lines of one paragraph
    EXPECT_TRUE(holds(cover, "printer not measured"));
    EXPECT_TRUE(
        holds(cover,
              "A: measured to the wall; 3 in of trim at each end; zero at the left end, seen from the room; no reveal"))
        << cover;
    EXPECT_TRUE(holds(text_of(make_packet(planned(reading.job), kit("es")).pages.front()), "medido al muro"));
}

/// A word for every key for which a reader notes what it takes.
TEST(Cover, HasWordsForEveryKeyThatIsTakenAsUsual) {
    job::Reading reading = job::read_job({"job.toml", R"([job]
number = "K-71"
title = "Ferry Steps"
revision = "A"
date = 2026-06-11
units = "in"
[[wall]]
id = "B"
side = "concave"
ordinates = [[0, 0], [20, 6], [40, 8], [60, 6], [80, 0]]
[wall.board]
material = "mdf"
thickness = "1/2 in"
width = "5 in"
)"},
                                         [] {
                                             job::Shop shop;
                                             shop.saw.blade_diameter.value = 10_in;
                                             shop.saw.kerf.value = 0.125_in;
                                             return shop;
                                         }());
    ASSERT_TRUE(reading.complete);
    std::set<std::string> keys;
    for (const job::Taken& taken : reading.job.taken) keys.insert(taken.value.key);
    EXPECT_EQ(keys, (std::set<std::string>{"blade_diameter", "kerf", "profile", "tape", "measured_to", "tails", "trim",
                                           "zero"}));
    for (const std::string& language : std::vector<std::string>{"en", "es"})
        for (const std::string& key : keys)
            EXPECT_NO_THROW((void)kit(language).words("cover.taken_" + key, {{"value", ""}})) << key;
}

}  // namespace
}  // namespace kerfpacket::sheets
