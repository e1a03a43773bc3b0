#pragma once
// What a new revision changed: values, what comes of them, and the sheets that are superseded.

#include <string>
#include <utility>
#include <vector>

#include "job/values.h"
#include "sheets/layout/draft.h"
#include "sheets/layout/page_index.h"
#include "sheets/words/tape.h"

namespace kerfpacket::sheets {

/// A job as it was planned, with what its file said: job::canonical.
struct Revision {
    const plan::Plan& plan;
    const std::vector<job::Value>& values;
};

/// One value of the job that is not what it was, in words; what it was is empty where it is new, what it is where it
/// was left out.
struct ChangedValue {
    std::string piece;  ///< of an opening or wall; empty for the whole job
    std::string what;
    std::string was;
    std::string now;
};

/// What comes of the changes for one board: "3 kerfs added", "blank 1/2 in longer".
struct Effect {
    std::string piece;     ///< id of the board
    std::string measured;  ///< of the opening or wall it belongs to
    std::vector<std::string> words;
};

struct Changes {
    std::vector<ChangedValue> values;
    std::vector<Effect> effects;  ///< of every board of both revisions
};

/// A value of the job and what it is, in words: "span", "29-3/8 in".
std::pair<std::string, std::string> value_words(const job::Value& value, const Kit& kit, const Tape& tape);

/// Lengths are written as the new revision's tape reads them. The revision's own letter is no change.
Changes changes_between(const Revision& before, const Revision& now, const Kit& kit);

/// A sentence for each opening and wall, and for each other value: "B: span was 72 in, now 72-3/8 in: 3 kerfs added,
/// blank 1/2 in longer". None where all values are the same.
std::vector<std::string> change_sentences(const Revision& before, const Revision& now, const Kit& kit);

/// The sheets of a packet that read differently in the revision before, or were not there, by their pages now; and
/// those that there are no more.
struct Superseded {
    std::vector<IndexEntry> sheets;
    std::vector<std::string> gone;
};

/// Adds the pages that tell it all.
void add_changes(Drafts& drafts, const Revision& before, const Revision& now, const Superseded& superseded,
                 const Kit& kit);

}  // namespace kerfpacket::sheets
