// What a new revision changed, in words and on its page.

#include "sheets/changes.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <functional>
#include <regex>
#include <set>

#include "../../support/boxes.h"
#include "../../support/kit.h"
#include "../../support/languages.h"
#include "../../support/program.h"
#include "job/read.h"
#include "sheets/packet.h"
#include "sheets/words/tape.h"

namespace kerfpacket::sheets {
namespace {

using namespace tests;

struct Job {
    explicit Job(const job::Job& job) : values(job::canonical(job).values), plan(plan::make_plan(job).value()) {}
    Revision revision() const { return {plan, values}; }
    std::vector<job::Value> values;
    plan::Plan plan;
};

/// As it comes from the file, so that its values are all there.
job::Job sample(const std::string& name) {
    job::Reading reading = job::read_job(
        job::load(std::filesystem::path(KERFPACKET_SOURCE_DIR) / "out-samples" / name / "job.toml").value());
    if (!reading.complete) throw std::runtime_error("the sample is incomplete");
    return reading.job;
}

job::Job changed(job::Job job, const std::function<void(job::Job&)>& change) {
    change(job);
    return job;
}

std::vector<std::string> sentences(const job::Job& before, const job::Job& now, const std::string& language = "en") {
    const Job old(before), next(now);
    return change_sentences(old.revision(), next.revision(), kit(language));
}

page::Document revised(const job::Job& before, const job::Job& now, const std::string& language = "en") {
    const Job old(before), next(now);
    return make_packet(next.revision(), old.revision(), kit(language));
}

std::string text_of(const page::Page& page) {
    std::string all;
    for (const page::TextItem& text : texts(page)) all += text.text + "\n";
    return all;
}

std::vector<std::size_t> pages_of(const page::Document& document, const std::string& sheet) {
    std::vector<std::size_t> found;
    for (std::size_t i = 0; i < document.pages.size(); ++i)
        if (document.pages[i].sheet == sheet) found.push_back(i);
    return found;
}

bool holds(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

const job::Job mill_lane = sample("mill-lane");

TEST(ChangeSentences, SayValueAndWhatComesOfIt) {
    const job::Job wider = changed(mill_lane, [](job::Job& job) { job.openings[0].span.value += 0.75_in; });
    const Job old(mill_lane), next(wider);
    const std::vector<std::string> told = sentences(mill_lane, wider);
    ASSERT_EQ(told.size(), 1U);
    // Worked out here from both plans once more.
    const auto& was = old.plan.pieces[0];
    const auto& is = next.plan.pieces[0];
    const Tape tape(measure::Unit::inch);
    const auto more = is.blank().kerfs.size() - was.blank().kerfs.size();
    EXPECT_TRUE(told[0].starts_with(is.id + ": span was " + tape.exact(mill_lane.openings[0].span.value) + ", now " +
                                    tape.exact(wider.openings[0].span.value) + ": "))
        << told[0];
    EXPECT_TRUE(holds(told[0], more == 1 ? "1 kerf added" : std::to_string(more) + " kerfs added")) << told[0];
    EXPECT_TRUE(holds(told[0], "blank " + tape.with_unit(is.blank().length - was.blank().length) + " longer"))
        << told[0];
    EXPECT_TRUE(holds(told[0], "marks have moved")) << told[0];
    const std::vector<std::string> back = sentences(wider, mill_lane);
    EXPECT_TRUE(holds(back.at(0), "fewer") && holds(back.at(0), "shorter")) << back.at(0);
}

TEST(ChangeSentences, SayWhetherABoardThatIsKerfedServes) {
    const auto told = [](const std::function<void(job::Board&)>& change, const std::string& language = "en") {
        const job::Job now = changed(mill_lane, [&](job::Job& job) { change(job.openings[0].liner); });
        return testing::PrintToString(sentences(mill_lane, now, language));
    };
    const auto less_trim = [](job::Board& liner) { liner.trim.value -= 1_in; };
    EXPECT_TRUE(
        holds(told(less_trim),
              "a board kerfed already serves: its kerfs stand where these do; it is 1 in longer at its left end"))
        << told(less_trim);
    EXPECT_TRUE(
        holds(told(less_trim, "es"), "una tabla ya ranurada sirve: sus ranuras están donde estas; le sobran 1 pulg"))
        << told(less_trim, "es");
    const auto more_trim = [](job::Board& liner) { liner.trim.value += 0.5_in; };
    EXPECT_TRUE(holds(told(more_trim), "it is 1/2 in shorter at its right end, out of the trim")) << told(more_trim);
    const auto wider = [](job::Board& liner) { liner.width.value += 1_in; };
    EXPECT_TRUE(holds(told(wider), "a board kerfed already is scrap: this takes another board")) << told(wider);
    const auto wider_apart = [](job::Board& liner) {
        liner.spacing.given = 0.55_in;
        liner.spacing.solve = false;
    };
    EXPECT_TRUE(holds(told(wider_apart), " of its kerfs are not wanted now, the first ")) << told(wider_apart);
}

TEST(ChangeSentences, SayInTheirLanguageWhatTheJobFileChooses) {
    const job::Job porch = sample("linden-porch");
    const auto with = [&](job::Toward wide, job::Edge measured) {
        return changed(porch, [&](job::Job& job) {
            job.openings.at(0).splay->wide = wide;
            job.openings.at(0).splay->measured = measured;
            job.openings.at(0).casing =
                job::Casing{at_line(3_in, 40), at_line(Length(), 41), job::WallSide::both, {}, {}};
        });
    };
    const auto told = testing::PrintToString(
        sentences(with(job::Toward::room, job::Edge::narrow), with(job::Toward::away, job::Edge::wide), "es"));
    for (const char* word : {"cuarto", "opuesto", "angosto", "ancho"})
        EXPECT_NE(told.find(word), std::string::npos) << told;
    for (const char* word : {"room", "away", "narrow", "wide"}) EXPECT_EQ(told.find(word), std::string::npos) << told;
    const auto sides = testing::PrintToString(sentences(
        porch, changed(porch, [](job::Job& job) { job.openings.at(0).casing->wall_side = job::WallSide::away; }),
        "es"));
    EXPECT_NE(sides.find("lados con contramarco era ambos, ahora opuesto"), std::string::npos) << sides;
}

TEST(ChangeSentences, AreNoneForTheSameJobWhateverItsRevision) {
    EXPECT_EQ(sentences(mill_lane, mill_lane), std::vector<std::string>{});
    EXPECT_EQ(sentences(mill_lane, changed(mill_lane, [](job::Job& job) { job.header.revision = "Q"; })),
              std::vector<std::string>{});
}

TEST(ChangeSentences, TellAChangeOfTheWholeJobByItself) {
    const std::vector<std::string> told = sentences(mill_lane, changed(mill_lane, [](job::Job& job) {
                                                        job.header.date = "2027-01-31";
                                                        job.saw.kerf.value = 0.109375_in;
                                                    }));
    ASSERT_EQ(told.size(), 3U) << testing::PrintToString(told);
    EXPECT_TRUE(holds(told[0], "date was ") && told[0].ends_with("now January 31, 2027")) << told[0];
    EXPECT_TRUE(told[1].starts_with("saw: kerf width was ") && told[1].ends_with("now 7/64 in")) << told[1];
    EXPECT_TRUE(holds(told[2], "a board kerfed already is scrap: kerfs were ")) << told[2];
}

TEST(ChangeSentences, TellAPieceThatCameOrWentByItsName) {
    const auto twice = changed(mill_lane, [](job::Job& job) {
        job.openings.push_back(job.openings[0]);
        job.openings.back().id.value = "Z";
    });
    EXPECT_EQ(sentences(mill_lane, twice), std::vector<std::string>{"Z: new in this job"});
    EXPECT_EQ(sentences(twice, mill_lane), std::vector<std::string>{"Z: no longer in this job: do not cut it"});
}

TEST(ChangeSentences, TellOfLongListsWhatChanged) {
    const job::Job kiln = sample("kiln-yard");
    job::Job now = kiln;
    auto& ordinates = now.openings.empty() ? now.walls.at(0).ordinates : now.openings.at(0).ordinates;
    ASSERT_TRUE(ordinates && ordinates->points.size() > 5);
    ordinates->points[2].height.value += 0.25_in;
    const std::vector<std::string> told = sentences(kiln, now);
    ASSERT_FALSE(told.empty());
    EXPECT_TRUE(holds(told[0], "points was no. 3: ")) << told[0];
    EXPECT_FALSE(holds(told[0], "no. 4: ")) << told[0];
    ordinates->points.erase(ordinates->points.begin() + 2);
    EXPECT_TRUE(holds(sentences(kiln, now).at(0), "points was " + std::to_string(ordinates->points.size() + 1) +
                                                      " values, now " + std::to_string(ordinates->points.size()) +
                                                      " values"));
}

/// What a pattern finds in the sources that write a job's canonical text.
std::set<std::string> written(const std::regex& pattern) {
    std::set<std::string> found;
    for (const char* file : {"normalise.cpp", "normalise_board.cpp"}) {
        const std::string source = slurp(std::filesystem::path(KERFPACKET_SOURCE_DIR) / "src" / "job" / file);
        for (std::sregex_iterator at(source.begin(), source.end(), pattern), end; at != end; ++at)
            found.insert((*at)[1]);
    }
    return found;
}

// Keys and tables are read from where they are written.
TEST(ChangeSentences, HaveALabelForEveryKeyOfAJob) {
    std::set<std::string> keys = written(std::regex(R"re(write(?:r\.\w+)?\((?:writer, )?"(\w+)",)re"));
    EXPECT_EQ(keys.erase("revision"), 1U);  // the page's title tells it
    EXPECT_GE(keys.size(), 60U);
    std::set<std::string> tables = written(std::regex(R"re("\[+(?:\w+\.)*(\w+)\]+")re"));
    for (const char* plain : {"job", "opening", "wall", "liner", "board", "material"})
        EXPECT_EQ(tables.erase(plain), 1U) << plain;
    EXPECT_GE(tables.size(), 7U);
    for (const std::string& language : tests::languages()) {
        const auto& entries = kit(language).words.entries();
        for (const std::string& key : keys) EXPECT_TRUE(entries.contains("changes.value_" + key)) << language << key;
        for (const std::string& table : tables)
            EXPECT_TRUE(entries.contains("changes.table_" + table)) << language << table;
    }
}

TEST(ChangePage, StandsBehindTheCoverAndOnlyInARevision) {
    const job::Job now = changed(mill_lane, [](job::Job& job) {
        job.header.revision = "B";
        job.openings[0].span.value += 0.75_in;
    });
    const page::Document first = make_packet(Job(now).plan, kit());
    EXPECT_EQ(pages_of(first, "changes"), std::vector<std::size_t>{});
    const page::Document document = revised(mill_lane, now);
    // The cover may go on to a further page for its line of the change page.
    const std::size_t covers = pages_of(document, "cover").size() - pages_of(first, "cover").size();
    ASSERT_EQ(document.pages.size(), first.pages.size() + covers + 1);
    const std::size_t at = pages_of(document, "cover").back() + 1;
    ASSERT_EQ(pages_of(document, "changes"), std::vector<std::size_t>{at});
    const page::Page& page = document.pages[at];
    EXPECT_EQ(text_faults(page), std::vector<std::string>{});
    const std::string all = text_of(page);
    for (const page::OutlineEntry& entry : document.outline) {
        if (document.pages[entry.page].sheet != "strips") continue;
        EXPECT_TRUE(holds(all, entry.title)) << all;
    }
    // The links lead to the pages whose numbers stand beside them.
    int links = 0;
    for (const page::Item& item : page.items) {
        const auto* link = std::get_if<page::LinkItem>(&item);
        if (link == nullptr) continue;
        ++links;
        const auto number = std::to_string(document.pages.at(link->page).number);
        const auto lines = texts(page);
        EXPECT_TRUE(std::any_of(lines.begin(), lines.end(), [&](const page::TextItem& text) {
            return link->area.contains(text.anchor) && (text.text == number || text.text.starts_with(number + "-"));
        })) << number;
    }
    EXPECT_GT(links, 3);
    // The cover's index knows it.
    bool listed = false;
    for (const std::size_t cover : pages_of(document, "cover"))
        listed = listed || holds(text_of(document.pages[cover]), "What changed since revision");
    EXPECT_TRUE(listed);
}

TEST(ChangePage, ListsNoSheetThatReadsTheSame) {
    const job::Job now = changed(mill_lane, [](job::Job& job) { job.header.date = "2027-01-31"; });
    const page::Document document = revised(mill_lane, now);
    const std::string all = text_of(document.pages.at(pages_of(document, "changes").at(0)));
    EXPECT_TRUE(holds(all, "No sheet but the cover")) << all;
    EXPECT_TRUE(holds(all, "January 31, 2027")) << all;
    EXPECT_TRUE(holds(all, "marks stand where they stood")) << all;
    EXPECT_FALSE(holds(all, "Mark strips")) << all;
}

TEST(ChangePage, OfTwoPiecesListsTheSheetsOfTheOneThatChanged) {
    const auto two = changed(mill_lane, [](job::Job& job) {
        job.openings.push_back(job.openings[0]);
        job.openings.back().id.value = "Z";
    });
    const auto now = changed(two, [](job::Job& job) { job.openings[1].span.value += 0.5_in; });
    const page::Document document = revised(two, now);
    const std::string all = text_of(document.pages.at(pages_of(document, "changes").at(0)));
    EXPECT_TRUE(holds(all, "Z  Mark strips")) << all;
    EXPECT_FALSE(holds(all, mill_lane.openings[0].id.value + "  Mark strips")) << all;
    const page::Document less = revised(two, mill_lane);
    const std::string gone = text_of(less.pages.at(pages_of(less, "changes").at(0)));
    EXPECT_TRUE(holds(gone, "Z  Mark strips\nno longer in the packet")) << gone;
}

TEST(ChangePage, OfManyChangesGoesOnOnFurtherPages) {
    const auto many = [](measure::Length by) {
        return changed(mill_lane, [&](job::Job& job) {
            for (int i = 0; i < 9; ++i) {
                job.openings.push_back(job.openings[0]);
                job.openings.back().id.value = "Z" + std::to_string(i);
            }
            for (job::Opening& opening : job.openings) opening.span.value += by;
        });
    };
    for (const std::string& language : tests::languages()) {
        const page::Document document = revised(many(0_in), many(0.5_in), language);
        const auto pages = pages_of(document, "changes");
        ASSERT_GE(pages.size(), 2U);
        for (const std::size_t page : pages)
            for (const std::string& fault : text_faults(document.pages[page], 18_pt, 18_pt)) ADD_FAILURE() << fault;
        EXPECT_EQ(document.outline.size(), revised(many(0_in), many(0_in), language).outline.size());
    }
}

}  // namespace
}  // namespace kerfpacket::sheets
