// What a printer's margins and errors do to the pages of a packet.

#include "sheets/layout/paper.h"

#include <gtest/gtest.h>

#include "sheets/packet.h"
#include "support/boxes.h"
#include "support/pieces.h"
#include "support/shapes.h"

namespace kerfpacket::sheets {
namespace {

using namespace tests;

plan::Plan on_printer(const job::Printer& printer) {
    plan::Plan plan = planned(job_of(harbor_stair()));
    const job::Media media = plan.printer.media;
    plan.printer = printer;
    plan.printer.media = media;
    return plan;
}

job::NamedProfile named(const char* name, double across, double along, job::Feed feed = job::Feed::short_edge) {
    job::NamedProfile profile;
    profile.name.value = name;
    profile.measured = job::Profile{name, across, along, feed, {}};
    return profile;
}

job::Printer measured(double across, double along, job::Feed feed = job::Feed::short_edge) {
    job::Printer printer;
    printer.profile = named("back office", across, along, feed);
    return printer;
}

TEST(Paper, ShortPrintsAreWrittenLonger) {
    const page::Document packet = make_packet(on_printer(measured(0.996, 1.002)), kit());
    int upright = 0;
    for (const page::Page& page : packet.pages) {
        const bool portrait = page.width < page.height;
        EXPECT_NEAR(portrait ? page.correction.x : page.correction.y, 1 / 0.996, 1e-15) << page.number;
        EXPECT_NEAR(portrait ? page.correction.y : page.correction.x, 1 / 1.002, 1e-15) << page.number;
        upright += portrait ? 1 : 0;
    }
    EXPECT_GT(upright, 0);
    EXPECT_LT(upright, static_cast<int>(packet.pages.size()));
}

TEST(Paper, FedByTheLongEdgeTheErrorsChangePlaces) {
    const page::Document packet = make_packet(on_printer(measured(0.996, 1.002, job::Feed::long_edge)), kit());
    const page::Page& cover = packet.pages.front();
    EXPECT_NEAR(cover.correction.x, 1 / 1.002, 1e-15);
    EXPECT_NEAR(cover.correction.y, 1 / 0.996, 1e-15);
}

TEST(Paper, EverySheetNamesTheProfileItWasMadeFor) {
    for (const bool one : {true, false}) {
        const page::Document packet = make_packet(on_printer(one ? measured(1, 1) : job::Printer{}), kit());
        const std::string words = one ? "Printer profile: back office" : "Printer profile: none";
        for (const page::Page& page : packet.pages) {
            const auto all = texts(page);
            EXPECT_TRUE(std::any_of(all.begin(), all.end(), [&](const page::TextItem& text) {
                return text.text.find(words) != std::string::npos;
            })) << page.number;
        }
    }
}

/// The smallest distance of any ink from an edge of its page.
Length nearest_edge(const page::Document& packet) {
    Length least = 1000_mm;
    for (const page::Page& page : packet.pages)
        for (const page::Item& item : page.items) {
            geom::Rect box;
            if (const auto* path = std::get_if<page::PathItem>(&item)) box = path->path.bounds().grown(path->width / 2);
            else if (const auto* text = std::get_if<page::TextItem>(&item)) box = box_of(*text);
            else continue;
            least = std::min({least, box.low.x, box.low.y, page.width - box.high.x, page.height - box.high.y});
        }
    return least;
}

TEST(Paper, NothingStandsWhereThePrinterCannotReach) {
    job::Printer printer;
    const page::Document usual = make_packet(on_printer(printer), kit());
    EXPECT_GE(nearest_edge(usual), 0.25_in - 1e-9_mm);
    printer.margin = 0.55_in;
    const page::Document packet = make_packet(on_printer(printer), kit());
    EXPECT_GE(nearest_edge(packet), 0.55_in - 1e-9_mm);
    // The paper itself is as large as ever.
    EXPECT_NEAR(packet.pages.front().width.inches(), 8.5, 1e-12);
    EXPECT_NEAR(packet.pages.front().height.inches(), 11, 1e-12);
    for (const page::Page& page : packet.pages)
        for (const std::string& fault : text_faults(page)) ADD_FAILURE() << page.sheet << ": " << fault;
}

TEST(Paper, WhatWasMeasuredWithSheetsSaysNothingOfARoll) {
    job::Printer printer = measured(0.996, 1.002);
    printer.strips = job::find_media("custom_roll_62mm");
    plan::Plan plan = on_printer(printer);
    EXPECT_NE(profile_for(plan, Use::cards), nullptr);
    EXPECT_NE(profile_for(plan, Use::templates), nullptr);
    EXPECT_EQ(profile_for(plan, Use::strips), nullptr);
    plan.printer.strip_profile = named("label", 1.01, 0.99);
    ASSERT_NE(profile_for(plan, Use::strips), nullptr);
    EXPECT_EQ(profile_for(plan, Use::strips)->name, "label");
    EXPECT_EQ(profile_for(plan, Use::cards)->name, "back office");
}

TEST(Paper, TheWidestMarginThatWasMeasuredCounts) {
    job::Printer printer = measured(1, 1);
    printer.margin = 0.3_in;
    printer.profile->measured->margins = {0.1_in, 0.1_in, 0.2_in, 0.45_in};
    const Paper paper = paper_for(on_printer(printer), Use::cards);
    EXPECT_NEAR(paper.width.inches(), 8.5 - 2 * 0.2, 1e-12);
    EXPECT_NEAR(paper.height.inches(), 11 - 2 * 0.2, 1e-12);
}

TEST(Paper, EverySheetThatIsListedHoldsThePacket) {
    for (const job::Media& media : job::all_media()) {
        plan::Plan plan = on_printer({});
        plan.printer.media = media;
        for (const page::Page& page : make_packet(plan, kit()).pages)
            for (const std::string& fault : text_faults(page))
                ADD_FAILURE() << media.name << ", " << page.sheet << ": " << fault;
    }
}

}  // namespace
}  // namespace kerfpacket::sheets
