#include "text/scan.h"

#include <algorithm>
#include <numeric>
#include <utility>
#include <vector>

namespace kerfpacket::text {
namespace {

class Scanner {
public:
    explicit Scanner(std::string_view text) : text_(text) {}

    std::optional<Mistake> run() {
        if (text_.size() > most_bytes) return refuse("the text is over 1 MB");
        while (at_ < text_.size()) {
            step();
            if (column_ > most_columns) return refuse("the line is longer than 40000 characters");
            if (depth() > most_depth) return refuse("this is nested more than 32 deep");
            if (keys_ > most_keys) return refuse("there are more than 50000 keys");
        }
        return std::nullopt;
    }

private:
    void step() {
        const auto rest = text_.substr(at_);
        if (rest[0] == '\n') return new_line();
        if (!quote_.empty()) return within_string(rest);
        if (comment_) return move(1);
        if (rest[0] == '#') comment_ = true;
        else if (rest.starts_with(R"(""")") || rest.starts_with("'''")) return open_string(rest.substr(0, 3));
        else if (rest[0] == '"' || rest[0] == '\'') return open_string(rest.substr(0, 1));
        else structure(rest[0]);
        move(1);
    }

    void structure(char c) {
        if (c == '.') {
            ++dots_;
        } else if (c == '=') {
            ++keys_;
            levels_.back() = std::exchange(dots_, 0);
            value_ = true;
        } else if (c == ',') {
            levels_.back() = dots_ = 0;
        } else if (c == '[' || c == '{') {
            if (levels_.size() == 1 && !value_) header_ = 0;
            levels_.push_back(std::exchange(dots_, 0));
        } else if ((c == ']' || c == '}') && levels_.size() > 1) {
            levels_.pop_back();
            if (!value_) header_ = std::max(header_, dots_ + 1);
            dots_ = 0;
        }
    }

    /// Parts of the header above, brackets that are open, dots of the keys before them and of the one at hand.
    int depth() const {
        return header_ + static_cast<int>(levels_.size()) - 1 + dots_ +
               std::accumulate(levels_.begin(), levels_.end(), 0);
    }

    void new_line() {
        ++line_;
        column_ = 0;
        move(1);
        comment_ = false;
        if (quote_.size() == 1) quote_ = {};
        if (!quote_.empty()) return;
        dots_ = 0;
        if (levels_.size() > 1) return;
        levels_.back() = 0;
        value_ = false;
    }

    void open_string(std::string_view quote) {
        quote_ = quote;
        move(quote.size());
    }

    void within_string(std::string_view rest) {
        if (rest.starts_with(quote_)) {
            std::size_t size = quote_.size();
            // Up to two quotes may stand before the three that close.
            while (quote_.size() == 3 && size < 5 && size < rest.size() && rest[size] == quote_[0]) ++size;
            move(size);
            quote_ = {};
        } else {
            const bool escape = rest[0] == '\\' && quote_[0] == '"' && rest.size() > 1 && rest[1] != '\n';
            move(escape ? 2 : 1);
        }
    }

    void move(std::size_t bytes) {
        at_ += bytes;
        column_ += static_cast<int>(bytes);
    }

    Mistake refuse(std::string message) const { return {line_, 1, std::move(message), true, false, false}; }

    std::string_view text_;
    std::string_view quote_;
    std::size_t at_ = 0;
    int line_ = 1;
    int column_ = 0;
    int keys_ = 0;
    int header_ = 0;              ///< parts of the last header
    int dots_ = 0;                ///< of the key at hand
    std::vector<int> levels_{0};  ///< a bracket each, the file itself first: dots of the key it is in
    bool value_ = false;          ///< behind the = of this line
    bool comment_ = false;
};

}  // namespace

std::optional<Mistake> unreasonable(std::string_view text) { return Scanner(text).run(); }

}  // namespace kerfpacket::text
