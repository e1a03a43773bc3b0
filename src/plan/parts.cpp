#include "plan/parts.h"

#include <algorithm>

namespace kerfpacket::plan {
namespace {

/// The part of a board between two joints, counted from its own end nearer to zero. The blank nearer to zero lies
/// under: at its joint its plain face is the shorter, and that of the next blank laps over.
Blank part(const Blank& whole, const Joint* from, const Joint* to) {
    const Length low = from == nullptr ? Length() : from->from();
    const Length high = to == nullptr ? whole.length : to->to();
    Blank part;
    part.zero = whole.zero;
    part.length = high - low;
    const auto here = [&](Length at) { return std::clamp(at - low, Length(), part.length); };
    part.bend_start = here(whole.bend_start);
    part.bend_end = here(whole.bend_end);
    for (const BendRun& run : whole.runs)
        if (here(run.to) > here(run.from)) part.runs.push_back({here(run.from), here(run.to), run.on});
    const auto moved = [&](BoardEnd end) {
        end.kerf_face = end.kerf_face - low;
        end.plain_face = end.plain_face - low;
        return end;
    };
    part.ends = {moved(whole.ends[0]), moved(whole.ends[1])};
    part.trims = whole.trims;
    if (from != nullptr) {
        part.ends[0] = {BoardEnd::Meets::blank, from->angle, from->scarf, Length()};
        part.trims[0] = {};
    }
    if (to != nullptr) {
        part.ends[1] = {BoardEnd::Meets::blank, to->angle, part.length, part.length - to->scarf};
        part.trims[1] = {};
    }
    const auto tail = [&](std::size_t i) {
        const BoardEnd& end = part.ends.at(i);
        // A square end is cut beyond its tail.
        const Length cut = end.mitre.radians() != 0 ? end.plain_face : part.cut_at(i);
        return std::max(Length(), i == 0 ? part.bend_start - cut : cut - part.bend_end);
    };
    if (!part.runs.empty()) part.tails = {tail(0), tail(1)};
    for (Kerf kerf : whole.kerfs) {
        // In the scarf stand no kerfs: its middle parts those of one blank from those of the next.
        if ((from != nullptr && kerf.at < from->at) || (to != nullptr && kerf.at > to->at)) continue;
        kerf.n = static_cast<int>(part.kerfs.size()) + 1;
        kerf.at = kerf.at - low;
        kerf.mark = kerf.mark - low;
        part.kerfs.push_back(kerf);
    }
    return part;
}

}  // namespace

std::vector<Blank> parts_of(const Blank& whole, const std::vector<Joint>& joints) {
    std::vector<Blank> blanks;
    for (std::size_t i = 0; i <= joints.size(); ++i)
        blanks.push_back(part(whole, i == 0 ? nullptr : &joints[i - 1], i == joints.size() ? nullptr : &joints[i]));
    return blanks;
}

}  // namespace kerfpacket::plan
