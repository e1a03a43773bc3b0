#include "plan/recommended.h"

#include <algorithm>

#include "job/choices.h"
#include "plan/places.h"

namespace kerfpacket::plan {
namespace {

job::Board& board_of(job::Opening& opening) { return opening.liner; }
job::Board& board_of(job::Wall& wall) { return wall.board; }

/// How far apart two curves through measured points lie at most, at those points.
Length apart(const curve::Survey& survey, const curve::Survey& other) {
    const std::vector<Length>& a = survey.used_misses().at;
    const std::vector<Length>& b = other.used_misses().at;
    Length most;
    for (std::size_t i = 0; i < std::min(a.size(), b.size()); ++i) most = std::max(most, measure::abs(a[i] - b[i]));
    return most;
}

OtherFit other_fit(const curve::Survey& survey, const Pieces& others, std::size_t i) {
    OtherFit fit{survey.recommended, bend::Verdict::break_likely, 0, {}};
    if (!others || i >= others->size()) return fit;
    fit.verdict = (*others)[i].bend.verdict;
    fit.utilisation = (*others)[i].bend.utilisation;
    if (others->front().survey) fit.gap = apart(survey, *others->front().survey);
    return fit;
}

template <class Place>
std::vector<Piece> beside(std::vector<Piece> pieces, Place place, const job::Job& job) {
    const std::optional<curve::Survey>& survey = pieces.front().survey;
    if (!survey || survey->used == survey->recommended) return pieces;
    place.ordinates->fit = job::Sourced<job::Fit>{survey->recommended, {}};
    // Kerfs that were cut too deep or placed by hand belong to the curve that is drawn.
    board_of(place).too_deep.clear();
    const Pieces others = pieces_of(place, job);
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        const OtherFit fit = other_fit(*survey, others, i);
        pieces[i].other_fit = fit;
        if (fit.verdict > pieces[i].bend.verdict)
            pieces[i].cautions.push_back(
                {fit.utilisation > 0 ? "recommended_fit_is_worse" : "recommended_fit_is_refused",
                 {{"fit", std::string(job::word(fit.fit))}, {"u", fit.utilisation}}});
    }
    return pieces;
}

}  // namespace

std::vector<Piece> beside_recommended(std::vector<Piece> pieces, const job::Opening& opening, const job::Job& job) {
    return beside(std::move(pieces), opening, job);
}

std::vector<Piece> beside_recommended(std::vector<Piece> pieces, const job::Wall& wall, const job::Job& job) {
    return beside(std::move(pieces), wall, job);
}

}  // namespace kerfpacket::plan
