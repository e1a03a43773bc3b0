#include "cli/gather.h"

#include <set>

#include "cli/printers.h"
#include "cli/shop.h"
#include "cli/shop_words.h"
#include "cli/trouble.h"
#include "job/read.h"

namespace kerfpacket::cli {
namespace {

/// A shop file as far as it could be read; without a source there is none, or none that can be read.
struct ShopFile {
    std::optional<job::Source> source;
    job::ShopReading reading;
    bool unreadable = false;
};

ShopFile read_shop_file(const JobChoice& choice, Console& console) {
    ShopFile file;
    const std::filesystem::path path = shop_path(choice);
    if (path.empty()) return file;
    auto source = job::load(path, job::shop_file);
    if (source) {
        file.reading = job::read_shop(*source);
        file.source = *std::move(source);
        return file;
    }
    console.message(job::render({source.error()}, {path.string(), ""}));
    file.reading.shop.faulty = true;
    file.unreadable = true;
    return file;
}

std::vector<ProfileText> profiles_of(const job::Printer& printer) {
    std::set<std::string> names;
    for (const auto* profile : {&printer.profile, &printer.strip_profile, &printer.template_profile})
        if (*profile) names.insert((*profile)->name.value);
    std::vector<ProfileText> profiles;
    profiles.reserve(names.size());
    for (const std::string& name : names) profiles.push_back(load_profile(name));
    return profiles;
}

}  // namespace

std::optional<Inputs> gathered(const JobChoice& choice, Console& console) {
    console.doing("reading the job");
    ShopFile shop = read_shop_file(choice, console);
    tl::expected<job::Source, job::Diagnostic> source =
        choice.from_input() ? job::load_input() : job::load(choice.file);
    if (!source) {
        if (shop.source) console.message(job::render(shop.reading.diagnostics, *shop.source));
        console.message(
            job::render({source.error()}, {choice.from_input() ? "standard input" : choice.file.string(), ""}));
        return {};
    }
    const job::Reading reading = read_as_printed(*source, shop.reading.shop, choice.print);
    if (shop.unreadable) {
        console.message(job::render(reading.diagnostics, *source));
        return {};
    }
    Inputs inputs;
    inputs.print = choice.print;
    // Of a job with mistakes nothing more is needed: they are told where it is read for good.
    if (reading.complete) inputs.profiles = profiles_of(reading.job.printer);
    if (reading.complete && !has_error(reading.diagnostics) && !shop.reading.shop.words.empty()) {
        console.doing("reading the shop's words");
        inputs.words = read_shop_words(*shop.source, shop.reading.shop.words, reading.job.header);
    }
    inputs.job = *std::move(source);
    inputs.shop = std::move(shop.source);
    return inputs;
}

}  // namespace kerfpacket::cli
