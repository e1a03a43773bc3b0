#pragma once
// Keys and values of the normalised job, inside this room only.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "job/job.h"

namespace kerfpacket::job {

/// Writes keys in a fixed order. The text is itself a job file, so that it can be read back.
class Writer {
public:
    void header(std::string_view line);
    void bare(std::string_view key, std::string_view value);
    void words(std::string_view key, std::string_view value);
    void length(std::string_view key, Length value) { bare(key, quoted(value)); }
    void length(std::string_view key, const std::optional<Sourced<Length>>& value) {
        if (value) length(key, value->value);
    }
    void lengths(std::string_view key, const std::vector<Length>& values) { bare(key, list(values)); }
    /// A list with one value on a line: a long one in a row would make a line that the reader refuses.
    void rows(std::string_view key, const std::vector<std::string>& values);

    /// Tenths of a nanometre are noise of the arithmetic; a millionth of a millimetre is far below any tape.
    static std::string quoted(Length value) { return "\"" + measure::mm_text(value, 6) + " mm\""; }
    static std::string quoted(std::string_view words);
    static std::string list(const std::vector<Length>& values);

    std::string take() { return std::move(text_); }

private:
    std::string text_;
};

/// What a liner and a wall board have in common, without the coupon, which is a table of its own.
void write_board(Writer& writer, const Board& board);
/// One as a table, several as a list of tables. `title` without its brackets.
void write_coupons(Writer& writer, const std::string& title, const std::vector<Coupon>& coupons);
/// The user's materials that boards of the job are made of, by name: others change nothing.
void write_materials(Writer& writer, const Job& job);
/// The trials of the materials that boards of the job are made of.
void write_trials(Writer& writer, const Job& job);

}  // namespace kerfpacket::job
