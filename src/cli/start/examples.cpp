#include "cli/start/examples.h"

#include <algorithm>

#include "cli/start/heads.h"
#include "job/choices.h"
#include "measure/require.h"

namespace kerfpacket::cli {
namespace {

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
    static const std::vector<Example> all = [] {
        std::vector<Example> made;
        made.reserve(heads().size() + 3);
        for (const Head& head : heads()) made.push_back(with(head.shape, "opening", head.example));
        made.push_back(with("splayed", "opening",
                            {{"shape", "segmental"},
                             {"span", "42 in"},
                             {"rise", "10 in"},
                             {"legs", "62 in"},
                             {"depth", "6 3/4 in"},
                             {"splayed", "side"},
                             {"splay_side", "1 3/4 in"},
                             {"splay_measured", "narrow"},
                             {"splay_toward", "room"}}));
        made.push_back(with(
            "wall", "wall",
            {{"way", "chord"}, {"chord", "96 in"}, {"bulge", "11 in"}, {"side", "concave"}, {"width", "5 1/4 in"}}));
        made.push_back(with("stair", "stair",
                            {{"way", "radius"},
                             {"radius", "66 in"},
                             {"angle", "80"},
                             {"side", "concave"},
                             {"step", "7 3/8 in, 10 1/4 in"},
                             {"climbs", "left"},
                             {"width", "8 in"}}));
        return made;
    }();
    return all;
}

void tell_example(Talk& talk, const Example& example, const fonts::Words& words) {
    const std::string named = words(example.name == "wall"      ? "piece.wall_board"
                                    : example.name == "stair"   ? "piece.stair_board"
                                    : example.name == "splayed" ? "start.splayed_jamb"
                                                                : job::shape_key(example.name));
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
