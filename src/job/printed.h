#pragma once
// The words of a job file that are printed as they stand there.

#include <string>
#include <vector>

#include "job/diagnostics.h"

namespace kerfpacket::job {

struct PrintedWords {
    std::string words;
    Position at;            ///< of the value
    bool verbatim = false;  ///< the words stand in the file letter by letter, one column behind `at`
};

/// Number, title, revision, who bent a coupon; none of a text that is not TOML.
std::vector<PrintedWords> printed_words(const Source& source);

}  // namespace kerfpacket::job
