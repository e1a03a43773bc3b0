#include "cli/outlines.h"

#include <algorithm>

#include <fmt/format.h>

#include "cli/pieces_to_cut.h"
#include "cli/report.h"
#include "cli/street.h"
#include "output/exchange.h"
#include "plan/outlines.h"

namespace kerfpacket::cli {
namespace {

using measure::Length;

constexpr Length between_pieces = Length::mm(200);

Length lowest(const std::vector<output::ExchangeLayer>& layers) {
    Length low;
    for (const output::ExchangeLayer& layer : layers)
        for (const geom::Path& path : layer.paths) low = std::min(low, path.bounds().low.y);
    return low;
}

/// All layers of the pieces, one piece below the other.
std::vector<output::ExchangeLayer> drawn(const std::vector<const plan::Piece*>& pieces) {
    std::vector<output::ExchangeLayer> all;
    for (const plan::Piece* piece : pieces) {
        const geom::Point by{{}, all.empty() ? Length() : lowest(all) - between_pieces};
        for (plan::OutlineLayer& layer : plan::outlines(*piece)) {
            for (geom::Path& path : layer.paths) path = path.moved(by);
            all.push_back({std::move(layer.name), std::move(layer.paths)});
        }
    }
    return all;
}

}  // namespace

Status outlines(const OutlinesChoice& choice, Console& console) {
    const std::optional<Planned> job = planned(choice.job, console);
    if (!job) return Status::errors;
    const auto pieces = pieces_to_cut(job->plan, choice.piece, console);
    if (pieces.empty()) return Status::errors;
    const std::string title =
        fmt::format("kerfpacket, job fingerprint {}: outlines without tool width", job->plan.fingerprint);
    console.result((choice.svg ? output::svg : output::dxf)(drawn(pieces), title));
    console.message(verdict_line(job->plan));
    return job->status;
}

}  // namespace kerfpacket::cli
