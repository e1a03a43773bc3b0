#include "plan/divide.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "plan/parts.h"
#include "plan/stock_boards.h"

namespace kerfpacket::plan {
namespace {

using namespace measure::literals;
using job::say;

/// Of a sheet where the job names none: 4 by 8 feet, 1220 by 2440 mm (common practice, no source).
Point usual_sheet(measure::Unit unit) {
    return unit == measure::Unit::inch ? Point{96_in, 48_in} : Point{2440_mm, 1220_mm};
}

/// What blanks of that section can be sawn out of, ends and edges trimmed: lengths and widths.
std::vector<Point> rooms(const Request& wanted, const job::Job& job) {
    const job::Board& board = *wanted.wanted;
    const Length trim = end_trim(job.stock, job.header.units) * 2;
    std::vector<Point> rooms;
    const auto add = [&](Length length, Length width) { rooms.push_back({length - trim, width}); };
    for (const auto* rows : {&job.stock.sheets, &job.stock.boards})
        for (const job::StockBoard& row : *rows)
            if (is_of(row, board.material.value, board.thickness.value)) add(row.length.value, row.width.value);
    if (rooms.empty()) {
        const Point sheet = usual_sheet(job.header.units);
        add(sheet.x, sheet.y);
    }
    return rooms;
}

bool fits(const Rect& box, const std::vector<Point>& rooms, bool grain) {
    return std::any_of(rooms.begin(), rooms.end(), [&](const Point& room) {
        const auto lies = [&](Length length, Length width) { return box.width() <= length && box.height() <= width; };
        return lies(room.x, room.y) || (!grain && lies(room.y, room.x));
    });
}

/// So many blanks.
std::vector<Joint> joints_of(const Blank& blank, int blanks) {
    std::vector<Joint> joints;
    for (int i = 1; i < blanks; ++i) {
        const Length at = blank.length * (static_cast<double>(i) / blanks);
        std::optional<Length> nearest;
        for (std::size_t k = 0; k + 1 < blank.kerfs.size(); ++k) {
            const Length between = (blank.kerfs[k].at + blank.kerfs[k + 1].at) / 2;
            if (!nearest || measure::abs(between - at) < measure::abs(*nearest - at)) nearest = between;
        }
        if (!nearest || (!joints.empty() && *nearest <= joints.back().at)) return {};
        joints.push_back({*nearest, {}, {}, true, 0, {}});
    }
    return joints;
}

job::Diagnostics too_large(const Request& wanted, const Rect& box, const job::Job& job) {
    const measure::Unit unit = job.header.units;
    const auto text = [&](Length length) { return job::shown(measure::round_to_tape(length, unit), unit); };
    return {{job::Severity::refused, wanted.wanted->at,
             say("flat_too_large",
                 "the flat blank of {piece} takes {length} by {width}, and no part of it longer than {least} lies in "
                 "what can be had",
                 {{"piece", wanted.id},
                  {"length", text(box.width())},
                  {"width", text(box.height())},
                  {"least", text(least_blank)}}),
             say("flat_too_large_do", "would do: sheets of a larger size in [stock], or less splay")}};
}

}  // namespace

tl::expected<Spliced, job::Diagnostics> divided(const Request& wanted, Laid laid, bool grain, const job::Job& job) {
    const std::vector<Point> all = rooms(wanted, job);
    for (int n = 1; n == 1 || laid.blank.length / n >= least_blank; ++n) {
        std::vector<Joint> joints = joints_of(laid.blank, n);
        if (n > 1 && joints.empty()) break;
        std::vector<Blank> blanks = parts_of(laid.blank, joints);
        Length from;
        const bool all_fit = std::all_of(blanks.begin(), blanks.end(), [&](const Blank& one) {
            const Splay part = laid.splay->part(laid.blank, from, from + one.length);
            from += one.length;
            return fits(FlatBlank(part, one).outline().bounds(), all, grain);
        });
        if (all_fit) return Spliced{std::move(laid), std::move(joints), std::move(blanks)};
    }
    return tl::unexpected(too_large(wanted, FlatBlank(*laid.splay, laid.blank).outline().bounds(), job));
}

}  // namespace kerfpacket::plan
