#include "cli/schema.h"

#include <algorithm>

#include "cli/json.h"
#include "job/keys.h"
#include "job/media.h"
#include "measure/require.h"

namespace kerfpacket::cli {
namespace {

using job::Takes;
using Kind = Takes::Kind;
using Words = std::vector<std::string>;

/// Digits, or a fraction of one character: no length goes without.
constexpr const char* figures = "[0-9\u00BC-\u00BE\u2150-\u215E]";

Json text_like(const char* pattern) { return {{"type", "string"}, {"pattern", pattern}}; }

Json any_of(Json one, Json other) { return {{"anyOf", Json::array({std::move(one), std::move(other)})}}; }

Json list_of(Json element, std::size_t least, std::size_t most) {
    Json list{{"type", "array"}, {"items", std::move(element)}};
    if (least > 0) list["minItems"] = least;
    if (most > 0) list["maxItems"] = most;
    return list;
}

Json pair_of(Json first, Json second) {
    return {{"type", "array"},
            {"prefixItems", Json::array({std::move(first), std::move(second)})},
            {"minItems", 2},
            {"maxItems", 2}};
}

/// A bare number is in the job's units, which no schema turns: only its sign is told.
Json length(bool negative) {
    Json bare{{"type", "number"}};
    if (!negative) bare["minimum"] = 0;
    return any_of(text_like(figures), std::move(bare));
}

Json angle() { return any_of(text_like(figures), {{"type", "number"}}); }

Json whole(double least, double most) {
    return {{"type", "integer"}, {"minimum", static_cast<long>(least)}, {"maximum", static_cast<long>(most)}};
}

Json odd(double least, double most) {
    Json number = whole(least, most);
    number["not"] = {{"multipleOf", 2}};
    return number;
}

Json word_of(const std::vector<std::string_view>& words) { return {{"enum", Words(words.begin(), words.end())}}; }

Json paper() {
    Words names;
    for (const job::Media& media : job::all_media()) names.push_back(media.name);
    return any_of({{"enum", names}}, text_like("^custom_.+_[0-9.]+(x[0-9.]+)?(in|mm)$"));
}

Json text_of(std::size_t most) {
    Json text = text_like("\\S");
    text["maxLength"] = most;
    return text;
}

Json value_of(const Takes& takes) {
    const auto least = static_cast<std::size_t>(std::max(takes.least, 0.0));
    const auto most = static_cast<std::size_t>(takes.most);
    switch (takes.kind) {
        case Kind::nothing: return false;
        case Kind::length: return length(takes.least < 0);
        case Kind::lengths: return list_of(length(false), least, most);
        case Kind::one_or_two: return any_of(length(takes.least < 0), list_of(length(takes.least < 0), 2, 2));
        case Kind::pairs: return list_of(pair_of(length(true), length(true)), 0, most);
        case Kind::length_or_word: return any_of(length(false), word_of(takes.words));
        case Kind::plies: return any_of(odd(takes.least, takes.most), list_of(length(false), least, most));
        case Kind::numbered: return list_of(pair_of(whole(1, takes.most), length(false)), 0, 0);
        case Kind::text: return text_of(most);
        case Kind::word: return word_of(takes.words);
        case Kind::list: return list_of(word_of(takes.words), 0, 0);
        case Kind::paper: return paper();
        case Kind::day: return text_like("^[0-9]{4}-[0-9]{2}-[0-9]{2}$");
        case Kind::percent: return text_like("^ *-?[0-9.]+([eE][-+]?[0-9]+)? *% *$");
        case Kind::angle: return angle();
        case Kind::angles: return list_of(angle(), 2, 2);
        case Kind::step_or_angle: return any_of(list_of(length(false), 2, 2), angle());
        case Kind::one_or_two_words: return any_of(word_of(takes.words), list_of(word_of(takes.words), 2, 2));
        case Kind::whole: return whole(takes.least, takes.most);
        case Kind::number: return {{"type", "number"}, {"minimum", takes.least}, {"maximum", takes.most}};
        case Kind::flag: return {{"type", "boolean"}};
        case Kind::table:
        case Kind::tables:
        case Kind::one_or_several: break;
    }
    throw measure::Bug("a table is no value");
}

class Schema {
public:
    explicit Schema(std::vector<job::KnownTable> tables) : tables_(std::move(tables)) {}

    Json table(const std::string& name) const {
        const auto found = std::find_if(tables_.begin(), tables_.end(), [&](auto& one) { return one.name == name; });
        measure::require(found != tables_.end(), "a table that is read asks for keys");
        Json properties = Json::object(), needed = Json::array();
        for (const job::KeyNote& note : found->keys) {
            properties[note.key] = value(note, name.empty() ? note.key : name + "." + note.key);
            if (note.needed) needed.push_back(note.key);
        }
        Json schema{{"type", "object"}, {"properties", std::move(properties)}, {"additionalProperties", false}};
        if (!needed.empty()) schema["required"] = std::move(needed);
        for (const job::Condition& condition : found->conditions)
            if (Json then = consequence(condition, *found); !then.empty())
                schema["allOf"].push_back(
                    {{"if",
                      {{"properties", {{condition.key, {{"const", condition.word}}}}}, {"required", {condition.key}}}},
                     {"then", std::move(then)}});
        return schema;
    }

private:
    Json value(const job::KeyNote& note, const std::string& path) const {
        switch (note.takes.kind) {
            case Kind::table: return table(path);
            case Kind::tables: return list_of(table(path), 1, 0);
            case Kind::one_or_several: return any_of(table(path), list_of(table(path), 1, 0));
            default: break;
        }
        Json value = value_of(note.takes);
        if (!note.example.empty()) value["description"] = "for example " + note.key + " = " + note.example;
        return value;
    }

    static Json consequence(const job::Condition& condition, const job::KnownTable& table) {
        Json then = Json::object();
        for (const job::KeyNote& note : table.keys) {
            if (!note.needed && condition.needed.contains(note.key)) then["required"].push_back(note.key);
            if (condition.refused.contains(note.key)) then["properties"][note.key] = false;
        }
        return then;
    }

    std::vector<job::KnownTable> tables_;
};

}  // namespace

std::string schema_text(const std::string& file) {
    Json schema{{"$schema", "https://json-schema.org/draft/2020-12/schema"}, {"title", "kerfpacket " + file + " file"}};
    schema.update(Schema(file == "shop" ? job::shop_keys() : job::job_keys()).table(""));
    return schema.dump(2) + "\n";
}

Status schema(const SchemaChoice& choice, Console& console) {
    console.result(schema_text(choice.file));
    return Status::done;
}

}  // namespace kerfpacket::cli
