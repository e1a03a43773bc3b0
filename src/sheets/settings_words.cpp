#include "sheets/settings_words.h"

#include <cstdlib>

#include "measure/require.h"
#include "sheets/strain_words.h"
#include "sheets/wording.h"

namespace kerfpacket::sheets {
namespace {

const char* rule_key(const plan::Piece& piece) {
    switch (piece.settings.rule) {
        case plan::Rule::common_practice: return "settings.common_practice";
        case plan::Rule::thickest_web:
            return piece.spacing_given ? "settings.thickest_web_given" : "settings.thickest_web";
        case plan::Rule::closer: return piece.depth_given ? "settings.closer_given" : "settings.closer";
        case plan::Rule::least_strain: return "settings.least_strain";
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
                           {"spacing", tape.with_unit(choice.spacing)},
                           {"cuts", difference(choice.kerfs - static_cast<int>(piece.kerfs.size()), kit)},
                           {"u", number(choice.utilisation, 2, kit.words)},
                           {"verdict", verdict_word(choice.verdict, kit)}});
}

}  // namespace

std::vector<std::string> settings_sentences(const plan::Piece& piece, const Kit& kit, const Tape& tape) {
    const plan::Settings& settings = piece.settings;
    if (settings.rule == plan::Rule::given) return {};
    const std::string cut = kit.words("settings.cut", {{"depth", tape.exact(piece.kerf_depth)},
                                                       {"kerfs", std::to_string(piece.kerfs.size())},
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
    add("settings.closest", settings.closer);
    return sentences;
}

std::string coupon_state(const plan::Piece& piece, const Kit& kit) {
    if (!piece.coupon || !piece.coupon->counts) return kit.words("piece.coupon_first");
    return kit.words("piece.on_coupon", {{"by", piece.coupon->by}});
}

}  // namespace kerfpacket::sheets
