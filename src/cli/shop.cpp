#include "cli/shop.h"

#include <system_error>

#include "cli/configuration.h"
#include "job/read.h"

namespace kerfpacket::cli {
namespace {

namespace fs = std::filesystem;

/// True for a file that can be the shop's: one that is there and is not the job file itself.
bool counts(const fs::path& file, const fs::path& job_file) {
    std::error_code ignored;
    return fs::is_regular_file(file, ignored) && !fs::equivalent(file, job_file, ignored);
}

/// Empty when there is none.
fs::path shop_path(const JobChoice& choice) {
    if (!choice.shop.empty()) return choice.shop;
    fs::path beside = choice.file.parent_path() / "shop.toml";
    if (counts(beside, choice.file)) return beside;
    const fs::path folder = configuration_folder();
    fs::path of_user = folder / "shop.toml";
    return !folder.empty() && counts(of_user, choice.file) ? of_user : fs::path();
}

}  // namespace

ShopFile read_shop_file(const JobChoice& choice) {
    const fs::path path = shop_path(choice);
    ShopFile file;
    if (path.empty()) return file;
    auto source = job::load(path, job::shop_file);
    if (source) {
        file.reading = job::read_shop(*source);
        file.source = *std::move(source);
    } else {
        file.source.name = path.string();
        file.reading.shop.faulty = true;
        file.reading.diagnostics = {source.error()};
    }
    return file;
}

}  // namespace kerfpacket::cli
