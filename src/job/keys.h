#pragma once
// Every key of a job file and of a shop file, as the readers themselves ask for them.

#include <map>
#include <set>
#include <string>
#include <vector>

#include "job/key_note.h"

namespace kerfpacket::job {

/// What holds in a table in which a key has one of its words: other keys are needed, or do not go with it.
struct Condition {
    std::string key, word;
    std::set<std::string> needed, refused;
};

struct KnownTable {
    std::string name;           ///< "opening.liner"; empty for the file itself
    std::vector<KeyNote> keys;  ///< each once, in the order in which they are read
    std::vector<Condition> conditions;
};

/// The tables of a file, each before those within it. A key is `needed` only where it is needed whatever else the file,
/// or a shop file beside it, says. Nothing of it is written down anywhere: the readers are given files with all the
/// tables that they ask for, empty but for one word, and what they look up is noted.
std::vector<KnownTable> job_keys();
std::vector<KnownTable> shop_keys();

/// For `keys.cpp`: reads a job file, or a shop file, for the sake of the notes.
KeyNotes notes_of_job(const std::string& text, bool with_saw_of_shop);
KeyNotes notes_of_shop(const std::string& text);

}  // namespace kerfpacket::job
