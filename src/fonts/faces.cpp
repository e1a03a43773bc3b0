#include "fonts/faces.h"

#include <algorithm>
#include <array>
#include <optional>
#include <utility>
#include <vector>

#include <fmt/format.h>
#include <ft2build.h>
#include FT_FREETYPE_H
#include FT_ADVANCES_H

#include "disk/read.h"
#include "fonts/toml_file.h"
#include "fonts/utf8.h"

namespace kerfpacket::fonts {
namespace {

/// No face of ours comes near this.
constexpr std::size_t most_face_bytes = 16U << 20U;

/// What is kept of a font file. Widths and heights are parts of the type size.
struct Metrics {
    std::filesystem::path file;
    std::string bytes;
    std::vector<std::pair<char32_t, double>> advances;  ///< in the order of the characters
    double cap_height = 0;
    std::array<double, 128> ascii{};  ///< the same advances at hand, for nearly all that is measured

    std::optional<double> advance(char32_t character) const {
        const auto found = std::lower_bound(advances.begin(), advances.end(), std::pair(character, 0.0));
        return found != advances.end() && found->first == character ? std::optional(found->second) : std::nullopt;
    }
};

[[noreturn]] void unreadable(const std::filesystem::path& file) {
    throw disk::Failure(fmt::format("cannot read the font file {}: build the program again", file.string()));
}

Metrics read_metrics(FT_Library library, const std::filesystem::path& file) {
    Metrics metrics{file, disk::must_read(file, most_face_bytes), {}, 0, {}};
    FT_Face opened = nullptr;
    // FreeType takes bytes; a char is one.
    const auto* const data = reinterpret_cast<const FT_Byte*>(metrics.bytes.data());  // NOLINT(*-reinterpret-cast)
    if (FT_New_Memory_Face(library, data, static_cast<FT_Long>(metrics.bytes.size()), 0, &opened) != 0)
        unreadable(file);
    const std::unique_ptr<FT_FaceRec, decltype(&FT_Done_Face)> face(opened, FT_Done_Face);
    const double em = face->units_per_EM;
    FT_UInt glyph = 0;
    for (FT_ULong c = FT_Get_First_Char(face.get(), &glyph); glyph != 0; c = FT_Get_Next_Char(face.get(), c, &glyph)) {
        FT_Fixed advance = 0;
        if (FT_Get_Advance(face.get(), glyph, FT_LOAD_NO_SCALE, &advance) != 0) unreadable(file);
        metrics.advances.emplace_back(static_cast<char32_t>(c), static_cast<double>(advance) / em);
        if (c < metrics.ascii.size()) metrics.ascii.at(c) = static_cast<double>(advance) / em;
    }
    if (FT_Load_Char(face.get(), 'H', FT_LOAD_NO_SCALE) != 0) unreadable(file);
    metrics.cap_height = static_cast<double>(face->glyph->metrics.horiBearingY) / em;
    return metrics;
}

std::string tell_missing(const std::string& text, char32_t character) {
    if (character == MissingCharacter::not_utf8) return fmt::format("the text \"{}\" is not UTF-8", text);
    return fmt::format("no face can print the character U+{:04X} in \"{}\"", static_cast<unsigned>(character), text);
}

}  // namespace

MissingCharacter::MissingCharacter(std::string text, char32_t character)
    : std::runtime_error(tell_missing(text, character)), text_(std::move(text)), character_(character) {}

struct Faces::Loaded {
    std::filesystem::path folder;
    std::array<Metrics, page::all_faces.size()> metrics;
    const Metrics& of(Face face) const { return metrics.at(static_cast<std::size_t>(face)); }
};

Faces::Faces(const std::filesystem::path& folder) : loaded_(std::make_unique<Loaded>()) {
    FT_Library started = nullptr;
    if (FT_Init_FreeType(&started) != 0) throw std::runtime_error("cannot start FreeType");
    const std::unique_ptr<FT_LibraryRec_, decltype(&FT_Done_FreeType)> library(started, FT_Done_FreeType);
    const std::filesystem::path list = folder / "faces.toml";
    const toml::table table = read_toml(list);
    loaded_->folder = folder;
    for (const Face face : page::all_faces) {
        const char* role = page::face_name(face);
        const toml::table* entry = table[role].as_table();
        if (entry == nullptr) refuse(list, nullptr, role, "is missing");
        loaded_->metrics.at(static_cast<std::size_t>(face)) =
            read_metrics(library.get(), folder / required_text(list, *entry, "file"));
    }
}

Faces::~Faces() = default;

Length Faces::width(Face face, std::string_view text, Length size) const {
    const Metrics& metrics = loaded_->of(face);
    double ems = 0;
    for (std::size_t i = 0; i < text.size();) {
        const auto byte = static_cast<unsigned char>(text[i]);
        if (byte < metrics.ascii.size() && metrics.ascii[byte] > 0) {
            ems += metrics.ascii[byte];
            ++i;
            continue;
        }
        std::string_view rest = text.substr(i);
        const std::optional<char32_t> character = take_character(rest);
        if (!character) throw MissingCharacter(std::string(text), MissingCharacter::not_utf8);
        const std::optional<double> advance = metrics.advance(*character);
        if (!advance) throw MissingCharacter(std::string(text), *character);
        ems += *advance;
        i = text.size() - rest.size();
    }
    return size * ems;
}

bool Faces::covers(Face face, char32_t character) const { return loaded_->of(face).advance(character).has_value(); }

double Faces::cap_height(Face face) const { return loaded_->of(face).cap_height; }

const std::filesystem::path& Faces::file(Face face) const { return loaded_->of(face).file; }

const std::string& Faces::bytes(Face face) const { return loaded_->of(face).bytes; }

std::filesystem::path Faces::colour_profile() const { return loaded_->folder / "Gray.icc"; }

}  // namespace kerfpacket::fonts
