#include "cli/resources.h"

#include <stdexcept>

namespace kerfpacket::cli {
namespace {

std::filesystem::path beside_program(const std::filesystem::path& home, const char* folder) {
    std::filesystem::path wanted = home / folder;
    if (std::filesystem::is_directory(wanted)) return wanted;
    throw std::runtime_error("the folder " + wanted.string() +
                             " is missing: it belongs beside the program; build or install it again");
}

}  // namespace

Resources::Resources(const std::filesystem::path& home, const std::string& language)
    : faces_(beside_program(home, "fonts")),
      words_(beside_program(home, "templates"), language),
      style_(fonts::read_style(home / "templates")) {}

}  // namespace kerfpacket::cli
