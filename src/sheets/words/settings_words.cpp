#include "sheets/words/settings_words.h"

#include <cmath>
#include <cstdlib>

#include "bend/section.h"
#include "measure/require.h"
#include "sheets/evidence/strain_words.h"
#include "sheets/words/wording.h"

namespace kerfpacket::sheets {
namespace {

const char* rule_key(const plan::Piece& piece) {
    switch (piece.settings.rule) {
        case plan::Rule::common_practice: return "settings.common_practice";
        case plan::Rule::thickest_web:
            return piece.cut.spacing_given ? "settings.thickest_web_given" : "settings.thickest_web";
        case plan::Rule::closer: return piece.cut.depth_given ? "settings.closer_given" : "settings.closer";
        case plan::Rule::least_strain:
            return piece.cut.depth_given ? "settings.least_strain_given" : "settings.least_strain";
        case plan::Rule::kept: return "settings.kept";
        case plan::Rule::given: break;
    }
    throw measure::Bug("given settings need no sentence");
}

/// "12 cuts more".
std::string difference(int cuts, const Kit& kit) {
    if (cuts == 0) return kit.words("settings.same_cuts");
    if (cuts == 1) return kit.words("settings.one_more_cut");
    if (cuts == -1) return kit.words("settings.one_cut_fewer");
    return kit.words(cuts > 0 ? "settings.more_cuts" : "settings.fewer_cuts", {{"n", std::to_string(std::abs(cuts))}});
}

std::string neighbour(const char* key, const plan::Choice& choice, const plan::Piece& piece, const Kit& kit,
                      const Tape& tape) {
    return kit.words(key, {{"depth", tape.exact(choice.depth)},
                           {"spacing", tape.exact(choice.spacing)},
                           {"cuts", difference(choice.kerfs - static_cast<int>(piece.blank().kerfs.size()), kit)},
                           {"u", number(choice.utilisation, 2, kit.words)},
                           {"verdict", verdict_word(choice.verdict, kit)}});
}

/// By how much one kerf that is cut too deep strains more: the square of the webs, in per cent.
double more_strain(Length web, Length by) { return 100 * (std::pow(web / (web - by), 2) - 1); }

/// Why a deeper cut was not taken although it costs fewer cuts and strains less; empty where it does not.
std::string thicker_kept(const plan::Piece& piece, const Kit& kit, const Tape& tape) {
    const auto& deeper = piece.settings.deeper;
    const bool better = deeper && deeper->kerfs < static_cast<int>(piece.blank().kerfs.size()) &&
                        deeper->utilisation < piece.bend.utilisation && deeper->verdict <= piece.bend.verdict;
    const Length by = tape.unit() == measure::Unit::inch ? Length::inches(1.0 / 64) : Length::mm(0.5);
    if (!better || piece.cut.thickness - deeper->depth <= by) return {};
    return kit.words("settings.thicker_kept",
                     {{"by", tape.exact(by)},
                      {"kept", number(more_strain(piece.cut.web(), by), 0, kit.words)},
                      {"other", number(more_strain(piece.cut.thickness - deeper->depth, by), 0, kit.words)}});
}

/// What the program chose, what stops it there, and its neighbours; nothing where depth and spacing are given.
std::vector<std::string> chosen_sentences(const plan::Piece& piece, const Kit& kit, const Tape& tape) {
    const plan::Settings& settings = piece.settings;
    if (settings.rule == plan::Rule::given) return {};
    const std::string cut = kit.words("settings.cut", {{"depth", tape.exact(piece.cut.depth)},
                                                       {"kerfs", std::to_string(piece.blank().kerfs.size())},
                                                       {"spacing", spacing_text(piece, kit, tape)}});
    std::vector<std::string> sentences{kit.words(rule_key(piece), {{"cut", cut}})};
    if (settings.common)
        sentences.push_back(kit.words("settings.common", {{"u", number(settings.common->utilisation, 2, kit.words)}}));
    sentences.push_back(limit_sentence(settings.limit, kit));
    const auto add = [&](const char* key, const std::optional<plan::Choice>& choice) {
        if (choice) sentences.push_back(neighbour(key, *choice, piece, kit, tape));
    };
    add("settings.shallower", settings.shallower);
    add("settings.deeper", settings.deeper);
    if (std::string why = thicker_kept(piece, kit, tape); !why.empty()) sentences.push_back(std::move(why));
    add("settings.closest", settings.closer);
    return sentences;
}

}  // namespace

std::vector<std::string> settings_sentences(const plan::Piece& piece, const Kit& kit, const Tape& tape) {
    std::vector<std::string> sentences = chosen_sentences(piece, kit, tape);
    // What is chosen is one board; where it is divided is found for it then.
    if (!sentences.empty() && !piece.gaps.over_joints.empty())
        sentences.push_back(
            kit.words("settings.but_for_joints", {{"u", number(piece.bend.utilisation, 2, kit.words)}}));
    const bend::Cell cell = piece.cut.cell(piece.cut.spacing);
    if (const auto ply = bend::ply_at_bottom(cell); ply && bend::ends_well(cell))
        sentences.push_back(kit.words("settings.ends_in_ply", {{"ply", std::to_string(*ply)},
                                                               {"plies", std::to_string(piece.cut.plies.size())}}));
    if (piece.solid_utilisation > 0 && piece.solid_utilisation <= bend::ok_up_to)
        sentences.push_back(kit.words("settings.no_kerfs", {{"u", number(piece.solid_utilisation, 2, kit.words)}}));
    return sentences;
}

std::string coupon_state(const plan::Piece& piece, const Kit& kit) {
    if (!piece.coupon || !piece.coupon->counts) return kit.words("piece.coupon_first");
    return kit.words("piece.on_coupon", {{"by", piece.coupon->by}});
}

std::string bend_verdict(const plan::Piece& piece, const Kit& kit) {
    const std::string verdict = verdict_word(piece.bend.verdict, kit);
    if (piece.bend.verdict == bend::Verdict::break_likely)
        return kit.words("setup.verdict_break", {{"verdict", verdict}});
    return kit.words("setup.verdict", {{"verdict", verdict}, {"coupon", coupon_state(piece, kit)}});
}

}  // namespace kerfpacket::sheets
