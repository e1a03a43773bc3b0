#include "cli/labels.h"

#include <stdexcept>

#include <fmt/format.h>

#include "cli/house.h"
#include "cli/report.h"
#include "cli/resources.h"
#include "cli/sheet_target.h"
#include "cli/trouble.h"
#include "job/text.h"
#include "output/pdf.h"
#include "sheets/labels/label_sheets.h"

namespace kerfpacket::cli {
namespace {

/// Tells it at [printer.labels]; the shop file's values have no place.
void tell(const Planned& planned, job::Position at, std::string message, std::string hint, Console& console) {
    const bool of_shop = at.line == 0 && planned.inputs.shop && planned.beside.labels;
    console.message(job::render({{job::Severity::error, at, job::Told(std::move(message)), job::Told(std::move(hint))}},
                                of_shop ? *planned.inputs.shop : planned.inputs.job));
}

void tell_none(const Planned& planned, Console& console) {
    tell(planned, {}, "it is not said what labels are printed on",
         "expected [printer.labels] here or in the shop file: media = \"custom_roll_62mm\" of a roll; of a sheet its "
         "media, columns, rows, width, height, left and top",
         console);
}

void tell_too_small(const Planned& planned, const sheets::LabelsTooSmall& least, Console& console) {
    const job::LabelStock& labels = *planned.beside.labels;
    const measure::Unit unit = planned.plan.header.units;
    const std::string size = labels.height > measure::Length()
                                 ? fmt::format("labels of {} x {} do", measure::length_text(labels.width, unit),
                                               measure::length_text(labels.height, unit))
                                 : fmt::format("a roll {} wide does", measure::length_text(labels.width, unit));
    tell(planned, labels.at,
         fmt::format("{} not hold what stands on a label in type that can be read: that of {} asks for most", size,
                     job::in_quotes(least.tag)),
         fmt::format("expected labels at least {} wide and {} high", measure::length_text(least.width, unit),
                     measure::length_text(least.height, unit)),
         console);
}

void require_place(int from, const job::LabelStock& labels) {
    if (from == 1) return;
    if (labels.paper.roll)
        throw std::runtime_error(fmt::format("--labels-from {}: a roll has no sheet that was begun", from));
    if (from > labels.on_sheet())
        throw std::runtime_error(fmt::format("--labels-from {}: a sheet has {}, {} columns of {}; expected at most {}",
                                             from, counted(static_cast<std::size_t>(labels.on_sheet()), "label"),
                                             labels.columns, labels.rows, labels.on_sheet()));
}

const Planned* with_labels(const std::vector<Planned>& jobs) {
    return with_table(
        jobs, "[printer.labels]", [](const Planned& job) { return job.beside.labels.has_value(); },
        [](const Planned& a, const Planned& b) { return a.beside.labels->same_as(*b.beside.labels); });
}

std::optional<page::Document> made(const PlannedHouse& house, const Planned& with, int from, const Resources& resources,
                                   Console& console) {
    console.doing("laying out the labels");
    try {
        auto document = sheets::make_labels(house.house(), *with.beside.labels, from, resources.kit());
        console.doing("");
        if (document) return *std::move(document);
        tell_too_small(with, document.error(), console);
    } catch (const fonts::MissingCharacter& missing) {
        tell_unprintable(missing, resources.faces(), house.jobs, console);
    }
    return std::nullopt;
}

}  // namespace

Status labels(const LabelsChoice& choice, Console& console, const std::filesystem::path& home) {
    const std::optional<PlannedHouse> house = planned_house(choice.jobs, choice.job, console);
    if (!house) return Status::errors;
    const Planned* with = with_labels(house->jobs);
    if (with == nullptr) {
        tell_none(house->first(), console);
        return Status::errors;
    }
    const job::LabelStock& stock = *with->beside.labels;
    require_place(choice.from, stock);
    const SheetTarget target(choice.out, choice.force, filed_under(choice.jobs, choice.job, choice.out), "-labels.pdf");
    const Planned& first = house->first();
    const Resources resources(home, first.plan.header, first.inputs.words);
    const std::optional<page::Document> document = made(*house, *with, choice.from, resources, console);
    if (!document) return Status::errors;
    target.write(output::pdf(*document, resources.faces()), console);
    const std::size_t count = plan::labels_of(house->house()).size();
    const std::string pages = stock.paper.roll ? "a page each" : counted(document->pages.size(), "page");
    console.done(fmt::format("{}: {} on {}, {}\n", target.file().string(), counted(count, "label"),
                             stock.paper.plain_name, pages));
    for (const Planned& job : house->jobs) console.message(verdict_line(job.plan));
    return house->status();
}

}  // namespace kerfpacket::cli
