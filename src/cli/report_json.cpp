#include <array>

#include "cli/nest_report.h"
#include "cli/report.h"
#include "cli/splay_figures.h"
#include "cli/stock_json.h"
#include "measure/require.h"
#include "sheets/evidence/survey_answers.h"
#include "sheets/words/wording.h"

namespace kerfpacket::cli {
namespace {

/// For scripts: what stands here is never said in other words.
const char* verdict_words(bend::Verdict verdict) {
    switch (verdict) {
        case bend::Verdict::ok: return "ok";
        case bend::Verdict::caution: return "caution";
        case bend::Verdict::break_likely: return "will likely break";
    }
    throw measure::Bug("a verdict without words");
}

const char* side_word(bend::KerfsOn side) { return side == bend::KerfsOn::inside ? "inside" : "outside"; }

const char* fit_word(job::Fit fit) {
    switch (fit) {
        case job::Fit::arc: return "arc";
        case job::Fit::ellipse: return "ellipse";
        case job::Fit::fair: return "fair";
    }
    throw measure::Bug("a fit without a word");
}

Json kerfs_json(const plan::Piece& piece) {
    Json kerfs = Json::array();
    for (const plan::Kerf& kerf : piece.blank().kerfs)
        kerfs.push_back({{"n", kerf.n},
                         {"at_mm", mm(kerf.at)},
                         {"spacing_mm", mm(kerf.spacing)},
                         {"turn_deg", six_decimals(kerf.turn.degrees())},
                         {"on", side_word(kerf.on)},
                         {"utilisation", kerf.utilisation}});
    return kerfs;
}

Json lengths_json(const std::vector<measure::Length>& lengths) {
    Json all = Json::array();
    for (const measure::Length length : lengths) all.push_back(mm(length));
    return all;
}

/// The three answers to measured ordinates; null for a piece that was not measured so.
Json survey_json(const plan::Piece& piece) {
    if (!piece.survey) return nullptr;
    const curve::Survey& survey = *piece.survey;
    Json fits = Json::object();
    for (const sheets::Answer& answer : sheets::answers(survey))
        fits[fit_word(answer.fit)] = {{"worst_mm", mm(answer.misses->worst())},
                                      {"rms_mm", mm(answer.rms)},
                                      {"misses_mm", lengths_json(answer.misses->at)}};
    if (survey.circle) fits["arc"]["radius_mm"] = mm(survey.circle->radius);
    if (survey.ellipse) {
        fits["ellipse"]["half_width_mm"] = mm(survey.ellipse->half_width);
        fits["ellipse"]["half_height_mm"] = mm(survey.ellipse->half_height);
    }
    const Json suspect = survey.suspect ? Json{{"station_mm", mm(survey.stations.at(survey.suspect->point))},
                                               {"off_mm", mm(survey.suspect->off)}}
                                        : Json();
    const auto& fit = piece.other_fit;  // null where the curve that is drawn is the recommended one
    const Json other = fit ? Json{{"verdict", verdict_words(fit->verdict)},
                                  {"utilisation", fit->utilisation > 0 ? Json(fit->utilisation) : Json()},
                                  {"gap_mm", mm(fit->gap)}}
                           : Json();
    return {{"stations_mm", lengths_json(survey.stations)},
            {"fits", fits},
            {"left_out_mm", lengths_json(survey.fair.left_out.at)},
            {"used", fit_word(survey.used)},
            {"recommended", fit_word(survey.recommended)},
            {"suspect", suspect},
            {"on_recommended", other}};
}

/// Ordinates of the bending form's rib; null where there is none.
Json form_json(const plan::Piece& piece) {
    if (!piece.form) return nullptr;
    Json ordinates = Json::array();
    for (const plan::Point& p : piece.form->ordinates)
        ordinates.push_back({{"station_mm", mm(p.x)}, {"height_mm", mm(p.y)}});
    return {{"ordinates", ordinates}, {"springs_back", piece.form->springs_back}};
}

Json cautions_json(const plan::Piece& piece, const plan::Plan& plan, const sheets::Kit& kit) {
    Json cautions = Json::array();
    for (const plan::Caution& caution : piece.cautions)
        cautions.push_back(sheets::caution_text(caution, kit, sheets::Tape(plan.header.units)));
    return cautions;
}

const char* limit_word(bend::Limit limit) {
    switch (limit) {
        case bend::Limit::strain: return "strain";
        case bend::Limit::peel: return "peel";
        case bend::Limit::closing: return "closing";
        case bend::Limit::facet: return "facet";
        case bend::Limit::web: return "web";
    }
    throw measure::Bug("a limit without a word");
}

const char* rule_word(plan::Rule rule) {
    switch (rule) {
        case plan::Rule::given: return "given";
        case plan::Rule::common_practice: return "common practice";
        case plan::Rule::thickest_web: return "thickest web";
        case plan::Rule::closer: return "closer";
        case plan::Rule::least_strain: return "least strain";
        case plan::Rule::kept: return "kept";
    }
    throw measure::Bug("a rule without a word");
}

Json choice_json(const std::optional<plan::Choice>& choice) {
    if (!choice) return nullptr;
    return {{"kerf_depth_mm", mm(choice->depth)},          {"spacing_mm", mm(choice->spacing)},
            {"spacing_min_mm", mm(choice->least_spacing)}, {"count", choice->kerfs},
            {"utilisation", choice->utilisation},          {"verdict", verdict_words(choice->verdict)}};
}

/// How depth and spacing came about; null for a neighbour that cannot be.
Json settings_json(const plan::Piece& piece) {
    const plan::Settings& settings = piece.settings;
    return {{"rule", rule_word(settings.rule)},
            {"limit", limit_word(settings.limit)},
            {"common", choice_json(settings.common)},
            {"solved", choice_json(settings.solved)},
            {"shallower", choice_json(settings.shallower)},
            {"deeper", choice_json(settings.deeper)},
            {"closer", choice_json(settings.closer)}};
}

Json coupon_json(const plan::Piece& piece) {
    if (!piece.coupon) return nullptr;
    return {{"by", piece.coupon->by},
            {"strain", piece.coupon->strain},
            {"error", piece.coupon->error},
            {"times_table", piece.coupon->times_table},
            {"counts", piece.coupon->counts}};
}

/// Of the line that keeps its length, wherever on the bend.
measure::Length least_radius(const plan::Piece& piece) {
    measure::Length least = piece.radii.line;
    for (const plan::Kerf& kerf : piece.blank().kerfs)
        if (kerf.radius > measure::Length()) least = std::min(least, kerf.radius);
    return least;
}

/// Of breaking; the strains at which 1 in 100, 20, 4, 2 boards would, at the worst kerf.
Json chance_json(const plan::Piece& piece) {
    const plan::Chance& chance = piece.chance;
    Json strains = Json::array();
    for (const double times : chance.times) strains.push_back(piece.bend.strain * times);
    return {{"breaks", chance.breaks},   {"one_in", bend::one_in(chance.breaks)},
            {"trials", chance.trials},   {"coupons", chance.coupons},
            {"lowest", chance.lowest},   {"mean", chance.mean},
            {"load_error", chance.load}, {"strains_at_1_in_100_20_4_2", strains}};
}

Json deep_kerfs_json(const plan::Piece& piece) {
    constexpr std::array words{"keep", "ease", "fill", "scrap"};
    Json all = Json::array();
    for (const plan::DeepKerf& kerf : piece.deep_kerfs)
        all.push_back({{"n", kerf.n},
                       {"depth_mm", mm(kerf.depth)},
                       {"do", words.at(static_cast<std::size_t>(kerf.answer.mend))},
                       {"utilisation", kerf.answer.alone}});
    return all;
}

/// Of a board that is made of several blanks: each of them and where it meets the next, from zero on.
Json splices_json(const plan::Piece& piece) {
    Json blanks = Json::array();
    if (!piece.spliced()) return blanks;
    for (std::size_t i = 0; i < piece.blanks.size(); ++i) {
        const plan::Blank& blank = piece.blanks[i];
        Json kerfs = Json::array();
        for (const plan::Kerf& kerf : blank.kerfs) kerfs.push_back({{"n", kerf.n}, {"at_mm", mm(kerf.at)}});
        blanks.push_back({{"id", piece.blank_id(i)}, {"length_mm", mm(blank.length)}, {"kerfs", kerfs}});
        if (i == piece.joints.size()) break;
        const plan::Joint& joint = piece.joints[i];
        blanks.back()["joint"] = {{"at_mm", mm(joint.at)},
                                  {"scarf_mm", mm(joint.scarf)},
                                  {"angle_deg", six_decimals(joint.angle.degrees())},
                                  {"in_bend", joint.in_bend},
                                  {"kerfs_left_out", joint.gone},
                                  {"off_mm", mm(joint.off)}};
    }
    return blanks;
}

/// From zero: where the board bends which way.
Json bends_json(const plan::Piece& piece) {
    Json all = Json::array();
    for (const plan::BendRun& run : piece.blank().runs)
        all.push_back({{"from_mm", mm(run.from)}, {"to_mm", mm(run.to)}, {"kerfs_on", side_word(run.on)}});
    return all;
}

/// What cannot be made as the job asks for it, and why.
Json refused_json(const plan::Plan& plan) {
    Json all = Json::array();
    for (const plan::Refused& refused : plan.refused) {
        Json reasons = Json::array();
        for (const job::Diagnostic& reason : refused.reasons)
            reasons.push_back({{"line", reason.at.line}, {"message", reason.message}, {"would_do", reason.hint}});
        all.push_back({{"id", refused.id},
                       {"kind", refused.kind == plan::Kind::arch_liner ? "arch liner" : "wall board"},
                       {"do_not_cut", true},
                       {"reasons", reasons}});
    }
    return all;
}

/// Null for a flat board.
Json moulded_json(const plan::Piece& piece) {
    if (!piece.cut.moulded()) return {};
    Json profile = Json::array();
    for (const bend::ProfilePoint& point : piece.cut.profile)
        profile.push_back({mm(point.height), mm(point.thickness)});
    return {{"profile_mm", piece.cut.profile_told ? profile : Json()},  // null: only its least thickness is told
            {"thinnest_mm", mm(piece.cut.thinnest())},
            {"utilisation_thickest", piece.moulded_use[0]},
            {"utilisation_thinnest", piece.moulded_use[1]}};
}

/// Null of a level board.
Json climb_json(const plan::Piece& piece) {
    if (!piece.rake) return {};
    const plan::Rake& rake = *piece.rake;
    return {{"to_the", rake.to_the_right ? "right" : "left"},
            {"kerf_angle_deg", six_decimals(rake.kerf().degrees())},
            {"climb_mm", mm(rake.climb)},
            {"plan_length_mm", mm(rake.plan_length)},
            {"along_mm", mm(rake.along())},
            {"tip_to_tip_mm", mm(piece.blank().tip_to_tip())},
            {"gap_on_edge_mm", mm(rake.along_edge(piece.gaps.most))},
            {"cut_mm", mm(rake.cut())},
            {"plumb_height_mm", mm(rake.cut())},
            {"level_mm", mm(rake.level())},
            {"lean_mm", mm(piece.blank().lean)},
            {"end_leans_mm", {mm(piece.blank().ends[0].lean), mm(piece.blank().ends[1].lean)}},
            {"end_cuts_mm", {mm(piece.blank().cut_at(0)), mm(piece.blank().cut_at(1))}},
            {"handle", rake.to_the_right ? "right" : "left"}};
}

Json edge_json(const plan::Piece& piece, measure::Length across) {
    const FlatEdge edge = flat_edge(piece, across);
    return {{"along_mm", mm(edge.along)},
            {"bend_mm", mm(edge.bend)},
            {"gap_mm", mm(edge.gap)},
            {"radius_mm", edge.radius ? Json(mm(*edge.radius)) : Json()}};  // null: no arc
}

Json legs_json(const plan::Piece& piece) {
    Json legs = Json::array();
    for (const plan::LegBoard& leg : piece.leg_boards)
        legs.push_back({{"side", leg.side == job::End::left ? "left" : "right"},
                        {"narrow_mm", mm(leg.face)},
                        {"wide_mm", mm(leg.face + leg.climb)}});
    return legs;
}

/// Null where a round edge is not held on two blocks.
Json blocks_json(const std::optional<plan::Blocks>& blocks) {
    if (!blocks) return {};
    return {{"size_mm", mm(blocks->size)}, {"from_blade_mm", mm(blocks->half)}, {"bow_mm", mm(blocks->bow)}};
}

/// Of the flat blank of a splayed jamb; null of one square to its wall.
Json splay_json(const plan::Piece& piece) {
    if (!piece.splay) return {};
    const plan::Splay& splay = *piece.splay;
    return {{"angle_deg", six_decimals(splay.alpha.degrees())},
            {"side_mm", mm(splay.side())},
            {"measured", splay.narrow_measured ? "narrow" : "wide"},
            {"toward", splay.wide_at_room ? "room" : "away"},
            {"slant_mm", mm(splay.slant())},
            {"sawn_width_mm", mm(splay.sawn_width())},
            {"narrow", edge_json(piece, {})},  // of the surface that keeps its length
            {"wide", edge_json(piece, splay.slant())},
            {"narrow_sawn", edge_json(piece, splay.narrow_edge())},
            {"wide_sawn", edge_json(piece, splay.wide_edge())},
            {"flat_turn_deg", six_decimals((piece.turn * splay.tangent()).degrees())},  // of the bend, as `turn_deg`
            {"bend_radius_mm", mm(piece.radii.line)},  // at the narrow edge, where it is tightest
            {"box_mm", {mm(plan::Piece::stock_length(piece.blank())), mm(piece.stock_width(piece.blank()))}},
            {"blocks", blocks_json(piece.saw.blocks)},
            {"legs", legs_json(piece)}};
}

Json piece_json(const plan::Piece& piece, const plan::Plan& plan, const sheets::Kit& kit) {
    const bool inside = piece.kerfs_on == bend::KerfsOn::inside;
    const bend::Assessment& bend = piece.bend;
    return {
        {"id", piece.id},
        {"kind", piece.kind == plan::Kind::arch_liner ? "arch liner" : "wall board"},
        {"side", piece.side == job::Side::concave ? "concave" : "convex"},
        {"kerfs_on", side_word(piece.kerfs_on)},
        {"reverses_mm", lengths_json(piece.blank().reverses())},
        {"bends", bends_json(piece)},
        {"turn_deg", six_decimals(piece.turn.degrees())},
        {"radius_min_mm", mm(least_radius(piece))},
        {"thickness_mm", mm(piece.cut.thickness)},
        {"kerf_depth_mm", mm(piece.cut.depth)},
        {"kerf_mm", mm(piece.cut.kerf)},
        {"web_mm", mm(piece.cut.web())},
        {"web_thinnest_mm", mm(piece.cut.thinnest_web())},
        {"moulded", moulded_json(piece)},
        {"climb", climb_json(piece)},
        {"splay", splay_json(piece)},
        {"spacing_mm", mm(piece.gaps.most)},
        {"spacing_min_mm", mm(piece.gaps.least)},
        {"mitres_deg",
         {six_decimals(piece.blank().ends[0].mitre.degrees()), six_decimals(piece.blank().ends[1].mitre.degrees())}},
        {"blank_length_mm", mm(piece.blank().length)},
        {"bend_length_mm", mm(piece.blank().bend_length())},
        {"finish_length_mm", mm(piece.blank().finish_length)},
        {"splices", splices_json(piece)},
        {"count", piece.blank().kerfs.size()},
        {"kerfs", kerfs_json(piece)},
        {"verdict", verdict_words(bend.verdict)},
        {"strain", bend.strain},
        {"strain_limit", bend.strain_limit},
        {"utilisation", bend.utilisation},
        {"closes", bend.closes},
        {"close_radius_mm", inside ? Json(mm(bend.close_radius)) : Json()},  // null: opening kerfs never close
        {"facet_mm", mm(bend.facet)},
        // null: what boards that are whole come to says nothing of this one
        {"chance", piece.worst_deep() == nullptr ? chance_json(piece) : Json()},
        {"plies_mm", lengths_json(piece.cut.plies)},
        {"moisture_move_mm", mm(piece.moisture_move)},
        {"solid_utilisation", piece.solid_utilisation},
        {"settings", settings_json(piece)},
        {"coupon", coupon_json(piece)},
        {"weak_links", piece.weak_links},
        {"too_deep", deep_kerfs_json(piece)},
        {"survey", survey_json(piece)},
        {"form", form_json(piece)},
        {"cautions", cautions_json(piece, plan, kit)}};
}

}  // namespace

std::string report_json(const plan::Plan& plan, const page::Document& packet, const sheets::Kit& kit) {
    Json pieces = Json::array();
    for (const plan::Piece& piece : plan.pieces) pieces.push_back(piece_json(piece, plan, kit));
    Json sheets = Json::array();
    for (const SheetCount& sheet : sheet_counts(packet))
        sheets.push_back({{"name", sheet.name}, {"pages", sheet.pages}});
    const Json all = {{"schema", 1},
                      {"job",
                       {{"number", plan.header.number},
                        {"title", plan.header.title},
                        {"revision", plan.header.revision},
                        {"fingerprint", plan.fingerprint}}},
                      {"pieces", pieces},
                      {"refused", refused_json(plan)},
                      {"stock", plan.stock_plan ? stock_values(*plan.stock_plan) : Json()},
                      {"casing", nest_values(plan::nest_plan({&plan}, plan::Nested::segments))},
                      {"ribs", nest_values(plan::nest_plan({&plan}, plan::Nested::ribs))},
                      {"sheets", sheets},
                      {"pages", packet.pages.size()}};
    return all.dump(2) + "\n";
}

}  // namespace kerfpacket::cli
