#pragma once
// The font faces of the packet: which file, how wide its letters are, which characters it has.

#include <filesystem>
#include <memory>
#include <stdexcept>
#include <string>
#include <string_view>

#include "measure/length.h"
#include "page/document.h"

namespace kerfpacket::fonts {

using measure::Length;
using page::Face;

/// A character that no face can print, or text that is not UTF-8.
class MissingCharacter : public std::runtime_error {
public:
    /// Stands for bytes that are no character at all.
    static constexpr char32_t not_utf8 = 0xFFFFFFFF;

    MissingCharacter(std::string text, char32_t character);
    const std::string& text() const { return text_; }
    char32_t character() const { return character_; }

private:
    std::string text_;
    char32_t character_;
};

class Faces {
public:
    /// Reads faces.toml and the four files it names from a folder; throws std::runtime_error in plain words.
    explicit Faces(const std::filesystem::path& folder);
    ~Faces();
    Faces(const Faces&) = delete;
    Faces& operator=(const Faces&) = delete;

    /// Width of a line of UTF-8 text at a type size; throws MissingCharacter.
    Length width(Face face, std::string_view text, Length size) const;
    bool covers(Face face, char32_t character) const;
    /// Height of a capital letter as a part of the type size.
    double cap_height(Face face) const;
    const std::filesystem::path& file(Face face) const;
    /// The font file itself.
    const std::string& bytes(Face face) const;
    /// The ICC profile of gray, beside the faces: what black is, for a PDF that is kept.
    std::filesystem::path colour_profile() const;

private:
    struct Loaded;
    std::unique_ptr<Loaded> loaded_;
};

}  // namespace kerfpacket::fonts
