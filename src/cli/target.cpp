#include "cli/target.h"

#include <fmt/format.h>

#include <stdexcept>
#include <system_error>

#include "output/ours.h"

namespace kerfpacket::cli {
namespace {

/// True when a file stands there; throws when something does that can never be replaced.
bool occupied(const std::filesystem::path& target, const std::filesystem::path& job_file) {
    std::error_code ignored;
    if (!std::filesystem::exists(target, ignored)) return false;
    if (!std::filesystem::is_regular_file(target, ignored))
        throw std::runtime_error(
            fmt::format("{} is not a file that can be replaced; choose another name with --out", target.string()));
    if (std::filesystem::equivalent(target, job_file, ignored))
        throw std::runtime_error(
            fmt::format("{} is the job file itself; choose another name with --out", target.string()));
    return true;
}

[[noreturn]] void refuse(const std::filesystem::path& target, const char* what) {
    throw std::runtime_error(
        fmt::format("{} is there already{}; --force replaces it, --out writes elsewhere", target.string(), what));
}

}  // namespace

std::filesystem::path packet_target(const std::filesystem::path& out, const std::filesystem::path& job_file,
                                    const char* ending, bool force) {
    std::filesystem::path target = out;
    if (target.empty()) target = job_file.parent_path() / (job_file.stem().string() + ending);
    if (occupied(target, job_file) && !force && !output::made_by_us(target))
        refuse(target, " and is not a packet that kerfpacket wrote");
    return target;
}

void require_picture_target(const std::filesystem::path& target, const std::filesystem::path& job_file, bool force) {
    if (occupied(target, job_file) && !force) refuse(target, "");
}

}  // namespace kerfpacket::cli
