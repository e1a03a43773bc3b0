#pragma once
// The talk of "start": a line in, what is said to it out. It knows no terminal and no disk.

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "cli/start/judge.h"
#include "cli/start/questions.h"
#include "cli/start/saved.h"
#include "sheets/layout/kit.h"

namespace kerfpacket::cli {

class Talk {
public:
    /// `kit` in the language of the talk, which the job is written in too. Both must outlive the talk.
    Talk(const sheets::Kit& kit, const job::Shop& shop, std::string language);
    Talk(sheets::Kit&& kit, const job::Shop& shop, std::string language) = delete;

    enum class State { asking, finished, given_up };
    State state() const { return state_; }

    /// What is asked now: the choices, each with a drawing where it has one; and the line that is answered behind.
    std::string asking() const;
    std::string prompt() const;
    /// Takes a line; what is said to it, lines of text or nothing. `on_sheet`: how it stands on a filled field sheet.
    std::string hear(std::string_view typed, std::string on_sheet = {});

    /// Answers of an earlier talk, each by the name of its question, as far as they still fit. How many did.
    std::size_t resume(const std::vector<SavedAnswer>& saved);

    const Answers& answers() const { return answers_; }
    /// What is asked now, while something is.
    const Question& question() const { return *question_; }
    /// Comments for the head of the job file, a line each.
    void remark(const std::vector<std::string>& lines) { remarks_.insert(remarks_.end(), lines.begin(), lines.end()); }
    /// The job file, once it is finished.
    std::string job_text() const;

private:
    /// What an empty line means, and how that is shown; none where there must be an answer.
    struct Offer {
        std::string shown;
        std::string value;
    };
    std::optional<Offer> offer() const;
    std::optional<Offer> of_shop() const;
    std::string next_id() const;
    std::vector<std::string> choices() const;
    std::string choice_words(const std::string& choice) const;

    std::string back();
    std::string done();
    std::string empty_line();
    std::string take(std::string value, bool believed);
    std::string accept(Answers answers);
    std::string nonsense(const std::string& said);
    std::optional<std::string> chosen(std::string_view line) const;
    std::string told(const std::vector<Fault>& faults) const;
    std::string summary() const;
    bool one_of(std::string_view line, std::string_view key) const;
    std::string word(std::string_view start, std::string_view end) const;

    const sheets::Kit& kit_;
    const job::Shop& shop_;
    std::string language_;
    Answers answers_;
    std::vector<std::string> remarks_;
    const Question* question_;
    std::map<std::string, std::string, std::less<>> taken_back_;  ///< offered again, by question
    std::optional<std::pair<Doubt, std::string>> doubted_;        ///< and the value that it is about
    std::string on_sheet_;                                        ///< of the line that is heard, or doubted
    int strikes_ = 0;
    bool listed_ = false;  ///< the choices stand on the screen already
    State state_ = State::asking;
};

}  // namespace kerfpacket::cli
