#include "plan/splice_places.h"

#include <algorithm>
#include <cmath>

#include "plan/splice.h"
#include "plan/wood.h"

namespace kerfpacket::plan {
namespace {

using namespace measure::literals;

/// Where nobody says what is sold.
constexpr Length boundless = Length::inches(1e6);
/// Wood that is wished for between a joint and the bend, for clamps and fasteners. Judgement.
constexpr Length hand = 6_in;

Length scarf_of(const job::Board& board) {
    // As long as the board is thick: 45 degrees, which any saw cuts. Common practice, no source.
    return board.scarf.value > Length() ? board.scarf.value : board.thickness.value;
}

LongestBlank stock_for(const Request& wanted, const job::Job& job) {
    const job::Board& board = *wanted.wanted;
    const auto material = material_of(board, job);
    const bool grain = material && material->may_split;
    LongestBlank stock =
        longest_blank(section_of(board.material.value, board.thickness.value, board.width.value, job.stock), grain,
                      job.stock, job.header.units);
    if (stock.usual) stock.most = boundless;
    if (board.max_blank) stock.most = std::min(stock.most, board.max_blank->value);
    return stock;
}

}  // namespace

Splicing::Splicing(const Request& wanted, const Laid& laid, const job::Job& job)
    : board_(*wanted.wanted),
      blank_(laid.square ? *laid.square : laid.blank),
      verdict_(laid.bend.verdict),
      by_hand_(laid.cut.kerfs_given),
      kerf_(laid.cut.kerf),
      scarf_(scarf_of(board_)),
      unit_(job.header.units),
      stock_(stock_for(wanted, job)) {
    if (!laid.rake) return;
    cosine_ = laid.rake->cosine();
    shift_ = laid.blank.bend_start - laid.rake->along_edge(blank_.bend_start);
    lean_ = laid.rake->lean();
}

Place Splicing::place(Length at) const {
    Place place;
    place.at = at;
    const Length half = scarf_ / 2;
    if (at < least_blank - half - hair || blank_.length - at < least_blank - half - hair) place.bar = Bar::short_blank;
    for (const auto& [from, to] : board_.no_splice)
        if (front(at + half) > from.value + hair && front(at - half) < to.value - hair) place.bar = Bar::kept_out;
    if (place.bar != Bar::none) return place;
    bend_at(place);
    return place;
}

std::vector<Place> Splicing::places() const {
    const Length step = unit_ == measure::Unit::inch ? 0.5_in : 10_mm;
    std::vector<Place> all;
    for (Length at = step * std::ceil(front(least_blank - scarf_ / 2) / step); from_front(at) < blank_.length;
         at = at + step)
        if (const Place one = place(from_front(at)); one.bar == Bar::none) all.push_back(one);
    return all;
}

Length Splicing::between(const Place* from, const Place* to) const {
    const Length low = from == nullptr ? Length() : from->at - scarf_ / 2;
    const Length high = to == nullptr ? blank_.length : to->at + scarf_ / 2;
    return measure::round_to_tape(along_edge(high - low) + lean_, unit_);
}

Length Splicing::taken(Length length) const {
    const auto found = std::lower_bound(stock_.rooms.begin(), stock_.rooms.end(), length - hair);
    return found == stock_.rooms.end() ? length : *found;
}

void Splicing::bend_at(Place& place) const {
    const Length half = scarf_ / 2;
    const auto& kerfs = blank_.kerfs;
    const auto low = [&](const Kerf& kerf) { return kerf.at + kerf_ / 2 <= place.at - half; };
    const auto high = [&](const Kerf& kerf) { return kerf.at - kerf_ / 2 < place.at + half; };
    place.first = static_cast<std::size_t>(std::partition_point(kerfs.begin(), kerfs.end(), low) - kerfs.begin());
    place.end = static_cast<std::size_t>(std::partition_point(kerfs.begin(), kerfs.end(), high) - kerfs.begin());
    place.end = std::max(place.end, place.first);
    const bool straight = place.at + half <= blank_.bend_start + hair || place.at - half >= blank_.bend_end - hair;
    if (straight && place.gone() == 0) {
        const Length clear = std::max(blank_.bend_start - place.at, place.at - blank_.bend_end) - half;
        place.near = std::max(Length(), hand - clear);
        return;
    }
    // Where kerfs stand in a straight end they bend nothing, but one is not cut into a joint.
    const Kerf* sharpest = nullptr;
    for (std::size_t i = place.first - std::min<std::size_t>(place.first, 1); i < std::min(place.end + 1, kerfs.size());
         ++i)
        if (kerfs[i].radius.mm() > 0 && (sharpest == nullptr || kerfs[i].radius < sharpest->radius))
            sharpest = &kerfs[i];
    if (place.gone() > 0 && by_hand_) {
        place.bar = Bar::by_hand;
        return;
    }
    if (sharpest == nullptr) return;
    place.curvature = 1 / sharpest->radius.mm();
    // An end of the board's kerfs is no neighbour: what bends there would bend nowhere.
    if (place.first == 0 || place.end == kerfs.size()) {
        place.bar = Bar::flat;
        return;
    }
    const Kerf& before = kerfs[place.first - 1];
    const Kerf& after = kerfs[place.end];
    const Length gap = after.at - before.at;
    place.off = gap * (gap.mm() * place.curvature) / 8;
    if (place.off > most_flat) place.bar = Bar::flat;
    for (const Kerf* beside : {&before, &after}) {
        const double more = (beside->spacing + gap) / 2 / beside->spacing;
        if (place.gone() > 0 && bend::strain_verdict(beside->utilisation * more) > verdict_) place.bar = Bar::strain;
    }
}

}  // namespace kerfpacket::plan
