#include "cli/build.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "cli/printers.h"
#include "cli/resources.h"
#include "cli/shop_words.h"
#include "cli/target.h"
#include "cli/trouble.h"
#include "job/read.h"
#include "output/file.h"
#include "output/pdf.h"

namespace kerfpacket::cli {
namespace {

/// Kerfs that are given by hand and have a weak link among them are not printed unasked: false, and told, then.
bool weak_links_told(const plan::Plan& plan, Console& console) {
    bool none = true;
    for (const plan::Piece& piece : plan.pieces) {
        if (piece.weak_links.empty()) continue;
        none = false;
        console.message(
            fmt::format("kerfpacket: piece {} has weak links, where a board breaks first: the gaps beside {} {} differ "
                        "by more than "
                        "{} times; even them out, or print all the same with --force\n",
                        piece.id, piece.weak_links.size() == 1 ? "kerf" : "kerfs", fmt::join(piece.weak_links, ", "),
                        plan::most_gap_ratio));
    }
    return none;
}

}  // namespace

Status build(const BuildChoice& choice, Console& console, const std::filesystem::path& home) {
    const std::optional<Planned> job = planned(choice.job, console);
    if (!job) return Status::errors;
    if (!choice.force && !weak_links_told(job->plan, console)) return Status::errors;
    const std::filesystem::path target =
        packet_target(choice.out, choice.job.file, choice.part.whole() ? ".pdf" : "-part.pdf", choice.force);

    const Resources resources(home, job->plan.header, job->shop_words);
    const sheets::Part part = part_of(choice.part, sheets::sheet_kinds(resources.kit()));
    const std::optional<page::Document> packet = laid_out(*job, resources.kit(), part, console);
    if (!packet) return Status::errors;
    console.doing("");
    if (packet->pages.empty()) throw std::runtime_error(nothing_left(choice.part));

    console.doing("writing the PDF");
    const std::string bytes = output::pdf(*packet, resources.faces());
    output::write_whole(target, bytes);
    console.result(fmt::format("{}: {}\n", target.string(), counted(packet->pages.size(), "page")));
    return job->status;
}

std::optional<Planned> planned(const JobChoice& choice, Console& console) {
    console.doing("reading the job");
    const ShopFile shop = read_shop_file(choice);
    console.message(job::render(shop.reading.diagnostics, shop.source));
    tl::expected<job::Source, job::Diagnostic> source = job::load(choice.file);
    if (!source) {
        console.message(job::render({source.error()}, {choice.file.string(), ""}));
        return {};
    }
    job::Reading reading = job::read_job(*source, shop.reading.shop);
    if (reading.complete && !choice.media.empty()) use_media(reading.job, choice.media);
    if (reading.complete && choice.half) use_half_templates(reading.job);
    if (reading.complete && !choice.language.empty()) use_language(reading.job, choice.language);
    if (reading.complete) use_profiles(reading, console);

    console.doing("working out the bends");
    tl::expected<plan::Plan, job::Diagnostics> plan;
    if (reading.complete) plan = plan::make_plan(reading.job);
    if (!plan) append(reading.diagnostics, plan.error());
    console.message(job::render(reading.diagnostics, *source));
    if (!reading.complete || has_error(reading.diagnostics) || has_error(shop.reading.diagnostics)) return {};

    console.doing("reading the shop's words");
    std::vector<fonts::WordFile> words = read_shop_words(shop, reading.job.header);
    console.doing("");
    const bool cautions = plan->cautions() || !reading.diagnostics.empty();
    return Planned{std::move(*source), std::move(*plan), std::move(words), cautions ? Status::cautions : Status::done};
}

std::optional<page::Document> laid_out(const Planned& planned, const sheets::Kit& kit, const sheets::Part& part,
                                       Console& console) {
    console.doing("laying out the sheets");
    try {
        return sheets::make_packet(planned.plan, kit, part);
    } catch (const fonts::MissingCharacter& missing) {
        console.message(job::render({unprintable(missing, planned.source)}, planned.source));
        return {};
    }
}

}  // namespace kerfpacket::cli
