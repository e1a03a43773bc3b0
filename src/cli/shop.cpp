#include "cli/shop.h"

#include <system_error>

#include "cli/configuration.h"

namespace kerfpacket::cli {
namespace {

namespace fs = std::filesystem;

/// True for a file that can be the shop's: one that is there and is not the job file itself.
bool counts(const fs::path& file, const fs::path& job_file) {
    std::error_code ignored;
    return fs::is_regular_file(file, ignored) && !fs::equivalent(file, job_file, ignored);
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
