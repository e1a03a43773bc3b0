#include "disk/near_name.h"

#include <algorithm>

#include "disk/read.h"
#include "measure/near_miss.h"

namespace kerfpacket::disk {

std::string near_name(const fs::path& file, std::string_view ending) try {
    const fs::path folder = file.parent_path();
    const auto all = names_in(folder.empty() ? "." : folder);
    if (!all) return "";
    std::vector<std::string_view> names;
    std::copy_if(all->begin(), all->end(), std::back_inserter(names),
                 [&](std::string_view name) { return name.ends_with(ending); });
    const std::string name = file.filename().string();
    const bool ending_left_out = std::find(names.begin(), names.end(), name + std::string(ending)) != names.end();
    const std::string near = ending_left_out ? name + std::string(ending) : measure::near_miss(name, names);
    return near.empty() ? "" : (folder / near).string();
} catch (const Failure&) { return ""; }

}  // namespace kerfpacket::disk
