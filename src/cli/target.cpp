#include "cli/target.h"

#include <fmt/format.h>

#include <algorithm>
#include <stdexcept>

#include "cli/shop.h"
#include "disk/lock.h"
#include "disk/read.h"

namespace kerfpacket::cli {
namespace {

namespace fs = std::filesystem;

[[noreturn]] void refuse(const fs::path& target, const std::string& what) {
    throw std::runtime_error(fmt::format("{} {}; choose another name with --out", target.string(), what));
}

bool is_toml(const fs::path& file) {
    std::string ending = file.extension().string();
    std::transform(ending.begin(), ending.end(), ending.begin(),
                   [](char c) { return 'A' <= c && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; });
    return ending == ".toml";
}

/// Throws where the target is one of the files that the job is read from.
void require_no_source(const fs::path& target, const disk::Seen& there, const JobChoice& job) {
    if (is_toml(target) || is_toml(disk::real_place(target)))
        refuse(target, "is the name of a file of figures or words, which is never replaced");
    if (there.kind == disk::Kind::nothing || job.file.empty()) return;
    if (there.same_as(disk::look(job.file))) refuse(target, "is the job file itself");
    const fs::path shop = shop_path(job);
    if (!shop.empty() && there.same_as(disk::look(shop))) refuse(target, "is the shop file itself");
}

}  // namespace

void require_name(const JobChoice& job) {
    if (job.from_input())
        throw std::runtime_error(
            "a job from standard input has no name that its packet could be filed under; give one with --out");
}

fs::path packet_target(const fs::path& out, const JobChoice& job, const char* ending) {
    fs::path target = out;
    if (target.empty()) require_name(job);
    if (target.empty()) target = job.file.parent_path() / (job.file.stem().string() + ending);
    require_no_source(target, disk::look(target), job);
    return target;
}

void require_picture_target(const fs::path& target, const JobChoice& job, bool force) {
    const disk::Seen there = disk::look(target);
    require_no_source(target, there, job);
    if (there.kind == disk::Kind::nothing) return;
    if (there.kind != disk::Kind::file) refuse(target, "is not a file that can be replaced");
    if (!force)
        throw std::runtime_error(
            fmt::format("{} is there already; --force replaces it, --out writes elsewhere", target.string()));
}

void put(disk::Filing& filing, Console& console) {
    for (const std::string& doubt : filing.commit())
        console.doubt(fmt::format("kerfpacket: caution: written, but {}\n", doubt));
    console.written();
}

}  // namespace kerfpacket::cli
