// Replays a corpus: seeds, and whatever the fuzzer once found.
#include <cstdint>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <vector>

#include <gtest/gtest.h>

namespace fs = std::filesystem;

// The name is libFuzzer's. NOLINTNEXTLINE(readability-identifier-naming)
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);

namespace {

TEST(FuzzCorpus, EveryInputIsReadWithoutABrokenPromise) {
    int inputs = 0;
    for (const auto& entry :
         fs::directory_iterator(fs::path(KERFPACKET_SOURCE_DIR) / "tests/fuzz" / KERFPACKET_CORPUS)) {
        std::ifstream stream(entry.path(), std::ios::binary);
        const std::vector<char> bytes(std::istreambuf_iterator<char>(stream), {});
        const std::vector<std::uint8_t> data(bytes.begin(), bytes.end());
        EXPECT_NO_THROW(EXPECT_EQ(LLVMFuzzerTestOneInput(data.data(), data.size()), 0)) << entry.path().filename();
        ++inputs;
    }
    EXPECT_GE(inputs, 18);
}

}  // namespace
