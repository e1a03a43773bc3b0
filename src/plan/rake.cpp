#include "plan/rake.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "measure/require.h"

namespace kerfpacket::plan {
namespace {

/// How far beyond the front edge's place, counted from zero, the bottom edge meets the cut of an end.
Length lean_of(job::EndCut cut, Length plumb, const Rake& rake) {
    switch (cut) {
        case job::EndCut::plumb: return plumb;
        case job::EndCut::square: return {};
        case job::EndCut::level: {
            const Length level = rake.width / std::tan(rake.kerf().radians());
            return plumb > Length() ? -level : level;
        }
    }
    throw measure::Bug("an end that is cut in no way");
}

}  // namespace

Angle Rake::kerf() const { return Angle::radians(std::atan(climb / plan_length)); }

Angle Rake::end(job::EndCut cut) const {
    switch (cut) {
        case job::EndCut::plumb: return kerf();
        case job::EndCut::square: return {};
        case job::EndCut::level: return Angle::degrees(90) - kerf();
    }
    throw measure::Bug("an end that is cut in no way");
}

Rake Rake::of_part(std::size_t i, std::size_t parts, job::End zero) const {
    Rake part = *this;
    const auto cut_plumb = [&](bool at_zero) {
        part.ends.at((zero == job::End::left) == at_zero ? 0 : 1) = job::EndCut::plumb;
    };
    if (i > 0) cut_plumb(true);
    if (i + 1 < parts) cut_plumb(false);
    return part;
}

Rake rake_of(const job::Rake& asked, Length width, Length measured, Length plan_length) {
    return {asked.to_the_right(), asked.ends, measured * asked.steepness(), plan_length, width};
}

Blank askew(Blank blank, const Rake& rake) {
    const bool from_left = blank.zero == job::End::left;
    // A board that climbs away from zero leans its plumb lines back: their foot is nearer to zero than their head.
    const Length plumb = rake.to_the_right == from_left ? -rake.lean() : rake.lean();
    const std::array<Length, 2> trims{rake.along_edge(blank.trims[0]), rake.along_edge(blank.trims[1])};
    // Where the plumb lines of both ends meet the front edge, and the tips beyond which nothing of the board reaches.
    const std::array<Length, 2> square{blank.trims[0], blank.length - blank.trims[1]};
    const Length shift = trims[0] - rake.along_edge(square[0]) + std::max(Length(), -plumb);
    const auto place = [&](Length at) { return rake.along_edge(at) + shift; };
    Blank result = blank;
    result.length = place(square[1]) + std::max(Length(), plumb) + trims[1];
    result.lean = plumb;
    for (const std::size_t i : {std::size_t{0}, std::size_t{1}}) {
        const job::EndCut cut = rake.ends.at(from_left ? i : 1 - i);
        const Length lean = lean_of(cut, plumb, rake);
        // Whatever the cut, the board reaches to the plumb line of its end, and nothing of it goes past.
        const Length end = place(square.at(i));
        const Length inside = end + plumb - lean;
        const Length front = i == 0 ? std::max(end, inside) : std::min(end, inside);
        BoardEnd& made = result.ends.at(i);
        made.lean = lean;
        result.trims.at(i) = i == 0 ? front : result.length - front;
        result.tails.at(i) = rake.along_edge(blank.tails.at(i));
        made.kerf_face = place(blank.ends.at(i).kerf_face);
        made.plain_face = place(blank.ends.at(i).plain_face);
    }
    result.bend_start = place(blank.bend_start);
    result.bend_end = place(blank.bend_end);
    for (BendRun& run : result.runs) run = {place(run.from), place(run.to), run.on};
    result.finish_length = rake.along_edge(blank.finish_length);
    for (Kerf& kerf : result.kerfs) {
        kerf.at = place(kerf.at);
        kerf.mark = place(kerf.mark);
    }
    return result;
}

}  // namespace kerfpacket::plan
