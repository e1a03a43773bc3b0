#include "job/shapes.h"

#include <algorithm>

#include "measure/require.h"

namespace kerfpacket::job {
namespace {

template <class T>
std::string_view word_of(T value, const std::vector<std::pair<std::string_view, T>>& words) {
    const auto found = std::find_if(words.begin(), words.end(), [&](const auto& pair) { return pair.second == value; });
    measure::require(found != words.end(), "every value has its word");
    return found->first;
}

}  // namespace

const std::vector<std::pair<std::string_view, Shape>>& shape_words() {
    static const std::vector<std::pair<std::string_view, Shape>> words = {
        {"segmental", Shape::segmental},   {"semicircular", Shape::semicircular},
        {"elliptical", Shape::elliptical}, {"three-centred", Shape::three_centred},
        {"pointed", Shape::pointed},       {"tudor", Shape::tudor},
        {"parabolic", Shape::parabolic},   {"catenary", Shape::catenary},
        {"horseshoe", Shape::horseshoe},   {"eyebrow", Shape::eyebrow},
        {"ordinates", Shape::ordinates},
    };
    return words;
}

const std::vector<std::pair<std::string_view, Fit>>& fit_words() {
    static const std::vector<std::pair<std::string_view, Fit>> words = {
        {"arc", Fit::arc},
        {"ellipse", Fit::ellipse},
        {"fair", Fit::fair},
    };
    return words;
}

const std::vector<std::pair<std::string_view, Held>>& held_words() {
    static const std::vector<std::pair<std::string_view, Held>> words = {
        {"disc", Held::disc},
        {"ends", Held::ends},
        {"centre", Held::centre},
        {"one-kerf", Held::one_kerf},
    };
    return words;
}

const std::vector<std::pair<std::string_view, Outcome>>& outcome_words() {
    static const std::vector<std::pair<std::string_view, Outcome>> words = {
        {"cracked", Outcome::cracked},
        {"held", Outcome::held},
        {"closed", Outcome::closed},
    };
    return words;
}

const std::vector<std::pair<std::string_view, EndCut>>& end_cut_words() {
    static const std::vector<std::pair<std::string_view, EndCut>> words = {
        {"plumb", EndCut::plumb},
        {"level", EndCut::level},
        {"square", EndCut::square},
    };
    return words;
}

const std::vector<std::pair<std::string_view, WallSide>>& wall_side_words() {
    static const std::vector<std::pair<std::string_view, WallSide>> words = {
        {"room", WallSide::room},
        {"away", WallSide::away},
        {"both", WallSide::both},
    };
    return words;
}

bool tilts(Shape shape) { return shape == Shape::segmental || shape == Shape::horseshoe || shape == Shape::eyebrow; }

std::string_view word(Shape shape) { return word_of(shape, shape_words()); }
std::string_view word(Fit fit) { return word_of(fit, fit_words()); }
std::string_view word(Held held) { return word_of(held, held_words()); }
std::string_view word(Outcome outcome) { return word_of(outcome, outcome_words()); }
std::string_view word(EndCut cut) { return word_of(cut, end_cut_words()); }
std::string_view word(WallSide side) { return word_of(side, wall_side_words()); }

}  // namespace kerfpacket::job
