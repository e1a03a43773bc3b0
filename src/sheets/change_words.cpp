// What changed between two revisions, in carpenters' words.
#include <algorithm>
#include <optional>
#include <set>

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "bend/material.h"
#include "job/choices.h"
#include "job/values.h"
#include "sheets/changes.h"
#include "sheets/serves_words.h"
#include "sheets/words/wording.h"

namespace kerfpacket::sheets {
namespace {

/// Marks nearer to each other than this stand in one place: a tenth of the least kerf, far below a pencil line.
constexpr Length same_mark = Length::mm(0.05);
/// A longer list is told by the elements that changed.
constexpr std::size_t short_list = 4;

const job::Value* find(const std::vector<job::Value>& values, const job::Value& like) {
    const auto found =
        std::find_if(values.begin(), values.end(), [&](const job::Value& one) { return one.same_place(like); });
    return found == values.end() ? nullptr : &*found;
}

class Teller {
public:
    Teller(const Kit& kit, const Tape& tape) : kit_(kit), tape_(tape) {}

    /// "reveal", "casing: width", "saw: kerf".
    std::string what(const job::Value& value) const {
        const std::string table = value.table.substr(value.table.rfind('.') + 1);
        // A printer has a profile too.
        const bool section = table == "board" && value.key == "profile";
        std::string name = kit_.words("changes.value_" + (section ? "section" : value.key));
        static const std::set<std::string, std::less<>> plain{"job", "opening", "wall", "liner", "board"};
        if (plain.contains(table)) return name;
        if (table == "material") return value.piece + ": " + name;
        const std::string row = value.row > 1 ? " " + std::to_string(value.row) : "";
        return kit_.words("changes.table_" + table) + row + ": " + name;
    }

    /// Both, each as short as it can be: of long lists only what is not the same in both.
    std::pair<std::string, std::string> texts(const job::Value& was, const job::Value& now) const {
        if (was.elements.size() <= short_list && now.elements.size() <= short_list) return {text(was), text(now)};
        if (was.elements.size() != now.elements.size()) return {brief(was), brief(now)};
        std::vector<std::string> before, after;
        for (std::size_t i = 0; i < was.elements.size(); ++i) {
            if (job::canonical(was.elements[i]) == job::canonical(now.elements[i])) continue;
            before.push_back(element(was, i));
            after.push_back(element(now, i));
        }
        if (before.size() > short_list) {
            const std::string rest = kit_.words("changes.others", {{"n", std::to_string(before.size() - short_list)}});
            before.resize(short_list);
            after.resize(short_list);
            after.push_back(rest);
        }
        return {fmt::format("{}", fmt::join(before, ", ")), fmt::format("{}", fmt::join(after, ", "))};
    }

    /// Of one that is new or was dropped: a long list only by its length.
    std::string brief(const job::Value& value) const {
        return value.elements.size() <= short_list
                   ? text(value)
                   : kit_.words("changes.count", {{"n", std::to_string(value.elements.size())}});
    }

private:
    std::string text(const job::Value& value) const {
        std::vector<std::string> texts;
        for (const job::Element& one : value.elements) texts.push_back(choice_word(value, element_text(one)));
        if (texts.empty()) return kit_.words("changes.nothing");
        return fmt::format("{}", fmt::join(texts, ", "));
    }

    std::string element(const job::Value& value, std::size_t i) const {
        return kit_.words("changes.element",
                          {{"n", std::to_string(i + 1)}, {"value", element_text(value.elements[i])}});
    }

    /// A word that the job file chooses among, in this language; what a person wrote as it is.
    std::string choice_word(const job::Value& value, const std::string& word) const {
        static const std::set<std::string, std::less<>> chosen{
            "measured_to", "side",    "shape",     "fit",    "zero",   "tick",    "strip",
            "kerf_depth",  "spacing", "held",      "kerfs",  "result", "outcome", "sheets",
            "measured",    "toward",  "wall_side", "climbs", "ends"};
        if (!chosen.contains(value.key)) return word;
        std::string key = value.key == "shape" ? job::shape_key(word) : "settings.word_" + word;
        std::replace(key.begin(), key.end(), '-', '_');
        return kit_.words.entries().contains(key) ? kit_.words(key) : word;
    }

    /// Pairs keep their slash.
    std::string element_text(const job::Element& element) const {
        std::vector<std::string> texts;
        for (const job::Scalar& scalar : element)
            texts.push_back(std::visit([&](const auto& one) { return scalar_text(one); }, scalar));
        return fmt::format("{}", fmt::join(texts, " / "));
    }

    std::string scalar_text(Length length) const { return tape_.exact(length); }
    std::string scalar_text(measure::Angle angle) const { return shortest(angle.degrees(), kit_.words); }
    std::string scalar_text(job::Figure figure) const { return shortest(figure.value, kit_.words); }
    std::string scalar_text(job::Percent percent) const { return shortest(percent.fraction * 100, kit_.words) + " %"; }
    std::string scalar_text(const job::Words& words) const { return words.text; }
    std::string scalar_text(const job::MaterialName& material) const {
        const bool ours = bend::find_material(material.name) != nullptr;
        return ours ? kit_.words("materials." + material.name) : material.name;
    }
    std::string scalar_text(const job::Day& day) const { return date_text(day.text, kit_.words); }
    std::string scalar_text(job::Flag /*true*/) const { return kit_.words("changes.yes"); }

    const Kit& kit_;
    const Tape& tape_;
};

const plan::Piece* find(const plan::Plan& plan, const std::string& id) {
    const auto found =
        std::find_if(plan.pieces.begin(), plan.pieces.end(), [&](const plan::Piece& piece) { return piece.id == id; });
    return found == plan.pieces.end() ? nullptr : &*found;
}

bool refused_in(const plan::Plan& plan, const std::string& id) {
    return std::any_of(plan.refused.begin(), plan.refused.end(), [&](const auto& one) { return one.id == id; });
}

bool marks_stand(const plan::Piece& was, const plan::Piece& now) {
    return std::equal(
        was.blank().kerfs.begin(), was.blank().kerfs.end(), now.blank().kerfs.begin(), now.blank().kerfs.end(),
        [](const plan::Kerf& a, const plan::Kerf& b) { return measure::abs(a.mark - b.mark) < same_mark; });
}

std::vector<std::string> effects_of(const plan::Piece& was, const plan::Piece& now, const Kit& kit, const Tape& tape) {
    std::vector<std::string> words;
    const auto changed = [&](const std::string& key, const std::string& before, const std::string& after) {
        if (before != after) words.push_back(kit.words(key, {{"was", before}, {"now", after}}));
    };
    const auto more = static_cast<long>(now.blank().kerfs.size()) - static_cast<long>(was.blank().kerfs.size());
    if (more != 0) {
        const std::string key = more > 0 ? "added" : "fewer";
        const long count = std::abs(more);
        words.push_back(count == 1 ? kit.words("changes.kerf_" + key)
                                   : kit.words("changes.kerfs_" + key, {{"n", std::to_string(count)}}));
    }
    const Length longer = now.blank().length - was.blank().length;
    if (tape.rounded(measure::abs(longer)) > Length())
        words.push_back(kit.words(longer > Length() ? "changes.blank_longer" : "changes.blank_shorter",
                                  {{"length", tape.with_unit(measure::abs(longer))}}));
    changed("changes.depth", tape.exact(was.cut.depth), tape.exact(now.cut.depth));
    changed("changes.spacing", spacing_text(was, kit, tape), spacing_text(now, kit, tape));
    changed("changes.side", kerf_side(was, kit), kerf_side(now, kit));
    changed("changes.verdict", verdict_word(was.bend.verdict, kit), verdict_word(now.bend.verdict, kit));
    const bool stand = marks_stand(was, now);
    const bool alike = words.empty() && stand;
    words.push_back(kit.words(stand ? "changes.marks_stand" : "changes.marks_moved"));
    // Where nothing is changed for the board, that goes without saying.
    std::string serves = serves_words(was, now, kit, tape);
    if (!alike || serves != kit.words("changes.serves")) words.push_back(std::move(serves));
    return words;
}

/// Of a board that is or was of several blanks: each is told by itself, where there are as many as before.
std::vector<Effect> effects_of_blanks(const plan::Piece& was, const plan::Piece& now, const Kit& kit,
                                      const Tape& tape) {
    if (was.blanks.size() != now.blanks.size()) return {{now.id, now.id, {kit.words("changes.other_blanks")}}};
    std::vector<Effect> effects;
    for (std::size_t i = 0; i < now.blanks.size(); ++i)
        effects.push_back({now.blank_id(i), now.id, effects_of(was.of_blank(i), now.of_blank(i), kit, tape)});
    return effects;
}

/// The ids of all openings and walls.
std::set<std::string> pieces_of(const std::vector<job::Value>& values) {
    std::set<std::string> pieces;
    for (const job::Value& value : values)
        if (value.key == "id") pieces.insert(value.piece);
    return pieces;
}

}  // namespace

std::pair<std::string, std::string> value_words(const job::Value& value, const Kit& kit, const Tape& tape) {
    const Teller tell(kit, tape);
    return {tell.what(value), tell.brief(value)};
}

Changes changes_between(const Revision& before, const Revision& now, const Kit& kit) {
    const Tape tape(now.plan.header.units, kit.words);
    const Teller tell(kit, tape);
    const std::vector<job::Value>&old_values = before.values, &values = now.values;
    const std::set<std::string> old_pieces = pieces_of(old_values), pieces = pieces_of(values);
    const auto piece_of = [](const job::Value& value) { return value.table == "material" ? "" : value.piece; };
    // A piece that came or went is told as a whole.
    const auto counts = [&](const job::Value& value) {
        const std::string piece = piece_of(value);
        return !(value.table == "job" && value.key == "revision") &&
               (piece.empty() || (old_pieces.contains(piece) && pieces.contains(piece)));
    };
    Changes changes;
    for (const job::Value& value : values) {
        if (!counts(value)) continue;
        const job::Value* old = find(old_values, value);
        if (old == nullptr) {
            changes.values.push_back({piece_of(value), tell.what(value), "", tell.brief(value)});
        } else if (!old->same_value(value)) {
            auto [was, is] = tell.texts(*old, value);
            changes.values.push_back({piece_of(value), tell.what(value), std::move(was), std::move(is)});
        }
    }
    for (const job::Value& old : old_values)
        if (counts(old) && find(values, old) == nullptr)
            changes.values.push_back({piece_of(old), tell.what(old), tell.brief(old), ""});

    for (const plan::Piece& piece : now.plan.pieces) {
        const plan::Piece* was = find(before.plan, piece.id);
        if (was != nullptr && (was->spliced() || piece.spliced())) {
            for (Effect& effect : effects_of_blanks(*was, piece, kit, tape))
                changes.effects.push_back(std::move(effect));
            continue;
        }
        changes.effects.push_back({piece.id, measured_id(piece),
                                   was != nullptr ? effects_of(*was, piece, kit, tape)
                                                  : std::vector{kit.words(refused_in(before.plan, measured_id(piece))
                                                                              ? "changes.piece_mended"
                                                                              : "changes.piece_new")}});
    }
    for (const plan::Piece& piece : before.plan.pieces)
        if (find(now.plan, piece.id) == nullptr && !refused_in(now.plan, measured_id(piece)))
            changes.effects.push_back({piece.id, measured_id(piece), {kit.words("changes.piece_gone")}});
    for (const plan::Refused& one : now.plan.refused) {
        const bool changed = std::any_of(changes.values.begin(), changes.values.end(),
                                         [&](const ChangedValue& value) { return value.piece == one.id; });
        if (changed || !refused_in(before.plan, one.id))
            changes.effects.push_back({one.id, one.id, {kit.words("changes.piece_refused")}});
    }
    return changes;
}

std::vector<std::string> change_sentences(const Revision& before, const Revision& now, const Kit& kit) {
    const Changes changes = changes_between(before, now, kit);
    std::vector<std::string> sentences;
    const auto value_words = [&](const ChangedValue& value) {
        if (value.was.empty()) return kit.words("changes.is_new", {{"value", value.what}, {"now", value.now}});
        if (value.now.empty()) return kit.words("changes.is_gone", {{"value", value.what}, {"was", value.was}});
        return kit.words("changes.was_now", {{"value", value.what}, {"was", value.was}, {"now", value.now}});
    };
    for (const ChangedValue& value : changes.values)
        if (value.piece.empty()) sentences.push_back(value_words(value));

    std::vector<std::string> told;
    for (const Effect& effect : changes.effects) {
        const bool first = std::find(told.begin(), told.end(), effect.measured) == told.end();
        told.push_back(effect.measured);
        std::vector<std::string> values;
        for (const ChangedValue& value : changes.values)
            if (first && value.piece == effect.measured) values.push_back(value_words(value));
        const bool moved = effect.words != std::vector{kit.words("changes.marks_stand")};
        if (values.empty() && !moved) continue;
        const std::string effects = fmt::format("{}", fmt::join(effect.words, ", "));
        const std::string was_now = fmt::format("{}", fmt::join(values, "; "));
        if (values.empty()) {
            sentences.push_back(fmt::format("{}: {}", effect.piece, effects));
        } else if (effect.piece == effect.measured) {
            sentences.push_back(fmt::format("{}: {}: {}", effect.piece, was_now, effects));
        } else {
            sentences.push_back(fmt::format("{}: {}", effect.measured, was_now));
            sentences.push_back(fmt::format("{}: {}", effect.piece, effects));
        }
    }
    return sentences;
}

}  // namespace kerfpacket::sheets
