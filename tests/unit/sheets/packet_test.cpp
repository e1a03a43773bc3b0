// Whole packets of a wide spread of boards: texts keep apart and on the page, checklists have their rows.

#include "sheets/packet.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <map>

#include "support/boxes.h"
#include "support/pieces.h"
#include "support/shapes.h"

namespace kerfpacket::sheets {
namespace {

using namespace tests;

struct Packet {
    std::string name;
    plan::Plan plan;
    page::Document document;
};

/// A part of the spread, and openings small and large on every paper.
const std::vector<Packet>& packets() {
    static const std::vector<Packet> all = [] {
        std::vector<Packet> made;
        const auto add = [&](const std::string& name, const job::Job& job, const std::string& media) {
            const plan::Plan plan = planned(job, media.c_str());
            made.push_back({name, plan, make_packet(plan, kit())});
        };
        const std::vector<Case> cases = spread_of_cases();
        for (std::size_t i = 0; i < cases.size(); i += 7) add(cases[i].name, cases[i].job, cases[i].media);
        for (const std::string& media : spread::media) {
            add("harbor stair on " + media, job_of(harbor_stair()), media);
            add("fern street on " + media, job_of(fern_street()), media);
            add("lantern court on " + media, job_of(lantern_court()), media);
            add("semicircle on " + media, job_of(semicircle(31_in)), media);
            add("plastered head on " + media, job_of(plastered()), media);
        }
        return made;
    }();
    return all;
}

class Packets : public testing::TestWithParam<const char*> {};

TEST_P(Packets, TextsKeepApartAndOnThePage) {
    int pages = 0;
    for (const Packet& packet : packets())
        for (const page::Page& page : packet.document.pages) {
            if (page.sheet != GetParam()) continue;
            ++pages;
            for (const std::string& fault : text_faults(page)) ADD_FAILURE() << packet.name << ": " << fault;
        }
    EXPECT_GE(pages, 3);
}

INSTANTIATE_TEST_SUITE_P(Sheets, Packets,
                         testing::Values("cover", "survey", "safety", "strain", "setup", "strips", "checklist",
                                         "template", "coupon", "work-order", "install"),
                         [](const auto& sheet) {
                             std::string name = sheet.param;
                             std::replace(name.begin(), name.end(), '-', '_');
                             return name;
                         });

TEST(Packets, ChecklistsHaveARowForEveryKerf) {
    for (const Packet& packet : packets()) {
        SCOPED_TRACE(packet.name);
        std::map<std::string, int> numerals;
        for (const page::Page& page : packet.document.pages) {
            if (page.sheet != "checklist") continue;
            for (const page::TextItem& text : texts(page))
                if (text.role == page::Role::numeral) ++numerals[text.text];
        }
        const plan::Piece& piece = packet.plan.pieces[0];
        EXPECT_EQ(numerals.size(), piece.blank().kerfs.size());
        for (const plan::Kerf& kerf : piece.blank().kerfs) EXPECT_EQ(numerals[std::to_string(kerf.n)], 1) << kerf.n;
    }
}

}  // namespace
}  // namespace kerfpacket::sheets
