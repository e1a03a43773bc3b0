#include "cli/start/drawings.h"

#include <algorithm>

#include "cli/start/heads.h"

namespace kerfpacket::cli {
namespace {

struct Drawing {
    std::string_view question;
    std::string_view choice;
    std::array<std::string_view, 2> rows;
};

// clang-format off
constexpr std::array drawings{
    Drawing{"kind", "opening",        {R"(  .-----.  )", R"( |       | )"}},
    Drawing{"kind", "wall",           {R"( '.     .' )", R"(   '---'   )"}},
    Drawing{"kind", "stair",          {R"(      _.-' )", R"( _.-'  |   )"}},
    Drawing{"climbs", "right",        {R"(      _.-' )", R"( _.-'      )"}},
    Drawing{"climbs", "left",         {R"( '-._      )", R"(      '-._ )"}},
    Drawing{"splayed", "no",          {R"(  |     |  )", R"(  |     |  )"}},
    Drawing{"splayed", "side",        {R"( \|     |/ )", R"(  |     |  )"}},
    Drawing{"splayed", "angle",       {R"( \'     '/ )", R"(  \     /  )"}},
    Drawing{"way", "chord",           {R"( .--_|_--. )", R"('____|____')"}},
    Drawing{"way", "radius",          {R"( .--___--. )", R"(   \ R /   )"}},
    Drawing{"way", "points",          {R"( . ' ' ' . )", R"( |_|_|_|_| )"}},
    Drawing{"side", "concave",        {R"( '._____.' )", R"(     ^     )"}},
    Drawing{"side", "convex",         {R"(  .-----.  )", R"( '   ^   ' )"}},
};
// clang-format on

}  // namespace

std::array<std::string_view, 2> drawing(std::string_view question, std::string_view choice) {
    if (question == "shape") {
        const auto head =
            std::find_if(heads().begin(), heads().end(), [&](const Head& one) { return one.shape == choice; });
        return head == heads().end() ? std::array<std::string_view, 2>{} : head->rows;
    }
    const auto* const found = std::find_if(drawings.begin(), drawings.end(), [&](const Drawing& one) {
        return one.question == question && one.choice == choice;
    });
    return found == drawings.end() ? std::array<std::string_view, 2>{} : found->rows;
}

}  // namespace kerfpacket::cli
