// Replays a corpus: seeds, and whatever the fuzzer once found; and the same with slips of the keyboard, by a fixed
// seed.
#include <algorithm>
#include <array>
#include <cstdint>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <random>
#include <string>
#include <string_view>
#include <vector>

#include <gtest/gtest.h>

namespace fs = std::filesystem;

// The name is libFuzzer's. NOLINTNEXTLINE(readability-identifier-naming)
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);

namespace {

void expect_kept(const std::string& input, const std::string& which) {
    const std::vector<std::uint8_t> data(input.begin(), input.end());
    EXPECT_NO_THROW(EXPECT_EQ(LLVMFuzzerTestOneInput(data.data(), data.size()), 0)) << which << "\n" << input;
}

struct Input {
    std::string name, bytes;
};

std::vector<Input> corpus() {
    std::vector<Input> inputs;
    for (const auto& entry :
         fs::directory_iterator(fs::path(KERFPACKET_SOURCE_DIR) / "tests/fuzz" / KERFPACKET_CORPUS)) {
        std::ifstream stream(entry.path(), std::ios::binary);
        inputs.push_back({entry.path().filename().string(), {std::istreambuf_iterator<char>(stream), {}}});
    }
    std::sort(inputs.begin(), inputs.end(), [](const Input& a, const Input& b) { return a.name < b.name; });
    return inputs;
}

/// Makes up to five slips: a byte another one, something put in, left out, doubled, or gone on with another input.
class Slips {
public:
    explicit Slips(const std::vector<Input>& inputs) : inputs_(inputs) {}

    std::string next() {
        std::string text = any();
        for (std::size_t i = 1 + below(5); i > 0; --i) slip(text);
        return text;
    }

private:
    std::size_t below(std::size_t count) { return random_() % count; }
    const std::string& any() { return inputs_[below(inputs_.size())].bytes; }

    void slip(std::string& text) {
        constexpr std::array<std::string_view, 24> pieces{
            "\"", "'",   "=",   "[",   "]",   "[[",  "{",  ",",   ".",    "\n",     "\r",           "\\",
            "#",  "1/2", "0x1", "1_0", "1e9", "inf", "mm", "deg", "true", "\"\"\"", "\xE2\x80\x9C", "\xC2\xA0"};
        const std::size_t at = below(text.size() + 1);
        switch (below(5)) {
            case 0: text.insert(at, pieces.at(below(pieces.size()))); break;
            case 1: text.erase(at, 1 + below(8)); break;
            case 2: text.insert(at, text.substr(at, 1 + below(40))); break;
            case 3: text = text.substr(0, at) + any().substr(0, below(2000)); break;
            default:
                if (at < text.size()) text[at] = static_cast<char>(random_());
        }
    }

    const std::vector<Input>& inputs_;
    std::mt19937 random_{16};
};

TEST(FuzzCorpus, EveryInputIsReadWithoutABrokenPromise) {
    const std::vector<Input> inputs = corpus();
    for (const Input& input : inputs) expect_kept(input.bytes, input.name);
    EXPECT_GE(inputs.size(), 18U);
}

TEST(FuzzCorpus, SlipsBreakNoPromiseEither) {
    const std::vector<Input> inputs = corpus();
    Slips slips(inputs);
    for (int i = 0; i < 3000 && !HasFailure(); ++i) expect_kept(slips.next(), "slip " + std::to_string(i));
}

}  // namespace
