#include "cli/street.h"

#include <sstream>
#include <stdexcept>

#include "cli/gather.h"
#include "cli/printers.h"
#include "cli/record.h"
#include "cli/trouble.h"
#include "output/dump.h"
#include "output/pdf.h"
#include "output/seal.h"
#include "sheets/folded_packet.h"

namespace kerfpacket::cli {
namespace {

/// Pages that are written and looked at no more are folded from here on: a usual packet not for nothing.
constexpr std::size_t pages_open = 100;

}  // namespace

std::optional<Planned> planned(const Inputs& inputs, Console& console, bool strict) {
    console.doing("reading the job");
    const job::ShopReading shop = inputs.shop ? job::read_shop(*inputs.shop) : job::ShopReading{};
    if (inputs.shop) console.message(job::render(shop.diagnostics, *inputs.shop));
    job::Reading reading = read_as_printed(inputs.job, shop.shop, inputs.print);
    if (reading.complete) use_profiles(reading, inputs.profiles, console);

    console.doing("working out the bends");
    tl::expected<plan::Plan, job::Diagnostics> plan;
    if (reading.complete) plan = plan::make_plan(reading.job);
    if (!plan) append(reading.diagnostics, plan.error());
    // Told whatever else is wrong; what the plan says of it as well is said once.
    if (!shop.shop.faulty)
        append(reading.diagnostics, plan::unknown_materials(reading.materials, reading.own_materials));
    const bool refused = reading.complete && plan && !plan->refused.empty();
    if (refused)
        for (const plan::Refused& one : plan->refused) append(reading.diagnostics, one.reasons);
    if (strict)
        for (job::Diagnostic& one : reading.diagnostics)
            if (one.severity == job::Severity::refused) one.severity = job::Severity::error;
    console.message(job::render(reading.diagnostics, inputs.job));
    console.doing("");
    if (!reading.complete || has_error(reading.diagnostics) || has_error(shop.diagnostics)) return {};
    const bool cautions = plan->cautions() || !reading.diagnostics.empty();
    return Planned{inputs, job::canonical(reading.job), std::move(*plan), std::move(reading.beside),
                   cautions ? Status::cautions : Status::done};
}

std::optional<Planned> planned(const JobChoice& choice, Console& console) {
    const std::optional<Inputs> inputs = gathered(choice, console);
    return inputs ? planned(*inputs, console, choice.strict) : std::nullopt;
}

namespace {

std::optional<page::FoldedDocument> folded(const Planned& planned, const sheets::Kit& kit, const sheets::Part& part,
                                           Console& console, const Planned* before, std::size_t open) {
    console.doing("laying out the sheets");
    try {
        const sheets::Revision now{planned.plan, planned.canonical.values};
        if (before == nullptr) return sheets::make_folded_packet(now, nullptr, kit, part, open);
        const sheets::Revision old{before->plan, before->canonical.values};
        return sheets::make_folded_packet(now, &old, kit, part, open);
    } catch (const fonts::MissingCharacter& missing) {
        console.message(job::render(unprintable(missing, kit.faces, planned.inputs.job), planned.inputs.job));
        return {};
    }
}

}  // namespace

std::optional<page::Document> laid_out(const Planned& planned, const sheets::Kit& kit, const sheets::Part& part,
                                       Console& console, const Planned* before) {
    auto packet = folded(planned, kit, part, console, before, sheets::all_open);
    return packet ? std::optional(std::move(packet->document)) : std::nullopt;
}

std::optional<Planned> planned_quietly(const Inputs& inputs) {
    std::ostringstream out, err;
    Console console(out, err, false);
    return planned(inputs, console);
}

std::vector<std::string> differences(const Planned& before, const Planned& now, const std::filesystem::path& home) {
    return sheets::change_sentences({before.plan, before.canonical.values}, {now.plan, now.canonical.values},
                                    Resources(home, "en").kit());
}

std::optional<Packet> make_packet(const Record& record, const Planned& planned, Console& console,
                                  const std::filesystem::path& home, bool digest_sheets) {
    const Resources resources(home, planned.plan.header, planned.inputs.words);
    const sheets::Part part = part_of(record.part, sheets::sheet_kinds(resources.kit()));
    std::optional<Planned> before;
    if (record.previous) {
        before = planned_quietly(*record.previous);
        if (!before)
            console.message(
                "kerfpacket: this version cannot read the job file of the revision before: no change page\n");
    }
    std::optional<page::FoldedDocument> packet =
        folded(planned, resources.kit(), part, console, before ? &*before : nullptr, pages_open);
    if (!packet) return {};
    console.doing("");
    if (packet->document.pages.empty()) throw std::runtime_error(nothing_left(record.part));

    console.doing("writing the PDF");
    Packet made{.bytes = {}, .pages = packet->document.pages.size()};
    if (digest_sheets) made.sheets = output::digest(output::dump(*packet));
    const Statement statement = statement_of(planned.plan, made.pages);
    made.bytes = output::pdf(*std::move(packet), resources.faces(), attachments_of(record, statement));
    console.doing("");
    return made;
}

}  // namespace kerfpacket::cli
