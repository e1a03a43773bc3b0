#include "cli/part.h"

#include <gtest/gtest.h>

#include "session.h"

namespace kerfpacket::tests {
namespace {

const std::vector<std::string> kinds{"cover", "strips", "checklist"};

std::string refusal(const cli::PartChoice& choice) {
    try {
        cli::part_of(choice, kinds);
    } catch (const std::runtime_error& error) { return error.what(); }
    return "";
}

TEST(Part, PagesAreNumbersAndRanges) {
    const auto pages = cli::part_of({{}, "7,9-12", {}, {}}, kinds).pages;
    EXPECT_EQ(pages, (std::vector<std::pair<std::size_t, std::size_t>>{{7, 7}, {9, 12}}));
    for (const char* bad : {"x", "0", "7,", ",7", "9-7", "7-", "-7", "1 2", "7,,8", "99999999999999999999999"})
        EXPECT_EQ(refusal({{}, bad, {}, {}}), std::string("--pages ") + bad + ": expected pages like 7,9-12, as the packet's cover lists them");
}

TEST(Part, OfAnUnknownSheetNamesTheNearest) {
    EXPECT_EQ(refusal({{"strip"}, "", {}, {}}), "--only strip: there is no such sheet; did you mean strips?");
    EXPECT_EQ(refusal({{"xyzzy"}, "", {}, {}}),
              "--only xyzzy: there is no such sheet; the sheets are cover, strips, checklist");
    EXPECT_EQ(refusal({{"strips", "cover"}, "", {}, {}}), "");
}

class PartOfAPacket : public testing::Test {
protected:
    PartOfAPacket() { spill(folder_ / "arch.toml", good_job); }
    Outcome build(const std::vector<std::string>& more) const {
        std::vector<std::string> words = {"build", (folder_ / "arch.toml").string()};
        words.insert(words.end(), more.begin(), more.end());
        return run_in_process(words);
    }
    const Folder folder_;
};

TEST_F(PartOfAPacket, IsWrittenBesideTheWholeOne) {
    EXPECT_EQ(build({}).status, 0);
    const std::string whole = slurp(folder_ / "arch.pdf");
    EXPECT_EQ(build({"--only", "safety,checklist"}).status, 0);
    EXPECT_EQ(slurp(folder_ / "arch.pdf"), whole);
    EXPECT_TRUE(fs::exists(folder_ / "arch-part.pdf"));
    EXPECT_LT(slurp(folder_ / "arch-part.pdf").size(), whole.size());
}

TEST_F(PartOfAPacket, ThatHasNoPageIsRefused) {
    const Outcome outcome = build({"--pages", "400", "--strip", "99"});
    EXPECT_EQ(outcome.status, 2);
    EXPECT_EQ(outcome.err,
              "kerfpacket: --pages 400 --strip 99: no page of this packet is that; its cover lists the "
              "pages (--pages 1 prints it), and \"kerfpacket check\" tells the cuts\n");
    EXPECT_FALSE(fs::exists(folder_ / "arch-part.pdf"));
    EXPECT_EQ(build({"--from-cut", "0"}).status, 2);
    EXPECT_EQ(build({"--strip", "-3"}).status, 2);
}

}  // namespace
}  // namespace kerfpacket::tests
