#include "cli/configuration.h"

#include <cstdlib>

namespace kerfpacket::cli {

namespace fs = std::filesystem;

fs::path configuration_folder() {
    const auto folder = [](const char* variable) {
        const char* value = std::getenv(variable);  // NOLINT(concurrency-mt-unsafe): nothing here sets variables
        const fs::path path = value == nullptr ? "" : value;
        return path.is_absolute() ? path : fs::path();
    };
    if (const fs::path given = folder("XDG_CONFIG_HOME"); !given.empty()) return given / "kerfpacket";
    const fs::path home = folder("HOME");
    return home.empty() ? home : home / ".config" / "kerfpacket";
}

}  // namespace kerfpacket::cli
