#include "plan/bid.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "job/same_size.h"

namespace kerfpacket::plan {
namespace {

using job::Rate;

class Counting {
public:
    explicit Counting(const House& house) : house_(house) {}

    BidCounts run(int coupons) {
        counts_[Rate::minutes_coupon] = coupons;
        for (const Plan* job : house_.jobs)
            for (const Piece& piece : job->pieces) add(piece);
        if (house_.stock != nullptr) add(*house_.stock);
        else counts_[Rate::minutes_crosscut] += result_.blanks + legs_ + 1;  // of one board, squared at its end
        for (const auto& [rate, count] : counts_)
            if (count > 0) result_.work.push_back({rate, count});
        return std::move(result_);
    }

private:
    void add(const Piece& piece) {
        const int copies = piece.quantity;
        // Kerfs and scarfs run from edge to edge, askew on a board that climbs.
        const Length across = piece.rake ? piece.rake->cut() : piece.width;
        for (const Blank& blank : piece.blanks) {
            const int kerfs = static_cast<int>(blank.kerfs.size()) * copies;
            result_.blanks += copies;
            counts_[Rate::minutes_kerf] += kerfs;
            result_.kerf_stroke = result_.kerf_stroke + across * kerfs;
            result_.glue_area_mm2 += 2 * piece.cut.depth.mm() * across.mm() * kerfs;
            for (const BoardEnd& end : blank.ends)
                if (end.mitre.radians() != 0 && end.meets != BoardEnd::Meets::blank)
                    counts_[Rate::minutes_mitre] += copies;
        }
        for (const Joint& joint : piece.joints) {
            counts_[Rate::minutes_joint] += copies;
            const Length square = piece.rake ? joint.scarf * piece.rake->cosine() : joint.scarf;
            result_.glue_area_mm2 += copies * across.mm() * std::hypot(square.mm(), piece.cut.thickness.mm());
        }
        legs_ += static_cast<int>(piece.leg_boards.size()) * copies;
        // A splayed leg is bevelled, not mitred.
        if (!piece.splay) counts_[Rate::minutes_mitre] += static_cast<int>(piece.leg_boards.size()) * copies;
        if (piece.has_own_ribs()) counts_[Rate::minutes_rib] += 1;
        if (piece.board == 1) add_segments(piece);
    }

    void add_segments(const Piece& piece) {
        const auto* arch = std::get_if<ArchLines>(&piece.lines);
        if (arch == nullptr) return;
        counts_[Rate::minutes_segment] += static_cast<int>(arch->segments.size()) * piece.quantity;
        for (const CasingSegment& segment : arch->segments)
            result_.curved_sawing =
                result_.curved_sawing + (segment.inside.length() + segment.outside.length()) * piece.quantity;
    }

    /// Each blank is cut off at its far end; a board of which an end is trimmed has one cut more.
    void add(const StockPlan& stock) {
        for (const StockSection& section : stock.sections) {
            result_.unplanned += static_cast<int>(section.no_room.size());
            for (const CutStick& stick : section.sticks) {
                if (stock.end_trim > Length()) ++counts_[Rate::minutes_crosscut];
                counts_[Rate::minutes_crosscut] += static_cast<int>(stick.blanks.size());
                for (const StockBlank& blank : stick.blanks) {
                    if (job::same_size(blank.width, section.width)) continue;
                    ++counts_[Rate::minutes_rip];
                    result_.ripped = result_.ripped + blank.length;
                }
            }
        }
        for (const SheetSection& section : stock.sheets) add(section, stock.end_trim > Length() ? 1 : 0);
    }

    /// A rip for each strip and a crosscut for each blank; with trim, one more of each sheet and of each strip.
    void add(const SheetSection& section, int trims) {
        result_.unplanned += static_cast<int>(section.no_room.size());
        for (const CutSheet& sheet : section.sheets) {
            const int rips = static_cast<int>(sheet.strips.size()) + trims;
            counts_[Rate::minutes_rip] += rips;
            result_.ripped = result_.ripped + sheet.length * rips;
            for (const CutStrip& strip : sheet.strips)
                counts_[Rate::minutes_crosscut] += static_cast<int>(strip.cut.blanks.size()) + trims;
        }
    }

    const House& house_;
    BidCounts result_{};
    std::map<Rate, int> counts_{};
    int legs_ = 0;
};

std::optional<double> minutes_of(const BidCounts& counts, const job::Rates& rates) {
    double minutes = 0;
    for (const Work& work : counts.work) {
        const auto& each = rates.of(work.rate);
        if (!each) return std::nullopt;
        minutes += *each * work.count;
    }
    return minutes;
}

/// Of what is bought, where every section that buys anything has prices; but for casings.
std::optional<double> stock_price(const BidCounts& counts, const StockPlan* stock) {
    if (stock == nullptr || counts.unplanned > 0) return std::nullopt;
    std::int64_t cents = 0;
    for (const StockSection& section : stock->sections) {
        if (section.to_buy.empty() || section.casing) continue;  // no job says what a casing is made of
        if (!section.priced) return std::nullopt;
        cents += section.cents;
    }
    for (const SheetSection& section : stock->sheets) {
        if (section.to_buy.empty()) continue;
        if (!section.priced) return std::nullopt;
        cents += section.cost;
    }
    return static_cast<double>(cents) / 100;
}

}  // namespace

BidCounts bid_counts(const House& house, int coupons) { return Counting(house).run(coupons); }

double long_length(Length length, Unit unit) { return unit == Unit::inch ? length.inches() / 12 : length.mm() / 1000; }

double glue_area(const BidCounts& counts, Unit unit) {
    constexpr double foot = 304.8;
    return counts.glue_area_mm2 / (unit == Unit::inch ? foot * foot : 1e6);
}

std::optional<int> glue_containers(const BidCounts& counts, Unit unit, const job::Rates& rates) {
    const auto& covers = rates.of(Rate::glue_covers);
    if (!covers) return std::nullopt;
    return static_cast<int>(std::ceil(glue_area(counts, unit) / *covers - 1e-9));
}

BidSums bid_sums(const BidCounts& counts, const House& house, const job::Rates& rates, int sheets) {
    const Unit unit = house.first().header.units;
    BidSums sums;
    sums.minutes = minutes_of(counts, rates);
    if (const auto& hour = rates.of(Rate::hour); hour && sums.minutes) sums.labour = *hour * *sums.minutes / 60;
    sums.stock = stock_price(counts, house.stock);
    if (const auto& sheet = rates.of(Rate::paper)) sums.paper = *sheet * sheets;
    if (const auto& glue = rates.of(Rate::glue))
        if (const auto containers = glue_containers(counts, unit, rates)) sums.glue = *glue * *containers;
    const auto& lasts = rates.of(Rate::blade_lasts);
    if (const auto& sharpening = rates.of(Rate::sharpening); sharpening && lasts)
        sums.blade = *sharpening * long_length(counts.kerf_stroke, unit) / *lasts;
    return sums;
}

std::optional<double> BidSums::all() const {
    double sum = 0;
    for (const auto* part : {&labour, &stock, &paper, &glue, &blade}) {
        if (!*part) return std::nullopt;
        sum += **part;
    }
    return sum;
}

}  // namespace kerfpacket::plan
