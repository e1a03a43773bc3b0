#include "sheets/words/kerf_list.h"

#include <algorithm>

namespace kerfpacket::sheets {
namespace {

constexpr std::size_t most_runs = 5;

std::string run_text(const KerfRun& run, const Kit& kit) {
    const std::string first = std::to_string(run.first);
    return run.first == run.second
               ? first
               : kit.words("strain.range", {{"first", first}, {"last", std::to_string(run.second)}});
}

std::string list_text(const std::vector<KerfRun>& runs, const Kit& kit) {
    const std::size_t said = std::min(runs.size(), most_runs);
    std::string text = run_text(runs.front(), kit);
    for (std::size_t i = 1; i < said; ++i)
        text += kit.words(i + 1 == runs.size() ? "strain.and" : "strain.comma") + run_text(runs[i], kit);
    return said < runs.size() ? text + kit.words("strain.and_others") : text;
}

std::string named(const std::vector<KerfRun>& runs, const Kit& kit, const char* one, const char* many) {
    if (is_one_kerf(runs)) return kit.words(one, {{"n", std::to_string(runs.front().first)}});
    return kit.words(many, {{"list", list_text(runs, kit)}});
}

}  // namespace

bool is_one_kerf(const std::vector<KerfRun>& runs) {
    return runs.size() == 1 && runs.front().first == runs.front().second;
}

std::string kerf_list(const std::vector<KerfRun>& runs, const Kit& kit) {
    return named(runs, kit, "strain.one_kerf", "strain.kerfs");
}

std::string kerf_list_first(const std::vector<KerfRun>& runs, const Kit& kit) {
    return named(runs, kit, "strain.capital_one_kerf", "strain.capital_kerfs");
}

}  // namespace kerfpacket::sheets
