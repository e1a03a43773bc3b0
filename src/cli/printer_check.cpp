#include "cli/printer_check.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>
#include <vector>

#include <fmt/format.h>

#include "cli/label_check.h"
#include "cli/measured_printer.h"
#include "cli/printers.h"
#include "cli/resources.h"
#include "cli/sheet_target.h"
#include "cli/trouble.h"
#include "cli/typed_length.h"
#include "job/read_profile.h"
#include "output/pdf.h"
#include "sheets/blanks/printer_check.h"
#include "sheets/blanks/roll_check.h"

namespace kerfpacket::cli {
namespace {

using namespace measure::literals;
using measure::Unit;

[[noreturn]] void refuse(const std::string& what) { throw std::runtime_error(what); }

Edge first_edge(const std::string& word) {
    if (word == "bottom") return Edge::bottom;
    if (word == "left") return Edge::left;
    return word == "right" ? Edge::right : Edge::top;
}

/// A narrow roll's one bar, which runs along the feed. Across it the printer is taken as true, for nothing was
/// measured.
Measured measured_on_roll(const PrinterCheckChoice& choice, const job::Media& media, Unit unit) {
    if (choice.level.empty()) refuse("a profile needs --level, as measured on the check page");
    for (const std::string* other : {&choice.first, &choice.upright, &choice.diagonals, &choice.margins})
        if (!other->empty())
            refuse(fmt::format("--media {}: a roll under 8-1/2 in is measured by --level alone, along the feed",
                               choice.media));
    Measured measured;
    measured.first = Edge::left;
    measured.true_level = sheets::printer_check_bars(media, unit).level;
    measured.level = typed_length("--level", choice.level, unit);
    measured.upright = measured.true_upright = measured.true_level;
    measured.lost.fill(0.25_in);
    return measured;
}

Measured measured_of(const PrinterCheckChoice& choice, const job::Media& media, Unit unit) {
    if (sheets::is_narrow_roll(media)) return measured_on_roll(choice, media, unit);
    if (choice.first.empty() || choice.level.empty() || choice.upright.empty())
        refuse("a profile needs --first, --level and --upright, as measured on the check page");
    const sheets::CheckBars bars = sheets::printer_check_bars(media, unit);
    Measured measured;
    measured.first = first_edge(choice.first);
    measured.level = typed_length("--level", choice.level, unit);
    measured.upright = typed_length("--upright", choice.upright, unit);
    measured.true_level = bars.level;
    measured.true_upright = bars.upright;
    measured.lost.fill(0.25_in);
    if (!choice.margins.empty()) {
        const auto lost = typed_lengths("--margins", choice.margins, 4, unit, "four lengths: top, bottom, left, right");
        for (std::size_t i = 0; i < lost.size(); ++i) {
            if (lost[i] > job::most_margin)
                refuse(fmt::format("--margins \"{}\": expected at most 1/2 in each", choice.margins));
            measured.lost.at(i) = lost[i];
        }
    }
    if (choice.diagonals.empty()) return measured;
    const auto both = typed_lengths("--diagonals", choice.diagonals, 2, unit, "two lengths: A to C, B to D");
    measured.diagonals = {both[0], both[1]};
    return measured;
}

void require_no_fitting(const std::string& bar, Length measured, Length whole, Unit unit) {
    const double factor = measured / whole;
    if (job::is_printer_error(factor)) return;
    refuse(
        fmt::format("the {} bar is {} when true and was measured as {}, {}: more than 2 % is the page made to fit; {}",
                    bar, measure::length_text(whole, unit), measure::length_text(measured, unit),
                    job::printer_error(factor), job::fit_to_page_hint));
}

/// Diagonals of another page, or a slip of the rule, must not pass for skew.
void require_diagonals(const Measured& measured, Unit unit) {
    if (!measured.diagonals) return;
    const Length whole = measure::hypot(measured.level, measured.upright);
    for (const Length diagonal : *measured.diagonals)
        if (!job::is_printer_error(diagonal / whole))
            refuse(fmt::format("a diagonal of {} does not go with these bars: expected about {}",
                               measure::length_text(diagonal, unit), measure::length_text(whole, unit)));
}

std::string square_text(const Measured& measured, Unit unit) {
    if (!measured.diagonals) return "";
    const Length off = measure::abs(out_of_square(measured));
    const std::string shown =
        unit == Unit::inch ? measure::inch_fraction(off, 64) + " in" : measure::mm_text(off, 1) + " mm";
    if (off <= most_out_of_square) return fmt::format("Square within {} over the page.\n", shown);
    return fmt::format(
        "Out of square by {} over the page. A profile cannot correct that: set the tray's guides to the "
        "paper, feed straight, print and measure again.\n",
        shown);
}

std::string stored_text(const Measured& measured, const job::Profile& profile, const job::Media& media, Unit unit) {
    const std::string along = job::printer_error(profile.along);
    const std::string level = measure::length_text(measured.true_level, unit);
    if (sheets::is_narrow_roll(media))
        return fmt::format("bar {} when true; prints {} along the feed; across it was not measured\n", level, along);
    return fmt::format("bars {} and {} when true; prints {} across the feed, {} along it, {} edge first\n{}", level,
                       measure::length_text(measured.true_upright, unit), job::printer_error(profile.across), along,
                       profile.feed == job::Feed::short_edge ? "short" : "long", square_text(measured, unit));
}

Status store(const PrinterCheckChoice& choice, Console& console) {
    if (!job::is_profile_name(choice.profile))
        refuse(
            fmt::format("--profile {}: expected letters, digits and hyphens, for example shop-laser", choice.profile));
    const job::Media media = known_media(choice.media);
    const Unit unit = units_of(choice.units, media);
    const Measured measured = measured_of(choice, media, unit);
    require_no_fitting("level", measured.level, measured.true_level, unit);
    require_no_fitting("upright", measured.upright, measured.true_upright, unit);
    require_diagonals(measured, unit);
    const job::Profile profile = profile_of(measured, choice.profile);
    const std::filesystem::path file = store_profile(profile, choice.force, console);
    console.done(file.string() + ": " + stored_text(measured, profile, media, unit));
    const bool square = measure::abs(out_of_square(measured)) <= most_out_of_square;
    return square ? Status::done : Status::cautions;
}

}  // namespace

Status printer_check(const PrinterCheckChoice& choice, Console& console, const std::filesystem::path& home) {
    if (!choice.labels.empty()) return label_check(choice, console, home);
    if (!choice.profile.empty()) return store(choice, console);
    if (!choice.level.empty() || !choice.upright.empty() || !choice.diagonals.empty() || !choice.margins.empty())
        refuse("what was measured needs a name to be stored under: --profile NAME");
    const job::Media media = known_media(choice.media);
    const Unit unit = units_of(choice.units, media);
    const SheetTarget target(choice.out, choice.force);
    const Resources resources(home, choice.language);
    const page::Document page = sheets::make_printer_check(media, unit, resources.kit());
    target.write(output::pdf(page, resources.faces()), console);
    const sheets::CheckBars bars = sheets::printer_check_bars(media, unit);
    const std::string level = measure::length_text(bars.level, unit);
    const std::string shown = sheets::is_narrow_roll(media) ? "bar " + level + " along the feed"
                                                            : fmt::format("level bar {}, upright bar {}", level,
                                                                          measure::length_text(bars.upright, unit));
    console.done(fmt::format("{}: 1 page, {}; {}\n", target.file().string(), media.plain_name, shown));
    console.next(
        "print it, measure its bars, then: kerfpacket printer-check --profile NAME --first EDGE --level ... --upright "
        "...");
    return Status::done;
}

}  // namespace kerfpacket::cli
