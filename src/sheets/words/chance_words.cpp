#include "sheets/words/chance_words.h"

#include "bend/chance.h"

namespace kerfpacket::sheets {
namespace {

/// "3 trials".
std::string counted(int n, const char* one, const char* many, const Kit& kit) {
    return n == 1 ? kit.words(one) : kit.words(many, {{"n", std::to_string(n)}});
}

}  // namespace

std::string chance_on_cover(const plan::Piece& piece, const Kit& kit) {
    if (const plan::DeepKerf* deep = piece.worst_deep())
        return kit.words("chance.on_cover_deep", {{"piece", piece.id}, {"n", std::to_string(deep->n)}});
    return kit.words("chance.on_cover_piece",
                     {{"piece", piece.id}, {"chance", chance_words(piece.chance.breaks, kit)}});
}

std::string chance_words(double breaks, const Kit& kit) {
    const int one_in = bend::one_in(breaks);
    if (one_in == 1) return kit.words("chance.most");
    return kit.words(one_in == 100 ? "chance.fewer" : "chance.about", {{"n", std::to_string(one_in)}});
}

std::string chance_sentence(const plan::Piece& piece, const Kit& kit) {
    if (piece.worst_deep() != nullptr)
        return kit.words("chance.but_for_deep", {{"chance", chance_words(piece.chance.breaks, kit)}});
    const int one_in = bend::one_in(piece.chance.breaks);
    if (one_in == 1) return kit.words("chance.caution_most");
    return kit.words(one_in == 100 ? "chance.caution_fewer" : "chance.caution_about", {{"n", std::to_string(one_in)}});
}

std::string counted_sentence(const plan::Piece& piece, const Kit& kit) {
    const plan::Chance& chance = piece.chance;
    if (!chance.counted()) return kit.words("chance.nothing_counted");
    std::string what;
    if (chance.trials > 0) what = counted(chance.trials, "chance.one_trial", "chance.trials", kit);
    if (chance.coupons > 0)
        what += (what.empty() ? "" : ", ") + counted(chance.coupons, "chance.one_coupon", "chance.coupons", kit);
    return kit.words("chance.counted", {{"what", what},
                                        {"lowest", number(chance.lowest * 100, 2, kit.words)},
                                        {"mean", number(chance.mean * 100, 2, kit.words)}});
}

}  // namespace kerfpacket::sheets
