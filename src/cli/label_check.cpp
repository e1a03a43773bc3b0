#include "cli/label_check.h"

#include <algorithm>
#include <stdexcept>

#include <fmt/format.h>

#include "cli/house.h"
#include "cli/resources.h"
#include "cli/sheet_target.h"
#include "cli/trouble.h"
#include "cli/typed_length.h"
#include "job/read.h"
#include "job/read_profile.h"
#include "output/pdf.h"
#include "sheets/blanks/label_check.h"

namespace kerfpacket::cli {
namespace {

using measure::Length;
using measure::Unit;

[[noreturn]] void refuse(const std::string& what) { throw std::runtime_error(what); }

std::ptrdiff_t errors(const job::Diagnostics& diagnostics) {
    return std::count_if(diagnostics.begin(), diagnostics.end(),
                         [](const job::Diagnostic& one) { return one.severity == job::Severity::error; });
}

/// Labels that can be measured by their columns and rows.
std::optional<job::LabelStock> required(std::optional<job::LabelStock> labels, const std::filesystem::path& file) {
    if (!labels)
        refuse(fmt::format("{} does not say what labels are printed on: expected [printer.labels]", file.string()));
    if (labels->paper.roll)
        refuse(
            fmt::format("labels of a roll have no columns and rows to measure; its feed is measured by "
                        "\"kerfpacket printer-check --media {}\"",
                        labels->paper.name));
    return labels;
}

/// What a file says of its labels. It is what it reads as with fewer mistakes, a shop file or a job; these are told,
/// and then there is nothing.
std::optional<job::LabelStock> labels_of(const std::filesystem::path& file, Console& console) {
    const auto source = job::load(file);
    if (!source) {
        console.message(job::render({source.error()}, {file.string(), ""}));
        return std::nullopt;
    }
    const job::ShopReading shop = job::read_shop(*source);
    const job::Reading reading = job::read_job(*source);
    if (errors(shop.diagnostics) > errors(reading.diagnostics)) {
        const auto house = planned_house({file}, {}, console);
        return house ? required(house->first().beside.labels, file) : std::nullopt;
    }
    console.message(job::render(shop.diagnostics, *source));
    return errors(shop.diagnostics) == 0 ? required(shop.shop.beside.labels, file) : std::nullopt;
}

MarkAt mark_of(const std::string& option, const std::string& text, Length mark, Unit unit) {
    const auto both =
        typed_lengths(option, text, 2, unit, "two lengths: from the label's left edge, from its top edge");
    const std::string shown = measure::length_text(mark, unit);
    for (const Length one : both)
        if (one > mark * 2)
            refuse(
                fmt::format("{} \"{}\": the mark is {} from either edge when true; one that is found over {} off is "
                            "on another label, or a figure in [printer.labels] is wrong",
                            option, text, shown, shown));
    return {both[0], both[1]};
}

void require_step(const char* key, Length before, Length now) {
    if (job::is_printer_error(now / before)) return;
    refuse(
        fmt::format("{} would change by {}: more than 2 % is the page made to fit, or a wrong figure in "
                    "[printer.labels]; {}",
                    key, job::printer_error(now / before), job::fit_to_page_hint));
}

void require_on_sheet(const job::LabelStock& now) {
    const Length right = now.left + now.across * (now.columns - 1) + now.width;
    const Length bottom = now.top + now.down * (now.rows - 1) + now.height;
    if (now.left < Length() || now.top < Length() || right > now.paper.width || bottom > now.paper.height)
        refuse(
            "by this, labels would have to be printed beyond the edge of their sheet: set the tray's guides to the "
            "paper, print and measure again");
}

std::string figure(Length length, Unit unit) {
    return unit == Unit::inch ? fmt::format("{:.3f} in", length.inches()) : fmt::format("{:.2f} mm", length.mm());
}

Status tell_measured(const PrinterCheckChoice& choice, const job::LabelStock& labels, Console& console) {
    if (choice.first_label.empty() || choice.last_label.empty())
        refuse("labels are measured on the first and the last of their sheet: --first-label and --last-label");
    const Unit unit = units_of(choice.units, labels.paper);
    const Length mark = sheets::label_check_mark(labels, unit);
    const job::LabelStock now = as_measured(labels, mark, mark_of("--first-label", choice.first_label, mark, unit),
                                            mark_of("--last-label", choice.last_label, mark, unit));
    require_step("across", labels.across, now.across);
    require_step("down", labels.down, now.down);
    require_on_sheet(now);
    std::string text = "[printer.labels]\n";
    for (const auto& [key, value] :
         {std::pair("left", now.left), std::pair("top", now.top), std::pair("across", now.across),
          std::pair("down", now.down), std::pair("width", now.width), std::pair("height", now.height)})
        text += fmt::format("{} = \"{}\"\n", key, figure(value, unit));
    console.result(text);
    console.next(
        fmt::format("write these in place of those in {}, print the sheet again and look", choice.labels.string()));
    return Status::done;
}

}  // namespace

job::LabelStock as_measured(job::LabelStock labels, Length mark, MarkAt first, MarkAt last) {
    // A mark that is found too far right was printed too far right: the printer must be told of less.
    const auto step = [](Length before, Length off_first, Length off_last, int count) {
        return count == 1 ? before : before - (off_last - off_first) / (count - 1);
    };
    labels.across = step(labels.across, first.left, last.left, labels.columns);
    labels.down = step(labels.down, first.top, last.top, labels.rows);
    // Labels that touch must not lie over each other where the printer is told of shorter steps.
    labels.width = std::min(labels.width, labels.across);
    labels.height = std::min(labels.height, labels.down);
    labels.left = labels.left - (first.left - mark);
    labels.top = labels.top - (first.top - mark);
    return labels;
}

Status label_check(const PrinterCheckChoice& choice, Console& console, const std::filesystem::path& home) {
    const std::optional<job::LabelStock> labels = labels_of(choice.labels, console);
    if (!labels) return Status::errors;
    if (!choice.first_label.empty() || !choice.last_label.empty()) return tell_measured(choice, *labels, console);
    const Unit unit = units_of(choice.units, labels->paper);
    const SheetTarget target(choice.out, choice.force);
    const Resources resources(home, choice.language);
    target.write(output::pdf(sheets::make_label_check(*labels, unit, resources.kit()), resources.faces()), console);
    console.done(
        fmt::format("{}: 1 page, {}; the mark of label 1 and of label {} is {} from its left and its top edge\n",
                    target.file().string(), labels->paper.plain_name, labels->on_sheet(),
                    measure::length_text(sheets::label_check_mark(*labels, unit), unit)));
    console.next(
        "print it on a sheet of labels, measure both marks from the cut edges, then: kerfpacket printer-check --labels "
        "FILE --first-label \"LEFT, TOP\" --last-label \"LEFT, TOP\"");
    return Status::done;
}

}  // namespace kerfpacket::cli
