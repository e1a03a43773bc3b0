// The set-up card's end view: no line runs through the spacer's name.

#include "sheets/cards/setup_drawing.h"

#include <gtest/gtest.h>

#include "support/boxes.h"

namespace kerfpacket::sheets {
namespace {

using namespace tests;

TEST(EndView, NothingRunsThroughTheSpacersName) {
    std::size_t named = 0, drawn = 0;
    for (const double diameter : {7.25, 8.25, 10.0, 12.0})
        for (const double depth : {0.2, 0.3, 0.4, 0.5, 0.6, 0.65})
            for (const double limit : {0.6, 1.2, 2.0, 2.8})
                for (const char* language : {"en", "es"}) {
                    job::Wall wall = fern_street();
                    wall.board.kerf_depth.half = false;
                    wall.board.kerf_depth.given = measure::Length::inches(depth);
                    job::Job job = job_of(wall);
                    job.saw.blade_diameter.value = measure::Length::inches(diameter);
                    plan::Plan plan = planned(job);
                    // Where the blade's middle stands and how far back its circle rises: of the blade and the depth
                    // alone.
                    plan::Piece& piece = plan.pieces.front();
                    const double radius = diameter / 2, below = radius - depth;
                    const double ramp = std::sqrt(radius * radius - below * below);
                    piece.saw.rear_limit = measure::Length::inches(limit);
                    piece.saw.groove_ramp = measure::Length::inches(ramp);
                    piece.saw.spacer = measure::Length::inches(std::max(limit, ramp) + 0.125);
                    page::Page page;
                    page.width = 612_pt;
                    page.height = 792_pt;
                    Pen pen(page, kit(language));
                    draw_end_view(pen, plan, piece, Tape(measure::Unit::inch), 700_pt);
                    ++drawn;
                    for (const page::TextItem& text : texts(page)) {
                        if (text.text != kit(language).words("setup.spacer_drawn")) continue;
                        ++named;
                        EXPECT_GE(text.size.points(), 9);
                        for (const page::Item& item : page.items) {
                            const auto* path = std::get_if<page::PathItem>(&item);
                            if (path == nullptr || path->role == page::Role::hatch) continue;
                            EXPECT_TRUE(geom::clip(path->path, box_of(text).grown(1_pt)).empty())
                                << page::role_name(path->role) << " through " << placed(text) << ", blade " << diameter
                                << ", depth " << depth << ", limit " << limit;
                        }
                    }
                }
    EXPECT_EQ(named, drawn);
}

}  // namespace
}  // namespace kerfpacket::sheets
