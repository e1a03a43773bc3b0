// Objects and their tables as libqpdf reads them back.

#include "output/pdf_file.h"

#include <gtest/gtest.h>

#include "measure/require.h"
#include "output/font_file.h"
#include "output/pdf_text.h"
#include "output/sample.h"
#include "scratch.h"

namespace kerfpacket::output {
namespace {

std::string file_of(PdfFile::Form form, int objects) {
    PdfFile file(form == PdfFile::Form::plain ? "1.4" : "1.7", form);
    const Ref page = file.reserve(), pages = file.reserve(), list = file.reserve();
    std::vector<Ref> numbers;
    for (int i = 0; i < objects; ++i) numbers.push_back(file.add(std::to_string(i)));
    file.put(list, list_of(numbers));
    const Ref content = file.add_stream("", "0 0 m 1 1 l S");
    file.put(page, "<</Type/Page/Parent " + named(pages) + "/MediaBox[0 0 9 9]/Contents " + named(content) + ">>");
    file.put(pages, "<</Type/Pages/Count 1/Kids" + list_of({page}) + ">>");
    const Ref root = file.add("<</Type/Catalog/Pages " + named(pages) + "/Numbers " + named(list) + ">>");
    const Ref information = file.add("<</Title(t)>>");
    return std::move(file).finish(root, information);
}

TEST(PdfFile, EveryObjectIsFoundInBothForms) {
    for (const auto form : {PdfFile::Form::plain, PdfFile::Form::packed}) {
        // More than one stream of objects holds.
        const std::string bytes = file_of(form, 1000);
        const auto pdf = open_pdf(bytes);
        QPDFObjectHandle numbers = pdf->getRoot().getKey("/Numbers");
        ASSERT_EQ(numbers.getArrayNItems(), 1000);
        for (int i = 0; i < 1000; ++i) EXPECT_EQ(numbers.getArrayItem(i).getIntValue(), i);
        EXPECT_EQ(content_of(*pdf, 0), "0 0 m\n1 1 l\nS\n");
        EXPECT_EQ(pdf->getTrailer().getKey("/Info").getKey("/Title").getUTF8Value(), "t");
        Scratch scratch;
        scratch.write("a.pdf", bytes);
        const Ran ran = run("qpdf --check " + (scratch.path() / "a.pdf").string());
        EXPECT_EQ(ran.status, 0) << ran.printed;
    }
}

TEST(PdfFile, AnObjectThatIsWrittenTwiceOrNeverIsABug) {
    for (const auto form : {PdfFile::Form::plain, PdfFile::Form::packed}) {
        PdfFile twice("1.7", form);
        const Ref one = twice.add("1");
        const auto again = [&] {
            twice.put(one, "2");
            std::move(twice).finish(one, one);
        };
        EXPECT_THROW(again(), measure::Bug);
        PdfFile never("1.7", form);
        never.reserve();
        const Ref root = never.add("1");
        EXPECT_THROW(std::move(never).finish(root, root), measure::Bug);
    }
}

TEST(PdfText, NumbersAreShortAndTrue) {
    const auto number = [](double value, int decimals) {
        std::string text;
        add_number(text, value, decimals);
        return text;
    };
    EXPECT_EQ(number(0, 3), "0");
    EXPECT_EQ(number(-0.0004, 3), "0");
    EXPECT_EQ(number(-0.5, 3), "-0.5");
    EXPECT_EQ(number(12.3456, 3), "12.346");
    EXPECT_EQ(number(100, 5), "100");
    EXPECT_EQ(number(-1.00001, 5), "-1.00001");
    EXPECT_EQ(number(0.07, 2), "0.07");
}

TEST(PdfText, StringsComeBackAsTheyWentIn) {
    for (const std::string& text : {std::string("a (b) \\ c"), std::string("señal ½″"), std::string("\U0001F600 x"),
                                    std::string(), std::string("two\nlines\rof it")})
        EXPECT_EQ(QPDFObjectHandle::parse(text_string(text)).getUTF8Value(), text);
    std::string bytes;
    for (int i = 0; i < 256; ++i) bytes += static_cast<char>(i);
    std::string written;
    add_literal(written, bytes);
    EXPECT_EQ(QPDFObjectHandle::parse(written).getStringValue(), bytes);
}

/// The file that is embedded, opened as any program opens a font, beside the one that it was cut from.
TEST(FontFile, KeepsTheGlyphsThatAreAskedForAndTheirWidths) {
    for (const page::Face face :
         {page::Face::regular, page::Face::bold, page::Face::condensed, page::Face::condensed_bold}) {
        const FontFile whole(test_faces().bytes(face));
        // Letters put together of others among them.
        const std::map<unsigned char, char32_t> characters{
            {' ', ' '}, {'A', 'A'}, {0xE9, 0xE9}, {1, 0x158}, {2, 0x2713}};
        const std::string bytes = whole.cut_down_to(characters);
        EXPECT_LT(bytes.size(), 5000U);
        FT_Library library = nullptr;
        ASSERT_EQ(FT_Init_FreeType(&library), 0);
        FT_Face cut = nullptr;
        const auto* data = reinterpret_cast<const FT_Byte*>(bytes.data());
        ASSERT_EQ(FT_New_Memory_Face(library, data, static_cast<FT_Long>(bytes.size()), 0, &cut), 0);
        ASSERT_EQ(cut->num_charmaps, 1);
        EXPECT_EQ(cut->charmaps[0]->platform_id, 1);
        ASSERT_EQ(FT_Set_Charmap(cut, cut->charmaps[0]), 0);
        FT_Face original = nullptr;
        ASSERT_EQ(FT_New_Face(library, test_faces().file(face).c_str(), 0, &original), 0);
        for (const auto& [code, character] : characters) {
            const FT_UInt there = FT_Get_Char_Index(cut, code);
            ASSERT_NE(there, 0U);
            ASSERT_EQ(FT_Load_Glyph(cut, there, FT_LOAD_NO_SCALE), 0);
            ASSERT_EQ(FT_Load_Glyph(original, FT_Get_Char_Index(original, character), FT_LOAD_NO_SCALE), 0);
            const FT_Outline &ours = cut->glyph->outline, &theirs = original->glyph->outline;
            ASSERT_EQ(ours.n_points, theirs.n_points) << static_cast<unsigned>(character);
            for (int i = 0; i < ours.n_points; ++i) {
                EXPECT_EQ(ours.points[i].x, theirs.points[i].x);
                EXPECT_EQ(ours.points[i].y, theirs.points[i].y);
            }
            EXPECT_EQ(cut->glyph->metrics.horiAdvance, original->glyph->metrics.horiAdvance);
        }
        EXPECT_EQ(FT_Get_Char_Index(cut, 'B'), 0U);
        FT_Done_FreeType(library);
    }
}

TEST(FontFile, DamagedFilesAreToldAndNothingElse) {
    const std::string& whole = test_faces().bytes(page::Face::regular);
    EXPECT_THROW(FontFile(std::string("no font")), std::runtime_error);
    for (std::size_t size = 100; size < whole.size(); size += 997) {
        const std::string part = whole.substr(0, size);
        try {
            FontFile(part).cut_down_to({{' ', ' '}, {'A', 'A'}});
        } catch (const std::runtime_error&) { continue; }
    }
}

}  // namespace
}  // namespace kerfpacket::output
