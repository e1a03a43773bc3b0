#include "sheets/wording.h"

#include "measure/fraction.h"
#include "measure/require.h"

namespace kerfpacket::sheets {
namespace {

std::string value_text(const std::variant<plan::Length, double, int, std::string>& value, const Tape& tape) {
    if (const auto* length = std::get_if<plan::Length>(&value))
        return measure::abs(*length) < Length::inches(1) ? tape.exact(*length) : tape.with_unit(*length);
    if (const auto* number = std::get_if<double>(&value)) return measure::fixed(*number, 2);
    if (const auto* count = std::get_if<int>(&value)) return std::to_string(*count);
    return std::get<std::string>(value);
}

}  // namespace

std::string piece_name(const plan::Piece& piece, const Kit& kit) {
    return kit.words(piece.kind == plan::Kind::arch_liner ? "piece.arch_liner" : "piece.wall_board");
}

std::string kerf_side(const plan::Piece& piece, const Kit& kit) {
    return kit.words(piece.kerfs_on == bend::KerfsOn::outside ? "piece.kerfs_outside" : "piece.kerfs_inside");
}

std::string tick_meaning(const plan::Piece& piece, const Kit& kit) {
    switch (piece.tick) {
        case job::Tick::centre: return kit.words("piece.tick_centre");
        case job::Tick::left: return kit.words("piece.tick_left");
        case job::Tick::right: return kit.words("piece.tick_right");
    }
    throw measure::Bug("a tick without a meaning");
}

std::string zero_end(const plan::Piece& piece, const Kit& kit) {
    const std::string edge = kit.words(piece.kind == plan::Kind::arch_liner ? "piece.front_room" : "piece.front_top");
    return kit.words(piece.zero == job::End::left ? "piece.zero_left" : "piece.zero_right", {{"edge", edge}});
}

std::string verdict_word(bend::Verdict verdict, const Kit& kit) {
    switch (verdict) {
        case bend::Verdict::ok: return kit.words("piece.verdict_ok");
        case bend::Verdict::caution: return kit.words("piece.verdict_caution");
        case bend::Verdict::break_likely: return kit.words("piece.verdict_break");
    }
    throw measure::Bug("a verdict without a word");
}

std::string caution_text(const plan::Caution& caution, const Kit& kit, measure::Unit unit) {
    const Tape tape(unit);
    fonts::Words::Values values;
    for (const auto& [name, value] : caution.values) values.emplace_back(name, value_text(value, tape));
    return kit.words("cautions." + caution.key, values);
}

std::string board_text(const plan::Piece& piece, const Kit& kit, const Tape& tape) {
    return kit.words("piece.board", {{"thickness", tape.exact_plain(piece.thickness)},
                                     {"width", tape.exact(piece.width)},
                                     {"material", kit.words("materials." + piece.material)}});
}

}  // namespace kerfpacket::sheets
