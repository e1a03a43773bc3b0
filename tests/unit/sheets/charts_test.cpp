// Charts of the strain sheet: no curve runs through words, and none is drawn that would be empty.

#include <algorithm>
#include <set>

#include <gtest/gtest.h>

#include "sheets/evidence/chance_charts.h"
#include "sheets/evidence/limit_chart.h"
#include "sheets/evidence/strain_plot.h"
#include "sheets/evidence/strain_sheet.h"
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

std::size_t strain_pages(const plan::Plan& plan, const std::string& language) {
    Drafts drafts;
    add_strain_sheet(drafts, plan, plan.pieces.at(0), kit(language));
    return drafts.size();
}

TEST(StrainSheet, ALargerPaperTakesNoMorePagesThanLetter) {
    for (const char* language : {"en", "es"})
        for (const job::Opening& opening : {lantern_court(), quarry_road(), semicircle(36_in)}) {
            const std::size_t letter = strain_pages(planned(job_of(opening)), language);
            for (const char* media : {"na_legal_8.5x14in", "na_ledger_11x17in"})
                EXPECT_LE(strain_pages(planned(job_of(opening), media), language), letter) << media;
        }
}

TEST(LimitChart, EveryCurveIsNamed) {
    std::size_t leaving = 0, thin_ones = 0;
    for (const char* language : {"en", "es"})
        for (const plan::Piece& of_shape : planned(every_shape()).pieces)
            // The job's own radius far below the curves and near them: then they leave by the top, or end beside it.
            for (const double part : {0.3, 0.5, 1.0}) {
                plan::Piece piece = of_shape;
                piece.radii.finish = piece.radii.finish * part;
                page::Page page = empty_page();
                Pen pen(page, kit(language));
                const Tape tape(measure::Unit::inch, kit(language).words);
                draw_limit_chart(pen, {{36_pt, 300_pt}, {345_pt, 480_pt}}, piece, tape);
                std::multiset<std::string> words;
                for (const page::TextItem& text : texts(page)) words.insert(text.text);
                for (const plan::LimitCurve& curve : piece.limit_curves) {
                    const auto seen = [&](const auto& point) {
                        return point.second < radius_axis_end(piece, measure::Unit::inch);
                    };
                    if (!std::any_of(curve.points.begin(), curve.points.end(), seen)) continue;
                    leaving += seen(curve.points.back()) ? 0U : 1U;
                    // With less than 3/32 in left it is never ok.
                    const bool thin = (piece.cut.thinnest() - curve.depth).inches() < 3.0 / 32 - 1e-6;
                    thin_ones += thin ? 1U : 0U;
                    EXPECT_EQ(words.count(kit(language).words(thin ? "strain.deep_thin" : "strain.deep",
                                                              {{"depth", tape.exact(curve.depth)}})),
                              1U)
                        << piece.id << " at " << part;
                }
                // Its radius is told in the frame, or below it where there is no room.
                const std::string radius = "R " + tape.with_unit(piece.radii.finish);
                EXPECT_EQ(std::count_if(words.begin(), words.end(),
                                        [&](const std::string& text) { return text.ends_with(radius); }),
                          1)
                    << piece.id << " at " << part;
                for (const std::string& fault : text_faults(page)) ADD_FAILURE() << piece.id << ": " << fault;
            }
    EXPECT_GT(leaving, 20U);
    EXPECT_GT(thin_ones, 0U);
}

}  // namespace
}  // namespace kerfpacket::sheets
