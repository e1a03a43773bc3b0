#pragma once
// What is wrong with a job file: where, what, and what was expected.

#include <string>
#include <string_view>
#include <vector>

#include "job/told.h"
#include "measure/near_miss.h"

namespace kerfpacket::job {

/// Line and column in the job file, both from 1; the column counts characters, not bytes. Line 0: the file as a whole.
struct Position {
    int line = 0;
    int column = 0;
    auto operator<=>(const Position&) const = default;  // NOLINT(modernize-use-nullptr): clang-tidy 14 errs on <=>
};

/// A value and where the job file gives it (line 0: a default, or a value of the shop file).
template <class T>
struct Sourced {
    T value{};
    Position at;
};

/// `refused`: a piece that cannot be made as it is asked for, while the others can.
enum class Severity { error, refused, caution };

struct Diagnostic {
    Severity severity = Severity::error;
    Position at;
    Told message;  ///< what is wrong, without a full stop
    Told hint;     ///< what was expected or would be possible; may be empty
};

using Diagnostics = std::vector<Diagnostic>;

inline void append(Diagnostics& to, const Diagnostics& more) { to.insert(to.end(), more.begin(), more.end()); }

/// A job file's name as the user gave it, and its text.
struct Source {
    std::string name;
    std::string text;
};

/// "name:line:column: error: message", the line, a caret under the column, the hint; sorted by position. The same said
/// of one place is said once, and behind the first hundred stands how many more there are.
std::string render(const Diagnostics& diagnostics, const Source& source);

using measure::near_miss;

}  // namespace kerfpacket::job
