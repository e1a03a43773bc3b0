#include "plan/plan.h"

#include <algorithm>
#include <iterator>
#include <optional>
#include <utility>

#include "disk/side_by_side.h"
#include "job/read.h"
#include "plan/cheaper_joints.h"
#include "plan/checks.h"
#include "plan/make_stock_plan.h"
#include "plan/places.h"
#include "plan/recommended.h"
#include "plan/wood.h"

namespace kerfpacket::plan {

bool Plan::cautions() const {
    return !refused.empty() || std::any_of(pieces.begin(), pieces.end(), [](const Piece& piece) {
        return !piece.cautions.empty() || piece.bend.verdict != bend::Verdict::ok;
    });
}

int Plan::blanks() const {
    int total = 0;
    for (const Piece& piece : pieces) total += piece.quantity * static_cast<int>(piece.blanks.size());
    return total;
}

int Plan::cuts() const {
    int total = 0;
    for (const Piece& piece : pieces) total += piece.quantity * static_cast<int>(piece.blank().kerfs.size());
    return total;
}

namespace {

/// The board and the kind of what is lined or covered.
const job::Board& board_of(const job::Opening& opening) { return opening.liner; }
const job::Board& board_of(const job::Wall& wall) { return wall.board; }
Kind kind_of(const job::Opening& /*opening*/) { return Kind::arch_liner; }
Kind kind_of(const job::Wall& /*wall*/) { return Kind::wall_board; }

job::Diagnostics unknown_materials_of(const job::Job& job) {
    std::vector<job::Sourced<std::string>> used;
    for (const job::Opening& opening : job.openings) used.push_back(opening.liner.material);
    for (const job::Wall& wall : job.walls) used.push_back(wall.board.material);
    for (const job::StockBoard& board : job.stock.boards)
        if (board.at.line > 0) used.push_back(board.material);
    std::vector<std::string> names;
    for (const job::Material& material : job.materials) names.push_back(material.name.value);
    return unknown_materials(used, names);
}

/// Each kerf takes its marks, its line and its tick: a house has a tenth of these.
constexpr std::size_t most_kerfs_in_all = 30'000;

job::Diagnostics too_many_kerfs(const Plan& plan, const job::Job& job) {
    std::size_t kerfs = 0;
    for (const Piece& piece : plan.pieces) {
        kerfs += piece.blank().kerfs.size();
        if (kerfs <= most_kerfs_in_all) continue;
        job::Position at;
        for (const job::Opening& opening : job.openings)
            if (piece.id == opening.id.value || piece.id.starts_with(opening.id.value + "/")) at = opening.at;
        for (const job::Wall& wall : job.walls)
            if (piece.id == wall.id.value) at = wall.at;
        return {{job::Severity::error, at,
                 job::Told("up to this piece the job has more than " + std::to_string(most_kerfs_in_all) + " kerfs"),
                 job::Told("split the house into several jobs")}};
    }
    return {};
}

/// What the job file says of the refused ones.
void add_what_was_asked(std::vector<Refused>& refused, const job::Job& job) {
    const std::vector<job::Value> values = job::canonical(job).values;
    for (Refused& one : refused)
        std::copy_if(values.begin(), values.end(), std::back_inserter(one.asked),
                     [&](const job::Value& value) { return value.piece == one.id && value.table != "material"; });
}

/// What is at a place of the job: its pieces, or why there are none.
struct AtPlace {
    std::vector<Piece> pieces;
    std::optional<Refused> refused;
    job::Diagnostics wrong;
};

template <typename Place>
AtPlace at_place(const Place& place, const job::Job& job) {
    // That it is unknown is told already, but not what else is wrong with that board.
    if (!material_of(board_of(place), job)) return {{}, {}, check_board(board_of(place), job)};
    auto pieces = pieces_of(place, job);
    if (!pieces) return {{}, Refused{place.id.value, kind_of(place), {}, std::move(pieces.error())}, {}};
    return {beside_recommended(std::move(*pieces), place, job), {}, {}};
}

}  // namespace

tl::expected<Plan, job::Diagnostics> make_plan(const job::Job& job) {
    Plan plan{.header = job.header,
              .saw = job.saw,
              .printer = job.printer,
              .fingerprint = job.fingerprint,
              .pieces = {},
              .packet = job.packet,
              .taken = job.taken,
              .stock = job.stock};
    job::Diagnostics wrong = unknown_materials_of(job);
    // A house has dozens of places, and each is planned for itself.
    const std::size_t openings = job.openings.size();
    disk::SideBySide<AtPlace> places(openings + job.walls.size(), disk::cores());
    const auto new_maker = [&] {
        return [&](std::size_t i) {
            return i < openings ? at_place(job.openings[i], job) : at_place(job.walls[i - openings], job);
        };
    };
    places.run(new_maker, [&](std::size_t, AtPlace one) {
        std::move(one.pieces.begin(), one.pieces.end(), std::back_inserter(plan.pieces));
        if (one.refused) plan.refused.push_back(*std::move(one.refused));
        job::append(wrong, one.wrong);
    });
    if (!wrong.empty() || (plan.pieces.empty() && !plan.refused.empty())) {
        for (const Refused& one : plan.refused) job::append(wrong, one.reasons);
        return tl::unexpected(std::move(wrong));
    }
    if (auto many = too_many_kerfs(plan, job); !many.empty()) return tl::unexpected(std::move(many));
    for (Refused& one : plan.refused)
        for (job::Diagnostic& reason : one.reasons) reason.severity = job::Severity::refused;
    if (!plan.refused.empty()) add_what_was_asked(plan.refused, job);
    if (wants_stock_plan(plan)) {
        plan.stock_plan = make_stock_plan({&plan});
        add_cheaper_joints(plan, job);
    }
    return plan;
}

}  // namespace kerfpacket::plan
