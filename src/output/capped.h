#pragma once
// What is unpacked of a file that may be anything, as far as it is not too much.

#include <stdexcept>
#include <string>
#include <utility>

#include "output/qpdf.h"

namespace kerfpacket::output {

/// Keeps what comes out of a stream, and stops it where it becomes more than `most` bytes.
class Capped : public Pipeline {
public:
    explicit Capped(std::size_t most) : Pipeline("capped", nullptr), most_(most) {}
    void write(unsigned char const* data, std::size_t size) override {
        over_ = over_ || size > most_ - text_.size();
        if (over_) throw std::runtime_error("too much");
        text_.append(reinterpret_cast<const char*>(data), size);  // NOLINT(*-reinterpret-cast): a char is a byte
    }
    void finish() override {}

    bool over() const { return over_; }
    std::string take() { return std::move(text_); }

private:
    std::size_t most_;
    std::string text_;
    bool over_ = false;
};

}  // namespace kerfpacket::output
