#include "cli/report.h"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>

#include "cli/trouble.h"
#include "measure/require.h"
#include "sheets/tape.h"
#include "sheets/wording.h"

namespace kerfpacket::cli {
namespace {

std::string line(const char* what, const std::string& value) { return fmt::format("   {:<12} {}\n", what, value); }

/// In the other system, for a second look.
std::string other(measure::Length length, const sheets::Tape& tape) {
    return tape.other(length) + (tape.unit() == measure::Unit::inch ? " mm" : " in");
}

std::string kerf_lines(const plan::Piece& piece, const sheets::Tape& tape, const sheets::Kit& kit) {
    const bool half = !piece.depth_given;
    return line("kerfs", fmt::format("{}; {}", counted(piece.kerfs.size(), "cut"), sheets::kerf_side(piece, kit))) +
           line("depth", fmt::format("{}{}, leaves a web of {}", tape.exact(piece.kerf_depth),
                                     half ? " (half the thickness)" : "", tape.exact(piece.web()))) +
           line("spacing",
                fmt::format("{}{}", tape.exact(piece.spacing), piece.spacing_given ? "" : " (common practice)"));
}

std::string bend_lines(const plan::Piece& piece, const sheets::Tape& tape) {
    const bend::Assessment& bend = piece.bend;
    std::string lines =
        line("blank", fmt::format("{} long ({}), {} of trim at each end", tape.with_unit(piece.blank_length),
                                  other(piece.blank_length, tape), tape.exact(piece.trim))) +
        line("bend", fmt::format("from {} to {}, turns {} degrees", tape.with_unit(piece.bend_start),
                                 tape.with_unit(piece.bend_end), measure::fixed(piece.turn.degrees(), 2))) +
        line("radius", fmt::format("{} on the seen face", tape.with_unit(piece.finish_radius)));
    if (piece.kerfs_on == bend::KerfsOn::inside)
        lines += line("closing", fmt::format("kerfs close at a radius of {}", tape.with_unit(bend.close_radius)));
    return lines + line("verdict", fmt::format("{}: {} of break strain, coupon first", verdict_words(bend.verdict),
                                               measure::fixed(bend.utilisation, 2)));
}

std::string piece_text(const plan::Piece& piece, const sheets::Tape& tape, const sheets::Kit& kit) {
    std::string text =
        fmt::format("{}  {}, {}{}\n", piece.id, sheets::piece_name(piece, kit), sheets::board_text(piece, kit, tape),
                    piece.quantity == 1 ? "" : fmt::format(", {} of them", piece.quantity));
    text += kerf_lines(piece, tape, kit) + bend_lines(piece, tape);
    for (const plan::Caution& caution : piece.cautions)
        text += line("caution", sheets::caution_text(caution, kit, tape.unit()));
    return text + "\n";
}

std::string pages_text(const page::Document& packet) {
    std::string text;
    for (const SheetCount& sheet : sheet_counts(packet))
        text += fmt::format("{}{} {}", text.empty() ? "" : ", ", sheet.name, sheet.pages);
    return fmt::format("{}: {}\n", counted(packet.pages.size(), "page"), text);
}

/// "B: caution, blank longer than stock." What the verdict says already is not said again.
std::string spoken(const plan::Piece& piece) {
    std::string why;
    for (const plan::Caution& caution : piece.cautions) {
        if (caution.key.starts_with("strain_")) continue;
        why += ", " + caution.key;
    }
    std::replace(why.begin(), why.end(), '_', ' ');
    const bool only_cautions = piece.bend.verdict == bend::Verdict::ok && !piece.cautions.empty();
    return fmt::format("{}: {}{}. ", piece.id, only_cautions ? "caution" : verdict_words(piece.bend.verdict), why);
}

}  // namespace

const char* verdict_words(bend::Verdict verdict) {
    switch (verdict) {
        case bend::Verdict::ok: return "ok";
        case bend::Verdict::caution: return "caution";
        case bend::Verdict::break_likely: return "will likely break";
    }
    throw measure::Bug("a verdict without words");
}

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

std::string report(const plan::Plan& plan, const page::Document& packet, const sheets::Kit& kit) {
    std::string text = fmt::format("Job {}, {}, revision {}; fingerprint {}\n\n", plan.header.number, plan.header.title,
                                   plan.header.revision, plan.fingerprint);
    const sheets::Tape tape(plan.header.units);
    std::string verdict;
    for (const plan::Piece& piece : plan.pieces) {
        text += piece_text(piece, tape, kit);
        verdict += spoken(piece);
    }
    return text + pages_text(packet) + verdict + "Coupon first.\n";
}

}  // namespace kerfpacket::cli
