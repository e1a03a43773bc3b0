#include "cli/pieces_to_cut.h"

#include <algorithm>

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "job/text.h"
#include "plan/stopped.h"

namespace kerfpacket::cli {
namespace {

/// Why a board is not to be cut; empty for one that may be.
std::string not_to_cut(const plan::Piece& piece) {
    switch (plan::stopped(piece)) {
        case plan::Stopped::breaks: return "it will likely break, or is scrap";
        case plan::Stopped::weak_link: return "its gaps differ too much, and a board breaks first where they do";
        case plan::Stopped::no: break;
    }
    return "";
}

std::vector<std::string> ids(const plan::Plan& plan) {
    std::vector<std::string> ids;
    for (const plan::Piece& piece : plan.pieces) ids.push_back(piece.id);
    for (const plan::Refused& refused : plan.refused) ids.push_back(refused.id);
    return ids;
}

}  // namespace

std::vector<const plan::Piece*> pieces_to_cut(const plan::Plan& plan, const std::string& id, Console& console) {
    const std::vector<std::string> known = ids(plan);
    if (!id.empty() && std::find(known.begin(), known.end(), id) == known.end())
        console.message(fmt::format("kerfpacket: --piece {}: the job has no such piece; it has {}\n",
                                    job::in_quotes(id), fmt::join(known, ", ")));
    std::vector<const plan::Piece*> pieces;
    for (const plan::Piece& piece : plan.pieces) {
        if (!id.empty() && piece.id != id) continue;
        if (const std::string why = not_to_cut(piece); why.empty()) pieces.push_back(&piece);
        else
            console.message(
                fmt::format("kerfpacket: piece {}: do not cut, nothing is told of it: {}\n", piece.id, why));
    }
    return pieces;
}

}  // namespace kerfpacket::cli
