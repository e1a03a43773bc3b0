#include "sheets/words/wording.h"

#include <algorithm>

#include "job/choices.h"
#include "measure/fraction.h"
#include "measure/require.h"

namespace kerfpacket::sheets {
namespace {

using namespace measure::literals;

std::string value_text(const std::variant<plan::Length, double, int, std::string>& value, const Tape& tape) {
    if (const auto* length = std::get_if<plan::Length>(&value))
        return measure::abs(*length) < Length::inches(1) ? tape.exact(*length) : tape.with_unit(*length);
    if (const auto* number = std::get_if<double>(&value)) return tape.number(*number, 2);
    if (const auto* count = std::get_if<int>(&value)) return std::to_string(*count);
    return std::get<std::string>(value);
}

/// By the radius of its sides against its span, as near as a tape tells them apart.
std::string pointed_key(const plan::Piece& piece) {
    const auto& arch = std::get<plan::ArchLines>(piece.lines);
    if (arch.arcs.empty() || !arch.springs_level()) return "piece.shape_pointed";
    const Length more = arch.arcs.front().radius - piece.measured_span;
    if (measure::abs(more) < Length::inches(1.0 / 32)) return "piece.shape_pointed_equilateral";
    return more > 0_mm ? "piece.shape_pointed_lancet" : "piece.shape_pointed_drop";
}

/// "OPEN, then CLOSE": what the kerfs do from zero on.
std::string by_turns(const plan::Piece& piece, const Kit& kit) {
    const auto word = [&](const plan::BendRun& run) { return kit.words(opens(run) ? "piece.open" : "piece.close"); };
    std::string sides = word(piece.blank().runs.front());
    if (piece.blank().runs.size() > 3) return kit.words("piece.kerfs_reverse_often", {{"first", sides}});
    for (std::size_t i = 1; i < piece.blank().runs.size(); ++i)
        sides += kit.words("piece.then") + word(piece.blank().runs[i]);
    return kit.words("piece.kerfs_reverse", {{"sides", sides}});
}

/// A figure of a range: to a sixteenth or a millimetre, finer where both ends would read alike.
std::pair<std::string, std::string> range_texts(Length least, Length most, const Tape& tape) {
    if (tape.plain(least) != tape.plain(most)) return {tape.plain(least), tape.plain(most)};
    const bool inch = tape.unit() == Unit::inch;
    const auto fine = [&](Length value) { return tape.number(inch ? value.inches() : value.mm(), inch ? 3 : 2); };
    return {fine(least), fine(most)};
}

/// A spacing that the job gives as it is; one that is worked out to a thousandth of an inch, a hundredth of a
/// millimetre.
std::string even_text(Length spacing, bool given, const Tape& tape) {
    if (given) return tape.exact_plain(spacing);
    const bool inch = tape.unit() == Unit::inch;
    return tape.number(inch ? spacing.inches() : spacing.mm(), inch ? 3 : 2);
}

}  // namespace

std::string piece_name(const plan::Piece& piece, const Kit& kit) {
    return kit.words(piece.kind == plan::Kind::arch_liner ? "piece.arch_liner"
                     : piece.rake                         ? "piece.stair_board"
                                                          : "piece.wall_board");
}

std::string shape_name(const plan::Piece& piece, const Kit& kit) {
    return piece.kind == plan::Kind::arch_liner
               ? kit.words(piece.shape == job::Shape::pointed ? pointed_key(piece)
                                                              : job::shape_key(job::word(piece.shape)))
               : std::string();
}

std::string measured_id(const plan::Piece& piece) {
    return piece.boards > 1 ? piece.id.substr(0, piece.id.rfind('/')) : piece.id;
}

bool opens(const plan::BendRun& run) { return run.on == bend::KerfsOn::outside; }

std::string kerf_side(const plan::Piece& piece, const Kit& kit) {
    if (piece.blank().runs.empty()) return kit.words("piece.no_bend");
    if (piece.blank().bends_both_ways()) return by_turns(piece, kit);
    return kit.words(opens(piece.blank().runs.front()) ? "piece.kerfs_outside" : "piece.kerfs_inside");
}

std::string tick_meaning(const plan::Piece& piece, const Kit& kit) {
    switch (piece.tick) {
        case job::Tick::centre: return kit.words("piece.tick_centre");
        case job::Tick::left: return kit.words("piece.tick_left");
        case job::Tick::right: return kit.words("piece.tick_right");
    }
    throw measure::Bug("a tick without a meaning");
}

std::string with_moulded_edge(const std::string& key, const plan::Piece& piece) {
    switch (plan::moulded_edge(piece.cut)) {
        case plan::MouldedEdge::top: return key + "_moulded";
        case plan::MouldedEdge::bottom: return key + "_plain";
        case plan::MouldedEdge::both: return key + "_both";
        case plan::MouldedEdge::untold:
        case plan::MouldedEdge::none: break;
    }
    return key;
}

bool zero_at_left(const plan::Piece& piece) {
    if (piece.splay) return plan::FlatBlank(*piece.splay, piece.blank()).zero_at_left();
    return piece.blank().zero == job::End::left;
}

std::string front_edge(const std::string& key, const plan::Piece& piece) {
    if (piece.splay) return key + "_splay";
    return piece.kind == plan::Kind::arch_liner ? key + "_room" : with_moulded_edge(key + "_top", piece);
}

std::string zero_end(const plan::Piece& piece, const Kit& kit) {
    const std::string text = kit.words(zero_at_left(piece) ? "piece.zero_left" : "piece.zero_right",
                                       {{"edge", kit.words(front_edge("piece.front", piece))}});
    if (!piece.splay) return text;
    // The wide edge lies at the fence whichever side of the wall it is on: the saw's left need not be the room's.
    const bool left = piece.blank().zero == job::End::left;
    return text + kit.words(left ? "piece.zero_spring_left" : "piece.zero_spring_right");
}

std::string verdict_word(bend::Verdict verdict, const Kit& kit) {
    switch (verdict) {
        case bend::Verdict::ok: return kit.words("piece.verdict_ok");
        case bend::Verdict::caution: return kit.words("piece.verdict_caution");
        case bend::Verdict::break_likely: return kit.words("piece.verdict_break");
    }
    throw measure::Bug("a verdict without a word");
}

std::string caution_text(const plan::Caution& caution, const Kit& kit, const Tape& tape) {
    fonts::Words::Values values;
    for (const auto& [name, value] : caution.values) values.emplace_back(name, value_text(value, tape));
    return kit.words("cautions." + caution.key, values);
}

std::string board_text(const plan::Piece& piece, const Kit& kit, const Tape& tape) {
    return kit.words(piece.cut.moulded() ? "piece.board_moulded" : "piece.board",
                     {{"thickness", tape.exact_plain(piece.cut.thickness)},
                      {"width", tape.exact(piece.width)},
                      {"material", piece.own_material ? piece.material : kit.words("materials." + piece.material)}});
}

std::string web_text(const plan::Piece& piece, const Kit& kit, const Tape& tape) {
    if (!piece.cut.moulded()) return tape.exact(piece.cut.web());
    return kit.words("piece.range",
                     {{"least", tape.exact_plain(piece.cut.thinnest_web())}, {"most", tape.exact(piece.cut.web())}});
}

bool varied_spacing(const plan::Piece& piece) { return piece.gaps.most - piece.gaps.least > 1e-6_mm; }

std::string spacing_plain(const plan::Piece& piece, const Kit& kit, const Tape& tape) {
    const plan::Gaps& gaps = piece.gaps;
    if (!varied_spacing(piece)) return even_text(gaps.most, piece.cut.spacing_given, tape);
    const auto [least, most] = range_texts(gaps.least, gaps.most, tape);
    return kit.words("piece.range", {{"least", least}, {"most", most}});
}

std::string spacing_text(const plan::Piece& piece, const Kit& kit, const Tape& tape) {
    return spacing_plain(piece, kit, tape) + " " + tape.unit_name();
}

const plan::Kerf& governing_kerf(const plan::Piece& piece) {
    measure::require(!piece.blank().kerfs.empty(), "a piece that is bent has kerfs");
    return *std::max_element(piece.blank().kerfs.begin(), piece.blank().kerfs.end(),
                             [](const plan::Kerf& a, const plan::Kerf& b) { return a.utilisation < b.utilisation; });
}

std::string media_text(const job::Media& media, const Kit& kit) {
    const Tape tape(media.unit, kit.words);
    const std::string size = with_decimal(media.figures, kit.words("numbers.decimal")) + " " + tape.unit_name();
    if (media.roll) return kit.words("media.roll", {{"width", size}});
    const bool named = !media.name.starts_with("custom_");
    const std::string name = kit.words(named ? "media." + media.name.substr(0, media.name.rfind('_')) : "media.custom");
    return kit.words("media.sheet", {{"name", name}, {"size", size}});
}

std::string degrees_text(measure::Angle angle, const Kit& kit) {
    return number(std::abs(angle.degrees()), 1, kit.words);
}

std::string end_cut_text(job::EndCut cut, const Kit& kit) {
    switch (cut) {
        case job::EndCut::plumb: return kit.words("climb.plumb");
        case job::EndCut::level: return kit.words("climb.level");
        case job::EndCut::square: return kit.words("climb.square");
    }
    throw measure::Bug("an end that is cut in no way");
}

std::vector<std::string> mitre_texts(const plan::Piece& piece, const Kit& kit) {
    std::vector<std::string> texts;
    for (std::size_t i = 0; i < piece.blank().ends.size(); ++i) {
        const plan::BoardEnd& end = piece.blank().ends.at(i);
        if (end.mitre.radians() == 0) continue;
        const bool left = (piece.blank().zero == job::End::left) == (i == 0);
        const std::string angle = degrees_text(end.mitre, kit);
        if (end.meets == plan::BoardEnd::Meets::blank) {
            const std::string other = measured_id(piece) + "/" + std::to_string(piece.board + (i == 0 ? -1 : 1));
            texts.push_back(kit.words("piece.scarf_blank", {{"angle", angle}, {"other", other}}));
            continue;
        }
        if (end.meets == plan::BoardEnd::Meets::board) {
            const std::string other = measured_id(piece) + "/" + std::to_string(piece.board + (left ? -1 : 1));
            texts.push_back(kit.words("piece.mitre_board", {{"angle", angle}, {"other", other}}));
        } else {
            texts.push_back(kit.words(left ? "piece.mitre_left_leg" : "piece.mitre_right_leg", {{"angle", angle}}));
        }
    }
    return texts;
}

std::string joint_text(const plan::Piece& piece, std::size_t joint, const Kit& kit, const Tape& tape) {
    const plan::Joint& one = piece.joints.at(joint);
    if (piece.splay)
        return kit.words(
            "piece.joint_splayed",
            {{"first", piece.blank_id(joint)}, {"next", piece.blank_id(joint + 1)}, {"at", tape.with_unit(one.at)}});
    return kit.words("piece.joint",
                     {{"under", piece.blank_id(joint)},
                      {"over", piece.blank_id(joint + 1)},
                      {"angle", degrees_text(one.angle, kit)},
                      {"scarf", piece.rake ? tape.with_unit(one.scarf) : tape.exact(one.scarf)},
                      {"at", tape.with_unit(one.at)},
                      {"where", kit.words(one.in_bend ? "piece.joint_in_bend" : "piece.joint_straight")}});
}

bool climbs(const plan::LegBoard& board, const Tape& tape) { return tape.rounded(board.climb) != Length(); }

std::string leg_board_text(const plan::Piece& piece, const plan::LegBoard& board, const Kit& kit, const Tape& tape) {
    if (piece.splay && !climbs(board, tape))
        return kit.words(board.side == job::End::left ? "piece.left_leg_even" : "piece.right_leg_even",
                         {{"length", tape.with_unit(board.face)},
                          {"width", tape.exact(piece.width)},
                          {"angle", degrees_text(piece.splay->alpha, kit)}});
    if (piece.splay)
        return kit.words(board.side == job::End::left ? "piece.left_leg_splayed" : "piece.right_leg_splayed",
                         {{"narrow", tape.with_unit(board.face)},
                          {"wide", tape.with_unit(board.face + board.climb)},
                          {"width", tape.exact(piece.width)},
                          {"angle", degrees_text(piece.splay->alpha, kit)}});
    return kit.words(board.side == job::End::left ? "piece.left_leg_board" : "piece.right_leg_board",
                     {{"back", tape.with_unit(board.back)},
                      {"face", tape.with_unit(board.face)},
                      {"angle", degrees_text(board.mitre, kit)}});
}

}  // namespace kerfpacket::sheets
