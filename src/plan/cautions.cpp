#include "plan/cautions.h"

#include <algorithm>

#include "measure/require.h"

namespace kerfpacket::plan {
namespace {

using bend::Concern;

Caution of_concern(Concern concern, const Piece& piece) {
    switch (concern) {
        case Concern::strain_caution: return {"strain_caution", {{"u", piece.bend.utilisation}}};
        case Concern::strain_break:
            return {"strain_break", {{"u", piece.bend.utilisation}, {"least_radius", piece.bend.least_radius}}};
        case Concern::closes_before_bend:
            return {"closes_before_bend", {{"close_radius", piece.bend.close_radius}, {"radius", piece.bend_radius}}};
        case Concern::nearly_closes:
            return {"nearly_closes", {{"close_radius", piece.bend.close_radius}, {"radius", piece.bend_radius}}};
        case Concern::facet_visible: return {"facet_visible", {{"facet", piece.bend.facet}}};
        case Concern::grain_may_split: return {"grain_may_split", {}};
        case Concern::web_thin: return {"web_thin", {{"web", piece.web()}}};
        case Concern::depth_out_of_range:
            return {"depth_out_of_range", {{"ratio", piece.kerf_depth / piece.thickness}}};
        case Concern::kerf_out_of_range: return {"kerf_out_of_range", {{"ratio", piece.kerf / piece.thickness}}};
        case Concern::spacing_out_of_range:
            return {"spacing_out_of_range", {{"ratio", piece.spacing / piece.thickness}}};
        case Concern::land_out_of_range: return {"land_out_of_range", {{"ratio", piece.kerf / piece.spacing}}};
    }
    throw measure::Bug("a concern without a caution");
}

std::optional<Caution> of_stock(const Piece& piece, const job::Stock& stock) {
    const auto longest = std::max_element(stock.lengths.begin(), stock.lengths.end(),
                                          [](const auto& a, const auto& b) { return a.value < b.value; });
    if (longest == stock.lengths.end() || piece.blank_length <= longest->value) return std::nullopt;
    return Caution{"blank_longer_than_stock", {{"blank", piece.blank_length}, {"stock", longest->value}}};
}

std::optional<Caution> of_travel(const Piece& piece, const job::Saw& saw) {
    if (!saw.travel || !piece.travel_needed || *piece.travel_needed <= saw.travel->value) return std::nullopt;
    return Caution{"travel_short", {{"needed", *piece.travel_needed}, {"travel", saw.travel->value}}};
}

}  // namespace

std::vector<Caution> find_cautions(const Piece& piece, const job::Board& board, const job::Job& job) {
    std::vector<Caution> cautions;
    for (const Concern concern : piece.bend.concerns) cautions.push_back(of_concern(concern, piece));
    if (auto caution = of_stock(piece, job.stock)) cautions.push_back(std::move(*caution));
    if (auto caution = of_travel(piece, job.saw)) cautions.push_back(std::move(*caution));
    if (board.kerf_depth.solve || board.spacing.solve) cautions.push_back({"solve_not_built", {}});
    return cautions;
}

}  // namespace kerfpacket::plan
