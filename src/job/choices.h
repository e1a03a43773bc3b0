#pragma once
// What a job file chooses among, and the words for it.

#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace kerfpacket::job {

/// The words of a key and what each means, in the order in which messages list them.
template <class T>
using Choices = std::vector<std::pair<std::string_view, T>>;

/// The words alone.
template <class T>
std::vector<std::string_view> words_of(const Choices<T>& choices) {
    std::vector<std::string_view> words;
    words.reserve(choices.size());
    for (const auto& [word, value] : choices) words.push_back(word);
    return words;
}

/// Heads of openings, in the trade's words.
enum class Shape {
    segmental,
    semicircular,
    elliptical,
    three_centred,
    pointed,
    tudor,
    parabolic,
    catenary,
    horseshoe,
    eyebrow,
    ordinates,
};

inline const Choices<Shape>& shape_words() {
    static const Choices<Shape> words{
        {"segmental", Shape::segmental},   {"semicircular", Shape::semicircular},
        {"elliptical", Shape::elliptical}, {"three-centred", Shape::three_centred},
        {"pointed", Shape::pointed},       {"tudor", Shape::tudor},
        {"parabolic", Shape::parabolic},   {"catenary", Shape::catenary},
        {"horseshoe", Shape::horseshoe},   {"eyebrow", Shape::eyebrow},
        {"ordinates", Shape::ordinates},
    };
    return words;
}

/// On springs of different height: whether the whole arch tilts with the string from spring to spring (arcs of one
/// chord), or each half stands on its own spring and meets the other at the crown.
constexpr bool tilts(Shape shape) {
    return shape == Shape::segmental || shape == Shape::horseshoe || shape == Shape::eyebrow;
}

/// Whether a head of this shape may well rise more than half its span.
constexpr bool may_be_tall(Shape shape) {
    return shape == Shape::pointed || shape == Shape::parabolic || shape == Shape::catenary ||
           shape == Shape::horseshoe;
}

/// What is drawn through measured ordinates: the best circle, the best ellipse, or a fair curve through the points.
enum class Fit { arc, ellipse, fair };
const Choices<Fit>& fit_words();

/// How a coupon was bent: on a disc, ends pushed together, pushed at the middle; or a board with one kerf, raised until
/// that closed.
enum class Held { disc, ends, centre, one_kerf };
const Choices<Held>& held_words();

/// What stopped the bending of a coupon.
enum class Outcome { cracked, held, closed };
const Choices<Outcome>& outcome_words();

/// How a board that climbs is cut at an end: as it hangs.
enum class EndCut { plumb, level, square };
const Choices<EndCut>& end_cut_words();

/// The sides of the wall that an opening is cased on.
enum class WallSide { room, away, both };
const Choices<WallSide>& wall_side_words();

/// "three-centred", as the job file has it.
std::string_view word(Shape shape);
std::string_view word(Fit fit);
std::string_view word(Held held);
std::string_view word(Outcome outcome);
std::string_view word(EndCut cut);
std::string_view word(WallSide side);

/// The key under which the words of every language have the name of a shape, by its word in the job file.
std::string shape_key(std::string_view word);

}  // namespace kerfpacket::job
