// The code on every sheet, read back from a scan by a library that is no part of this project.

#include <fmt/format.h>
#include <gtest/gtest.h>
#include <zbar.h>

#include <algorithm>
#include <cctype>
#include <iostream>

#include "print/packet.h"
#include "print/raster.h"
#include "support/laid_out.h"

namespace kerfpacket::tests {
namespace {

using namespace measure::literals;

/// What the square codes in a picture say.
std::vector<std::string> read_codes(const Raster& picture) {
    zbar::ImageScanner scanner;
    scanner.set_config(zbar::ZBAR_NONE, zbar::ZBAR_CFG_ENABLE, 0);
    scanner.set_config(zbar::ZBAR_QRCODE, zbar::ZBAR_CFG_ENABLE, 1);
    zbar::Image image(static_cast<unsigned>(picture.width), static_cast<unsigned>(picture.height), "Y800",
                      picture.grey.data(), picture.grey.size());
    scanner.scan(image);
    std::vector<std::string> found;
    for (auto symbol = image.symbol_begin(); symbol != image.symbol_end(); ++symbol)
        found.push_back(symbol->get_data());
    return found;
}

/// Where the page's code stands; a page has one.
Rect code_on(const page::Page& page) {
    std::vector<Rect> found;
    for (const page::Item& item : page.items)
        if (const auto* code = std::get_if<page::CodeItem>(&item)) found.push_back(code->area);
    EXPECT_EQ(found.size(), 1U);
    return found.at(0);
}

/// A part of a printed page as a 150 dpi grey scan of it that lies askew: each dot the mean of four, between dots of
/// the print.
Raster scanned(const Raster& printed, const Rect& part, double degrees) {
    return halved(askew(framed(crop(printed, part)), geom::Angle::degrees(degrees)));
}

struct Filed {
    std::string name;
    std::string job;
    std::string number;  ///< as the code writes it
};

class Codes : public testing::TestWithParam<Filed> {};

TEST_P(Codes, AreReadFromAScanAskew) {
    const BuiltPacket packet(GetParam().job);
    std::string fingerprint = packet.report().at("job").at("fingerprint");
    std::transform(fingerprint.begin(), fingerprint.end(), fingerprint.begin(), toupper);
    const page::Document document = laid_out(packet.job());
    for (std::size_t i = 0; i < document.pages.size(); ++i) {
        std::string sheet = document.pages[i].sheet;
        std::transform(sheet.begin(), sheet.end(), sheet.begin(), toupper);
        const std::string expected = fmt::format("{}/{} {}/{}", GetParam().number, i + 1, sheet, fingerprint);
        const Raster page = draw_page(Renderer::poppler, packet.pdf(), static_cast<int>(i) + 1, 300);
        const Rect corner = code_on(document.pages[i]).grown(0.8_in);
        for (const double degrees : {2.0, -2.0})
            EXPECT_EQ(read_codes(scanned(page, corner, degrees)), std::vector{expected})
                << "page " << i + 1 << ", " << degrees << " degrees askew";
    }
}

/// At 150 dpi, as an office copier has it.
TEST_P(Codes, AreReadFromACopyOfACopy) {
    const BuiltPacket packet(GetParam().job);
    const page::Document document = laid_out(packet.job());
    std::size_t read = 0;
    for (std::size_t i = 0; i < document.pages.size(); ++i) {
        const Raster page = draw_page(Renderer::poppler, packet.pdf(), static_cast<int>(i) + 1, 150);
        const Raster copy = copied_twice(framed(crop(page, code_on(document.pages[i]).grown(0.8_in))));
        const std::vector<std::string> codes = read_codes(copy);
        const std::string expected = fmt::format("{}/{} ", GetParam().number, i + 1);
        EXPECT_TRUE(codes.size() == 1 && codes[0].starts_with(expected)) << "page " << i + 1;
        read += codes.size();
    }
    std::cout << read << " of " << document.pages.size() << " codes read from a copy of a copy\n";
}

/// All codes on the pages of a PDF of so many pages.
std::vector<std::string> codes_of(const fs::path& pdf, int pages) {
    std::vector<std::string> all;
    for (int page = 1; page <= pages; ++page)
        for (std::string& code : read_codes(draw_page(Renderer::poppler, pdf, page, 150))) all.push_back(code);
    std::sort(all.begin(), all.end());
    return all;
}

TEST(Labels, EachHasACodeOfItsOwnThatIsRead) {
    const fs::path house = fs::path(KERFPACKET_SOURCE_DIR) / "tests" / "golden" / "beside" / "house.toml";
    const Folder folder;
    const std::string text = slurp(house);
    const std::size_t from = text.find("[printer.labels]"), to = text.find("[rates]");
    const std::string on_roll =
        std::string(text).replace(from, to - from, "[printer.labels]\nmedia = \"custom_roll_62mm\"\n\n");
    std::vector<std::string> first;
    for (const auto& [job, pages] : {std::pair{text, 2}, std::pair{on_roll, 15}}) {
        spill(folder / "house.toml", job);
        const Outcome made = run_program({KERFPACKET_PROGRAM, "labels", (folder / "house.toml").string(), "--force"});
        ASSERT_NE(made.status, 2) << made.err;
        const std::vector<std::string> codes = codes_of(folder / "house-labels.pdf", pages);
        ASSERT_EQ(codes.size(), 15U);
        EXPECT_EQ(std::adjacent_find(codes.begin(), codes.end()), codes.end());
        for (const std::string& code : codes) EXPECT_EQ(code.find("F-207/B/"), 0U) << code;
        if (first.empty()) first = codes;
        EXPECT_EQ(codes, first);
    }
}

std::string sample(const std::string& name) {
    return slurp(fs::path(KERFPACKET_SOURCE_DIR) / "out-samples" / name / "job.toml");
}

std::string renamed(std::string job, const std::string& number) {
    const std::string was = R"(number = "P-8")";
    return job.replace(job.find(was), was.size(), "number = \"" + number + "\"");
}

INSTANTIATE_TEST_SUITE_P(Packets, Codes,
                         testing::Values(Filed{"AlderCourt", sample("alder-court"), "N-204/A"},
                                         Filed{"HarborStair", sample("harbor-stair"), "H-052/A"},
                                         Filed{"KilnYard", sample("kiln-yard"), "K-083/A"},
                                         Filed{"MillLane", sample("mill-lane"), "M-417/A"},
                                         Filed{"QuarryRoad", sample("quarry-road"), "Q-310/A"},
                                         Filed{"LongNumber", renamed(paper_trial(""), "2026-KW-114/3 Haus Süd 2"),
                                               "2026-KW-114%2F3 Haus S%C3%BCd 2/A"},
                                         Filed{"LabelRoll", paper_trial(R"(strip_media = "custom_roll_1in")"),
                                               "P-8/A"}),
                         [](const auto& filed) { return filed.param.name; });

}  // namespace
}  // namespace kerfpacket::tests
