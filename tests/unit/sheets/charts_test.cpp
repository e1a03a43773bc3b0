// Charts of the strain sheet: no curve runs through words, and none is drawn that would be empty.

#include <gtest/gtest.h>

#include "sheets/evidence/chance_charts.h"
#include "sheets/evidence/strain_plot.h"
#include "support/boxes.h"
#include "support/shapes.h"

namespace kerfpacket::sheets {
namespace {

using namespace tests;

page::Page empty_page() {
    page::Page page;
    page.width = 612_pt;
    page.height = 792_pt;
    return page;
}

TEST(StrainPlot, NoCurveRunsThroughTheWordsOfTheWorstKerf) {
    std::size_t labels = 0, plots = 0;
    for (const char* language : {"en", "es"}) {
        const plan::Plan plan = planned(every_shape());
        for (const plan::Piece& piece : plan.pieces) {
            page::Page page = empty_page();
            Pen pen(page, kit(language));
            draw_strain_plot(pen, {{36_pt, 300_pt}, {576_pt, 620_pt}}, piece, Tape(measure::Unit::inch));
            ++plots;
            const std::string all = kit(language).words("strain.all_alike", {{"u", ""}});
            const std::string worst = kit(language).words("strain.worst", {{"kerfs", ""}, {"u", ""}});
            for (const page::TextItem& text : texts(page)) {
                if (!text.text.starts_with(all.substr(0, 6)) && !text.text.starts_with(worst.substr(0, 5))) continue;
                ++labels;
                // Lines that came before a white ground are hidden by it: the curves are not to be among them either.
                for (const page::PathItem& curve : paths(page, page::Role::outline))
                    EXPECT_TRUE(curve.filled || curve.path.closed() || geom::clip(curve.path, box_of(text)).empty())
                        << piece.id << ": " << placed(text);
            }
            for (const std::string& fault : text_faults(page)) ADD_FAILURE() << piece.id << ": " << fault;
        }
    }
    EXPECT_GT(plots, 20U);
    EXPECT_GE(labels, plots * 9 / 10);
}

plan::Piece tried(double chance) {
    plan::Piece piece = planned(every_shape()).pieces.front();
    piece.chance.told = {{plan::Told::By::table, 0.02, 0.2, 0.01}, {plan::Told::By::coupons, 0.02, 0.1, 0.001}};
    piece.chance.next = {};
    for (int i = 0; i <= 48; ++i) piece.chance.next.chances.emplace_back(0.01 + 0.0004 * i, chance / (1 + i));
    piece.chance.next.ok_from = 0.01;
    piece.chance.next.caution_from = 0.01;
    return piece;
}

TEST(NextCoupon, HasNoChartWhereNothingWouldBeDrawn) {
    for (const char* language : {"en", "es"})
        for (const double chance : {0.3, 0.0099}) {
            page::Page page = empty_page();
            Pen pen(page, kit(language));
            draw_chance_charts(pen, {{36_pt, 300_pt}, {576_pt, 520_pt}}, tried(chance));
            std::size_t frames = 0;
            for (const page::PathItem& item : paths(page, page::Role::outline))
                frames += !item.filled && item.path.closed() ? 1U : 0U;
            std::string all;
            for (const page::TextItem& text : texts(page)) all += text.text + " ";
            const std::string start = kit(language).words("strain.next_all_hold").substr(0, 15);
            EXPECT_EQ(frames, chance > 0.01 ? 1U : 0U) << language;
            EXPECT_EQ(all.find(start) != std::string::npos, chance < 0.01) << all;
            for (const std::string& fault : text_faults(page)) ADD_FAILURE() << fault;
        }
}

}  // namespace
}  // namespace kerfpacket::sheets
