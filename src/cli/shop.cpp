#include "cli/shop.h"

#include "cli/configuration.h"
#include "disk/read.h"

namespace kerfpacket::cli {
namespace {

namespace fs = std::filesystem;

/// True for the shop's file: whatever stands there, be it no file that can be read, but the job file itself. Throws
/// disk::Failure where that cannot be told.
bool counts(const fs::path& file, const fs::path& job_file) {
    const disk::Seen there = disk::look(file);
    return there.kind != disk::Kind::nothing && !there.same_as(disk::look(job_file));
}

}  // namespace

fs::path shop_path(const JobChoice& choice) {
    if (!choice.shop.empty()) return choice.shop;
    fs::path beside = choice.file.parent_path() / "shop.toml";
    if (counts(beside, choice.file)) return beside;
    const fs::path folder = configuration_folder();
    fs::path of_user = folder / "shop.toml";
    return !folder.empty() && counts(of_user, choice.file) ? of_user : fs::path();
}

}  // namespace kerfpacket::cli
