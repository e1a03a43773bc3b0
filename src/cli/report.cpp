#include "cli/report.h"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>

#include "cli/splay_figures.h"
#include "cli/trouble.h"
#include "job/read_profile.h"
#include "measure/require.h"
#include "sheets/cards/refused.h"
#include "sheets/cards/setup_errors.h"
#include "sheets/evidence/survey_answers.h"
#include "sheets/stock/sheet_words.h"
#include "sheets/stock/stock_words.h"
#include "sheets/templates/template_lines.h"
#include "sheets/words/chance_words.h"
#include "sheets/words/settings_words.h"
#include "sheets/words/tape.h"
#include "sheets/words/wording.h"

namespace kerfpacket::cli {
namespace {

/// As the sheets say it, in lower case.
const char* spoken_verdict(bend::Verdict verdict) {
    switch (verdict) {
        case bend::Verdict::ok: return "ok";
        case bend::Verdict::caution: return "near the limit";
        case bend::Verdict::break_likely: return "will likely break";
    }
    throw measure::Bug("a verdict without words");
}

std::string line(const char* what, const std::string& value) { return fmt::format("   {:<12} {}\n", what, value); }

/// In the other system, for a second look.
std::string other(measure::Length length, const sheets::Tape& tape) {
    return tape.other(length) + (tape.unit() == measure::Unit::inch ? " mm" : " in");
}

std::string kerf_lines(const plan::Piece& piece, const sheets::Tape& tape, const sheets::Kit& kit) {
    std::string lines =
        line("kerfs",
             fmt::format("{}; {}", counted(piece.blank().kerfs.size(), "cut"), sheets::kerf_side(piece, kit))) +
        line("depth",
             fmt::format("{}, leaves a web of {}", tape.exact(piece.cut.depth), sheets::web_text(piece, kit, tape))) +
        line("spacing", sheets::spacing_text(piece, kit, tape));
    for (const std::string& sentence : sheets::settings_sentences(piece, kit, tape))
        lines += line("settings", sentence);
    return lines;
}

/// On the seen face; the least and the greatest where the bend is no single arc.
std::string radius_text(const plan::Piece& piece, const sheets::Tape& tape) {
    const std::string least = tape.with_unit(piece.radii.tightest);
    if (piece.circular) return least + (piece.splay ? " on the seen face, at the narrow edge" : " on the seen face");
    if (piece.blank().bends_both_ways())
        return least + " on the seen face where it is tightest, to straight where it reverses";
    measure::Length most = piece.radii.line;
    for (const plan::Kerf& kerf : piece.blank().kerfs) most = std::max(most, kerf.radius);
    // The kerfs know the radius of the line that keeps its length; the seen face is less than a board away.
    return fmt::format("{} on the seen face where it is tightest, to about {}", least, tape.with_unit(most));
}

/// Of a board that climbs.
std::string climb_lines(const plan::Piece& piece, const sheets::Tape& tape) {
    if (!piece.rake) return "";
    const plan::Rake& rake = *piece.rake;
    return line("climb", fmt::format("{} over the wall, to the {}; kerfs stand {} degrees from square, handle {}",
                                     tape.with_unit(rake.climb), rake.to_the_right ? "right" : "left",
                                     measure::fixed(rake.kerf().degrees(), 2), rake.to_the_right ? "RIGHT" : "LEFT")) +
           line("along",
                fmt::format("{} from end to end, {} from tip to tip; kerf to kerf along an edge {}, a cut {} long",
                            tape.with_unit(rake.along()), tape.with_unit(piece.blank().tip_to_tip()),
                            tape.exact(rake.along_edge(piece.gaps.most)), tape.exact(rake.cut())));
}

std::string blank_text(const plan::Piece& piece, const sheets::Tape& tape) {
    const plan::Blank& blank = piece.blank();
    if (piece.splay) {
        const measure::Length length = plan::Piece::stock_length(blank), width = piece.stock_width(blank);
        return fmt::format("sawn from a board {} x {} ({} x {}), {} of trim at each end of the narrow edge",
                           tape.plain(length), tape.with_unit(width), tape.other(length), other(width, tape),
                           tape.exact(blank.trims[0]));
    }
    const std::string ends = piece.rake ? fmt::format("the ends cut {} and {} from it on the front edge",
                                                      tape.with_unit(blank.trims[0]), tape.with_unit(blank.trims[1]))
                                        : fmt::format("{} of trim at each end", tape.exact(blank.trims[0]));
    return fmt::format("{} long ({}), {}", tape.with_unit(blank.length), other(blank.length, tape), ends);
}

/// "0.35 of break strain", of the worst kerf too deep first where the verdict hangs on that.
std::string spoken_strain(const plan::Piece& piece) {
    const std::string of_bend = measure::fixed(piece.bend.utilisation, 2);
    const plan::DeepKerf* deep = piece.worst_deep();
    if (deep == nullptr) return of_bend + " of break strain";
    if (deep->through()) return fmt::format("kerf {} is cut through, {} of break strain elsewhere", deep->n, of_bend);
    return fmt::format("{} of break strain at kerf {}, too deep, {} elsewhere", measure::fixed(deep->answer.alone, 2),
                       deep->n, of_bend);
}

std::string bend_lines(const plan::Piece& piece, const sheets::Tape& tape, const sheets::Kit& kit) {
    const bend::Assessment& bend = piece.bend;
    std::string lines = climb_lines(piece, tape);
    for (const auto& [what, told] : splay_lines(piece, tape)) lines += line(what, told);
    lines +=
        line("blank", blank_text(piece, tape)) +
        line("bend", fmt::format("from {} to {}, turns {} degrees", tape.with_unit(piece.blank().bend_start),
                                 tape.with_unit(piece.blank().bend_end), measure::fixed(piece.turn.degrees(), 2))) +
        line("radius", radius_text(piece, tape));
    if (piece.kerfs_on == bend::KerfsOn::inside)
        lines += line("closing", fmt::format("kerfs close at a radius of {}", tape.with_unit(bend.close_radius)));
    return lines +
           line("verdict", fmt::format("{}: {}, {}", spoken_verdict(bend.verdict), spoken_strain(piece),
                                       sheets::coupon_state(piece, kit))) +
           line("chance", sheets::chance_sentence(piece, kit) + " " + sheets::counted_sentence(piece, kit));
}

/// "3-1/2 left of the middle", or what stands for none.
std::string off(measure::Length by, const sheets::Tape& tape, const std::string& less, const std::string& more,
                const std::string& none) {
    if (tape.rounded(by).mm() == 0) return none;
    return tape.plain(measure::abs(by)) + " " + (by.mm() < 0 ? less : more);
}

/// What was measured, and the arcs that a trammel strikes: once for all boards of an opening.
std::string shape_lines(const plan::Piece& piece, const sheets::Tape& tape, const sheets::Kit& kit) {
    const auto* arch = std::get_if<plan::ArchLines>(&piece.lines);
    if (arch == nullptr || piece.board > 1) return "";
    std::string lines =
        line("shape", fmt::format("{}, span {}, rise {}", sheets::shape_name(piece, kit),
                                  tape.with_unit(piece.measured_span), tape.with_unit(piece.measured_rise)));
    // As the template has it.
    const auto springs = sheets::measured_springs(*arch);
    const measure::Length level = std::min(springs[0].y, springs[1].y);
    const std::string from = arch->springs_level() ? "the springs" : "the lower spring";
    for (const plan::Trammel& arc : arch->arcs)
        lines +=
            line("trammel",
                 fmt::format("radius {}, center {}, {}", tape.with_unit(arc.radius),
                             off(arc.centre.x, tape, "left of the middle", "right of the middle", "under the middle"),
                             off(arc.centre.y - level, tape, "below " + from, "above " + from, "level with " + from)));
    return lines;
}

/// Mitres, boards down the legs, places where the bend changes sides.
std::string end_lines(const plan::Piece& piece, const sheets::Tape& tape, const sheets::Kit& kit) {
    std::string lines;
    for (const std::string& mitre : sheets::mitre_texts(piece, kit)) lines += line("miter", mitre);
    for (const plan::LegBoard& board : piece.leg_boards)
        lines += line("leg board", sheets::leg_board_text(piece, board, kit, tape));
    if (piece.spliced())
        for (std::size_t i = 0; i < piece.blanks.size(); ++i)
            lines +=
                line("cut as", fmt::format("{}, {} long, {}", piece.blank_id(i), tape.with_unit(piece.blanks[i].length),
                                           counted(piece.blanks[i].kerfs.size(), "cut")));
    for (std::size_t i = 0; i < piece.joints.size(); ++i)
        lines += line("joint", sheets::joint_text(piece, i, kit, tape));
    for (std::size_t i = 1; i < piece.blank().runs.size(); ++i)
        lines +=
            line("reverse", fmt::format("{} from zero: kerfs {} from there", tape.with_unit(piece.blank().runs[i].from),
                                        sheets::opens(piece.blank().runs[i]) ? "open" : "close"));
    return lines;
}

/// The three answers to measured ordinates.
std::string survey_lines(const plan::Piece& piece, const sheets::Tape& tape, const sheets::Kit& kit) {
    if (!piece.survey || piece.board > 1) return "";
    std::string lines;
    for (const sheets::Answer& answer : sheets::answers(*piece.survey)) {
        const std::size_t worst = answer.misses->worst_point();
        lines +=
            line("curve",
                 fmt::format("{}: {}; worst miss {} {} at station {}, rms {}", sheets::fit_name(answer.fit, kit),
                             sheets::answer_text(piece, answer.fit, kit, tape),
                             sheets::miss_text(answer.misses->at.at(worst), tape), tape.unit_name(),
                             tape.exact_plain(sheets::reading(piece, worst).station), sheets::rms_text(answer, tape)));
    }
    for (const job::Fit fit : sheets::unanswered(*piece.survey))
        lines += line("curve", fmt::format("{}: {}", sheets::fit_name(fit, kit), kit.words("survey.none")));
    lines += line("measured", sheets::recommendation(piece, kit, tape));
    lines += line("between", sheets::left_out_text(piece, kit, tape));
    const std::string suspect = sheets::suspect_text(piece, kit, tape);
    return suspect.empty() ? lines : lines + line("check", suspect);
}

/// What to do about kerfs that were cut too deep.
std::string deep_lines(const plan::Piece& piece, const sheets::Kit& kit, const sheets::Tape& tape) {
    std::string lines;
    for (const plan::DeepKerf& kerf : piece.deep_kerfs)
        lines += line("too deep", sheets::deep_kerf_text(kerf, kit, tape));
    return lines;
}

std::string piece_text(const plan::Piece& piece, const sheets::Tape& tape, const sheets::Kit& kit) {
    std::string text =
        fmt::format("{}  {}, {}{}\n", piece.id, sheets::piece_name(piece, kit), sheets::board_text(piece, kit, tape),
                    piece.quantity == 1 ? "" : fmt::format(", {} of them", piece.quantity));
    text += shape_lines(piece, tape, kit) + kerf_lines(piece, tape, kit) + bend_lines(piece, tape, kit) +
            end_lines(piece, tape, kit) + survey_lines(piece, tape, kit);
    text += deep_lines(piece, kit, tape);
    for (const plan::Caution& caution : piece.cautions)
        text += line("caution", sheets::caution_text(caution, kit, tape));
    return text + "\n";
}

std::string refused_text(const plan::Refused& refused, const sheets::Kit& kit) {
    std::string text = fmt::format("{}  {}: DO NOT CUT, it cannot be made as the job asks for it\n", refused.id,
                                   sheets::refused_name(refused, kit));
    for (const job::Diagnostic& reason : refused.reasons) {
        text += line("why", fmt::format("{} (line {})", reason.message, reason.at.line));
        if (!reason.hint.empty()) text += line("would do", reason.hint);
    }
    return text + "\n";
}

/// What to buy, where that is planned.
std::string stock_lines(const plan::Plan& plan, const sheets::Tape& tape, const sheets::Kit& kit) {
    if (!plan.stock_plan) return {};
    std::string lines;
    for (const plan::StockSection& section : plan.stock_plan->sections) {
        const std::string board = sheets::section_text(section, kit, tape);
        for (const plan::Bought& bought : section.to_buy)
            lines += line("buy", fmt::format("{} of {}, {}", bought.count, board,
                                             sheets::stock_length(bought.length, kit, tape)));
        for (const std::string& note : sheets::section_notes(*plan.stock_plan, section, kit, tape))
            lines += line("note", note);
    }
    for (const plan::SheetSection& section : plan.stock_plan->sheets) {
        for (const plan::BoughtSheets& bought : section.to_buy)
            lines += line("buy", fmt::format("{} of {} {}", bought.count, sheets::sheet_board(section, kit, tape),
                                             sheets::sheet_size(bought.width, bought.length, kit, tape)));
        for (const std::string& note : sheets::sheets_notes(section, kit, tape)) lines += line("note", note);
    }
    if (!lines.empty())
        for (const std::string& note : sheets::plan_notes(*plan.stock_plan, kit, tape)) lines += line("note", note);
    return lines.empty() ? lines : "Stock (\"kerfpacket stock\" tells the cuts)\n" + lines + "\n";
}

std::string pages_text(const page::Document& packet) {
    std::string text;
    for (const SheetCount& sheet : sheet_counts(packet))
        text += fmt::format("{}{} {}", text.empty() ? "" : ", ", sheet.name, sheet.pages);
    return fmt::format("{}: {}\n", counted(packet.pages.size(), "page"), text);
}

/// What the parts are printed on where that is not all the same sheet, and the measured printer; else nothing.
std::string paper_lines(const job::Printer& printer) {
    const auto differs = [&](const job::Media& media) { return media.name != printer.media.name; };
    std::string lines;
    if (differs(printer.strip_media()) || differs(printer.template_media()) || printer.adhesive)
        lines = line("paper", fmt::format("cards {}; strips {}{}; templates {}", printer.media.plain_name,
                                          printer.strip_media().plain_name, printer.adhesive ? ", self-adhesive" : "",
                                          printer.template_media().plain_name));
    for (const auto* profile : {&printer.profile, &printer.strip_profile, &printer.template_profile})
        if (*profile && (*profile)->measured)
            lines += line("printer", fmt::format("{}: prints {} across the feed, {} along it", (*profile)->name.value,
                                                 job::printer_error((*profile)->measured->across),
                                                 job::printer_error((*profile)->measured->along)));
    return lines.empty() ? lines : "Printed on\n" + lines + "\n";
}

/// "B: near the limit, 143 kerfs 1/2 in deep, blank longer than stock." What the verdict says already is not said
/// again.
std::string spoken(const plan::Piece& piece, const sheets::Tape& tape) {
    std::string why;
    for (const plan::Caution& caution : piece.cautions) {
        if (caution.key.starts_with("strain_") || caution.key.starts_with("chance_")) continue;
        why += ", " + caution.key;
    }
    std::replace(why.begin(), why.end(), '_', ' ');
    const bool only_cautions = piece.bend.verdict == bend::Verdict::ok && !piece.cautions.empty();
    const int one_in = bend::one_in(piece.chance.breaks);
    const std::string chance = one_in == 1     ? "more likely than not to break"
                               : one_in == 100 ? "fewer than 1 in 100 would break"
                                               : fmt::format("about 1 in {} would break", one_in);
    // Of a board that breaks at a kerf too deep, what follows says so, and what others would do does not matter.
    return fmt::format("{}: {}, {}{} {} deep{}. ", piece.id,
                       only_cautions ? "ok with cautions" : spoken_verdict(piece.bend.verdict),
                       piece.worst_deep() != nullptr ? "" : chance + ", ", counted(piece.blank().kerfs.size(), "kerf"),
                       tape.exact(piece.cut.depth), why);
}

/// Last of all, unless every verdict rests on a coupon.
std::string coupon_word(const plan::Plan& plan) {
    const bool all = std::all_of(plan.pieces.begin(), plan.pieces.end(),
                                 [](const plan::Piece& piece) { return piece.coupon && piece.coupon->counts; });
    return all ? "By the coupon.\n" : "Coupon first.\n";
}

}  // namespace

std::vector<SheetCount> sheet_counts(const page::Document& packet) {
    std::vector<SheetCount> counts;
    for (const page::Page& page : packet.pages) {
        const auto found = std::find_if(counts.begin(), counts.end(),
                                        [&](const SheetCount& count) { return count.name == page.sheet; });
        if (found == counts.end()) counts.push_back({page.sheet, 1});
        else ++found->pages;
    }
    return counts;
}

std::string verdict_line(const plan::Plan& plan) {
    const sheets::Tape tape(plan.header.units);
    std::string verdict;
    for (const plan::Piece& piece : plan.pieces) verdict += spoken(piece, tape);
    for (const plan::Refused& refused : plan.refused)
        verdict += fmt::format("{}: do not cut, it cannot be made as asked. ", refused.id);
    return verdict + coupon_word(plan);
}

std::string report(const plan::Plan& plan, const page::Document& packet, const sheets::Kit& kit) {
    std::string text = fmt::format("Job {}, {}, revision {}; fingerprint {}\n\n", plan.header.number, plan.header.title,
                                   plan.header.revision, plan.fingerprint);
    const sheets::Tape tape(plan.header.units);
    for (const plan::Piece& piece : plan.pieces) text += piece_text(piece, tape, kit);
    for (const plan::Refused& refused : plan.refused) text += refused_text(refused, kit);
    return text + stock_lines(plan, tape, kit) + paper_lines(plan.printer) + pages_text(packet) + verdict_line(plan);
}

}  // namespace kerfpacket::cli
