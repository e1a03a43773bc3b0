#include "sheets/cards/setup_errors.h"

#include "measure/require.h"
#include "sheets/words/wording.h"

namespace kerfpacket::sheets {
namespace {

std::string u_text(double utilisation, const Kit& kit) { return number(utilisation, 2, kit.words); }

const char* change_key(const bend::Change& change) {
    const bool more = change.by.mm() > 0;
    switch (change.what) {
        case bend::Changed::depth: return more ? "setup.depth_more" : "setup.depth_less";
        case bend::Changed::spacing: return more ? "setup.spacing_more" : "setup.spacing_less";
        case bend::Changed::kerf: return more ? "setup.kerf_more" : "setup.kerf_less";
    }
    throw measure::Bug("a setting without a name");
}

/// What was changed, u, and the verdict.
std::vector<FigureTable::Cell> change_cells(const bend::Change& change, bend::Verdict meant, const Kit& kit,
                                            const Tape& tape) {
    const bool worse = change.impossible || change.verdict > meant;
    const std::string what = kit.words(change_key(change), {{"by", tape.exact(measure::abs(change.by))}});
    if (change.impossible)
        return {{what, worse},
                {"", worse},
                {kit.words(change.what == bend::Changed::depth ? "setup.no_web" : "setup.no_land"), worse}};
    return {{what, worse}, {u_text(change.utilisation, kit), worse}, {verdict_word(change.verdict, kit), worse}};
}

}  // namespace

FigureTable small_errors(const plan::Piece& piece, const Kit& kit, const Tape& tape) {
    FigureTable table;
    table.heading = kit.words("setup.errors");
    table.aside = kit.words("setup.errors_aside", {{"u", u_text(piece.bend.utilisation, kit)},
                                                   {"verdict", verdict_word(piece.bend.verdict, kit)}});
    table.shares = {0.23, 0.07, 0.2, 0.23, 0.07, 0.2};
    for (int side = 0; side < 2; ++side)
        for (const char* key : {"setup.errors_off", "setup.errors_u", "setup.errors_bend"})
            table.heads.push_back(kit.words(key));
    // Less and more of a setting stand side by side.
    for (std::size_t i = 0; i + 1 < piece.sensitivity.size(); i += 2) {
        std::vector<FigureTable::Cell> row = change_cells(piece.sensitivity[i], piece.bend.verdict, kit, tape);
        for (FigureTable::Cell& cell : change_cells(piece.sensitivity[i + 1], piece.bend.verdict, kit, tape))
            row.push_back(std::move(cell));
        table.rows.push_back(std::move(row));
    }
    return table;
}

FigureTable deep_kerf_table(const plan::Piece& piece, const Kit& kit, const Tape& tape) {
    FigureTable table;
    table.heading = kit.words("setup.deep");
    table.aside = kit.words("setup.deep_aside");
    table.shares = {0.22, 0.78};
    table.heads = {kit.words("setup.deep_depth"), kit.words("setup.deep_do")};
    Length reached = piece.cut.depth;
    const auto up_to = [&](Length depth, const char* key) {
        if (depth <= reached) return;
        reached = depth;
        table.rows.push_back({{kit.words("setup.to_depth", {{"depth", tape.exact(depth)}})}, {kit.words(key), false}});
    };
    up_to(piece.overcut_limits.keep, "setup.keep");
    up_to(piece.overcut_limits.ease, "setup.ease");
    up_to(piece.overcut_limits.fill, "setup.fill");
    table.rows.push_back({{kit.words("setup.deeper")}, {kit.words("setup.scrap"), false}});
    return table;
}

std::string deep_kerf_text(const plan::DeepKerf& kerf, const Kit& kit, const Tape& tape) {
    const bend::Overcut& answer = kerf.answer;
    fonts::Words::Values values{{"n", std::to_string(kerf.n)}, {"depth", tape.exact(kerf.depth)}};
    const auto say = [&](const char* key, const fonts::Words::Values& more) {
        values.insert(values.end(), more.begin(), more.end());
        return kit.words(key, values);
    };
    const std::string alone = u_text(answer.alone, kit);
    switch (answer.mend) {
        case bend::Mend::keep:
            return say("setup.kerf_kept", {{"alone", alone}, {"before", u_text(answer.before, kit)}});
        case bend::Mend::ease:
            return say("setup.kerf_eased", {{"ease_depth", tape.exact(answer.ease_depth)},
                                            {"alone", alone},
                                            {"eased", u_text(answer.eased, kit)}});
        case bend::Mend::fill:
            return say("setup.kerf_filled", {{"alone", alone}, {"filled", u_text(answer.filled, kit)}});
        case bend::Mend::scrap:
            if (answer.web.mm() <= 0) return say("setup.kerf_through", {});
            return say("setup.kerf_scrapped", {{"web", tape.exact(answer.web)}, {"alone", alone}});
    }
    throw measure::Bug("an answer without a sentence");
}

}  // namespace kerfpacket::sheets
