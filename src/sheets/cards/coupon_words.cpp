#include "sheets/cards/coupon_words.h"

#include <array>

#include <fmt/ranges.h>

#include "job/choices.h"
#include "measure/require.h"
#include "sheets/evidence/strain_words.h"
#include "sheets/words/wording.h"

namespace kerfpacket::sheets {
namespace {

/// The table's name, and that of the board it belongs to, as the job file writes them.
std::string board_table(const plan::Piece& piece) {
    return piece.kind == plan::Kind::arch_liner ? "opening.liner" : "wall.board";
}

std::string percent(double part, const Kit& kit) { return number(part * 100, 0, kit.words); }

}  // namespace

std::vector<std::string_view> ways_to_hold() {
    std::vector<std::string_view> ways = job::words_of(job::held_words());
    std::erase(ways, job::word(job::Held::one_kerf));  // has a test of its own
    return ways;
}
std::vector<std::string_view> ends_of_bending() { return job::words_of(job::outcome_words()); }

std::string held_word(bend::Held held, const Kit& kit) {
    switch (held) {
        case bend::Held::disc: return kit.words("coupon.box_disc");
        case bend::Held::ends: return kit.words("coupon.box_ends");
        case bend::Held::centre: return kit.words("coupon.box_centre");
        case bend::Held::one_kerf: return kit.words("coupon.box_one_kerf");
    }
    throw measure::Bug("a way to hold a coupon without a word");
}

std::vector<std::string> to_tick(const std::vector<std::string_view>& words, const Kit& kit) {
    std::vector<std::string> told;
    told.reserve(words.size());
    for (const std::string_view word : words) told.push_back(kit.words("coupon.box_" + std::string(word)));
    return told;
}

std::vector<std::string> coupon_steps(const plan::Piece& piece, const CouponSize& size, bool strips_elsewhere,
                                      const Kit& kit, const Tape& tape) {
    std::string make = kit.words("coupon.make_length",
                                 {{"length", tape.exact(size.length)},
                                  {"kerfs", std::to_string(size.kerfs)},
                                  {"depth", tape.exact(piece.cut.depth)},
                                  {"spacing", tape.exact(size.spacing)},
                                  {"kerf", tape.exact(piece.cut.kerf)},
                                  {"where", kit.words(strips_elsewhere ? "coupon.marks_ahead" : "coupon.marks_end")}});
    if (size.for_radius)
        make += " " + kit.words(piece.circular ? "coupon.make_radius" : "coupon.make_radius_spot",
                                {{"rise", tape.exact(size.rise)}, {"radius", tape.with_unit(piece.radii.finish)}});
    std::string bend =
        kit.words(size.side == bend::KerfsOn::outside ? "coupon.make_bend_outside" : "coupon.make_bend_inside");
    if (piece.blank().bends_both_ways()) bend += " " + kit.words("coupon.make_both_ways");
    return {make, bend, kit.words("coupon.make_hold"),
            kit.words("coupon.make_rise", {{"rise", tape.exact(size.rise)}})};
}

std::string coupon_reading_error(const Kit& kit, const Tape& tape) {
    const bool inch = tape.unit() == Unit::inch;
    const Length chord = inch ? Length::inches(12) : Length::mm(300);
    const std::array<Length, 3> rises = inch ? std::array{Length::inches(0.5), Length::inches(1), Length::inches(2)}
                                             : std::array{Length::mm(12), Length::mm(25), Length::mm(50)};
    std::string percents;
    for (const Length rise : rises) {
        const double error = bend::coupon_error({chord, rise}, bend::coupon_reading, bend::coupon_reading);
        percents += (percents.empty() ? "" : kit.words("coupon.reading_and")) +
                    kit.words("coupon.reading_part", {{"percent", percent(error, kit)}, {"rise", tape.exact(rise)}});
    }
    const std::string reading =
        inch ? tape.exact(bend::coupon_reading) : tape.number(bend::coupon_reading.mm(), 1) + " " + tape.unit_name();
    return kit.words("coupon.reading_error",
                     {{"chord", tape.exact(chord)}, {"error", reading}, {"percents", percents}});
}

std::vector<std::string> coupon_lines(const plan::Piece& piece, const CouponSize& size, const Tape& tape) {
    const Tape file(tape.unit());
    const std::string blank = "________";
    // Where a coupon stands already, the next one takes double brackets, as that one then must.
    return {piece.coupon ? "[[" + board_table(piece) + ".coupon]]" : "[" + board_table(piece) + ".coupon]",
            "chord = \"" + blank + " " + file.unit_name() + "\"",
            "rise = \"" + blank + " " + file.unit_name() + "\"",
            "held = \"" + blank + "\"   # " + fmt::format("{}", fmt::join(ways_to_hold(), ", ")),
            "result = \"" + blank + "\"   # " + fmt::format("{}", fmt::join(ends_of_bending(), ", ")),
            "by = \"" + blank + blank + "\"",
            "kerf_depth = \"" + file.exact(piece.cut.depth) + "\"",
            "spacing = \"" + file.exact(size.spacing) + "\""};
}

std::vector<std::string> trial_lines(const plan::Piece& piece, const CouponSize& size, const Tape& tape) {
    const Tape file(tape.unit());
    const auto line = [&](const char* key, Length length) {
        return std::string(key) + " = \"" + file.exact(length) + "\"";
    };
    return {"material = \"" + piece.material + "\"",
            line("thickness", piece.cut.thickness),
            line("kerf_depth", piece.cut.depth),
            line("spacing", size.spacing),
            line("kerf", piece.cut.kerf),
            std::string("kerfs = ") + (size.side == bend::KerfsOn::outside ? "\"outside\"" : "\"inside\"")};
}

std::vector<std::string> coupon_place(const plan::Piece& piece, const Kit& kit) {
    return {kit.words("coupon.goes_1"),
            kit.words("coupon.goes_2", {{"table", "[" + board_table(piece) + "]"}, {"piece", measured_id(piece)}})};
}

std::vector<std::string> one_kerf_steps(const plan::Piece& piece, const CouponSize& size, const Kit& kit,
                                        const Tape& tape) {
    const OneKerf test = one_kerf_test(piece, size, tape.unit());
    const std::string kerf = std::to_string(test.kerf);
    const std::string raised = std::to_string(test.raised);
    const Length away = test.away;
    std::vector<std::string> steps{
        kit.words("coupon.one_kerf_make", {{"n", kerf},
                                           {"raised", raised},
                                           {"depth", tape.exact(piece.cut.depth)},
                                           {"kerf", tape.exact(piece.cut.kerf)}}),
        kit.words("coupon.one_kerf_raise", {{"raised", raised}, {"away", tape.exact(away)}}),
        kit.words("coupon.one_kerf_lines", {{"table", board_table(piece) + ".coupon"},
                                            {"away", Tape(tape.unit()).exact(away)},
                                            {"depth", Tape(tape.unit()).exact(piece.cut.depth)},
                                            {"spacing", Tape(tape.unit()).exact(size.spacing)}})};
    for (const plan::CouponResult& tried : piece.tried)
        if (tried.coupon.held == bend::Held::one_kerf && tried.hinge)
            steps.push_back(kit.words("coupon.one_kerf_record", {{"rise", tape.exact(tried.coupon.rise)},
                                                                 {"away", tape.exact(tried.coupon.chord)},
                                                                 {"hinge", tape.exact(*tried.hinge)},
                                                                 {"radius", tape.with_unit(piece.bend.close_radius)}}));
    return steps;
}

std::vector<std::string> coupon_on_record(const plan::CouponResult& coupon, const Kit& kit, const Tape& tape) {
    std::vector<std::string> lines{
        kit.words("coupon.record_by", {{"by", coupon.by.empty() ? kit.words("coupon.record_unnamed") : coupon.by},
                                       {"chord", tape.exact(coupon.coupon.chord)},
                                       {"rise", tape.exact(coupon.coupon.rise)},
                                       {"held", held_word(coupon.coupon.held, kit)},
                                       {"result", kit.words("coupon.box_" + std::string(job::word(coupon.outcome)))},
                                       {"depth", tape.exact(coupon.depth)},
                                       {"spacing", tape.exact(coupon.spacing)}}),
        kit.words("coupon.record_strain",
                  {{"strain", strain_percent(coupon.strain, kit)}, {"error", percent(coupon.error, kit)}})};
    lines.back() += " " + kit.words(coupon.counts ? "coupon.record_counts" : "coupon.record_not",
                                    {{"limit", strain_percent(coupon.table_limit, kit)}});
    if (coupon.hinge) lines.push_back(kit.words("coupon.record_hinge", {{"hinge", tape.exact(*coupon.hinge)}}));
    return lines;
}

}  // namespace kerfpacket::sheets
