#include "cli/start/summary.h"

#include "job/read.h"
#include "plan/plan.h"
#include "sheets/words/chance_words.h"
#include "sheets/words/settings_words.h"
#include "sheets/words/tape.h"
#include "sheets/words/wording.h"

namespace kerfpacket::cli {
namespace {

/// A splayed one is sawn out of a board that is longer and wider than it.
std::string blank_text(const plan::Piece& piece, const sheets::Tape& tape) {
    if (!piece.splay) return tape.with_unit(piece.blank().length);
    return tape.plain(plan::Piece::stock_length(piece.blank())) + " x " + tape.with_unit(piece.stock_width());
}

}  // namespace

std::string piece_summary(const std::string& job_text, const std::string& id, const job::Shop& shop,
                          const sheets::Kit& kit) {
    const job::Reading reading = job::read_job({"start", job_text}, shop);
    const auto plan = plan::make_plan(reading.job);
    if (!plan) return "";
    const sheets::Tape tape(plan->header.units, kit.words);
    std::string text;
    for (const plan::Piece& piece : plan->pieces) {
        if (sheets::measured_id(piece) != id) continue;
        text += kit.words("start.summary", {{"id", piece.id},
                                            {"kerfs", std::to_string(piece.blank().kerfs.size())},
                                            {"depth", tape.exact(piece.cut.depth)},
                                            {"spacing", sheets::spacing_text(piece, kit, tape)},
                                            {"blank", blank_text(piece, tape)},
                                            {"verdict", sheets::verdict_word(piece.bend.verdict, kit)},
                                            {"coupon", sheets::coupon_state(piece, kit)}}) +
                "\n  " + sheets::chance_sentence(piece, kit) + "\n";
        for (const plan::Caution& caution : piece.cautions)
            text += "  - " + sheets::caution_text(caution, kit, tape) + "\n";
    }
    return text;
}

}  // namespace kerfpacket::cli
