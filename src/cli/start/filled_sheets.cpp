#include "cli/start/filled_sheets.h"

#include <algorithm>
#include <stdexcept>

#include <fmt/format.h>

#include "cli/start/questions.h"
#include "cli/start/sheet_checks.h"

namespace kerfpacket::cli {
namespace {

/// How often a question was answered of the piece that is asked about, or of the job: points come several times.
std::size_t times_answered(const Talk& talk, const Question& question) {
    const auto& all = talk.answers().all();
    std::size_t times = 0;
    for (std::size_t i = all.size(); i-- > 0;) {
        if (all[i].question == &question) ++times;
        if (question.of_a_piece() && all[i].question->name == "kind") break;
    }
    return times;
}

}  // namespace

FilledSheets::FilledSheets(const std::vector<std::filesystem::path>& files) {
    for (const std::filesystem::path& file : files) {
        std::vector<SheetPage> read;
        try {
            read = sheet_pages(output::read_form(output::load_form(file), file));
        } catch (const output::Refusal& told) {
            throw std::runtime_error(fmt::format("{} {}", file.string(), told.what()));
        }
        const std::size_t before = pages_.size();
        for (SheetPage& page : read) {
            // The first page that says something of the job counts.
            for (SheetAnswer& answer : head_answers(page))
                if ((page.measured() || answer.question != "units") &&
                    std::none_of(head_.begin(), head_.end(),
                                 [&](const SheetAnswer& one) { return one.question == answer.question; }))
                    head_.push_back(std::move(answer));
            if (!page.measured()) continue;
            auto answers = piece_answers(page);
            pages_.push_back({file.string(), std::move(page), std::move(answers)});
        }
        if (pages_.size() == before)
            throw std::runtime_error(
                fmt::format("{} tells of no piece: nothing measured was typed into it", file.string()));
    }
}

std::string FilledSheets::told(const fonts::Words& words) const {
    std::string text;
    for (const Page& page : pages_) {
        text += words("start.sheet_read", {{"file", page.file}}) + "\n";
        for (const SheetBlank& blank : page.page.blanks)
            if (!blank.typed.empty()) text += "  " + blank.told + ": " + blank.typed + "\n";
        for (const SheetBlank& blank : left_empty(page.page, head_))
            text += words("start.sheet_empty", {{"blank", blank.told}}) + "\n";
    }
    return text;
}

std::vector<std::string> FilledSheets::remarks() const {
    std::vector<std::string> all;
    for (const Page& page : pages_) {
        const std::string tag(page.page.tag());
        for (const SheetBlank& blank : not_asked(page.page)) {
            std::string line = blank.told + ": " + blank.typed;
            if (pages_.size() > 1 && !tag.empty()) line.insert(0, tag + ": ");
            all.push_back(std::move(line));
        }
    }
    return all;
}

std::vector<std::string> FilledSheets::doubts(const fonts::Words& words) const {
    std::vector<std::string> all;
    for (const Page& page : pages_)
        for (std::string& doubt : sheet_doubts(page.page, words)) all.push_back(page.file + ": " + doubt);
    return all;
}

std::optional<SheetAnswer> FilledSheets::answer(const Talk& talk) {
    const std::size_t given = talk.answers().all().size();
    if (pages_.empty() || given < waiting_for_) return {};
    const Question& asked = talk.question();
    const auto pieces = static_cast<std::size_t>(talk.answers().pieces());
    const bool begins = asked.name == "kind";
    waiting_for_ = given + 1;
    if (begins && pieces == pages_.size()) return SheetAnswer{"kind", "done", ""};
    if (asked.of_a_piece() && (begins ? pieces : pieces - 1) >= pages_.size()) return {};
    const std::vector<SheetAnswer>& from = asked.of_a_piece() ? pages_[begins ? pieces : pieces - 1].answers : head_;
    std::size_t nth = begins ? 0 : times_answered(talk, asked);
    for (const SheetAnswer& answer : from)
        if (answer.question == asked.name && nth-- == 0) return answer;
    return {};
}

}  // namespace kerfpacket::cli
