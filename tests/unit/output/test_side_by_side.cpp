// The same outcome on however many threads.

#include "disk/side_by_side.h"

#include <gtest/gtest.h>

#include <atomic>
#include <numeric>
#include <string>

#include "output/image.h"
#include "output/pdf.h"
#include "output/sample.h"
#include "scratch.h"

namespace kerfpacket::output {
namespace {

using disk::SideBySide;

TEST(SideBySide, TakesAllInOrderWhateverIsReadyFirst) {
    for (const unsigned threads : {1U, 2U, 16U}) {
        std::vector<std::size_t> taken;
        SideBySide<std::size_t> work(200, threads);
        const auto new_maker = [] {
            return [](std::size_t i) {
                if (i % 7 == 0) std::this_thread::sleep_for(std::chrono::microseconds(300));
                return i * i;
            };
        };
        work.run(new_maker, [&](std::size_t i, std::size_t square) {
            EXPECT_EQ(square, i * i);
            taken.push_back(i);
        });
        std::vector<std::size_t> all(200);
        std::iota(all.begin(), all.end(), 0U);
        EXPECT_EQ(taken, all);
    }
}

TEST(SideBySide, ThrowsWhatTheFirstThatFailsThrewAndTakesNoneAfterIt) {
    for (const unsigned threads : {1U, 4U}) {
        std::size_t taken = 0;
        SideBySide<int> work(100, threads);
        const auto new_maker = [] {
            return [](std::size_t i) {
                if (i == 40 || i == 41) throw std::runtime_error(std::to_string(i));
                return 1;
            };
        };
        const auto run = [&] { work.run(new_maker, [&](std::size_t, int) { ++taken; }); };
        EXPECT_EQ(thrown_by(run), "40");
        EXPECT_EQ(taken, 40U);
    }
}

TEST(SideBySide, KeepsNoMoreThanAFewThatAreNotTaken) {
    std::atomic<std::size_t> made = 0;
    std::size_t most = 0;
    SideBySide<int> work(500, 8);
    const auto new_maker = [&] { return [&](std::size_t) { return static_cast<int>(++made); }; };
    work.run(new_maker, [&](std::size_t i, int) {
        std::this_thread::sleep_for(std::chrono::microseconds(100));
        most = std::max(most, made - i);
    });
    EXPECT_LE(most, 40U);
}

/// Forty pages, each with a character that none before it has.
page::Document many_pages() {
    page::Document document = sample_document();
    for (int i = 0; i < 40; ++i) {
        page::Page page = document.pages.front();
        std::string letter = "\xC4\x80";  // U+0100
        letter[1] = static_cast<char>(0x80 + i);
        page.items.emplace_back(words(letter));
        document.pages.push_back(page);
    }
    return document;
}

TEST(SideBySide, APacketHasTheSameBytesOnOneThreadAndOnSixteen) {
    const page::Document document = many_pages();
    const std::vector<Attachment> files{{"job.toml", "a = 1\n", "a job", "Source"}};
    const std::string alone = pdf(document, test_faces(), files, 1);
    for (int i = 0; i < 3; ++i) EXPECT_TRUE(pdf(document, test_faces(), files, 16) == alone);
    EXPECT_TRUE(pdf(document, test_faces(), files) == alone);
}

TEST(SideBySide, PicturesAreTheSameOnOneThreadAndOnSixteen) {
    const page::Document document = many_pages();
    std::vector<std::string> alone;
    for (const page::Page& page : document.pages) alone.push_back(png(page, test_faces(), 30));
    for (const unsigned threads : {1U, 16U}) {
        std::size_t taken = 0;
        each_png(
            document, test_faces(), 30,
            [&](std::size_t i, const std::string& picture) {
                EXPECT_TRUE(picture == alone.at(i)) << i;
                ++taken;
            },
            threads);
        EXPECT_EQ(taken, alone.size());
    }
}

}  // namespace
}  // namespace kerfpacket::output
