// The board's kerfs: against its thickness, the blade, the width of a cut.
#include "job/validate.h"

namespace kerfpacket::job {
namespace {

using namespace measure::literals;

/// Thinner webs break at a touch.
constexpr Length least_web = 0.0625_in;
/// Rounding between units must not turn an exact fit into a mistake.
constexpr Length slack = 0.001_mm;

std::optional<Sourced<Length>> given_in(const Setting& setting) {
    return setting.given ? std::optional(Sourced<Length>{*setting.given, setting.at}) : std::nullopt;
}

/// The depth as given, or half the thickness, which is also what a job that does not say gets at first.
Length depth_of(const Board& board) { return board.kerf_depth.given.value_or(board.thinnest() / 2); }

/// The web where the board is thinnest.
void check_web(Context& context, const std::optional<Sourced<Length>>& cut, const Board& board) {
    if (!cut || !known(board.thickness)) return;
    const Length thickness = board.thinnest();
    const Length web = thickness - cut->value;
    if (web >= least_web - slack) return;
    const std::string depth = "kerf_depth " + context.shown(cut->value);
    const std::string board_there = board.moulded() ? " where the board is " + context.shown(thickness) +
                                                          " thick, on line " + std::to_string(board.thinnest_at().line)
                                                    : "";
    const std::string most = "at least " + context.shown(least_web) + " must stay: expected at most ";
    context.error(cut->at,
                  web > slack       ? depth + " leaves a web of only " + context.shown(web) + board_there
                  : board.moulded() ? depth + " leaves no web" + board_there
                                    : depth + " leaves no web in a board " + context.shown(thickness) + " thick",
                  thickness > least_web + slack ? most + context.shown(thickness - least_web)
                                                : "no depth leaves " + context.shown(least_web) +
                                                      " there: a board that is thicker where it is thinnest would do");
}

void check_blade(Context& context, const Board& board, const Saw& saw) {
    if (!known(board.thickness) || !given(saw.blade_diameter)) return;
    const Length reach = saw.blade_diameter.value / 2;
    if (depth_of(board) < reach) return;
    const Position at = board.kerf_depth.given ? board.kerf_depth.at : board.thickness.at;
    context.error(
        at, "a cut " + context.shown(depth_of(board)) + " deep is too much for the blade",
        "a blade of " + context.shown(saw.blade_diameter.value) + " reaches less than " + context.shown(reach));
}

void check_spacing(Context& context, const std::optional<Sourced<Length>>& spacing, const Saw& saw) {
    if (!spacing || !given(saw.kerf) || spacing->value > saw.kerf.value + slack) return;
    const std::string kerf = context.shown(saw.kerf.value);
    context.error(spacing->at, "spacing " + context.shown(spacing->value) + " is no wider than the kerf, " + kerf,
                  "the cuts would run into each other: expected more than " + kerf);
}

/// Each kerf lies beyond the one before it, with wood between them.
void check_kerfs(Context& context, const std::vector<Sourced<Length>>& kerfs, const Saw& saw) {
    for (std::size_t i = 1; i < kerfs.size(); ++i) {
        const Length gap = kerfs[i].value - kerfs[i - 1].value;
        if (gap > saw.kerf.value + slack) continue;
        const std::string name = "kerf " + std::to_string(i + 1) + " at " + context.as_written(kerfs[i]);
        const std::string before = " the one before it at " + context.as_written(kerfs[i - 1]);
        if (gap > slack)
            context.error(kerfs[i].at, std::string(name).append(" runs into").append(before),
                          "their middles are " + context.shown(gap) + " apart: expected more than the kerf, " +
                              context.shown(saw.kerf.value));
        else
            context.error(kerfs[i].at, std::string(name).append(" does not lie beyond").append(before),
                          "expected the middles of the kerfs in order from zero");
    }
}

void check_too_deep(Context& context, const Board& board) {
    if (!known(board.thickness)) return;
    const Length thickness = board.thickness.value;
    const bool meant = board.kerf_depth.given || board.kerf_depth.half;
    for (const auto& [n, depth] : board.too_deep) {
        const std::string kerf = "kerf " + std::to_string(n.value);
        if (depth.value > thickness + slack)
            context.error(depth.at,
                          kerf + " cannot be " + context.shown(depth.value) + " deep in a board " +
                              context.shown(thickness) + " thick",
                          "one that is cut through is as deep as the board is thick");
        else if (meant && depth.value <= depth_of(board) + slack)
            context.error(depth.at,
                          kerf + " is no deeper than the others: " + context.shown(depth.value) + ", and they are " +
                              context.shown(depth_of(board)),
                          "too_deep is for kerfs that were cut deeper than kerf_depth");
    }
}

}  // namespace

void check_board(Context& context, const Board& board, const Saw& saw) {
    check_web(context, given_in(board.kerf_depth), board);
    check_blade(context, board, saw);
    check_spacing(context, given_in(board.spacing), saw);
    check_kerfs(context, board.kerfs, saw);
    check_too_deep(context, board);
    for (const Coupon& coupon : board.coupons) {
        check_coupon(context, coupon);
        check_web(context, coupon.kerf_depth, board);
        check_spacing(context, coupon.spacing, saw);
    }
    for (const auto& [from, to] : board.no_splice) {
        if (!known(from) || !known(to) || from.value < to.value) continue;
        context.error(from.at, "no_splice runs from " + context.shown(from.value) + " to " + context.shown(to.value),
                      "expected the smaller distance from zero first");
    }
}

}  // namespace kerfpacket::job
