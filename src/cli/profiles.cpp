#include "cli/profiles.h"

#include <algorithm>
#include <stdexcept>
#include <vector>

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "cli/configuration.h"
#include "job/profile.h"
#include "job/read.h"

namespace kerfpacket::cli {
namespace {

namespace fs = std::filesystem;

constexpr job::FileKind profile_kind{"printer profile", "what printer-check stored"};

fs::path folder() {
    const fs::path settings = configuration_folder();
    return settings.empty() ? fs::path() : settings / "printers";
}

/// Names of the profiles that there are.
std::vector<std::string> known_profiles() {
    std::vector<std::string> names;
    std::error_code none;
    for (const fs::directory_entry& entry : fs::directory_iterator(folder(), none))
        if (entry.path().extension() == ".toml") names.push_back(entry.path().stem().string());
    std::sort(names.begin(), names.end());
    return names;
}

job::Diagnostic unknown(const job::Sourced<std::string>& name) {
    const std::vector<std::string> known = known_profiles();
    const std::string near = job::near_miss(name.value, {known.begin(), known.end()});
    const std::string there = known.empty()
                                  ? "none was stored yet; \"kerfpacket printer-check\" prints the page to measure"
                                  : fmt::format("there are {}", fmt::join(known, ", "));
    return {job::Severity::error, name.at, fmt::format("no printer profile is called \"{}\"", name.value),
            (near.empty() ? "" : fmt::format("did you mean \"{}\"? ", near)) + there};
}

void read(std::optional<job::NamedProfile>& named, job::Diagnostics& wrong) {
    if (!named) return;
    const job::Sourced<std::string>& name = named->name;
    std::error_code ignored;
    if (folder().empty() || !fs::exists(profile_file(name.value), ignored)) {
        wrong.push_back(unknown(name));
        return;
    }
    const fs::path file = profile_file(name.value);
    const auto source = job::load(file, profile_kind);
    job::Diagnostics told;
    if (source) {
        job::ProfileReading reading = job::read_profile(*source, name.value);
        named->measured = std::move(reading.profile);
        told = std::move(reading.diagnostics);
    } else {
        told = {source.error()};
    }
    for (const job::Diagnostic& one : told)
        wrong.push_back({job::Severity::error, name.at,
                         fmt::format("printer profile \"{}\": {}", name.value, one.message),
                         fmt::format("{} ({}, line {})", one.hint, file.string(), one.at.line)});
}

}  // namespace

fs::path profile_file(const std::string& name) {
    if (folder().empty())
        throw std::runtime_error("there is no folder for settings: neither XDG_CONFIG_HOME nor HOME is set");
    return folder() / (name + ".toml");
}

job::Diagnostics read_profiles(job::Printer& printer) {
    job::Diagnostics wrong;
    for (auto* named : {&printer.profile, &printer.strip_profile, &printer.template_profile}) read(*named, wrong);
    if (!printer.profile || !printer.profile->measured) return wrong;
    const job::Margins& m = printer.profile->measured->margins;
    if (!job::leaves_room(printer.media, std::max({m.left, m.right, m.leading, m.trailing})))
        wrong.push_back(
            {job::Severity::error, printer.profile->name.at, "the printer's margins leave too little of this paper",
             "cards need 7-3/4 in between the margins, where those are over 1/4 in: expected wider sheets"});
    return wrong;
}

}  // namespace kerfpacket::cli
