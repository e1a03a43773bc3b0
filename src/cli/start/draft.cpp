#include "cli/start/draft.h"

#include <algorithm>

#include "cli/console.h"
#include "cli/start/questions.h"
#include "job/typed.h"

namespace kerfpacket::cli {
namespace {

using job::toml_words;

std::string trimmed(std::string_view text) {
    const std::size_t from = text.find_first_not_of(" \t");
    if (from == std::string_view::npos) return {};
    return std::string(text.substr(from, text.find_last_not_of(" \t") - from + 1));
}

std::string list_of(std::string_view value, std::string_view units) {
    std::string list;
    for (const std::string& one : between_commas(value))
        list += (list.empty() ? "" : ", ") + toml_words(with_unit(one, units));
    return "[" + list + "]";
}

/// Digits, and what dates and decimals have between them: all else goes within quotes, where it ends no line.
bool is_bare(std::string_view value) {
    return !value.empty() && value.find_first_not_of("0123456789.-") == std::string_view::npos;
}

/// What somebody else typed, so that it ends no comment.
std::string as_comment(std::string text) {
    std::replace(text.begin(), text.end(), '\n', ' ');
    std::replace(text.begin(), text.end(), '\t', ' ');
    return harmless(text);
}

std::string header_of(Part part, bool opening) {
    switch (part) {
        case Part::job: return "[job]";
        case Part::saw: return "[saw]";
        case Part::printer: return "[printer]";
        case Part::piece: return opening ? "[[opening]]" : "[[wall]]";
        case Part::board: return opening ? "[opening.liner]" : "[wall.board]";
        case Part::splay: return "[opening.splay]";
        case Part::casing: return "[opening.casing]";
    }
    return {};
}

/// Puts the lines of a job together, table by table.
class Drafting {
public:
    Drafting(const Answers& answers, const fonts::Words& words, bool filled)
        : answers_(answers), words_(words), filled_(filled), units_(answers.of_piece("units")) {
        if (units_.empty()) units_ = "in";
    }

    Draft draft(const std::string& language, const std::vector<std::string>& remarks) {
        whole_job(Part::job);
        lines_.push_back({"[job]", "language", toml_words(language), words_("start.note_language")});
        questions_.push_back(nullptr);
        whole_job(Part::saw);
        whole_job(Part::printer);
        pieces();
        std::vector<std::string> heading = words_.list("start.heading");
        for (const std::string& remark : remarks) heading.push_back(as_comment(remark));
        const job::TypedJob job = job::typed_job(heading, lines_);
        Draft made{job.text, {}};
        for (std::size_t i = 0; i < lines_.size(); ++i) {
            // What is missing in a table is told where its header stands.
            if (i == 0 || lines_[i].again || lines_[i].header != lines_[i - 1].header)
                made.question_at[job.line_of[i] - 1] = nullptr;
            made.question_at[job.line_of[i]] = questions_[i];
        }
        return made;
    }

private:
    void whole_job(Part part) {
        for (const Question& question : questions()) {
            if (question.part != part) continue;
            if (const auto value = answers_.last(question.name)) line(question, *value, true);
            else fill(question);
        }
    }

    void pieces() {
        const auto& all = answers_.all();
        for (std::size_t i = 0; i < all.size(); ++i)
            if (all[i].question->name == "kind" && all[i].value != "done") piece(i);
    }

    /// The piece whose first answer is that one: its own keys, its board, its splay, its casing.
    void piece(std::size_t from) {
        const auto& all = answers_.all();
        std::size_t end = from + 1;
        while (end < all.size() && all[end].question->name != "kind") ++end;
        opening_ = all[from].value == "opening";
        std::vector<Answer> points;
        for (std::size_t i = from; i < end; ++i)
            if (all[i].question->kind == AnswerKind::points && !all[i].value.empty()) points.push_back(all[i]);
        begins_ = true;
        for (const Part part : {Part::piece, Part::board, Part::splay, Part::casing}) {
            for (std::size_t i = from; i < end; ++i) {
                const Question& question = *all[i].question;
                if (question.part != part) continue;
                if (question.kind != AnswerKind::points) line(question, all[i].value, true, all[i].typed);
                else if (all[i].value.empty()) ordinates(question, points, true);
            }
            // Of the last piece alone is something still to come.
            if (end == all.size()) fill_piece(part, from);
        }
    }

    void fill_piece(Part part, std::size_t from) {
        const auto& all = answers_.all();
        for (const Question& question : questions()) {
            if (question.part != part || (question.when != nullptr && !question.when(answers_))) continue;
            const bool there = std::any_of(all.begin() + static_cast<std::ptrdiff_t>(from), all.end(),
                                           [&](const Answer& one) { return one.question == &question; });
            if (!there) fill(question);
        }
    }

    void fill(const Question& question) {
        if (!filled_) return;
        if (question.kind == AnswerKind::points)
            ordinates(question, {{&question, "0 in, 0 in"}, {&question, "24 in, 6 in"}, {&question, "48 in, 0 in"}},
                      false);
        else line(question, question.filler, false);
    }

    void ordinates(const Question& question, const std::vector<Answer>& points, bool answered) {
        std::string list = "[\n";
        for (const Answer& point : points)
            list += "    " + list_of(point.value, units_) + "," +
                    (point.typed.empty() ? "" : "  # " + typed_words(point.typed)) + "\n";
        put(question, list + "]", answered);
    }

    std::string typed_words(const std::string& typed) const {
        return words_("start.note_typed", {{"typed", as_comment(typed)}});
    }

    void line(const Question& question, std::string_view value, bool answered, const std::string& typed = {}) {
        if (value.empty() || question.key.empty()) return;
        typed_ = typed;
        const std::string text(value);
        switch (question.kind) {
            case AnswerKind::words:
            case AnswerKind::choice: return put(question, toml_words(text), answered);
            case AnswerKind::length: return put(question, toml_words(with_unit(text, units_)), answered);
            case AnswerKind::bare: return put(question, is_bare(text) ? text : toml_words(text), answered);
            case AnswerKind::yes_no: return put(question, text == "yes" ? "true" : "false", answered);
            case AnswerKind::lengths:
                return put(
                    question,
                    between_commas(text).size() == 1 ? toml_words(with_unit(text, units_)) : list_of(text, units_),
                    answered);
            case AnswerKind::points: return;
        }
    }

    void put(const Question& question, std::string value, bool answered) {
        const bool again = question.part == Part::piece && begins_;
        if (again) begins_ = false;
        lines_.push_back(
            {header_of(question.part, opening_), std::string(question.key), std::move(value),
             words_("start.note_" + std::string(question.name)) + (typed_.empty() ? "" : "; " + typed_words(typed_)),
             again});
        typed_.clear();
        questions_.push_back(answered ? &question : nullptr);
    }

    const Answers& answers_;
    const fonts::Words& words_;
    bool filled_;
    std::string_view units_;
    std::vector<job::TypedLine> lines_;
    std::vector<const Question*> questions_;  ///< of each line; null for what was not asked
    std::string typed_;                       ///< of the line that is put next
    bool opening_ = true;
    bool begins_ = false;
};

}  // namespace

std::vector<std::string> between_commas(std::string_view text) {
    std::vector<std::string> parts;
    for (std::size_t from = 0; from <= text.size();) {
        const std::size_t comma = std::min(text.find(',', from), text.size());
        parts.push_back(trimmed(text.substr(from, comma - from)));
        from = comma + 1;
    }
    return parts;
}

Draft draft(const Answers& answers, const fonts::Words& words, const std::string& language, bool filled,
            const std::vector<std::string>& remarks) {
    return Drafting(answers, words, filled).draft(language, remarks);
}

}  // namespace kerfpacket::cli
