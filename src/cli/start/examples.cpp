#include "cli/start/examples.h"

#include <algorithm>

#include "measure/require.h"

namespace kerfpacket::cli {
namespace {

using Figures = std::vector<std::pair<std::string_view, std::string_view>>;

/// The head of a job that has one piece, then its figures, then board, saw and paper.
Example with(std::string_view name, std::string_view kind, const Figures& figures) {
    Figures all{{"number", "X-1"}, {"date", "2026-11-02"}, {"units", "in"}, {"kind", kind}};
    all.insert(all.end(), figures.begin(), figures.end());
    if (kind == "opening") all.insert(all.end(), {{"shape", name}, {"depth", "4 5/8 in"}});
    all.insert(all.end(), {{"material", "mdf"}, {"thickness", "3/8 in"}, {"blade", "10 in"}, {"kerf", "0.118 in"}});
    return {name, std::move(all)};
}

}  // namespace

const std::vector<Example>& examples() {
    static const std::vector<Example> all{
        with("segmental", "opening", {{"span", "45 in"}, {"rise", "9 1/2 in"}}),
        with("semicircular", "opening", {{"span", "43 in"}, {"spacing", "1/4 in"}}),
        with("elliptical", "opening", {{"span", "52 in"}, {"rise", "21 in"}}),
        with("three-centred", "opening", {{"span", "54 in"}, {"rise", "20 in"}}),
        with("pointed", "opening", {{"span", "41 in"}, {"rise", "33 in"}}),
        with("tudor", "opening", {{"span", "57 in"}, {"rise", "24 in"}}),
        with("parabolic", "opening", {{"span", "47 in"}, {"rise", "22 in"}}),
        with("catenary", "opening", {{"span", "44 in"}, {"rise", "26 in"}}),
        with("horseshoe", "opening", {{"span", "39 in"}, {"rise", "27 in"}}),
        with("eyebrow", "opening", {{"span", "66 in"}, {"rise", "9 in"}}),
        with("ordinates", "opening",
             {{"points", "0, 0"},
              {"points", "5, 7 1/4"},
              {"points", "11, 11 3/8"},
              {"points", "18, 13 7/8"},
              {"points", "25, 14 5/16"},
              {"points", "32, 13 1/8"},
              {"points", "39, 9 7/8"},
              {"points", "44, 5 3/4"},
              {"points", "48, 0"},
              {"points", ""}}),
        with("splayed", "opening",
             {{"shape", "segmental"},
              {"span", "42 in"},
              {"rise", "10 in"},
              {"legs", "62 in"},
              {"depth", "6 3/4 in"},
              {"splayed", "side"},
              {"splay_side", "1 3/4 in"},
              {"splay_measured", "narrow"},
              {"splay_toward", "room"}}),
        with("wall", "wall",
             {{"way", "chord"}, {"chord", "96 in"}, {"bulge", "11 in"}, {"side", "concave"}, {"width", "5 1/4 in"}}),
        with("stair", "stair",
             {{"way", "radius"},
              {"radius", "66 in"},
              {"angle", "80"},
              {"side", "concave"},
              {"step", "7 3/8 in, 10 1/4 in"},
              {"climbs", "left"},
              {"width", "8 in"}}),
    };
    return all;
}

void tell_example(Talk& talk, const Example& example, const fonts::Words& words) {
    std::string shape(example.name);
    std::replace(shape.begin(), shape.end(), '-', '_');
    const std::string named = words(shape == "wall"      ? "piece.wall_board"
                                    : shape == "stair"   ? "piece.stair_board"
                                    : shape == "splayed" ? "start.splayed_jamb"
                                                         : "piece.shape_" + shape);
    auto point = example.answers.begin();
    while (talk.state() == Talk::State::asking) {
        const std::string_view asked = talk.question().name;
        // Points come several times, each its own.
        const auto told = std::find_if(asked == "points" ? point : example.answers.begin(), example.answers.end(),
                                       [&](const auto& one) { return one.first == asked; });
        std::string line;
        if (told != example.answers.end()) line = told->second;
        if (told != example.answers.end() && asked == "points") point = std::next(told);
        if (asked == "title") line = words("start.example_title", {{"shape", named}});
        if (asked == "kind" && talk.answers().pieces() > 0) line = "done";
        const std::size_t before = talk.answers().all().size();
        talk.hear(line);
        measure::require(talk.answers().all().size() > before, "an example answers what it is asked");
    }
}

}  // namespace kerfpacket::cli
