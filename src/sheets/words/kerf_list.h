#pragma once
// Kerfs by their numbers, in words.

#include <string>
#include <utility>
#include <vector>

#include "plan/piece.h"
#include "sheets/layout/kit.h"

namespace kerfpacket::sheets {

/// First and last number of kerfs that follow each other.
using KerfRun = std::pair<int, int>;

/// The kerfs for which `holds`, in runs.
template <class Holds>
std::vector<KerfRun> kerf_runs(const plan::Piece& piece, Holds holds) {
    std::vector<KerfRun> runs;
    for (const plan::Kerf& kerf : piece.blank().kerfs) {
        if (!holds(kerf)) continue;
        if (!runs.empty() && runs.back().second == kerf.n - 1) runs.back().second = kerf.n;
        else runs.emplace_back(kerf.n, kerf.n);
    }
    return runs;
}

bool is_one_kerf(const std::vector<KerfRun>& runs);

/// "kerf 12", "kerfs 1 to 16 and 193 to 208"; of very many runs the first few "and others".
std::string kerf_list(const std::vector<KerfRun>& runs, const Kit& kit);
/// The same to begin a sentence with.
std::string kerf_list_first(const std::vector<KerfRun>& runs, const Kit& kit);

}  // namespace kerfpacket::sheets
