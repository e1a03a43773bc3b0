#pragma once
// The questions of "start", in the order in which one measures.

#include <string_view>
#include <vector>

#include "cli/start/answers.h"

namespace kerfpacket::cli {

/// How an answer is read and written.
enum class AnswerKind {
    words,
    length,   ///< one, or a word that the reader knows ("solve")
    lengths,  ///< one or two, with a comma
    bare,     ///< a number or a date, without quotes
    choice,   ///< one of a list, by its number or by the job file's word
    yes_no,
    points,  ///< station and height, again and again until nothing is typed
};

/// What of the job file an answer belongs to.
enum class Part { job, saw, printer, piece, board, splay, casing };

/// One row of the table. Its words are ask_NAME, how_NAME and note_NAME of templates/<language>/start.toml; those of
/// its choices NAME_VALUE, with underscores for hyphens.
struct Question {
    std::string_view name;
    Part part = Part::piece;
    std::string_view key{};  ///< of the job file; empty for what is only talk
    AnswerKind kind = AnswerKind::length;
    bool (*when)(const Answers&) = nullptr;  ///< null: always
    std::string_view usual{};                ///< offered where neither shop nor last piece has one
    std::string_view usual_mm{};             ///< the same in a job in millimetres, where it is another
    bool optional = false;                   ///< may be left out
    bool as_before = false;                  ///< what the last piece has is offered
    /// Stands in for an answer that is still to come, so that those before it can be judged; it is never written.
    std::string_view filler{};
    /// Where a length is outside these inches it is asked back; 0 and 0 for never. Common practice, no source.
    double least = 0;
    double most = 0;
    std::vector<std::string_view> choices{};

    bool of_a_piece() const { return part != Part::job && part != Part::saw && part != Part::printer; }
};

const std::vector<Question>& questions();
const Question& question(std::string_view name);

/// What is asked next; null when there is no more. `answers` end with whole answers.
const Question* next_question(const Answers& answers);

}  // namespace kerfpacket::cli
