#include "sheets/serves_words.h"

#include <algorithm>

#include "plan/serves.h"
#include "sheets/strips/strip_ends.h"
#include "sheets/words/kerf_list.h"

namespace kerfpacket::sheets {
namespace {

class Told {
public:
    Told(const plan::Piece& was, const plan::Piece& now, const Kit& kit, const Tape& tape)
        : was_(was),
          now_(now),
          kit_(kit),
          tape_(tape),
          serves_(plan::serves(was, now, {waste_until(now), waste_from(now)})) {}

    std::string scrap() const {
        switch (serves_.unfit) {
            case plan::Unfit::board: return words("changes.scrap_board");
            case plan::Unfit::kerf_width:
                return words("changes.scrap_width",
                             {{"was", tape_.exact(was_.cut.kerf)}, {"now", tape_.exact(now_.cut.kerf)}});
            case plan::Unfit::too_deep:
                return words("changes.scrap_deep",
                             {{"was", tape_.exact(was_.cut.depth)}, {"now", tape_.exact(now_.cut.depth)}});
            case plan::Unfit::kerfs: {
                const std::string at = tape_.with_unit(serves_.first_misplaced);
                return serves_.misplaced == 1
                           ? words("changes.scrap_kerf", {{"at", at}})
                           : words("changes.scrap_kerfs", {{"n", std::to_string(serves_.misplaced)}, {"at", at}});
            }
            case plan::Unfit::too_short:
                return words("changes.scrap_short", {{"length", tape_.exact(rounded_up(serves_.missing))}});
            case plan::Unfit::none: break;
        }
        // It could be made, but not bent.
        return now_.bend.verdict == bend::Verdict::break_likely ? words("changes.scrap_breaks") : std::string();
    }

    std::string serving() const {
        std::string text =
            serves_.to_add.empty() ? words("changes.serves") : words("changes.serves_more", {{"kerfs", to_add()}});
        if (serves_.deepen) text += words("changes.serves_deeper", {{"depth", tape_.exact(now_.cut.depth)}});
        for (const std::size_t end : {0U, 1U}) {
            const Length longer = serves_.longer.at(end);
            if (tape_.rounded(measure::abs(longer)) == Length()) continue;
            text += words(longer > Length() ? "changes.serves_longer" : "changes.serves_shorter",
                          {{"length", tape_.with_unit(measure::abs(longer))},
                           {"end", words(end == 0 ? "changes.left_end" : "changes.right_end")}});
        }
        return text;
    }

private:
    std::string words(std::string_view key, const fonts::Words::Values& values = {}) const {
        return kit_.words(key, values);
    }
    std::string to_add() const {
        return kerf_list(kerf_runs(now_,
                                   [&](const plan::Kerf& kerf) {
                                       return std::binary_search(serves_.to_add.begin(), serves_.to_add.end(), kerf.n);
                                   }),
                         kit_);
    }
    /// What is missing is never told as nothing.
    Length rounded_up(Length length) const {
        const Length near = tape_.rounded(length);
        return near < length ? near + (tape_.unit() == Unit::inch ? Length::inches(1.0 / 16) : Length::mm(1)) : near;
    }

    const plan::Piece& was_;
    const plan::Piece& now_;
    const Kit& kit_;
    const Tape& tape_;
    plan::Serves serves_;
};

}  // namespace

std::string serves_words(const plan::Piece& was, const plan::Piece& now, const Kit& kit, const Tape& tape) {
    const Told told(was, now, kit, tape);
    const std::string scrap = told.scrap();
    return scrap.empty() ? told.serving() : scrap;
}

}  // namespace kerfpacket::sheets
