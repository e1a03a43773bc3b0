#pragma once
// Text in one byte a character, a code for every character that a document sets in a face.

#include <array>
#include <cstddef>
#include <map>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

namespace kerfpacket::output {

/// A stretch of text in codes of one font. A face is one font of the file, or where a document has more characters
/// than codes, several.
struct Coded {
    std::size_t font = 0;
    std::string bytes;
};

/// The codes of one face. ASCII and Latin-1 are codes of themselves; the others get the codes that are free, as they
/// come. In every font a space is a space.
class Codes {
public:
    /// Gives every character of the text a code. The text is UTF-8 that the face covers.
    void take(std::string_view text);
    /// The text in codes; all of it has been taken.
    std::vector<Coded> coded(std::string_view text) const;
    /// The characters of each font, by their codes.
    const std::vector<std::map<unsigned char, char32_t>>& fonts() const { return fonts_; }

private:
    struct Code {
        std::size_t font = 0;
        unsigned char byte = 0;  ///< 0 where there is none
    };
    Code next_free();
    Code code_of(char32_t character) const;
    void give(char32_t character);

    std::array<Code, 256> low_{};
    std::unordered_map<char32_t, Code> others_;
    std::vector<std::map<unsigned char, char32_t>> fonts_;
};

}  // namespace kerfpacket::output
