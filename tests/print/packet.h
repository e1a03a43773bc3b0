#pragma once
// Packets that the tests measure, built by the program itself.

#include <nlohmann/json.hpp>
#include <string>

#include "support/program.h"

namespace kerfpacket::tests {

/// The Harbor Stair wall with a spacing of its own, as the job file writes it.
std::string harbor_stair(const std::string& spacing);

/// A wall of kerfs an odd 11.3 mm apart, on what these lines of [printer] say; `board` are more lines of its board.
std::string paper_trial(const std::string& printer, const std::string& board = "", double degrees = 50);

/// A job of tests/golden, as it stands there.
std::string golden_job(const std::string& name);

/// A packet as a file, and what `check --json` says of it.
class BuiltPacket {
public:
    /// `options` of the build besides. The coupon's own strip has ticks too: who counts those of boards asks for
    /// "--only", "strips".
    explicit BuiltPacket(const std::string& job_text, const std::vector<std::string>& options = {});
    fs::path job() const { return folder_ / "job.toml"; }
    fs::path pdf() const { return folder_ / "job.pdf"; }
    /// Distance of every kerf from zero, in mm.
    std::vector<double> kerfs_mm() const;
    const nlohmann::json& report() const { return report_; }

private:
    Folder folder_;
    nlohmann::json report_;
};

}  // namespace kerfpacket::tests
