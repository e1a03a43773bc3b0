#pragma once
// Keys and values of the normalised job, inside this room only.

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "job/job.h"
#include "job/values.h"

namespace kerfpacket::job {

/// Writes keys in a fixed order, as text and as values. The text is itself a job file, so that it can be read back.
class Writer {
public:
    /// A table, "[opening.liner]" or "[[opening]]"; what follows is of it. Its piece is what "id" or "name" says in it
    /// or in the table that it belongs to.
    void header(std::string_view line);

    void value(std::string_view key, Scalar scalar);
    void words(std::string_view key, std::string_view text) { value(key, Words{std::string(text)}); }
    void count(std::string_view key, int n) { value(key, Figure{static_cast<double>(n), true}); }
    void figure(std::string_view key, double number) { value(key, Figure{number, false}); }
    void flag(std::string_view key) { value(key, Flag{}); }
    /// False, where left out would not mean the same.
    void off(std::string_view key) { put(key, "false", {}); }
    void length(std::string_view key, Length length) { value(key, length); }
    void length(std::string_view key, const std::optional<Sourced<Length>>& length) {
        if (length) value(key, length->value);
    }
    /// A short list in a row.
    void row(std::string_view key, std::vector<Element> elements);
    void lengths(std::string_view key, const std::vector<Length>& lengths);
    /// A list with one element on a line: a long one in a row would make a line that the reader refuses.
    void rows(std::string_view key, std::vector<Element> elements);

    /// A line that is only a comment.
    void comment(std::string_view words);
    /// A value as a person typed it, in TOML, which is text alone and no value, with what it means beside it.
    void typed(std::string_view key, std::string_view toml, std::string_view comment);
    /// How many lines are written.
    int lines() const;

    Canonical take() { return std::move(written_); }

private:
    void put(std::string_view key, const std::string& text, std::vector<Element> elements);

    Canonical written_;
    std::string table_;
    std::string piece_;
    std::map<std::string, int> rows_;  ///< of tables that may stand several times within a piece or the job
};

/// What a liner and a wall board have in common, without the coupon, which is a table of its own.
void write_board(Writer& writer, const Board& board);
/// One as a table, several as a list of tables. `title` without its brackets.
void write_coupons(Writer& writer, const std::string& title, const std::vector<Coupon>& coupons);
/// The user's materials that boards of the job are made of, by name: others change nothing.
void write_materials(Writer& writer, const Job& job);
/// The stock of the materials that boards of the job are made of.
void write_stock_rows(Writer& writer, const Job& job, std::string_view header, const std::vector<StockBoard>& rows);
/// The trials of the materials that boards of the job are made of.
void write_trials(Writer& writer, const Job& job);

}  // namespace kerfpacket::job
