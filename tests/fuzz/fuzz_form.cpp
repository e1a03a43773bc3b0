// Any bytes as a filled field sheet, or as the fields of one: reading ends, and either says in plain words what is
// wrong, or gives answers of one line each, in which a length is what was typed.
#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

#include "cli/start/sheet_fields.h"
#include "measure/fraction.h"
#include "measure/require.h"
#include "output/foreign_pdf.h"
#include "text/characters.h"
#include "texts.h"

using namespace kerfpacket;

// The name is libFuzzer's. NOLINTNEXTLINE(readability-identifier-naming)
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);

namespace {

/// Names, tips and values in turn, each ended by a zero byte.
output::FilledForm listed(std::string_view bytes) {
    output::FilledForm form;
    while (!bytes.empty()) {
        std::string name = next_text(bytes), tip = next_text(bytes);
        form.fields.push_back({std::move(name), std::move(tip), next_text(bytes)});
    }
    return form;
}

void require_one_line(const std::string& text) {
    measure::require(text.find_first_of("\n\r") == std::string::npos, "an answer is one line");
}

/// In the characters of a keyboard a length is the same as with those of a phone.
void require_same_length(const std::string& typed, measure::Unit unit) {
    const std::string plain = cli::plain_length(typed, unit);
    require_one_line(plain);
    const auto before = measure::parse_length(typed, unit), after = measure::parse_length(plain, unit);
    if (before) measure::require(after && measure::abs(*before - *after) < measure::Length::mm(1e-9), "a length stays");
    measure::require(!text::first_bad_utf8(typed) == !text::first_bad_utf8(plain), "no character is cut in two");
}

void use(const cli::SheetPage& page) {
    for (const cli::SheetBlank& blank : page.blanks) {
        require_one_line(blank.typed);
        require_one_line(blank.told);
        require_same_length(blank.typed, page.unit());
    }
    const std::vector<cli::SheetAnswer> head = cli::head_answers(page);
    for (const auto& answers : {head, cli::piece_answers(page)})
        for (const cli::SheetAnswer& answer : answers) {
            require_one_line(answer.value);
            require_one_line(answer.typed);
            measure::require(!answer.question.empty(), "an answer is to a question");
        }
    for (const cli::SheetBlank& blank : cli::left_empty(page, head))
        measure::require(blank.typed.empty(), "what is empty is empty");
    for (const cli::SheetBlank& blank : cli::not_asked(page))
        measure::require(!blank.typed.empty(), "a remark says something");
}

bool in_plain_words(std::string_view words) {
    return words.starts_with("is ") || words.starts_with("has ") || words.starts_with("was ") ||
           words.starts_with("holds ");
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::string bytes(data, data + size);
    try {
        const bool pdf = bytes.substr(0, 1024).find("%PDF-") != std::string::npos;
        for (const cli::SheetPage& page : cli::sheet_pages(pdf ? output::parse_form(bytes) : listed(bytes))) use(page);
    } catch (const output::Refusal& told) { measure::require(in_plain_words(told.what()), "plain words"); }
    return 0;
}
