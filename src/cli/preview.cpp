#include "cli/preview.h"

#include <fmt/format.h>

#include <stdexcept>

#include "cli/street.h"
#include "cli/target.h"
#include "cli/trouble.h"
#include "output/file.h"
#include "output/image.h"

namespace kerfpacket::cli {
namespace {

namespace fs = std::filesystem;

fs::path folder_of(const PreviewChoice& choice) {
    if (!choice.out.empty()) return choice.out;
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

}  // namespace

Status preview(const PreviewChoice& choice, Console& console, const fs::path& home) {
    const std::optional<Planned> job = planned(choice.job, console);
    if (!job) return Status::errors;
    const Resources resources(home, job->plan.header, job->inputs.words);
    const std::optional<page::Document> packet = laid_out(*job, resources.kit(), {}, console);
    if (!packet) return Status::errors;

    const fs::path folder = folder_of(choice);
    if (choice.contact_sheet) {
        const fs::path target = folder / "contact-sheet.png";
        require_picture_target(target, choice.job.file, choice.force);
        console.doing("drawing all pages on one picture");
        const std::string picture = output::contact_sheet(*packet, resources.faces(), choice.dpi.value_or(36));
        fs::create_directories(folder);
        output::write_whole(target, picture);
        console.result(fmt::format("{}: {}\n", target.string(), counted(packet->pages.size(), "page")));
        return job->status;
    }
    const std::vector<fs::path> names = picture_names(*packet, folder, choice.svg);
    for (const fs::path& name : names) require_picture_target(name, choice.job.file, choice.force);
    fs::create_directories(folder);
    for (std::size_t i = 0; i < names.size(); ++i) {
        console.doing(fmt::format("drawing page {} of {}", i + 1, names.size()));
        const page::Page& page = packet->pages[i];
        output::write_whole(names[i], choice.svg ? output::svg(page, resources.faces())
                                                 : output::png(page, resources.faces(), choice.dpi.value_or(100)));
    }
    console.result(fmt::format("{}: {}\n", folder.string(), counted(names.size(), "picture")));
    return job->status;
}

}  // namespace kerfpacket::cli
