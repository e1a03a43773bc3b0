#include "job/parse.h"

namespace kerfpacket::job {
namespace {

constexpr int most_columns = 4000;
constexpr int most_depth = 32;

/// Follows brackets and the dots of keys outside strings and comments. toml++ builds a nested table for every dot of
/// a dotted key and takes them down by recursion, so that a long enough key would end the program.
class Scanner {
public:
    explicit Scanner(std::string_view text) : text_(text) {}

    std::optional<Diagnostic> run() {
        while (at_ < text_.size()) {
            step();
            if (column_ > most_columns) return refuse("the line is longer than 4000 characters");
            if (depth_ > most_depth || dots_ > most_depth) return refuse("this is nested more than 32 deep");
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
        if (c == '.') ++dots_;
        if (c == '[' || c == '{') ++depth_;
        if (c == ']' || c == '}') --depth_;
        if (std::string_view("=,[]{}").find(c) != std::string_view::npos) dots_ = 0;
    }

    void new_line() {
        ++line_;
        column_ = 0;
        move(1);
        comment_ = false;
        dots_ = 0;
        if (quote_.size() == 1) quote_ = {};
    }

    void open_string(std::string_view quote) {
        quote_ = quote;
        move(quote.size());
    }

    void within_string(std::string_view rest) {
        if (rest.starts_with(quote_)) {
            move(quote_.size());
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

    std::optional<Diagnostic> refuse(std::string message) const {
        return Diagnostic{
            Severity::error, {line_, 1}, std::move(message), "a job file has short lines and few brackets"};
    }

    std::string_view text_;
    std::string_view quote_;
    std::size_t at_ = 0;
    int line_ = 1;
    int column_ = 0;
    int depth_ = 0;
    int dots_ = 0;
    bool comment_ = false;
};

}  // namespace

std::optional<Diagnostic> unreasonable(std::string_view text) { return Scanner(text).run(); }

}  // namespace kerfpacket::job
