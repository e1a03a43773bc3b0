#include "cli/preview.h"

#include <gtest/gtest.h>

#include "session.h"

namespace kerfpacket::tests {
namespace {

class Preview : public testing::Test {
protected:
    Preview() { spill(job(), good_job); }
    fs::path job() const { return folder_ / "arch.toml"; }
    Outcome preview(const std::vector<std::string>& more) const {
        std::vector<std::string> words = {"preview", job().string(), "--dpi", "20"};
        words.insert(words.end(), more.begin(), more.end());
        return run_in_process(words);
    }
    const Folder folder_;
};

TEST_F(Preview, OnePictureAPage) {
    const Outcome outcome = preview({});
    EXPECT_EQ(outcome.status, 0) << outcome.err;
    const fs::path pages = folder_ / "arch-pages";
    EXPECT_TRUE(slurp(pages / "page-01-cover.png").starts_with("\x89PNG"));
    const auto count = std::distance(fs::directory_iterator(pages), fs::directory_iterator());
    EXPECT_EQ(outcome.out, pages.string() + ": " + std::to_string(count) + " pictures\n");
}

TEST_F(Preview, SvgOnDemand) {
    EXPECT_EQ(preview({"--svg", "--out", (folder_ / "svg").string()}).status, 0);
    EXPECT_NE(slurp(folder_ / "svg/page-01-cover.svg").find("<svg"), std::string::npos);
}

TEST_F(Preview, ReplacesNothingUnlessForced) {
    EXPECT_EQ(preview({}).status, 0);
    const fs::path second = folder_ / "arch-pages/page-01-cover.png";
    spill(second, "mine");
    const Outcome outcome = preview({});
    EXPECT_EQ(outcome.status, 2);
    EXPECT_NE(outcome.err.find("--force"), std::string::npos) << outcome.err;
    EXPECT_EQ(slurp(second), "mine");
    EXPECT_EQ(preview({"--force"}).status, 0);
    EXPECT_NE(slurp(second), "mine");
}

TEST_F(Preview, AllPagesOnOnePicture) {
    const Outcome outcome = preview({"--contact-sheet"});
    EXPECT_EQ(outcome.status, 0) << outcome.err;
    const fs::path picture = folder_ / "arch-pages/contact-sheet.png";
    EXPECT_TRUE(outcome.out.starts_with(picture.string() + ": ")) << outcome.out;
    EXPECT_TRUE(slurp(picture).starts_with("\x89PNG"));
    EXPECT_EQ(std::distance(fs::directory_iterator(folder_ / "arch-pages"), fs::directory_iterator()), 1);
    EXPECT_EQ(preview({"--contact-sheet"}).status, 2);
    EXPECT_EQ(preview({"--contact-sheet", "--force"}).status, 0);
    EXPECT_EQ(preview({"--contact-sheet", "--svg", "--force"}).status, 2);
}

}  // namespace
}  // namespace kerfpacket::tests
