#pragma once
// The jobs of one house, read and planned for what is done with all of them together.

#include <filesystem>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "cli/console.h"
#include "cli/inputs.h"
#include "cli/street.h"
#include "plan/house.h"

namespace kerfpacket::cli {

struct PlannedHouse {
    std::vector<Planned> jobs;                  ///< one or more
    std::optional<plan::StockPlan> together{};  ///< of several jobs

    const Planned& first() const { return jobs.front(); }
    std::vector<const plan::Plan*> plans() const;
    /// What is laid out and counted; into this.
    plan::House house() const;
    /// The worst of the jobs and of what is bought for them.
    Status status() const;
};

/// Reads and plans each; `how` tells all but the file. Every mistake is told; then there is nothing. Throws
/// std::runtime_error where jobs cannot go together: other units, other stock, one number.
std::optional<PlannedHouse> planned_house(const std::vector<std::filesystem::path>& files, const JobChoice& how,
                                          Console& console);

/// The first of the jobs that has this table. Throws std::runtime_error where another has it otherwise.
const Planned* with_table(const std::vector<Planned>& jobs, const std::string& table,
                          const std::function<bool(const Planned&)>& has,
                          const std::function<bool(const Planned&, const Planned&)>& same);

/// Tells what cannot be cut, at its place in the file of the stock.
void tell_no_room(const plan::StockPlan& plan, const std::vector<Planned>& jobs, Console& console);

/// Tells a character that no face has, in the job that it comes from.
void tell_unprintable(const fonts::MissingCharacter& missing, const fonts::Faces& faces,
                      const std::vector<Planned>& jobs, Console& console);

/// The job under whose name a sheet of all of them is filed: of several none but `out` will do. Throws
/// std::runtime_error where it is not given, or is one of the files that they are read from.
JobChoice filed_under(const std::vector<std::filesystem::path>& files, const JobChoice& how, const std::string& out);

}  // namespace kerfpacket::cli
