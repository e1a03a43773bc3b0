#include "plan/make_stock_plan.h"

#include <algorithm>
#include <map>
#include <tuple>
#include <utility>

#include "measure/require.h"
#include "plan/sheet_plan.h"
#include "plan/stock_boards.h"
#include "plan/stock_units.h"
#include "plan/stopped.h"
#include "stock/pack.h"

namespace kerfpacket::plan {
namespace {

/// The boards of one section, in an order that does not hang on that of the job file.
struct Section {
    bool own_material = false;
    std::vector<StockBlank> blanks{};
};
using Sections = std::map<SectionKey, Section>;

/// What is cut from sheets of one material and thickness.
using SheetKey = std::pair<std::string, Length>;
using AllFromSheets = std::map<SheetKey, FromSheets>;

/// Longest first.
void in_order(std::vector<StockBlank>& blanks) {
    std::sort(blanks.begin(), blanks.end(), [](const StockBlank& a, const StockBlank& b) {
        return std::tuple(-a.length.mm(), a.id, a.part, a.segment, a.copy) <
               std::tuple(-b.length.mm(), b.id, b.part, b.segment, b.copy);
    });
}

class Gathering {
public:
    Gathering(const job::Stock& stock, Unit unit) : stock_(stock), unit_(unit) {}

    void add(const Piece& piece, const std::string& job) {
        add_casing(piece, job);
        std::vector<Length> lengths;
        for (const Blank& blank : piece.blanks) lengths.push_back(Piece::stock_length(blank));
        add(piece, job, lengths, blanks_for(piece, piece.stock_width()));
        for (const LegBoard& leg : piece.leg_boards)
            add(blanks_for(piece, piece.width), piece, job + piece.id,
                leg.side == job::End::left ? StockBlank::Of::left_leg : StockBlank::Of::right_leg, leg.longest(),
                piece.width);
    }

    /// Segments that are sawn from boards, end to end: each takes the least that it fits in, rounded up for the tape.
    void add_casing(const Piece& piece, const std::string& job) {
        const auto* arch = std::get_if<ArchLines>(&piece.lines);
        if (arch == nullptr || piece.board != 1 || !piece.casing || !piece.casing->board) return;
        const Length width = piece.casing->board->value;
        Section& section = sections_[{"", Length(), width}];
        for (const CasingSegment& segment : arch->segments)
            for (int copy = 1; copy <= piece.quantity; ++copy)
                section.blanks.push_back({job + piece.id.substr(0, piece.id.find('/')), StockBlank::Of::segment, copy,
                                          piece.quantity, segment.length_to_saw(unit_), width, segment.n});
    }

    /// The section of a board of which the blanks have other lengths; those of its pieces that lie in it too.
    void add_only(const SectionKey& only, const Piece& piece, const std::vector<Length>& lengths) {
        if (section_of(piece, stock_) != only) return;
        if (lengths.empty()) add(piece, {});
        else add(piece, {}, lengths, sections_[only].blanks);
    }

    Sections take() {
        for (auto& [key, section] : sections_) in_order(section.blanks);
        return std::move(sections_);
    }

    AllFromSheets take_from_sheets() {
        for (auto& [key, sheets] : sheets_) in_order(sheets.blanks);
        return std::move(sheets_);
    }

private:
    std::vector<StockBlank>& blanks_for(const Piece& piece, Length width) {
        const Length thickness = piece.cut.thickness;
        if (from_sheets(piece.material, thickness, width, stock_)) {
            FromSheets& sheets = sheets_[{piece.material, thickness}];
            sheets.material = piece.material;
            sheets.own_material = piece.own_material;
            sheets.grain = piece.grain;
            sheets.thickness = thickness;
            return sheets.blanks;
        }
        SectionKey key = section_of(piece, stock_);
        key.width = section_of(piece.material, thickness, width, stock_).width;  // a leg's may be another
        Section& section = sections_[key];
        section.own_material = piece.own_material;
        return section.blanks;
    }

    void add(const Piece& piece, const std::string& job, const std::vector<Length>& lengths,
             std::vector<StockBlank>& blanks) {
        for (std::size_t i = 0; i < lengths.size(); ++i)
            add(blanks, piece, job + piece.blank_id(i), StockBlank::Of::piece, lengths[i], piece.stock_width());
    }

    void add(std::vector<StockBlank>& blanks, const Piece& piece, const std::string& id, StockBlank::Of part,
             Length length, Length width) {
        for (int copy = 1; copy <= piece.quantity; ++copy)
            blanks.push_back({id, part, copy, piece.quantity, measure::round_to_tape(length, unit_), width, 0,
                              part == StockBlank::Of::piece && stopped(piece) != Stopped::no});
    }

    const job::Stock& stock_;
    Unit unit_;
    Sections sections_{};
    AllFromSheets sheets_{};
};

class SectionPlan {
public:
    /// `rack`: what lies there is for this section, and not for another of the same size.
    SectionPlan(const SectionKey& key, Section section, const job::Stock& stock, const StockPlan& plan, bool rack)
        : plan_(plan), ruler_(plan.unit), blanks_(std::move(section.blanks)) {
        result_.casing = key.material.empty();
        result_.material = key.material;
        result_.own_material = section.own_material;
        result_.thickness = key.thickness;
        result_.width = key.width;
        result_.profile = key.profile;
        tell_what_is_listed(result_, stock);
        lengths_ = lengths_of(key, stock, plan.unit, result_.usual_lengths);
        if (!rack) std::erase_if(lengths_, [](const StockLength& one) { return one.on_hand.has_value(); });
        // One of no use to anybody: its figures would not fit in the tables of the search.
        std::erase_if(lengths_,
                      [&](const StockLength& one) { return ruler_.down(one.length) >= stock::longest_stick; });
    }

    StockSection run(job::Diagnostics& refused, std::optional<std::int64_t> effort = stock::usual_effort) {
        if (blanks_.size() > static_cast<std::size_t>(stock::most_pieces) || lengths_.size() > stock::most_sticks) {
            refused.push_back({job::Severity::refused,
                               {},
                               job::Told("there are too many blanks of one section to plan their stock"),
                               job::Told("split the house into several jobs")});
            result_.no_room = std::move(blanks_);
            return std::move(result_);
        }
        const stock::Problem problem = stated();
        tell(problem, effort ? stock::pack(problem, *effort) : stock::pack_as_they_come(problem));
        if (!result_.no_room.empty()) refused.push_back(refusal());
        return std::move(result_);
    }

private:
    stock::Problem stated() {
        stock::Problem problem;
        result_.priced =
            std::any_of(lengths_.begin(), lengths_.end(), [](const auto& one) { return one.cents; }) &&
            std::all_of(lengths_.begin(), lengths_.end(), [](const auto& one) { return one.cents || one.on_hand; });
        for (const StockLength& one : lengths_) {
            const stock::Units room = ruler_.room(one.length, plan_.end_trim, plan_.kerf);
            const stock::Cost price = one.on_hand      ? 0
                                      : result_.priced ? *one.cents
                                                       : std::max<stock::Cost>(1, ruler_.down(one.length));
            problem.sticks.push_back({room, price, one.on_hand});
        }
        for (const StockBlank& blank : blanks_) problem.kinds.push_back({ruler_.cut(blank.length, plan_.kerf), 1});
        return problem;
    }

    void tell(const stock::Problem& problem, const stock::Packing& packing) {
        for (const stock::Packed& packed : packing.sticks) {
            const StockLength& one = lengths_[packed.stick];
            CutStick stick{one.length, one.on_hand.has_value(), {}, one.length - plan_.end_trim, false};
            for (const std::size_t piece : packed.pieces) {
                stick.blanks.push_back(blanks_[piece]);
                stick.offcut = stick.offcut - blanks_[piece].length - plan_.kerf;
            }
            stick.offcut = std::max(stick.offcut, Length());
            stick.kept = stick.offcut >= plan_.least_offcut;
            result_.sticks.push_back(std::move(stick));
            if (!one.on_hand) buy(one);
        }
        for (const std::size_t piece : packing.left_over) result_.no_room.push_back(blanks_[piece]);
        result_.proved = packing.proved();
        if (result_.priced) {
            result_.cents = packing.cost;
            result_.cents_at_most = packing.cost - packing.bound;
        } else result_.length_at_most = ruler_.length(packing.cost - packing.bound);
        measure::require(packing.sticks.size() + packing.left_over.size() <= problem.kinds.size(),
                         "no stick stays whole");
    }

    void buy(const StockLength& one) {
        result_.bought = result_.bought + one.length;
        auto& list = result_.to_buy;
        if (list.empty() || list.back().length != one.length) list.push_back({one.length, 0, one.cents});
        ++list.back().count;
    }

    job::Diagnostic refusal() const {
        const StockBlank& blank = result_.no_room.front();
        const StockLength* longest = nullptr;
        for (const StockLength& one : lengths_)
            if (longest == nullptr || one.length > longest->length) longest = &one;
        const auto shown = [&](Length length) { return measure::length_text(length, plan_.unit); };
        const job::Told hint("expected stock of at least " + shown(blank.length + plan_.end_trim * 2) +
                             (result_.casing ? ", or more segments"
                                             : ", or for a board on a wall a joint (see scarf, joints and max_blank)"));
        if (longest == nullptr)
            return {job::Severity::refused, {}, job::Told("there is no stock for " + blank.id), hint};
        return {
            job::Severity::refused, longest->at,
            job::Told("no stock holds the blank of " + blank.id + ", " + shown(blank.length) + ": " +
                      shown(longest->length) + " is the longest, with " + shown(plan_.end_trim) + " sawn off each end"),
            hint};
    }

    const StockPlan& plan_;
    Ruler ruler_;
    std::vector<StockBlank> blanks_;
    std::vector<StockLength> lengths_{};
    StockSection result_{};
};

}  // namespace

bool wants_stock_plan(const Plan& plan) {
    return !plan.pieces.empty() && (plan.blanks() > 1 || !plan.stock.boards.empty() || !plan.stock.sheets.empty());
}

bool no_stock(const job::Stock& stock) { return same_stock(stock, {}); }

bool same_stock(const job::Stock& a, const job::Stock& b) {
    const auto row = [](const job::StockBoard& one) {
        return std::tuple(one.material.value, one.thickness.value, one.width.value, one.length.value, one.cents,
                          one.on_hand);
    };
    const auto same_rows = [&](const std::vector<job::StockBoard>& one, const std::vector<job::StockBoard>& other) {
        return std::equal(one.begin(), one.end(), other.begin(), other.end(),
                          [&](const auto& left, const auto& right) { return row(left) == row(right); });
    };
    return a.end_trim == b.end_trim && a.least_offcut == b.least_offcut &&
           std::equal(a.lengths.begin(), a.lengths.end(), b.lengths.begin(), b.lengths.end(),
                      [](const auto& one, const auto& other) { return one.value == other.value; }) &&
           same_rows(a.boards, b.boards) && same_rows(a.sheets, b.sheets);
}

StockSection section_with(const Plan& job, const std::string& id, const std::vector<Length>& lengths,
                          std::optional<std::int64_t> effort) {
    const auto board =
        std::find_if(job.pieces.begin(), job.pieces.end(), [&](const Piece& one) { return one.id == id; });
    measure::require(board != job.pieces.end(), "the board is one of the job's");
    const Unit unit = job.header.units;
    const StockPlan plan{unit, job.saw.kerf.value, end_trim(job.stock, unit), least_offcut(job.stock, unit), {}};
    const SectionKey key = section_of(*board, job.stock);
    Gathering gathering(job.stock, unit);
    for (const Piece& piece : job.pieces)
        gathering.add_only(key, piece, &piece == &*board ? lengths : std::vector<Length>());
    job::Diagnostics refused;
    Sections sections = gathering.take();
    const bool rack = std::none_of(job.pieces.begin(), job.pieces.end(), [&](const Piece& one) {
        const SectionKey other = section_of(one, job.stock);
        return same_size(other, key) && other.profile < key.profile;
    });
    return SectionPlan(key, std::move(sections.at(key)), job.stock, plan, rack).run(refused, effort);
}

StockPlan make_stock_plan(const std::vector<const Plan*>& jobs) {
    const auto has_stock =
        std::find_if(jobs.begin(), jobs.end(), [](const Plan* job) { return !no_stock(job->stock); });
    const job::Stock& stock = (has_stock == jobs.end() ? jobs.front() : *has_stock)->stock;
    const Unit unit = jobs.front()->header.units;
    StockPlan plan{unit, {}, end_trim(stock, unit), least_offcut(stock, unit), {}};
    plan.stopped = stopped_boards(jobs);
    plan.not_made = not_made(jobs);
    Gathering gathering(stock, plan.unit);
    for (const Plan* job : jobs) {
        plan.kerf = std::max(plan.kerf, job->saw.kerf.value);
        for (const Piece& piece : job->pieces) gathering.add(piece, name_in_house(*job, "", jobs.size() > 1));
    }
    std::optional<SectionKey> before;
    for (auto& [key, section] : gathering.take()) {
        const bool rack = !before || !same_size(*before, key);
        plan.sections.push_back(SectionPlan(key, std::move(section), stock, plan, rack).run(plan.refused));
        before = key;
    }
    for (auto& [key, sheets] : gathering.take_from_sheets())
        plan.sheets.push_back(plan_sheets(std::move(sheets), stock, plan, plan.refused));
    return plan;
}

}  // namespace kerfpacket::plan
