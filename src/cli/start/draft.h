#pragma once
// Answers become the text of a job file.

#include <map>
#include <string>
#include <string_view>

#include "cli/start/answers.h"
#include "cli/start/with_unit.h"
#include "fonts/words.h"

namespace kerfpacket::cli {

struct Draft {
    std::string text;
    std::map<int, const Question*> question_at;  ///< by the line where its answer begins; null for what is no answer
};

/// What is still to come is filled in where `filled`, so that a reader can judge what is there. The comments are
/// `words`, whose `language` the sheets are printed in too, and above all `remarks`, a line each.
Draft draft(const Answers& answers, const fonts::Words& words, const std::string& language, bool filled,
            const std::vector<std::string>& remarks = {});

/// What stands between commas, without the spaces round it.
std::vector<std::string> between_commas(std::string_view text);

}  // namespace kerfpacket::cli
