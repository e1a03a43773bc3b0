#include "plan/place_cautions.h"

#include <cmath>

#include "job/choices.h"

namespace kerfpacket::plan {
namespace {

/// Radii that the program chose are told, for they stand nowhere in the job. On even springs both halves have the same.
std::optional<Caution> tudor_radii(const curve::Head& head, const job::Opening& opening) {
    const bool even = !opening.legs || (*opening.legs)[0].value == (*opening.legs)[1].value;
    if (!even || (opening.side_radius && opening.crown_radius)) return std::nullopt;
    const geom::Path side = head.outline.runs().at(1).path();
    const auto& arcs = side.segments();
    return Caution{"tudor_radii", {{"side", arcs.front().radius()}, {"crown", arcs.back().radius()}}};
}

/// The gap in which a fair curve turns most, of each half of the points; elsewhere more points do less.
std::vector<curve::Survey::Gap> worst_gaps(const curve::Survey& survey) {
    std::vector<curve::Survey::Gap> worst;
    for (const bool left : {true, false}) {
        const curve::Survey::Gap* found = nullptr;
        for (const curve::Survey::Gap& gap : survey.gaps) {
            if ((2 * gap.after + 2 <= survey.points.size()) != left) continue;
            if (found == nullptr || std::abs(gap.turn.radians()) > std::abs(found->turn.radians())) found = &gap;
        }
        if (found != nullptr) worst.push_back(*found);
    }
    return worst;
}

}  // namespace

std::vector<Caution> head_cautions(const curve::Head& head, const job::Opening& opening) {
    std::vector<Caution> cautions;
    if (opening.shape.value == job::Shape::horseshoe)
        cautions.push_back({"horseshoe_entry", {{"span", head.span}, {"widest", curve::widest(head)}}});
    if (opening.legs && (*opening.legs)[0].value != (*opening.legs)[1].value) {
        const Length higher = (*opening.legs)[0].value - (*opening.legs)[1].value;
        cautions.push_back(
            {higher.mm() > 0 ? "left_spring_higher" : "right_spring_higher", {{"higher", measure::abs(higher)}}});
        if (opening.shape.value != job::Shape::ordinates)
            cautions.push_back({job::tilts(opening.shape.value) ? "arch_tilts" : "arch_by_halves", {}});
    }
    if (opening.shape.value == job::Shape::tudor)
        if (auto radii = tudor_radii(head, opening)) cautions.push_back(std::move(*radii));
    if (opening.casing && curve::goes_on_straight(opening.shape.value) && head.outline.has_corner(0))
        cautions.push_back({"casing_goes_on_straight", {}});
    return cautions;
}

std::optional<Caution> of_suspect(const curve::Survey& survey) {
    if (!survey.suspect) return std::nullopt;
    return Caution{
        "ordinate_suspect",
        {{"station", survey.stations.at(survey.suspect->point)}, {"off", curve::to_hundredths(survey.suspect->off)}}};
}

std::vector<Caution> of_survey(const std::optional<curve::Survey>& survey) {
    if (!survey) return {};
    std::vector<Caution> cautions;
    const curve::Misses& used = survey->used_misses();
    if (survey->used != survey->recommended)
        cautions.push_back({"fit_not_recommended",
                            {{"used", std::string(job::word(survey->used))},
                             {"recommended", std::string(job::word(survey->recommended))},
                             {"miss", curve::to_hundredths(used.worst())}}});
    if (survey->used != job::Fit::fair) return cautions;
    if (used.worst() > survey->tape + Length::mm(0.01))
        cautions.push_back({"curvature_limited", {{"miss", curve::to_hundredths(used.worst())}}});
    for (const curve::Survey::Gap& gap : worst_gaps(*survey))
        cautions.push_back({"ordinates_far_apart",
                            {{"from", survey->stations.at(gap.after)}, {"to", survey->stations.at(gap.after + 1)}}});
    return cautions;
}

}  // namespace kerfpacket::plan
