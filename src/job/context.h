#pragma once
// What the reading of one job file or shop file shares: its lines, its unit, the mistakes found; and how a value
// becomes a length.

#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "job/job.h"
#include "job/key_note.h"
#include "text/toml.h"

namespace kerfpacket::job {

/// A key that takes a length: the lengths it accepts, and an example to show.
struct LengthKey {
    std::string_view name;
    Length least;  ///< 0 itself is accepted only when `zero`
    Length most;
    std::string_view example;
    bool zero = false;
};

/// No board or wall is longer; more is a slip of the keyboard.
inline constexpr Length longest = Length::inches(12000);
/// Finer than a tape shows: what is measured is at least this.
inline constexpr Length finest = Length::inches(1.0 / 64);

/// True for a value that was given and could be read.
template <class T>
bool known(const Sourced<T>& value) {
    return value.at.line > 0;
}

/// True for a length of the saw that was given, in the job file or in the shop file: none of them may be 0.
inline bool given(const Sourced<Length>& value) { return value.value > Length(); }

/// Where a value or a key begins.
Position position(const toml::node& node);
Position position(const toml::key& key);
/// The number of a length or an angle that is written without quotes.
std::optional<double> bare_number(const toml::node& node);

/// What the reading of one file shares.
class Context {
public:
    Context(std::string_view text, std::set<int> broken_lines);

    void error(Position at, std::string message, std::string hint = "");
    /// An error that leaves what is read complete, so that later stages may look at it in the same run: a key that
    /// nobody knows.
    void harmless_error(Position at, std::string message, std::string hint);
    const Diagnostics& found() const { return found_; }
    /// Mistakes so far, told here or already told when the text was parsed, but for the harmless ones: something read
    /// without one is complete.
    std::size_t mistakes() const { return found_.size() + passed_over_ - harmless_; }
    /// True for a value on a line whose mistake was told when the text was parsed.
    bool pass_over(const toml::node& value);

    /// Where every key that is asked for is noted; null for nowhere.
    KeyNotes* notes = nullptr;
    /// The unit of bare numbers; none while the file has not said it.
    std::optional<Unit> unit;
    /// The first bare number that stood without a unit.
    std::optional<Position> without_unit() const { return without_unit_; }
    /// A length in the job's unit, for messages: "72 in", "1880 mm".
    std::string shown(Length value) const;
    /// A length in the user's own words where they stand in one line: "2 ft 6 in" with its quotes, or 30.
    std::string as_written(const Sourced<Length>& value) const;
    /// A length from a string or a bare number; none (and an error told) when it is no length that `key` accepts.
    std::optional<Sourced<Length>> length(const toml::node& node, const LengthKey& key);
    /// Degrees from a bare number or "65.123 deg": what a curve turns through, more than 0.
    std::optional<Sourced<Angle>> angle(const toml::node& node, std::string_view name);
    /// The same of a direction: rising to the right positive, and never upright.
    std::optional<Sourced<Angle>> slope(const toml::node& node, std::string_view name);

    /// Notes what is taken for a key that is left out.
    void take_usual(Value value) { usual_.push_back(std::move(value)); }
    /// What was noted since this was last asked.
    std::vector<Value> usual_taken() { return std::exchange(usual_, {}); }

private:
    std::optional<Length> length_in(const toml::node& node, const LengthKey& key);
    void judge_without_unit(const toml::node& node, const LengthKey& key);
    std::optional<double> degrees_in(const toml::node& node, std::string_view name, std::string_view expected);
    /// A bare number as its figures stand in the file; empty where they are none (inf, nan).
    std::string_view figures(const toml::node& node) const;
    Position within(const toml::node& node, std::string_view words, std::size_t offset) const;

    std::vector<std::string_view> lines_;
    std::set<int> broken_lines_;
    Diagnostics found_;
    std::vector<Value> usual_;
    std::optional<Position> without_unit_;
    std::size_t passed_over_ = 0;
    std::size_t harmless_ = 0;
};

/// What was told when the text was parsed and what was found since, by position.
Diagnostics all_told(Diagnostics parsed, const Context& context);

}  // namespace kerfpacket::job
