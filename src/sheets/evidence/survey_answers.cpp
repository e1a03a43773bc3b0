#include "sheets/evidence/survey_answers.h"

#include <cmath>
#include <numeric>

#include "measure/fraction.h"
#include "measure/require.h"
#include "sheets/words/wording.h"

namespace kerfpacket::sheets {
namespace {

using namespace measure::literals;

/// A circle of so many spans is no figure to work with.
constexpr double all_but_straight = 50;

Length rms(const curve::Misses& misses) {
    const double squares = std::accumulate(misses.at.begin(), misses.at.end(), 0.0,
                                           [](double sum, Length miss) { return sum + miss.mm() * miss.mm(); });
    return Length::mm(std::sqrt(squares / static_cast<double>(std::max<std::size_t>(misses.at.size(), 1))));
}

const curve::Survey& survey_of(const plan::Piece& piece) {
    measure::require(piece.survey.has_value(), "a piece whose survey is told has one");
    return *piece.survey;
}

/// "25 below the base line".
std::string off_base_line(Length height, const Kit& kit, const Tape& tape) {
    return kit.words(height < 0_mm ? "survey.below" : "survey.above", {{"height", tape.plain(measure::abs(height))}});
}

/// A miss without its sign: 25/32 in, 3.2 mm.
std::string amount(Length miss, const Tape& tape) {
    const bool inch = tape.unit() == Unit::inch;
    return tape.exact(inch ? measure::round_to_inch_fraction(measure::abs(miss), 32)
                           : Length::mm(measure::nearest(std::abs(miss.mm()) * 10) / 10));
}

/// Why, where the rule of 1/8 in is the reason.
std::string reason(const curve::Survey& survey, const Kit& kit, const Tape& tape) {
    const fonts::Words::Values limit{{"limit", amount(curve::most_miss, tape)}};
    const bool circle = survey.circle && survey.circle->misses.worst() <= curve::most_miss;
    const bool ellipse = survey.ellipse && survey.ellipse->misses.worst() <= curve::most_miss;
    switch (survey.recommended) {
        case job::Fit::arc: return circle ? kit.words("survey.why_arc", limit) : std::string();
        case job::Fit::ellipse: return ellipse && !circle ? kit.words("survey.why_ellipse", limit) : std::string();
        case job::Fit::fair: return !ellipse && !circle ? kit.words("survey.why_fair", limit) : std::string();
    }
    throw measure::Bug("a fit without a reason");
}

/// What the curve would come to that is recommended in place of the one drawn.
std::string other_fit(const plan::Piece& piece, const Kit& kit, const Tape& tape) {
    if (!piece.other_fit) return {};
    const plan::OtherFit& other = *piece.other_fit;
    const char* key = other.utilisation > 0 ? "survey.other_fit" : "survey.other_fit_refused";
    fonts::Words::Values values{{"fit", fit_name(other.fit, kit)}};
    if (other.utilisation > 0) {
        values.emplace_back("u", number(other.utilisation, 2, kit.words));
        values.emplace_back("verdict", verdict_word(other.verdict, kit));
    }
    const std::string gap = tape.with_unit(other.gap);
    const std::string apart = gap == tape.with_unit(0_mm) ? kit.words("survey.curves_same")
                                                          : kit.words("survey.curves_apart", {{"gap", gap}});
    return kit.words(key, values) + " " + apart;
}

}  // namespace

std::vector<Answer> answers(const curve::Survey& survey) {
    std::vector<Answer> all;
    const auto add = [&](job::Fit fit, const curve::Misses& misses) { all.push_back({fit, &misses, rms(misses)}); };
    if (survey.circle) add(job::Fit::arc, survey.circle->misses);
    if (survey.ellipse) add(job::Fit::ellipse, survey.ellipse->misses);
    add(job::Fit::fair, survey.fair.misses);
    return all;
}

std::vector<job::Fit> unanswered(const curve::Survey& survey) {
    std::vector<job::Fit> none;
    if (!survey.circle) none.push_back(job::Fit::arc);
    if (!survey.ellipse) none.push_back(job::Fit::ellipse);
    return none;
}

Reading reading(const plan::Piece& piece, plan::Point point) {
    const curve::Survey& survey = survey_of(piece);
    // A convex wall bulges down in its frame; that of any wall lies along the string between the measured ends, which
    // the base line need not.
    const bool down = piece.kind == plan::Kind::wall_board && piece.side == job::Side::convex;
    const auto up = [&](plan::Point off) { return down ? plan::Point{off.x, off.y * -1.0} : off; };
    const plan::Point string = up(survey.points.back() - survey.points.front());
    const plan::Point measured{survey.stations.back() - survey.stations.front(),
                               survey.heights.back() - survey.heights.front()};
    const double turn = std::atan2(measured.y.mm(), measured.x.mm()) - std::atan2(string.y.mm(), string.x.mm());
    const plan::Point off = geom::turned(up(point - survey.points.front()), geom::Angle::radians(turn));
    return {survey.stations.front() + off.x, survey.heights.front() + off.y};
}

Reading reading(const plan::Piece& piece, std::size_t point) {
    const curve::Survey& survey = survey_of(piece);
    return {survey.stations.at(point), survey.heights.at(point)};
}

std::string fit_name(job::Fit fit, const Kit& kit) {
    switch (fit) {
        case job::Fit::arc: return kit.words("piece.fit_arc");
        case job::Fit::ellipse: return kit.words("piece.fit_ellipse");
        case job::Fit::fair: return kit.words("piece.fit_fair");
    }
    throw measure::Bug("a fit without a name");
}

std::string miss_text(Length miss, const Tape& tape) {
    const bool inch = tape.unit() == Unit::inch;
    const std::string digits = tape.number(std::abs(inch ? miss.inches() : miss.mm()), inch ? 3 : 1);
    if (digits.find_first_of("123456789") == std::string::npos) return "0";
    return (miss < 0_mm ? "-" : "+") + digits;
}

std::string rms_text(const Answer& answer, const Tape& tape) {
    const std::string text = miss_text(answer.rms, tape);
    return text.front() == '+' ? text.substr(1) : text;
}

std::string answer_text(const plan::Piece& piece, job::Fit fit, const Kit& kit, const Tape& tape) {
    const curve::Survey& survey = survey_of(piece);
    if (fit == job::Fit::arc && survey.circle) {
        if (survey.circle->radius > piece.measured_span * all_but_straight) return kit.words("survey.straight");
        const Reading centre = reading(piece, survey.circle->centre);
        return kit.words("survey.circle", {{"radius", tape.with_unit(survey.circle->radius)},
                                           {"station", tape.plain(centre.station)},
                                           {"height", off_base_line(centre.height, kit, tape)}});
    }
    if (fit == job::Fit::ellipse && survey.ellipse) {
        const Reading centre = reading(piece, survey.ellipse->centre);
        return kit.words("survey.ellipse", {{"width", tape.plain(survey.ellipse->half_width)},
                                            {"height", tape.with_unit(survey.ellipse->half_height)},
                                            {"station", tape.plain(centre.station)},
                                            {"centre", off_base_line(centre.height, kit, tape)}});
    }
    return kit.words("survey.fair");
}

std::string brief_answer_text(const plan::Piece& piece, job::Fit fit, const Kit& kit, const Tape& tape) {
    const curve::Survey& survey = survey_of(piece);
    if (fit != job::Fit::ellipse || !survey.ellipse) return answer_text(piece, fit, kit, tape);
    return kit.words("survey.ellipse_brief", {{"width", tape.plain(survey.ellipse->half_width)},
                                              {"height", tape.with_unit(survey.ellipse->half_height)}});
}

std::string recommendation(const plan::Piece& piece, const Kit& kit, const Tape& tape) {
    const curve::Survey& survey = survey_of(piece);
    std::string text = kit.words("survey.recommended", {{"fit", fit_name(survey.recommended, kit)}});
    const std::string why = reason(survey, kit, tape);
    if (!why.empty()) text += " " + why;
    text += " " + (survey.used == survey.recommended
                       ? kit.words("survey.used_same")
                       : kit.words("survey.used_other", {{"fit", fit_name(survey.used, kit)}}));
    const std::string other = other_fit(piece, kit, tape);
    return other.empty() ? text : text + " " + other;
}

std::string left_out_text(const plan::Piece& piece, const Kit& kit, const Tape& tape) {
    const curve::Misses& left_out = survey_of(piece).fair.left_out;
    const std::size_t worst = left_out.worst_point();
    return kit.words("survey.left_out", {{"off", amount(left_out.at.at(worst), tape)},
                                         {"station", tape.exact_plain(reading(piece, worst).station)}});
}

std::string suspect_text(const plan::Piece& piece, const Kit& kit, const Tape& tape) {
    const curve::Survey& survey = survey_of(piece);
    if (!survey.suspect) return {};
    return kit.words("survey.suspect", {{"station", tape.exact(reading(piece, survey.suspect->point).station)},
                                        {"off", amount(survey.suspect->off, tape)}});
}

}  // namespace kerfpacket::sheets
