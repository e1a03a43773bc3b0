#include "sheets/evidence/strain_words.h"

#include <algorithm>

#include "measure/require.h"
#include "sheets/words/kerf_list.h"
#include "sheets/words/wording.h"

namespace kerfpacket::sheets {
namespace {

const char* limit_key(bend::Limit limit) {
    switch (limit) {
        case bend::Limit::strain: return "strain.limit_strain";
        case bend::Limit::peel: return "strain.limit_peel";
        case bend::Limit::closing: return "strain.limit_closing";
        case bend::Limit::facet: return "strain.limit_facet";
        case bend::Limit::web: return "strain.limit_web";
    }
    throw measure::Bug("a limit without a sentence");
}

std::string source(const plan::Piece& piece, const Kit& kit) {
    const std::string limit = strain_percent(piece.bend.strain_limit, kit);
    if (!piece.coupon || !piece.coupon->counts)
        return kit.words(piece.own_material ? "strain.from_user" : "strain.from_table",
                         {{"limit", limit}, {"material", material_name(piece, kit)}});
    const std::string error = number(piece.coupon->error * 100, 0, kit.words);
    if (piece.coupon->by.empty()) return kit.words("strain.from_coupon_unnamed", {{"limit", limit}, {"error", error}});
    return kit.words("strain.from_coupon", {{"limit", limit}, {"by", piece.coupon->by}, {"error", error}});
}

/// What the kerfs' strain says, and what else makes the verdict worse.
std::string state(const plan::Piece& piece, const Kit& kit) {
    const auto in_break = kerf_runs(piece, [](const plan::Kerf& k) { return k.utilisation > bend::caution_up_to; });
    const auto in_caution = kerf_runs(piece, [](const plan::Kerf& k) {
        return k.utilisation > bend::ok_up_to && k.utilisation <= bend::caution_up_to;
    });
    std::string text;
    const auto say = [&](const std::vector<KerfRun>& runs, const char* one, const char* many) {
        if (runs.empty()) return;
        text += (text.empty() ? "" : " ") +
                kit.words(is_one_kerf(runs) ? one : many, {{"kerfs", kerf_list_first(runs, kit)}});
    };
    say(in_break, "strain.one_in_break", "strain.in_break");
    say(in_caution, "strain.one_in_caution", "strain.in_caution");
    const auto by_strain = in_break.empty() ? in_caution.empty() ? bend::Verdict::ok : bend::Verdict::caution
                                            : bend::Verdict::break_likely;
    if (by_strain == bend::Verdict::ok)
        text = kit.words("strain.all_ok", {{"limit", number(bend::ok_up_to, 2, kit.words)}});
    if (piece.bend.verdict > by_strain)
        text += " " + kit.words("strain.more_than_strain", {{"verdict", verdict_word(piece.bend.verdict, kit)}});
    return text;
}

/// "A coupon that breaks at 0.72 % or more makes this ok; one under 0.59 % asks for another cut."
std::string next_coupon(const plan::Piece& piece, const Kit& kit) {
    const plan::NextCoupon& next = piece.chance.next;
    if (next.chances.empty()) return {};
    const std::string ok = strain_percent(next.ok_from, kit);
    const std::string caution = strain_percent(next.caution_from, kit);
    if (next.ok_from > 0 && next.caution_from > next.chances.front().first * 1.001)
        return kit.words("strain.next_both", {{"ok", ok}, {"caution", caution}});
    if (next.ok_from > 0) return kit.words("strain.next_only_ok", {{"ok", ok}});
    if (next.caution_from > 0) return kit.words("strain.next_no_ok", {{"caution", caution}});
    return kit.words("strain.next_none");
}

}  // namespace

std::string material_name(const plan::Piece& piece, const Kit& kit) {
    return piece.own_material ? piece.material : kit.words("materials." + piece.material);
}

std::string limit_sentence(bend::Limit limit, const Kit& kit) { return kit.words(limit_key(limit)); }

std::string strain_percent(double strain, const Kit& kit) { return number(strain * 100, 2, kit.words); }

std::vector<std::string> strain_reading(const plan::Piece& piece, const Kit& kit, const Tape& tape) {
    std::vector<std::string> lines{state(piece, kit)};
    if (!piece.weak_links.empty()) {
        const auto runs = kerf_runs(piece, [&](const plan::Kerf& kerf) {
            return std::find(piece.weak_links.begin(), piece.weak_links.end(), kerf.n) != piece.weak_links.end();
        });
        lines.push_back(kit.words(is_one_kerf(runs) ? "strain.one_weak_link" : "strain.weak_links",
                                  {{"kerfs", kerf_list_first(runs, kit)}}));
    }
    lines.push_back(kit.words("strain.web", {{"web", web_text(piece, kit, tape)}, {"side", kerf_side(piece, kit)}}) +
                    " " + limit_sentence(piece.settings.limit, kit));
    lines.push_back(source(piece, kit));
    // Where something was tried, a chart on the next page tells it.
    if (const std::string next = next_coupon(piece, kit); piece.tried.empty() && !next.empty()) lines.push_back(next);
    return lines;
}

}  // namespace kerfpacket::sheets
