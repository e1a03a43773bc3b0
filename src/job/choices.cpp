#include "job/choices.h"

#include <algorithm>

#include "measure/require.h"

namespace kerfpacket::job {
namespace {

template <class T>
std::string_view word_of(T value, const Choices<T>& words) {
    const auto found = std::find_if(words.begin(), words.end(), [&](const auto& pair) { return pair.second == value; });
    measure::require(found != words.end(), "every value has its word");
    return found->first;
}

}  // namespace

const Choices<Fit>& fit_words() {
    static const Choices<Fit> words = {
        {"arc", Fit::arc},
        {"ellipse", Fit::ellipse},
        {"fair", Fit::fair},
    };
    return words;
}

const Choices<Held>& held_words() {
    static const Choices<Held> words = {
        {"disc", Held::disc},
        {"ends", Held::ends},
        {"centre", Held::centre},
        {"one-kerf", Held::one_kerf},
    };
    return words;
}

const Choices<Outcome>& outcome_words() {
    static const Choices<Outcome> words = {
        {"cracked", Outcome::cracked},
        {"held", Outcome::held},
        {"closed", Outcome::closed},
    };
    return words;
}

const Choices<EndCut>& end_cut_words() {
    static const Choices<EndCut> words = {
        {"plumb", EndCut::plumb},
        {"level", EndCut::level},
        {"square", EndCut::square},
    };
    return words;
}

const Choices<WallSide>& wall_side_words() {
    static const Choices<WallSide> words = {
        {"room", WallSide::room},
        {"away", WallSide::away},
        {"both", WallSide::both},
    };
    return words;
}

std::string_view word(Shape shape) { return word_of(shape, shape_words()); }
std::string_view word(Fit fit) { return word_of(fit, fit_words()); }
std::string_view word(Held held) { return word_of(held, held_words()); }
std::string_view word(Outcome outcome) { return word_of(outcome, outcome_words()); }
std::string_view word(EndCut cut) { return word_of(cut, end_cut_words()); }
std::string_view word(WallSide side) { return word_of(side, wall_side_words()); }

std::string shape_key(std::string_view word) {
    std::string key = "piece.shape_" + std::string(word);
    std::replace(key.begin(), key.end(), '-', '_');
    return key;
}

}  // namespace kerfpacket::job
