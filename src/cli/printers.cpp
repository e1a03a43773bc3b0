#include "cli/printers.h"

#include <algorithm>
#include <stdexcept>

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "cli/configuration.h"
#include "cli/target.h"
#include "disk/filing.h"
#include "disk/lock.h"
#include "disk/read.h"
#include "job/read_profile.h"

namespace kerfpacket::cli {
namespace {

namespace fs = std::filesystem;

/// Empty when the system does not tell.
fs::path printers_folder() {
    const fs::path folder = configuration_folder();
    return folder.empty() ? folder : folder / "printers";
}

fs::path profile_path(const std::string& name) { return printers_folder() / (name + ".toml"); }

/// Names of the profiles that are there, sorted.
std::vector<std::string> profile_names() {
    std::vector<std::string> names;
    for (const fs::path file : disk::names_in(printers_folder()).value_or(std::vector<std::string>{}))
        if (file.extension() == ".toml" && job::is_profile_name(file.stem().string()))
            names.push_back(file.stem().string());
    return names;
}

std::string missing_hint(const std::string& name) {
    if (printers_folder().empty()) return "neither XDG_CONFIG_HOME nor HOME says where the user's folder is";
    const std::vector<std::string> names = profile_names();
    const std::string near = job::near_miss(name, {names.begin(), names.end()});
    std::string hint = near.empty() ? "" : fmt::format("did you mean \"{}\"? ", near);
    hint += fmt::format("looked in {}, ", printers_folder().string());
    if (names.empty()) return hint + "where none is; \"kerfpacket printer-check\" tells how to make one";
    return hint + fmt::format("where there {} {}", names.size() == 1 ? "is" : "are", fmt::join(names, ", "));
}

/// Reads what was measured of a printer that is named.
void measure(job::NamedProfile& named, const std::vector<ProfileText>& profiles, job::Diagnostics& diagnostics,
             Console& console) {
    const std::string& name = named.name.value;
    const std::string whose = named.name.at.line > 0 ? "" : " (the shop file names it)";
    const auto error = [&](const std::string& message, std::string hint) {
        diagnostics.push_back(
            {job::Severity::error, named.name.at, job::Told(message + whose), job::Told(std::move(hint))});
    };
    const auto text = std::find_if(profiles.begin(), profiles.end(), [&](const auto& one) { return one.name == name; });
    if (text == profiles.end()) return error(fmt::format("there is no printer profile \"{}\"", name), "");
    if (!text->source) return error(text->source.error().message, text->source.error().hint);
    const job::ProfileReading profile = job::read_profile(*text->source, name);
    named.measured = profile.profile;
    if (named.measured) return;
    console.message(job::render(profile.diagnostics, *text->source));
    error(fmt::format("the printer profile \"{}\" cannot be used", name),
          fmt::format("what is wrong with {} is told above", text->source->name));
}

}  // namespace

ProfileText load_profile(const std::string& name) {
    const fs::path file = profile_path(name);
    const auto without = [&](std::string message, std::string hint) -> ProfileText {
        return {name, tl::unexpected(job::Diagnostic{
                          job::Severity::error, {}, job::Told(std::move(message)), job::Told(std::move(hint))})};
    };
    if (printers_folder().empty() || disk::look(file).kind == disk::Kind::nothing)
        return without(fmt::format("there is no printer profile \"{}\"", name), missing_hint(name));
    auto source = job::load(file, job::profile_file);
    if (source) return {name, *std::move(source)};
    return without(fmt::format("the printer profile \"{}\" cannot be used: {}", name, source.error().message),
                   fmt::format("{}: {}", file.string(), source.error().hint));
}

void use_profiles(job::Reading& reading, const std::vector<ProfileText>& profiles, Console& console) {
    job::Printer& printer = reading.job.printer;
    for (auto* profile : {&printer.profile, &printer.strip_profile, &printer.template_profile})
        if (*profile) measure(**profile, profiles, reading.diagnostics, console);
}

fs::path store_profile(const job::Profile& profile, bool force, Console& console) {
    if (printers_folder().empty())
        throw std::runtime_error("neither XDG_CONFIG_HOME nor HOME says where the user's folder is");
    fs::path file = profile_path(profile.name);
    disk::NewFolder folder(file.parent_path());
    const disk::Lock lock(file);
    if (!force && disk::look(file).kind != disk::Kind::nothing)
        throw std::runtime_error(fmt::format(
            "the printer profile {} is there already; --force replaces it, another name keeps both", file.string()));
    disk::Filing filing;
    filing.add(file, job::profile_text(profile), force ? disk::Over::anything : disk::Over::nothing);
    put(filing, console);
    folder.keep();
    return file;
}

}  // namespace kerfpacket::cli
