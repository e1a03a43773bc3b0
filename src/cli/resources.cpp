#include "cli/resources.h"

#include <stdexcept>

#include <fmt/format.h>

#include "disk/read.h"

namespace kerfpacket::cli {
namespace {

namespace fs = std::filesystem;

fs::path beside_program(const fs::path& home, const char* folder) {
    fs::path wanted = home / folder;
    if (disk::look(wanted).kind == disk::Kind::folder) return wanted;
    throw disk::Failure("the folder " + wanted.string() +
                        " is missing: it belongs beside the program; build or install it again");
}

job::Header only(const std::string& language) {
    job::Header header;
    header.language = language;
    return header;
}

/// A character that no face has is told where the shop wrote it.
void require_printable(const fonts::Faces& faces, const fonts::Words& words) {
    for (const auto& [key, entry] : words.entries())
        for (const std::string& text : entry.texts) try {
                // All faces have the same characters.
                faces.width(page::Face::regular, text, measure::Length::points(1));
            } catch (const fonts::MissingCharacter& missing) {
                throw std::runtime_error(fmt::format("{}: {}: {}", entry.place(), key, missing.what()));
            }
}

}  // namespace

fs::path home_of(const fs::path& program_folder) {
    fs::path installed = (program_folder / KERFPACKET_SHARE).lexically_normal();
    const bool beside = disk::look(program_folder / "templates").kind == disk::Kind::folder;
    return !beside && disk::look(installed / "templates").kind == disk::Kind::folder ? installed : program_folder;
}

Resources::Resources(const fs::path& home, const job::Header& languages, const std::vector<fonts::WordFile>& shop)
    : faces_(beside_program(home, "fonts")),
      words_(beside_program(home, "templates"), languages.language, shop),
      style_(fonts::read_style(home / "templates")) {
    if (!languages.also_in.empty()) second_words_.emplace(home / "templates", languages.also_in, shop);
    if (shop.empty()) return;
    require_printable(faces_, words_);
    if (second_words_) require_printable(faces_, *second_words_);
}

Resources::Resources(const fs::path& home, const std::string& language) : Resources(home, only(language)) {}

}  // namespace kerfpacket::cli
