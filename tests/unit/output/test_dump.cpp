#include "output/dump.h"

#include <gtest/gtest.h>

namespace kerfpacket::output {
namespace {

using namespace measure::literals;
using geom::Angle;
using geom::Path;
using page::Role;

TEST(Dump, SaysEveryItemInOneLine) {
    page::Document document{"Title", "Subject", "en-US", "2026-02-28", {}, {{"Strips", 0, 0}}};
    page::Page page{"strips", "B", 11_in, 8.5_in, {}};
    page.items.emplace_back(page::PathItem{Role::tick, Path::line({1_mm, 2_mm}, {1_mm, 6.5_mm}), 0.25_pt});
    page.items.emplace_back(page::PathItem{
        Role::foot, Path::rectangle({{0_mm, 0_mm}, {3_mm, 1_mm}}), {}, page::Dash::solid, true, page::Ink::white});
    page.items.emplace_back(page::PathItem{Role::centre, Path::arc({0_mm, 0_mm}, {10_mm, 0_mm}, -Angle::degrees(90)),
                                           0.7_pt, page::Dash::dash_dot});
    page.items.emplace_back(page::TextItem{Role::numeral,
                                           "10",
                                           page::Face::condensed_bold,
                                           17_pt,
                                           {5_mm, 6_mm},
                                           page::Align::centre,
                                           Angle::degrees(90),
                                           7.25_mm});
    page.items.emplace_back(page::LinkItem{{{0_mm, 1_mm}, {2_mm, 3_mm}}, 0});
    document.pages.push_back(page);
    document.pages.push_back({"cover", "", 215.9_mm, 279.4_mm, {}});
    EXPECT_EQ(dump(document),
              "title Title\nsubject Subject\nlanguage en-US\ndate 2026-02-28\noutline 0 page 1 Strips\n"
              "\npage 1 strips B 279.400 x 215.900\n"
              "tick path 1.000,2.000 1.000,6.500 stroke 0.25 pt\n"
              "foot path 0.000,0.000 3.000,0.000 3.000,1.000 0.000,1.000 0.000,0.000 closed filled white\n"
              "centre path 0.000,0.000 arc -90.000 10.000,0.000 stroke 0.70 pt dash-dot\n"
              "numeral text 5.000,6.000 centre \"10\" condensed-bold 17.00 pt turned 90.000 wide 7.250\n"
              "link 0.000,1.000 2.000,3.000 to page 1\n"
              "\npage 2 cover 215.900 x 279.400\n");
}

}  // namespace
}  // namespace kerfpacket::output
