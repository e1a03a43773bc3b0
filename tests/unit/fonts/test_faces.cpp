#include "fonts/faces.h"

#include <array>
#include <fstream>
#include <sstream>
#include <vector>

#include <gtest/gtest.h>

namespace kerfpacket::fonts {
namespace {

const std::filesystem::path fonts_folder = KERFPACKET_BUILD_DIR "/fonts";

const Faces& faces() {
    static const Faces loaded(fonts_folder);
    return loaded;
}

using page::all_faces;

/// The code points that faces.toml promises, read here without toml++.
std::vector<char32_t> promised() {
    std::ifstream in(KERFPACKET_SOURCE_DIR "/fonts/faces.toml");
    std::vector<char32_t> result;
    for (std::string line; std::getline(in, line);) {
        if (!line.starts_with("unicodes = \"")) continue;
        std::istringstream ranges(line.substr(12, line.size() - 13));
        for (std::string range; std::getline(ranges, range, ',');) {
            const std::size_t minus = range.find('-');
            const auto first = static_cast<char32_t>(std::stoul(range, nullptr, 16));
            const auto last = minus == std::string::npos
                                  ? first
                                  : static_cast<char32_t>(std::stoul(range.substr(minus + 1), nullptr, 16));
            for (char32_t c = first; c <= last; ++c) result.push_back(c);
        }
    }
    return result;
}

TEST(Faces, EveryFaceCoversWhatFacesTomlPromises) {
    const std::vector<char32_t> characters = promised();
    ASSERT_GT(characters.size(), 350U);
    for (const Face face : all_faces)
        for (const char32_t c : characters)
            EXPECT_TRUE(faces().covers(face, c))
                << page::face_name(face) << " U+" << std::hex << static_cast<unsigned>(c);
}

TEST(Faces, CoversTheSymbolsOfTheSheets) {
    for (const char32_t c : std::u32string_view(U"×–—′″°±▲►◄▼☐⚠≤≥•…“”‘’→←ÑñáéíóúÁÉÍÓÚüÜ¿¡"))
        for (const Face face : all_faces) EXPECT_TRUE(faces().covers(face, c)) << static_cast<unsigned>(c);
}

// Advances in 1/2048 em, read with a separate script from the hmtx tables of the whole files of Debian's DejaVu 2.37.
TEST(Faces, DigitsAreAsWideAsTheFilesSay) {
    const Length em = Length::points(2048);
    EXPECT_NEAR(faces().width(Face::regular, "0", em).points(), 1303, 1e-9);
    EXPECT_NEAR(faces().width(Face::bold, "0", em).points(), 1425, 1e-9);
    EXPECT_NEAR(faces().width(Face::condensed, "0", em).points(), 1172, 1e-9);
    EXPECT_NEAR(faces().width(Face::condensed_bold, "0", em).points(), 1282, 1e-9);
}

TEST(Faces, FiguresAreTabular) {
    for (const Face face : all_faces)
        for (const char* digit : {"1", "4", "7", "9"})
            EXPECT_EQ(faces().width(face, digit, Length::points(9)), faces().width(face, "0", Length::points(9)));
}

TEST(Faces, WidthIsTheSumOfTheAdvancesAndGrowsWithTheSize) {
    const Length one = faces().width(Face::bold, "7", Length::points(10));
    EXPECT_NEAR(faces().width(Face::bold, "777", Length::points(20)).mm(), 6 * one.mm(), 1e-12);
    EXPECT_EQ(faces().width(Face::bold, "", Length::points(20)), Length{});
}

TEST(Faces, CapitalsAreAsHighAsDejaVuSays) {
    // Top of the outline of H in the glyf tables of the whole files: 1493/2048 em in all four.
    for (const Face face : all_faces) EXPECT_NEAR(faces().cap_height(face), 1493.0 / 2048, 1e-9);
}

TEST(Faces, AMissingCharacterIsNamed) {
    try {
        faces().width(Face::regular, "arc 弧", Length::points(9));
        FAIL() << "nothing thrown";
    } catch (const MissingCharacter& error) {
        EXPECT_EQ(error.character(), U'弧');
        EXPECT_EQ(error.text(), "arc 弧");
        EXPECT_NE(std::string(error.what()).find("U+5F27"), std::string::npos) << error.what();
    }
    EXPECT_THROW(faces().width(Face::regular, "\U0001F600", Length::points(9)), MissingCharacter);
}

TEST(Faces, BytesThatAreNoTextAreRefused) {
    // Cut short, stray continuation, overlong slash, surrogate, above U+10FFFF, Latin-1 (RFC 3629, section 3 and 10).
    for (const char* bytes :
         {"\xC3", "\x80", "\xC0\xAF", "\xE0\x80\xAF", "\xED\xA0\x80", "\xF4\x90\x80\x80", "caf\xE9 "}) {
        try {
            faces().width(Face::regular, bytes, Length::points(9));
            FAIL() << "nothing thrown";
        } catch (const MissingCharacter& error) { EXPECT_EQ(error.character(), MissingCharacter::not_utf8); }
    }
}

TEST(Faces, AFolderWithoutFacesIsToldInPlainWords) {
    try {
        const Faces none(KERFPACKET_SOURCE_DIR "/tests");
        FAIL() << "nothing thrown";
    } catch (const std::runtime_error& error) {
        EXPECT_NE(std::string(error.what()).find("faces.toml"), std::string::npos) << error.what();
    }
}

TEST(Faces, TheCutFilesAreSmall) {
    for (const Face face : all_faces) EXPECT_LT(std::filesystem::file_size(faces().file(face)), 40000U);
}

}  // namespace
}  // namespace kerfpacket::fonts
