#include "plan/sheet_plan.h"

#include <algorithm>
#include <map>
#include <tuple>
#include <utility>

#include "measure/fraction.h"
#include "plan/stock_boards.h"
#include "plan/stock_units.h"
#include "stock/pack.h"

namespace kerfpacket::plan {
namespace {

/// A sheet as it is laid: strips run along it.
struct Laid {
    Length along;
    Length across;
    std::optional<int> cents{};
    std::optional<int> on_hand{};
    const job::StockBoard* row = nullptr;
};

/// The sheets of the stock, turned or not, in an order that does not hang on that of the job file.
std::vector<Laid> laid_sheets(const FromSheets& wanted, const job::Stock& stock, bool turned) {
    std::vector<Laid> sheets;
    for (const job::StockBoard& row : stock.sheets) {
        if (!is_of(row, wanted.material, wanted.thickness)) continue;
        Laid one{row.length.value, row.width.value, row.cents, {}, &row};
        if (turned) std::swap(one.along, one.across);
        if (row.for_sale()) sheets.push_back(one);
        if (!row.on_hand) continue;
        one.on_hand = row.on_hand;
        sheets.push_back(one);
    }
    const auto key = [](const Laid& one) { return std::tuple(one.along, one.across, one.on_hand, one.cents); };
    std::sort(sheets.begin(), sheets.end(), [&](const Laid& a, const Laid& b) { return key(a) < key(b); });
    return sheets;
}

/// Blanks of one width on a strip, by their places in the list.
struct Strip {
    Length width;
    std::vector<std::size_t> blanks;
};

/// Strips of one length, on sheets.
struct Tried {
    std::vector<Strip> strips;
    std::vector<std::size_t> no_room;  ///< blanks
    stock::Packing packing;            ///< of strips
};

/// Less is better.
std::pair<std::size_t, stock::Cost> worth(const Tried& tried) { return {tried.no_room.size(), tried.packing.cost}; }

/// All strips one way.
class Way {
public:
    Way(const FromSheets& wanted, const StockPlan& plan, std::vector<Laid> sheets, bool priced)
        : wanted_(wanted), plan_(plan), ruler_(plan.unit), sheets_(std::move(sheets)), priced_(priced) {
        for (std::size_t i = 0; i < wanted.blanks.size(); ++i)
            by_width_[ruler_.up(wanted.blanks[i].width)].push_back(i);
        for (const Laid& sheet : sheets_)
            if (lengths_.empty() || lengths_.back() < sheet.along) lengths_.push_back(sheet.along);
    }

    const std::vector<Laid>& sheets() const { return sheets_; }

    /// The best over the lengths that strips can have, the longest first.
    Tried best() const {
        Tried best = tried(lengths_.back());
        for (auto length = std::next(lengths_.rbegin()); length != lengths_.rend(); ++length)
            if (Tried other = tried(*length); worth(other) < worth(best)) best = std::move(other);
        return best;
    }

    /// No plan of this way costs less: the fewest strips of each width, as if every sheet were as long as the longest.
    stock::Cost bound() const {
        stock::Problem problem = sheets_for(Length());
        for (const auto& [width, blanks] : by_width_)
            if (const stock::Packing packing = strips_for(blanks, lengths_.back()); packing.bound > 0)
                problem.kinds.push_back(
                    {ruler_.cut(wanted_.blanks[blanks.front()].width, plan_.kerf), static_cast<int>(packing.bound)});
        return problem.kinds.empty() ? 0 : stock::pack(problem).bound;
    }

private:
    stock::Packing strips_for(const std::vector<std::size_t>& blanks, Length length) const {
        stock::Problem problem{{{ruler_.room(length, plan_.end_trim, plan_.kerf), 1}}, {}};
        for (const std::size_t i : blanks)
            problem.kinds.push_back({ruler_.cut(wanted_.blanks[i].length, plan_.kerf), 1});
        return stock::pack(problem);
    }

    /// Sheets as sticks for strips of that length; shorter ones hold none.
    stock::Problem sheets_for(Length length) const {
        stock::Problem problem;
        for (const Laid& sheet : sheets_)
            problem.sticks.push_back({sheet.along < length ? 0 : ruler_.room(sheet.across, plan_.end_trim, plan_.kerf),
                                      price(sheet), sheet.on_hand});
        return problem;
    }

    /// In cents, or what is bought in square inches or square centimetres.
    stock::Cost price(const Laid& sheet) const {
        if (sheet.on_hand) return 0;
        if (priced_) return *sheet.cents;
        const bool inch = plan_.unit == Unit::inch;
        const double area =
            inch ? sheet.along.inches() * sheet.across.inches() : sheet.along.mm() * sheet.across.mm() / 100;
        return std::max<stock::Cost>(1, static_cast<stock::Cost>(measure::nearest(area)));
    }

    Tried tried(Length length) const {
        Tried tried;
        for (auto group = by_width_.rbegin(); group != by_width_.rend(); ++group) {
            const std::vector<std::size_t>& blanks = group->second;
            const stock::Packing packing = strips_for(blanks, length);
            for (const stock::Packed& packed : packing.sticks) {
                Strip strip{wanted_.blanks[blanks.front()].width, {}};
                for (const std::size_t piece : packed.pieces) strip.blanks.push_back(blanks[piece]);
                tried.strips.push_back(std::move(strip));
            }
            for (const std::size_t piece : packing.left_over) tried.no_room.push_back(blanks[piece]);
        }
        on_sheets(tried, length);
        return tried;
    }

    void on_sheets(Tried& tried, Length length) const {
        if (tried.strips.empty()) return;
        stock::Problem problem = sheets_for(length);
        for (const Strip& strip : tried.strips) problem.kinds.push_back({ruler_.cut(strip.width, plan_.kerf), 1});
        tried.packing = stock::pack(problem);
        for (const std::size_t strip : tried.packing.left_over)
            tried.no_room.insert(tried.no_room.end(), tried.strips[strip].blanks.begin(),
                                 tried.strips[strip].blanks.end());
    }

    const FromSheets& wanted_;
    const StockPlan& plan_;
    Ruler ruler_;
    std::vector<Laid> sheets_;
    bool priced_;
    std::map<stock::Units, std::vector<std::size_t>> by_width_{};
    std::vector<Length> lengths_{};  ///< of sheets, rising
};

/// The plan as it is cut.
class Telling {
public:
    Telling(FromSheets& wanted, const StockPlan& plan, const std::vector<Laid>& sheets, const Tried& tried,
            SheetSection& section)
        : wanted_(wanted), plan_(plan), sheets_(sheets), tried_(tried), section_(section) {}

    void tell() {
        for (const stock::Packed& packed : tried_.packing.sticks) {
            const Laid& sheet = sheets_[packed.stick];
            section_.sheets.push_back(cut(sheet, packed.pieces));
            if (!sheet.on_hand) buy(sheet);
        }
        std::vector<std::size_t> left = tried_.no_room;
        std::sort(left.begin(), left.end());
        for (const std::size_t blank : left) section_.no_room.push_back(wanted_.blanks[blank]);
    }

private:
    CutSheet cut(const Laid& sheet, const std::vector<std::size_t>& strips) const {
        CutSheet cut{sheet.along, sheet.across, sheet.on_hand.has_value(), {}, Length(), false};
        Length at = plan_.end_trim;
        for (const std::size_t strip : strips) {
            cut.strips.push_back({tried_.strips[strip].width, at, crosscut(sheet, tried_.strips[strip])});
            at = at + tried_.strips[strip].width + plan_.kerf;
        }
        cut.offcut = std::max(Length(), sheet.across - at);
        cut.kept = sheet.along >= plan_.least_offcut && cut.offcut >= cut.strips.back().width;
        return cut;
    }

    CutStick crosscut(const Laid& sheet, const Strip& strip) const {
        CutStick stick{sheet.along, sheet.on_hand.has_value(), {}, sheet.along - plan_.end_trim, false};
        for (const std::size_t blank : strip.blanks) {
            stick.blanks.push_back(wanted_.blanks[blank]);
            stick.offcut = stick.offcut - wanted_.blanks[blank].length - plan_.kerf;
        }
        stick.offcut = std::max(stick.offcut, Length());
        stick.kept = stick.offcut >= plan_.least_offcut;
        return stick;
    }

    void buy(const Laid& sheet) {
        const Length length = sheet.row->length.value, width = sheet.row->width.value;
        auto& list = section_.to_buy;
        const auto same = std::find_if(list.begin(), list.end(), [&](const BoughtSheets& one) {
            return one.length == length && one.width == width;
        });
        if (same != list.end()) ++same->count;
        else list.push_back({length, width, 1, sheet.cents});
    }

    FromSheets& wanted_;
    const StockPlan& plan_;
    const std::vector<Laid>& sheets_;
    const Tried& tried_;
    SheetSection& section_;
};

job::Diagnostic refusal(const SheetSection& section, const std::vector<Laid>& sheets, const StockPlan& plan) {
    const StockBlank& blank = section.no_room.front();
    const auto shown = [&](Length length) { return measure::length_text(length, plan.unit); };
    const auto holds = [&](const Laid& one) {
        return blank.length <= one.along - plan.end_trim * 2 && blank.width <= one.across - plan.end_trim * 2;
    };
    if (std::any_of(sheets.begin(), sheets.end(), holds))
        return {job::Severity::refused, sheets.front().row->at,
                job::Told("no sheet is left for the blank of " + blank.id),
                job::Told("expected a size of sheet that is sold too: one without on_hand, or with a price")};
    const Laid& last = sheets.back();
    return {job::Severity::refused, last.row->at,
            job::Told("no sheet holds the blank of " + blank.id + ", " + shown(blank.length) + " by " +
                      shown(blank.width) + ": strips of " + shown(last.along) + " can be ripped, and " +
                      shown(plan.end_trim) + " goes off each edge"),
            job::Told("expected sheets of at least " + shown(blank.length + plan.end_trim * 2) + " by " +
                      shown(blank.width + plan.end_trim * 2) +
                      ", or for a board on a wall a joint (see scarf, joints and max_blank)")};
}

job::Diagnostic too_many() {
    return {job::Severity::refused,
            {},
            job::Told("there are too many blanks of one thickness to plan their sheets"),
            job::Told("split the house into several jobs")};
}

}  // namespace

SheetSection plan_sheets(FromSheets wanted, const job::Stock& stock, const StockPlan& plan, job::Diagnostics& refused) {
    SheetSection section;
    section.material = wanted.material;
    section.own_material = wanted.own_material;
    section.thickness = wanted.thickness;
    section.grain = wanted.grain;
    const std::vector<Laid> sheets = laid_sheets(wanted, stock, false);
    if (wanted.blanks.size() > static_cast<std::size_t>(stock::most_pieces) || sheets.size() > stock::most_sticks) {
        refused.push_back(too_many());
        section.no_room = std::move(wanted.blanks);
        return section;
    }
    section.priced =
        std::any_of(sheets.begin(), sheets.end(), [](const Laid& one) { return one.cents; }) &&
        std::all_of(sheets.begin(), sheets.end(), [](const Laid& one) { return one.cents || one.on_hand; });
    const Way along(wanted, plan, sheets, section.priced);
    Tried best = along.best();
    stock::Cost bound = along.bound();
    const Way* chosen = &along;
    const Way across(wanted, plan, laid_sheets(wanted, stock, true), section.priced);
    if (!wanted.grain) {
        Tried other = across.best();
        if (other.no_room.size() < best.no_room.size()) bound = across.bound();
        else if (other.no_room.size() == best.no_room.size()) bound = std::min(bound, across.bound());
        if (worth(other) < worth(best)) {
            best = std::move(other);
            chosen = &across;
        }
    }
    Telling(wanted, plan, chosen->sheets(), best, section).tell();
    section.cost = best.packing.cost;
    section.at_most = std::max<stock::Cost>(0, best.packing.cost - bound);
    if (!section.no_room.empty()) refused.push_back(refusal(section, chosen->sheets(), plan));
    return section;
}

}  // namespace kerfpacket::plan
