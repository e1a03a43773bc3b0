#include "job/keys.h"

#include <algorithm>
#include <functional>
#include <iterator>
#include <optional>

namespace kerfpacket::job {
namespace {

using Kind = Takes::Kind;
using Reader = std::function<KeyNotes(const std::string& text)>;

/// "[[opening]]" as "opening"; the file itself as "".
std::string inside(const std::string& title) {
    const std::size_t from = title.find_first_not_of('[');
    return from == 0 ? "" : title.substr(from, title.find(']') - from);
}

bool is_table(Kind kind) { return kind == Kind::table || kind == Kind::tables || kind == Kind::one_or_several; }

/// A key that has a word.
struct Said {
    std::string table, key, word;
};

/// A file of one file's tables.
class Asked {
public:
    explicit Asked(std::vector<Reader> readers) : readers_(std::move(readers)) {}

    std::vector<KnownTable> run() {
        // Each turn finds the tables within those of the turn before.
        for (std::size_t before = 0; before != tables_.size() || before == 0;) {
            before = tables_.size();
            ask(std::nullopt);
        }
        for (const Said& said : words()) ask(said);
        for (KnownTable& table : tables_) forget_indifferent(table);
        return tables_;
    }

private:
    KnownTable& table(const std::string& name) {
        const auto found = std::find_if(tables_.begin(), tables_.end(), [&](auto& one) { return one.name == name; });
        return found != tables_.end() ? *found : tables_.emplace_back(KnownTable{name, {}, {}});
    }

    /// Every word that a key may have.
    std::vector<Said> words() const {
        std::vector<Said> all;
        for (const KnownTable& table : tables_)
            for (const KeyNote& note : table.keys)
                if (note.takes.kind == Kind::word)
                    for (const std::string_view word : note.takes.words)
                        all.push_back({table.name, note.key, std::string(word)});
        return all;
    }

    std::string text(const std::optional<Said>& said) const {
        const auto line = [&](const std::string& table) {
            return said && said->table == table ? said->key + " = \"" + said->word + "\"\n" : "";
        };
        std::string text = line("");
        for (const KnownTable& within : tables_)
            for (const KeyNote& note : within.keys) {
                if (!is_table(note.takes.kind)) continue;
                const std::string name = within.name.empty() ? note.key : within.name + "." + note.key;
                const bool list = note.takes.kind == Kind::tables;
                text += (list ? "[[" : "[") + name + (list ? "]]\n" : "]\n") + line(name);
            }
        return text;
    }

    void ask(const std::optional<Said>& said) {
        const std::string file = text(said);
        for (const Reader& read : readers_) {
            std::map<std::string, Condition> found;
            for (KeyNote& note : read(file)) take(std::move(note), said, found);
            if (!said) continue;
            for (auto& [name, condition] : found) add(table(name), std::move(condition));
        }
    }

    /// The first time a key is asked for tells what it takes; from then on it is needed only as long as it always is.
    void take(KeyNote note, const std::optional<Said>& said, std::map<std::string, Condition>& found) {
        const std::string name = inside(note.table);
        KnownTable& in = table(name);
        const bool refused = note.takes.kind == Kind::nothing;
        if (said && said->table == name && note.key != said->key && (refused || note.needed)) {
            Condition& condition = found[name];
            condition.key = said->key;
            condition.word = said->word;
            (refused ? condition.refused : condition.needed).insert(note.key);
        }
        const auto known = std::find_if(in.keys.begin(), in.keys.end(), [&](auto& one) { return one.key == note.key; });
        if (known == in.keys.end()) in.keys.push_back(std::move(note));
        else known->needed = known->needed && note.needed;
    }

    /// Of two readers, as with a shop file and without one, what both say.
    static void add(KnownTable& table, Condition condition) {
        const auto same = std::find_if(table.conditions.begin(), table.conditions.end(), [&](const Condition& one) {
            return one.key == condition.key && one.word == condition.word;
        });
        if (same == table.conditions.end()) table.conditions.push_back(std::move(condition));
        else std::erase_if(same->needed, [&](const std::string& key) { return !condition.needed.contains(key); });
    }

    /// A key decides nothing of the others where all its words say the same of them.
    static void forget_indifferent(KnownTable& table) {
        const auto indifferent = [&](const std::string& key) {
            const auto note =
                std::find_if(table.keys.begin(), table.keys.end(), [&](auto& one) { return one.key == key; });
            std::vector<Condition> own;
            std::copy_if(table.conditions.begin(), table.conditions.end(), std::back_inserter(own),
                         [&](const Condition& one) { return one.key == key; });
            return own.size() == note->takes.words.size() &&
                   std::all_of(own.begin(), own.end(), [&](const Condition& one) {
                       return one.needed == own.front().needed && one.refused == own.front().refused;
                   });
        };
        std::set<std::string> forgotten;
        for (const Condition& condition : table.conditions)
            if (indifferent(condition.key)) forgotten.insert(condition.key);
        std::erase_if(table.conditions, [&](const Condition& one) { return forgotten.contains(one.key); });
    }

    std::vector<Reader> readers_;
    std::vector<KnownTable> tables_;
};

}  // namespace

std::vector<KnownTable> job_keys() {
    return Asked({[](const std::string& text) { return notes_of_job(text, false); },
                  [](const std::string& text) { return notes_of_job(text, true); }})
        .run();
}

std::vector<KnownTable> shop_keys() { return Asked({notes_of_shop}).run(); }

}  // namespace kerfpacket::job
