#include "cli/start/talk.h"

#include <algorithm>
#include <array>
#include <iterator>
#include <utility>

#include <fmt/format.h>

#include "cli/start/draft.h"
#include "cli/start/summary.h"

namespace kerfpacket::cli {
namespace {

constexpr int most_strikes = 3;

std::string_view trimmed(std::string_view line) {
    const std::size_t from = line.find_first_not_of(" \t\r");
    return from == std::string_view::npos ? std::string_view()
                                          : line.substr(from, line.find_last_not_of(" \t\r") - from + 1);
}

std::string lower(std::string_view text) {
    std::string small(text);
    for (char& c : small)
        if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    return small;
}

/// Small letters, without the accents of a keyboard that has them: "eliptico".
std::string plain(std::string_view text) {
    std::string small = lower(text);
    constexpr std::array<std::pair<std::string_view, char>, 7> accents{{{"\u00E1", 'a'},
                                                                        {"\u00E9", 'e'},
                                                                        {"\u00ED", 'i'},
                                                                        {"\u00F3", 'o'},
                                                                        {"\u00FA", 'u'},
                                                                        {"\u00FC", 'u'},
                                                                        {"\u00F1", 'n'}}};
    for (const auto& [accented, letter] : accents)
        for (std::size_t at = small.find(accented); at != std::string::npos; at = small.find(accented, at))
            small.replace(at, accented.size(), 1, letter);
    return small;
}

/// Whether a word of the name begins like that; what comes after a colon explains it.
bool has_word(std::string_view name, std::string_view typed) {
    const std::string words = " " + plain(name.substr(0, name.find(':')));
    return words.find(" " + plain(typed)) != std::string::npos;
}

}  // namespace

Talk::Talk(const sheets::Kit& kit, const job::Shop& shop, std::string language)
    : kit_(kit), shop_(shop), language_(std::move(language)), question_(next_question(answers_)) {}

std::string Talk::word(std::string_view start, std::string_view end) const {
    return kit_.words(fmt::format("start.{}{}", start, end));
}

bool Talk::one_of(std::string_view line, std::string_view key) const {
    const std::vector<std::string>& words = kit_.words.list(fmt::format("start.{}", key));
    return std::find(words.begin(), words.end(), lower(line)) != words.end();
}

std::string Talk::hear(std::string_view typed, std::string on_sheet) {
    const std::string_view line = trimmed(typed);
    // A yes is said of what was heard before.
    const bool agreed = doubted_ && (one_of(line, "yes_words") || line == doubted_->second);
    if (!agreed) on_sheet_ = std::move(on_sheet);
    listed_ = true;
    if (line == "?") return word("how_", question_->name) + "\n";
    if (one_of(line, "back_words")) return back();
    if (one_of(line, "done_words")) return done();
    if (doubted_) {
        const auto [asked, value] = *std::exchange(doubted_, std::nullopt);
        if (agreed) {
            const Answers before = answers_;
            const Question* const about = question_;
            if (!asked.about.empty()) answers_ = answers_.with(asked.about, asked.becomes);
            std::string said = take(value, true);
            if (question_ == about) answers_ = before;
            return said;
        }
        if (line.empty() || one_of(line, "no_words")) return "";
    }
    if (line.empty()) return empty_line();
    if (question_->optional && one_of(line, "none_words")) return take("", false);
    if (const auto value = chosen(line)) return take(*value, false);
    return nonsense(word("one_of_these", ""));
}

std::string Talk::empty_line() {
    const std::optional<Offer> offered = offer();
    if (!offered) return nonsense(word("needed", ""));
    // What is offered was judged when it was given.
    return take(offered->value, true);
}

std::optional<std::string> Talk::chosen(std::string_view line) const {
    if (question_->kind == AnswerKind::yes_no) {
        if (one_of(line, "yes_words")) return "yes";
        if (one_of(line, "no_words")) return "no";
        return {};
    }
    if (question_->kind != AnswerKind::choice) return std::string(line);
    const std::vector<std::string> all = choices();
    for (std::size_t i = 0; i < all.size(); ++i)
        if (line == std::to_string(i + 1) || lower(line) == lower(all[i]) || lower(line) == lower(choice_words(all[i])))
            return all[i];
    const bool number = line.find_first_not_of("0123456789") == std::string_view::npos;
    if (number) return {};
    // Other papers and boards have names that the reader knows, or tells what is near.
    if (question_->name == "media" || question_->name == "material") return std::string(line);
    // A word, where one choice alone has it: "opening", "vano".
    constexpr std::size_t least_letters = 3;
    const auto named = [&](const std::string& one) { return has_word(choice_words(one), line); };
    const auto only = std::find_if(all.begin(), all.end(), named);
    if (line.size() < least_letters || only == all.end() || std::any_of(std::next(only), all.end(), named)) return {};
    return *only;
}

std::string Talk::take(std::string value, bool believed) {
    Answers with_it = answers_;
    with_it.add({question_, value, on_sheet_});
    const std::optional<Doubt> doubtful = believed ? std::nullopt : doubt(with_it);
    // What would be right under another name is asked about before it is called wrong.
    const bool other_name = doubtful && !doubtful->about.empty();
    if (!other_name)
        if (const auto wrong = faults(with_it, shop_, kit_.words, language_); !wrong.empty())
            return nonsense(told(wrong));
    if (!doubtful) return accept(std::move(with_it));
    doubted_ = {*doubtful, value};
    return kit_.words("start." + doubtful->key, {{"value", value}}) + "\n";
}

std::string Talk::accept(Answers answers) {
    answers_ = std::move(answers);
    taken_back_.erase(std::string(question_->name));
    strikes_ = 0;
    listed_ = false;
    question_ = next_question(answers_);
    if (question_ == nullptr) {
        state_ = State::finished;
        return "";
    }
    const bool piece_done = question_->name == "kind" && answers_.pieces() > 0;
    if (!piece_done) return "";
    // What was taken back of this piece is nothing to offer for the next one.
    taken_back_.clear();
    return summary();
}

std::string Talk::nonsense(const std::string& said) {
    if (++strikes_ < most_strikes) return said + "\n";
    state_ = State::given_up;
    return said + "\n" + word("how_", question_->name) + "\n" + word("given_up", "") + "\n";
}

std::string Talk::back() {
    strikes_ = 0;
    // The answer that is asked back is not given yet: the same question is asked again.
    if (std::exchange(doubted_, std::nullopt)) return "";
    if (answers_.empty()) return word("nothing_before", "") + "\n";
    listed_ = false;
    Answer last = answers_.take_back();
    if (last.question->kind != AnswerKind::points) taken_back_[std::string(last.question->name)] = last.value;
    question_ = last.question;
    return "";
}

std::string Talk::done() {
    if (question_->name != "kind" || answers_.pieces() == 0) return word("not_done", "") + "\n";
    return take("done", true);
}

std::string Talk::told(const std::vector<Fault>& faults) const {
    std::string text;
    for (const Fault& fault : faults) {
        if (!text.empty()) text += "\n";
        if (fault.question != nullptr && fault.question != question_) text += word("ask_", fault.question->name) + ": ";
        text += fault.message + (fault.hint.empty() ? "" : "\n  " + fault.hint);
    }
    return kit_.words("start.wrong", {{"why", text}});
}

std::string Talk::summary() const {
    return piece_summary(draft(answers_, kit_.words, language_, false).text, std::string(answers_.of_piece("id")),
                         shop_, kit_);
}

std::size_t Talk::resume(const std::vector<SavedAnswer>& saved) {
    std::size_t taken = 0;
    for (const auto& [name, value, typed] : saved) {
        if (question_->name != name) break;
        Answers with_it = answers_;
        with_it.add({question_, value, typed});
        if (!faults(with_it, shop_, kit_.words, language_).empty()) break;
        accept(std::move(with_it));
        ++taken;
        if (state_ != State::asking) break;
    }
    return taken;
}

std::string Talk::job_text() const { return draft(answers_, kit_.words, language_, false, remarks_).text; }

}  // namespace kerfpacket::cli
