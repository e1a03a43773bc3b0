// What a talk asks, and what it offers for an answer.

#include <algorithm>

#include <fmt/format.h>

#include "bend/material.h"
#include "cli/start/drawings.h"
#include "cli/start/talk.h"
#include "job/media.h"
#include "sheets/words/tape.h"
#include "sheets/words/wording.h"

namespace kerfpacket::cli {
namespace {

/// The key of templates for a word of the job file.
std::string as_key(std::string word) {
    std::replace(word.begin(), word.end(), '-', '_');
    return word;
}

}  // namespace

std::vector<std::string> Talk::choices() const {
    std::vector<std::string> all(question_->choices.begin(), question_->choices.end());
    if (question_->name == "kind" && answers_.pieces() > 0) all.emplace_back("done");
    if (question_->name != "material") return all;
    for (const bend::Material& material : bend::materials()) all.push_back(material.name);
    for (const job::Material& material : shop_.materials)
        if (std::find(all.begin(), all.end(), material.name.value) == all.end()) all.push_back(material.name.value);
    return all;
}

std::string Talk::choice_words(const std::string& choice) const {
    if (question_->name == "media") return sheets::media_text(job::find_media(choice).value(), kit_);
    if (question_->name == "material")
        return bend::find_material(choice) != nullptr ? kit_.words("materials." + choice) : choice;
    if (question_->name == "shape") return kit_.words("piece.asked_" + as_key(choice));
    return word(question_->name, "_" + as_key(choice));
}

std::string Talk::asking() const {
    std::string text;
    if (question_->kind != AnswerKind::choice || listed_) return text;
    int number = 0;
    for (const std::string& choice : choices()) {
        const auto rows = drawing(question_->name, choice);
        const std::string said = fmt::format("{:>2}  {}\n", ++number, choice_words(choice));
        text += rows[0].empty() ? "  " + said : fmt::format("  {}  {}  {}\n", rows[0], said, rows[1]);
    }
    return text;
}

std::string Talk::prompt() const {
    if (doubted_) return word("yes_or_no", "") + " ";
    const std::optional<Offer> offered = offer();
    const std::string ask =
        question_->name == "kind" && answers_.pieces() > 0 ? word("ask_another", "") : word("ask_", question_->name);
    return ask + (offered ? " [" + offered->shown + "]: " : ": ");
}

std::optional<Talk::Offer> Talk::of_shop() const {
    const sheets::Tape tape(answers_.of_piece("units") == "mm" ? measure::Unit::millimetre : measure::Unit::inch);
    const auto length = [&](const std::optional<job::Sourced<job::Length>>& one) -> std::optional<Offer> {
        if (!one || one->value <= job::Length()) return {};
        return Offer{tape.exact(one->value) + word("of_shop", ""), ""};
    };
    if (question_->name == "blade") return length(shop_.saw.blade_diameter);
    if (question_->name == "kerf") return length(shop_.saw.kerf);
    if (question_->name == "travel") return length(shop_.saw.travel);
    if (question_->name == "rear_limit") return length(shop_.saw.rear_limit);
    if (question_->name == "media" && shop_.printer)
        return Offer{sheets::media_text(shop_.printer->media, kit_) + word("of_shop", ""), ""};
    return {};
}

std::string Talk::next_id() const {
    std::string id = "A";
    const auto used = [&] {
        return std::any_of(answers_.all().begin(), answers_.all().end(),
                           [&](const Answer& one) { return one.question->name == "id" && one.value == id; });
    };
    // After Z come P27 and so on: three characters are all that a tag holds.
    for (int n = 1; used(); ++n) id = n < 26 ? std::string(1, static_cast<char>('A' + n)) : fmt::format("P{}", n + 1);
    return id;
}

std::optional<Talk::Offer> Talk::offer() const {
    const auto shown = [&](const std::string& value) {
        if (value.empty()) return Offer{word("none", ""), ""};
        const std::vector<std::string> listed = choices();
        const bool one = std::find(listed.begin(), listed.end(), value) != listed.end();
        return Offer{one ? choice_words(value) : value, value};
    };
    if (question_->kind == AnswerKind::points) {
        const bool begun = !answers_.empty() && answers_.all().back().question == question_;
        return begun ? std::optional<Offer>({word("no_more", ""), ""}) : std::nullopt;
    }
    if (const auto before = taken_back_.find(question_->name); before != taken_back_.end())
        if (!before->second.empty() || question_->optional) return shown(before->second);
    if (auto shop = of_shop()) return shop;
    if (question_->as_before)
        if (const auto last = answers_.last(question_->name)) return shown(std::string(*last));
    if (question_->name == "id") return shown(next_id());
    if (question_->name == "media")
        return shown(answers_.of_piece("units") == "mm" ? "iso_a4_210x297mm" : "na_letter_8.5x11in");
    if (question_->name == "kind" && answers_.pieces() > 0) return shown("done");
    if (!question_->usual_mm.empty() && answers_.of_piece("units") == "mm")
        return shown(std::string(question_->usual_mm));
    if (!question_->usual.empty()) return shown(std::string(question_->usual));
    if (question_->kind == AnswerKind::yes_no) return Offer{kit_.words.list("start.no_words").front(), ""};
    if (question_->optional) return shown("");
    return {};
}

}  // namespace kerfpacket::cli
