#include "bend/sensitivity.h"

#include <array>

namespace kerfpacket::bend {
namespace {

Cell changed(Cell cell, Changed what, Length by) {
    switch (what) {
        case Changed::depth: cell.depth += by; break;
        case Changed::spacing: cell.spacing += by; break;
        case Changed::kerf: cell.kerf += by; break;
    }
    return cell;
}

}  // namespace

std::vector<Change> sensitivity(const Cell& cell, const Material& material, KerfsOn side, Length radius,
                                const Steps& steps) {
    const std::array<std::pair<Changed, Length>, 3> all{
        {{Changed::depth, steps.depth}, {Changed::spacing, steps.spacing}, {Changed::kerf, steps.kerf}}};
    std::vector<Change> changes;
    for (const auto& [what, step] : all) {
        for (const Length by : {-step, step}) {
            Change change{what, by, 0, Verdict::ok, true};
            const Cell other = changed(cell, what, by);
            const bool whole = other.depth.mm() > 0 && other.thinnest_web().mm() > 0 && other.kerf.mm() > 0;
            if (whole && other.kerf < other.spacing) {
                const Assessment after =
                    assess(other, material, side, radius, Angle::radians(cell.spacing / radius), 1);
                change = {what, by, after.utilisation, after.verdict, false};
            }
            changes.push_back(change);
        }
    }
    return changes;
}

}  // namespace kerfpacket::bend
