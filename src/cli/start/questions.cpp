#include "cli/start/questions.h"

#include <algorithm>

#include "job/choices.h"
#include "measure/require.h"

namespace kerfpacket::cli {
namespace {

using Kind = AnswerKind;

bool opening(const Answers& answers) { return answers.opening(); }
bool wall(const Answers& answers) { return answers.wall(); }
bool stair(const Answers& answers) { return answers.stair(); }
bool figures(const Answers& answers) { return answers.opening() && answers.of_piece("shape") != "ordinates"; }
bool rises(const Answers& answers) { return figures(answers) && answers.of_piece("shape") != "semicircular"; }
bool by_chord(const Answers& answers) { return answers.wall() && answers.of_piece("way") == "chord"; }
bool by_radius(const Answers& answers) { return answers.wall() && answers.of_piece("way") == "radius"; }
bool by_points(const Answers& answers) {
    return answers.of_piece("shape") == "ordinates" || answers.of_piece("way") == "points";
}
bool has_legs(const Answers& answers) { return opening(answers) && !answers.of_piece("legs").empty(); }
bool may_splay(const Answers& answers) { return opening(answers) && answers.of_piece("through_legs") != "yes"; }
bool by_side(const Answers& answers) { return opening(answers) && answers.of_piece("splayed") == "side"; }
bool by_lean(const Answers& answers) { return opening(answers) && answers.of_piece("splayed") == "angle"; }
bool splays(const Answers& answers) { return by_side(answers) || by_lean(answers); }
bool has_casing(const Answers& answers) { return opening(answers) && !answers.of_piece("casing").empty(); }
bool cased_splay(const Answers& answers) { return has_casing(answers) && splays(answers); }
bool first_piece(const Answers& answers) { return answers.pieces() == 1; }
bool first_stair(const Answers& answers) { return first_piece(answers) && answers.stair(); }

std::vector<Question> head_questions() {
    return {
        {.name = "number", .part = Part::job, .key = "number", .kind = Kind::words, .filler = "1"},
        {.name = "title", .part = Part::job, .key = "title", .kind = Kind::words, .filler = "1"},
        {.name = "revision", .part = Part::job, .key = "revision", .kind = Kind::words, .usual = "A", .filler = "A"},
        {.name = "date", .part = Part::job, .key = "date", .kind = Kind::bare, .filler = "2026-01-01"},
        {.name = "units",
         .part = Part::job,
         .key = "units",
         .kind = Kind::choice,
         .usual = "in",
         .filler = "in",
         .choices = {"in", "mm"}},
    };
}

std::vector<Question> curve_questions() {
    return {
        {.name = "kind", .kind = Kind::choice, .choices = {"opening", "wall", "stair"}},
        {.name = "id", .key = "id", .kind = Kind::words},
        {.name = "shape",
         .key = "shape",
         .kind = Kind::choice,
         .when = opening,
         .choices = job::words_of(job::shape_words())},
        {.name = "way", .kind = Kind::choice, .when = wall, .choices = {"chord", "radius", "points"}},
        {.name = "span", .key = "span", .when = figures, .least = 12, .most = 180},
        {.name = "rise", .key = "rise", .when = rises, .least = 1, .most = 120},
        {.name = "chord", .key = "chord", .when = by_chord, .least = 12, .most = 480},
        {.name = "bulge", .key = "rise", .when = by_chord, .least = 0.5, .most = 120},
        {.name = "radius", .key = "radius", .when = by_radius, .least = 6, .most = 1200},
        {.name = "angle", .key = "angle", .kind = Kind::bare, .when = by_radius},
        {.name = "points", .key = "ordinates", .kind = Kind::points, .when = by_points},
        {.name = "fit",
         .key = "fit",
         .kind = Kind::choice,
         .when = by_points,
         .usual = "fair",
         .choices = job::words_of(job::fit_words())},
        {.name = "measured_to",
         .key = "measured_to",
         .kind = Kind::choice,
         .usual = "wall",
         .as_before = true,
         .choices = {"wall", "finish"}},
        {.name = "legs",
         .key = "legs",
         .kind = Kind::lengths,
         .when = opening,
         .optional = true,
         .least = 6,
         .most = 144},
        {.name = "through_legs", .key = "through_legs", .kind = Kind::yes_no, .when = has_legs, .optional = true},
        {.name = "depth", .key = "depth", .when = opening, .as_before = true, .filler = "1 in", .least = 2, .most = 18},
        {.name = "splayed",
         .kind = Kind::choice,
         .when = may_splay,
         .usual = "no",
         .as_before = true,
         .choices = {"no", "side", "angle"}},
        {.name = "splay_side",
         .part = Part::splay,
         .key = "side",
         .when = by_side,
         .as_before = true,
         .filler = "1 in",
         .least = 0.25,
         .most = 12},
        {.name = "splay_angle",
         .part = Part::splay,
         .key = "angle",
         .kind = Kind::bare,
         .when = by_lean,
         .as_before = true,
         .filler = "10"},
        {.name = "splay_measured",
         .part = Part::splay,
         .key = "measured",
         .kind = Kind::choice,
         .when = splays,
         .as_before = true,
         .filler = "narrow",
         .choices = {"narrow", "wide"}},
        {.name = "splay_toward",
         .part = Part::splay,
         .key = "toward",
         .kind = Kind::choice,
         .when = splays,
         .as_before = true,
         .filler = "room",
         .choices = {"room", "away"}},
        {.name = "side",
         .key = "side",
         .kind = Kind::choice,
         .when = wall,
         .as_before = true,
         .filler = "concave",
         .choices = {"concave", "convex"}},
        {.name = "tails",
         .key = "tails",
         .kind = Kind::lengths,
         .when = wall,
         .optional = true,
         .least = 1,
         .most = 480},
        {.name = "step",
         .key = "rake",
         .kind = Kind::lengths,
         .when = stair,
         .filler = "7 in, 10 in",
         .least = 4,
         .most = 20},
        {.name = "climbs",
         .key = "climbs",
         .kind = Kind::choice,
         .when = stair,
         .filler = "right",
         .choices = {"right", "left"}},
        {.name = "quantity", .key = "quantity", .kind = Kind::bare, .usual = "1"},
    };
}

std::vector<Question> board_questions() {
    return {
        {.name = "material",
         .part = Part::board,
         .key = "material",
         .kind = Kind::choice,
         .as_before = true,
         .filler = "mdf"},
        {.name = "thickness",
         .part = Part::board,
         .key = "thickness",
         .as_before = true,
         .filler = "1/4 in",
         .least = 0.25,
         .most = 1.25},
        {.name = "width",
         .part = Part::board,
         .key = "width",
         .when = wall,
         .as_before = true,
         .filler = "1 in",
         .least = 1,
         .most = 24},
        {.name = "kerf_depth", .part = Part::board, .key = "kerf_depth", .usual = "solve", .as_before = true},
        {.name = "spacing", .part = Part::board, .key = "spacing", .usual = "solve", .as_before = true},
        {.name = "trim",
         .part = Part::board,
         .key = "trim",
         .usual = "3 in",
         .usual_mm = "75 mm",
         .as_before = true,
         .least = 1,
         .most = 12},
        {.name = "casing",
         .part = Part::casing,
         .key = "width",
         .when = opening,
         .optional = true,
         .as_before = true,
         .least = 1.5,
         .most = 8},
        {.name = "reveal",
         .part = Part::casing,
         .key = "reveal",
         .when = has_casing,
         .usual = "3/16 in",
         .usual_mm = "5 mm",
         .as_before = true,
         .least = 0.0625,
         .most = 0.5},
        {.name = "wall_side",
         .part = Part::casing,
         .key = "wall_side",
         .kind = Kind::choice,
         .when = cased_splay,
         .usual = "room",
         .as_before = true,
         .choices = job::words_of(job::wall_side_words())},
        {.name = "blade",
         .part = Part::saw,
         .key = "blade_diameter",
         .when = first_piece,
         .filler = "10 in",
         .least = 6,
         .most = 16},
        {.name = "kerf",
         .part = Part::saw,
         .key = "kerf",
         .when = first_piece,
         .filler = "0.1 in",
         .least = 0.06,
         .most = 0.2},
        {.name = "travel", .part = Part::saw, .key = "travel", .when = first_piece, .optional = true},
        {.name = "mitre_limit",
         .part = Part::saw,
         .key = "mitre_limit",
         .kind = Kind::bare,
         .when = first_stair,
         .optional = true},
        {.name = "rear_limit", .part = Part::saw, .key = "rear_limit", .when = first_piece, .optional = true},
        {.name = "media",
         .part = Part::printer,
         .key = "media",
         .kind = Kind::choice,
         .when = first_piece,
         .choices = {"na_letter_8.5x11in", "na_legal_8.5x14in", "na_ledger_11x17in", "iso_a4_210x297mm",
                     "iso_a3_297x420mm"}},
    };
}

}  // namespace

const std::vector<Question>& questions() {
    static const std::vector<Question> all = [] {
        std::vector<Question> rows = head_questions();
        for (const auto& more : {curve_questions(), board_questions()})
            rows.insert(rows.end(), more.begin(), more.end());
        return rows;
    }();
    return all;
}

const Question& question(std::string_view name) {
    const auto found =
        std::find_if(questions().begin(), questions().end(), [&](const Question& one) { return one.name == name; });
    measure::require(found != questions().end(), "every question that is named is in the table");
    return *found;
}

const Question* next_question(const Answers& answers) {
    const Question* const first = questions().data();
    const Question* const end = first + questions().size();
    if (answers.empty()) return first;
    const Answer& last = answers.all().back();
    if (last.question->name == "kind" && last.value == "done") return nullptr;
    if (last.question->kind == AnswerKind::points && !last.value.empty()) return last.question;
    for (const Question* row = last.question + 1; row != end; ++row)
        if (row->when == nullptr || row->when(answers)) return row;
    return &question("kind");
}

}  // namespace kerfpacket::cli
