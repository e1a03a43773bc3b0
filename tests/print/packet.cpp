#include "print/packet.h"

#include <fmt/format.h>

namespace kerfpacket::tests {
namespace {

Outcome succeed(const Outcome& outcome) {
    if (outcome.status == 0 || outcome.status == 3) return outcome;
    throw std::runtime_error("kerfpacket failed: " + outcome.err);
}

}  // namespace

std::string harbor_stair(const std::string& spacing) {
    return R"([job]
number = "H-31"
title = "Harbor Stair"
revision = "A"
date = 2026-03-09
units = "in"

[saw]
blade_diameter = "12 in"
kerf = 0.118

[printer]
media = "na_letter_8.5x11in"

[[wall]]
id = "B"
chord = "214 in"
rise = "31-1/4 in"
side = "concave"

[wall.board]
material = "mdf"
thickness = "3/4 in"
width = "7-1/4 in"
trim = "4 in"
spacing = ")" +
           spacing + "\"\n";
}

std::string paper_trial(const std::string& printer, const std::string& board, double degrees) {
    return fmt::format(R"([job]
number = "P-8"
title = "Paper trial"
revision = "A"
date = 2026-03-09
units = "in"

[saw]
blade_diameter = "12 in"
kerf = 0.118

[printer]
{}

[[wall]]
id = "B"
radius = "40 in"
angle = {}
side = "concave"

[wall.board]
material = "mdf"
thickness = "3/4 in"
width = "7-1/4 in"
spacing = "11.3 mm"
{}
)",
                       printer, degrees, board);
}

std::string golden_job(const std::string& name) {
    return slurp(fs::path(KERFPACKET_SOURCE_DIR) / "tests" / "golden" / (name + ".toml"));
}

BuiltPacket::BuiltPacket(const std::string& job_text, const std::vector<std::string>& options) {
    spill(job(), job_text);
    std::vector<std::string> build{KERFPACKET_PROGRAM, "build", job().string(), "--out", pdf().string()};
    build.insert(build.end(), options.begin(), options.end());
    succeed(run_program(build));
    report_ = nlohmann::json::parse(succeed(run_program({KERFPACKET_PROGRAM, "check", "--json", job().string()})).out);
}

std::vector<double> BuiltPacket::kerfs_mm() const {
    std::vector<double> all;
    for (const auto& kerf : report_.at("pieces").at(0).at("kerfs")) all.push_back(kerf.at("at_mm"));
    return all;
}

}  // namespace kerfpacket::tests
