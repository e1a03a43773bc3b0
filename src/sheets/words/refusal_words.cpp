#include "sheets/words/refusal_words.h"

#include <algorithm>
#include <iterator>
#include <regex>
#include <string_view>
#include <vector>

#include "sheets/words/tape.h"

namespace kerfpacket::sheets {
namespace {

/// A sentence, or a part of one, as the plan says it.
struct Form {
    std::string_view key;      ///< of refusals.toml
    std::string_view english;  ///< what stands in braces is another form, a list of them or a figure
};

/// Of two that fit the first holds: what stands behind other forms comes before them.
constexpr Form forms[]{
    {"ways", "what would do by calculation, coupon first: {ways}"},
    {"with_free", R"({way}, with the depth and spacing left to "solve")"},
    {"likely_break", "piece {piece} will likely break: {cut} are strained to {u} of break strain at {where}"},
    {"closes", "piece {piece}: {cut} close before {where} is reached"},
    {"by_coupons",
     "piece {piece} will likely break: by the coupons and trials that count, more than 1 in 10 boards like "
     "this would"},
    {"as_given", "piece {piece} will likely break: between kerfs as given the bend is more than the board takes"},
    {"no_depth_moulded",
     "a board {thickness} thick at its thinnest leaves no depth to cut: the web must be at least {web}, and "
     "at least {part} of the {whole} where it is thickest is to be cut"},
    {"no_depth", "a board {thickness} thick leaves no depth to cut: the web must be at least {web}"},
    {"where", "the bend's tightest radius, {radius} on the seen face"},
    {"nothing", "nothing that this program knows of takes this bend"},
    {"free", R"(depth and spacing left to "solve": {apart})"},
    {"other_material", "another material: {names}"},
    {"laminated",
     "{n} plies {thickness} thick, {cut} and glued one on the other, blanks from the seen ply to the back one "
     "{blanks} long"},
    {"careful", "{way} (near the limit: {u} of break strain)"},
    {"radius_two", "a radius of at least {ok} on the seen face, or {careful} (near the limit)"},
    {"radius_careful", "a radius of at least {careful} on the seen face (near the limit)"},
    {"radius", "a radius of at least {ok} on the seen face"},
    {"thinner", "a board {thickness} thick, {apart}"},
    {"kerf_depth", "kerf_depth = {depth}, down to {spacing} apart"},
    {"apart", "kerfs {depth} deep, down to {spacing} apart"},
    {"even_every", "even kerfs {depth} deep every {spacing}"},
    {"even", "even kerfs {depth} deep"},
    {"kerfed", "kerfed {depth} deep every {spacing}"},
    {"no_kerfs", "bent without kerfs"},
    {"every", "kerfs {depth} deep every {spacing}"},
    {"thin_web_moulded", "kerfs {depth} deep in a board {thickness} thick at its thinnest leave a web of {web}"},
    {"thin_web", "kerfs {depth} deep in a board {thickness} thick leave a web of {web}"},
    {"askew_beyond", "the kerfs of {piece} stand {angle} degrees from square, and the saw cuts to {limit}"},
    {"askew_beyond_do",
     "would do: a saw on a rail that is set by the marks, one stroke a kerf, or a wall that climbs less steeply"},
    {"askew_long", "the kerfs of {piece} are {cut} long, which needs {needed} of travel: the slide has {travel}"},
    {"askew_long_do", "would do: a slide of that travel, a saw on a rail, or a board at most {width} wide"},
    {"not_divided",
     "the board of {piece} is {length} long from tip to tip, the longest blank that can be had is {most}, and a board "
     "that climbs is not divided"},
    {"not_divided_do", "would do: stock of {length}, or two walls, each with its own part of the curve"},
    {"edge_strip", "a strip over the edge has no room for its numbers: kerfs {depth} deep leave a web of {web}"},
    {"deep", "kerfs {depth} deep"},
    {"edge_strip_do", R"(the web must be at least {web}; strip = "face" goes on any board)"},
    {"web_least", "the web must be at least {web}"},
    {"no_land", "kerfs {kerf} wide every {spacing} leave no wood between them"},
    {"no_land_do", "the spacing must be larger than the kerf"},
    {"no_plies", R"("{material}" has no plies)"},
    {"no_plies_do", "plies are for plywood, and for a material of your own with grain = true"},
    {"off_blank", "a kerf at {at} is not on the blank, which is {length} long"},
    {"off_blank_do", "kerfs are counted from the blank's zero end, trim included"},
    {"bare", "from {from} to {to} there is no kerf"},
    {"bare_do", "the bend runs from {from} to {to}; kerfs stand at most {gap} apart"},
    {"too_short", "the bend is {bend} long, less than one spacing of {spacing}"},
    {"too_short_do", "a bend takes several kerfs; use a closer spacing"},
    {"no_room", "the bend of {bend} leaves no room for a kerf every {spacing} clear of its ends"},
    {"no_room_do", "use a closer spacing, or more trim"},
    {"too_many", "a bend of {bend} with a kerf every {spacing} takes more than {n} cuts"},
    {"too_many_do", "is a length given in the wrong unit?"},
    {"back_liner", "back of the liner"},
    {"face_liner", "face of the liner"},
    {"back_board", "back of the board"},
    {"face_board", "face of the board"},
    {"fold", "the {what} would fold on itself: the measured curve has a radius of {radius} at {place}"},
    {"fold_do", "it lies {distance} from the measured curve, which must be less than the radius"},
    {"used_up",
     "the {what}, {distance} from the measured curve, does not fit: a side of the head is used up at {place}"},
    {"used_up_do", "a thinner board or a narrower casing leaves room"},
    {"place_left_above", "{x} left of the middle, {y} above the base line"},
    {"place_right_above", "{x} right of the middle, {y} above the base line"},
    {"place_left_below", "{x} left of the middle, {y} below the base line"},
    {"place_right_below", "{x} right of the middle, {y} below the base line"},
    {"slip", "station {at} looks mistyped or misread: {off} off the curve of the others"},
    {"slip_do", "measure it again: a slip bends the curve where the wall does not bend"},
    {"fills_span", "liners {thickness} thick fill the measured span of {span}"},
    {"fills_span_do", "the liner must be thinner than half the span"},
    {"marks_close", "kerfs {a} and {b} are {gap} apart: marks so close cannot be told apart on a strip"},
    {"marks_close_do", "kerfs stand at least {gap} apart"},
    {"roll_edge", "a roll {width} wide is too narrow for the edge strips of piece {piece}, which are {height} high"},
    {"roll_face", "a roll {width} wide is too narrow for the face strips of piece {piece}, which are {height} high"},
    {"roll_do_face", R"(the roll must be at least {width} wide; strip = "face" fits on this one)"},
    {"roll_do", "the roll must be at least {width} wide"},
    {"two_boards", "a head with a point is lined by two boards: kerfs cannot be given for both"},
    {"two_boards_do", R"(give a spacing, or leave it to "solve")"},
    {"no_such_kerf", "there is no kerf {n}"},
    {"no_such_kerf_do", "piece {piece} has kerfs 1 to {last}"},
    {"not_too_deep", "kerf {n} is not too deep at {depth}"},
    {"not_too_deep_do", "piece {piece} is cut {depth} deep"},
    {"rise_more", "rise {rise} is more than a {shape} head over this span can have"},
    {"rise_more_eyebrow", "rise {rise} is more than an eyebrow over this span can have"},
    {"rise_less", "rise {rise} is too little for a {shape} head over this span"},
    {"crown_with_side", "crown_radius {crown} is too small to make a point with side_radius {side}"},
    {"crown_small", "crown_radius {crown} is too small to make a point"},
    {"reverse", "reverse_radius {radius} leaves no room for the arc between"},
    {"side_large_rise", "side_radius {radius} is too large to meet a crown arc at this rise"},
    {"side_large", "side_radius {radius} is too large to meet a crown arc"},
    {"most_here", "expected at most {most} with this span and rise"},
    {"most_plumb", "expected at most {most}: there the curve is plumb between its arcs"},
    {"circle_misses", "the best circle, R {radius}, misses the point at station {at} by {off}"},
    {"arc_may_miss", R"(an arc may miss by {most} at most: measure that point again, or use fit = "fair")"},
    {"no_ellipse", "no ellipse goes through these points"},
    {"ellipse_points", R"(an ellipse takes at least {n} points round its end or crown: use fit = "fair")"},
    {"two_radii", "the two sides then have radii of their own: give rise instead of radius"},
};

class Reader {
public:
    explicit Reader(const Form& form) : key_("refusals." + std::string(form.key)) {
        std::string pattern;
        for (std::size_t i = 0; i < form.english.size(); ++i) {
            const char c = form.english[i];
            if (c == '{') {
                const std::size_t end = form.english.find('}', i);
                names_.emplace_back(form.english.substr(i + 1, end - i - 1));
                pattern += "(.+?)";
                i = end;
            } else {
                if (std::string_view("().[]*+?^$|\\").find(c) != std::string_view::npos) pattern += '\\';
                pattern += c;
            }
        }
        pattern_ = std::regex(pattern);
    }

    const std::string& key() const { return key_; }
    std::optional<fonts::Words::Values> parts_of(const std::string& text) const {
        std::smatch match;
        if (!std::regex_match(text, match, pattern_)) return std::nullopt;
        fonts::Words::Values parts;
        for (std::size_t i = 0; i < names_.size(); ++i) parts.emplace_back(names_[i], match[i + 1].str());
        return parts;
    }

private:
    std::string key_;
    std::vector<std::string> names_;
    std::regex pattern_;
};

const std::vector<Reader>& readers() {
    static const std::vector<Reader> all(std::begin(forms), std::end(forms));
    return all;
}

/// A figure with its unit, a material of ours, or what a person named.
std::string figure_text(const std::string& text, const Kit& kit) {
    if (kit.words.entries().contains("materials." + text)) return kit.words("materials." + text);
    std::string shape = "settings.word_" + text;
    std::replace(shape.begin(), shape.end(), '-', '_');
    if (kit.words.entries().contains(shape)) return kit.words(shape);
    static const std::regex figure("([0-9][-0-9./ ]*?)(?: (in|mm))?");
    std::smatch match;
    if (!std::regex_match(text, match, figure)) return text;
    std::string number = with_decimal(match[1].str(), kit.words("numbers.decimal"));
    if (match[2].matched) number += " " + kit.words(match[2] == "in" ? "numbers.inch" : "numbers.millimetre");
    return number;
}

/// What stands in braces: one part, or a list of them.
std::string part_text(const std::string& name, const std::string& text, const Kit& kit) {
    const std::string between = name == "ways" ? "; " : name == "names" || name == "blanks" ? ", " : "";
    if (const std::size_t at = between.empty() ? std::string::npos : text.find(between); at != std::string::npos)
        return part_text(name, text.substr(0, at), kit) + between +
               part_text(name, text.substr(at + between.size()), kit);
    return refusal_text(text, kit).value_or(figure_text(text, kit));
}

}  // namespace

std::optional<std::string> refusal_text(const std::string& english, const Kit& kit) {
    for (const Reader& reader : readers()) {
        auto parts = reader.parts_of(english);
        if (!parts) continue;
        for (auto& [name, text] : *parts) text = part_text(name, text, kit);
        return kit.words(reader.key(), *parts);
    }
    return std::nullopt;
}

}  // namespace kerfpacket::sheets
