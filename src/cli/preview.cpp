#include "cli/preview.h"

#include <fmt/format.h>

#include <stdexcept>

#include "cli/street.h"
#include "cli/target.h"
#include "cli/trouble.h"
#include "disk/lock.h"
#include "output/image.h"

namespace kerfpacket::cli {
namespace {

namespace fs = std::filesystem;

fs::path folder_of(const PreviewChoice& choice) {
    if (!choice.out.empty()) return choice.out;
    require_name(choice.job);
    const fs::path& job = choice.job.file;
    return job.parent_path() / (job.stem().string() + "-pages");
}

/// "page-01-cover.png": numbers of one width, so that the pictures sort as the packet does.
std::vector<fs::path> picture_names(const page::Document& packet, const fs::path& folder, bool svg) {
    const std::size_t digits = packet.pages.size() > 99 ? 3 : 2;
    std::vector<fs::path> names;
    for (const page::Page& page : packet.pages)
        names.push_back(folder /
                        fmt::format("page-{:0{}}-{}.{}", names.size() + 1, digits, page.sheet, svg ? "svg" : "png"));
    return names;
}

/// Draws every picture and gives it to `take`, in order.
void draw(const page::Document& packet, const PreviewChoice& choice, const fonts::Faces& faces,
          const output::TakePicture& take) {
    if (choice.contact_sheet) take(0, output::contact_sheet(packet, faces, choice.dpi.value_or(36)));
    else if (choice.svg)
        for (std::size_t i = 0; i < packet.pages.size(); ++i) take(i, output::svg(packet.pages[i], faces));
    else output::each_png(packet, faces, choice.dpi.value_or(100), take);
}

}  // namespace

Status preview(const PreviewChoice& choice, Console& console, const fs::path& home) {
    const std::optional<Planned> job = planned(choice.job, console);
    if (!job) return Status::errors;
    const Resources resources(home, job->plan.header, job->inputs.words);
    const std::optional<page::Document> packet = laid_out(*job, resources.kit(), {}, console);
    if (!packet) return Status::errors;

    const fs::path folder = folder_of(choice);
    const std::vector<fs::path> names = choice.contact_sheet ? std::vector<fs::path>{folder / "contact-sheet.png"}
                                                             : picture_names(*packet, folder, choice.svg);
    disk::NewFolder made(folder);
    const disk::Lock lock(folder / "pictures");
    for (const fs::path& name : names) require_picture_target(name, choice.job, choice.force);
    disk::Filing filing;
    const auto drawing = [&](std::size_t page) {
        console.doing(choice.contact_sheet ? "drawing all pages on one picture"
                                           : fmt::format("drawing page {} of {}", page + 1, names.size()));
    };
    drawing(0);
    draw(*packet, choice, resources.faces(), [&](std::size_t i, const std::string& picture) {
        filing.add(names[i], picture);
        if (i + 1 < names.size()) drawing(i + 1);
    });
    put(filing, console);
    made.keep();
    console.done(choice.contact_sheet
                     ? fmt::format("{}: {}\n", names.front().string(), counted(packet->pages.size(), "page"))
                     : fmt::format("{}: {}\n", folder.string(), counted(names.size(), "picture")));
    if (!choice.job.from_input()) console.next(fmt::format("kerfpacket build {}", as_typed(choice.job.file.string())));
    return job->status;
}

}  // namespace kerfpacket::cli
