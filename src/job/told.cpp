#include "job/told.h"

#include <algorithm>
#include <utility>

#include "measure/require.h"

namespace kerfpacket::job {
namespace {

const Told& part_of(const std::vector<Part>& parts, std::string_view place) {
    const auto found = std::find_if(parts.begin(), parts.end(), [&](const Part& part) { return part.place == place; });
    measure::require(found != parts.end(), "a place of a sentence is filled");
    return found->told;
}

std::string filled(std::string_view english, const std::vector<Part>& parts) {
    std::string text;
    for (std::size_t open = english.find('{'); open != std::string_view::npos; open = english.find('{')) {
        const std::size_t close = english.find('}', open);
        text.append(english.substr(0, open)).append(part_of(parts, english.substr(open + 1, close - open - 1)));
        english.remove_prefix(close + 1);
    }
    return text.append(english);
}

}  // namespace

Told::Told(std::string english) : std::string(std::move(english)) {}

Part::Part(std::string_view where, Told what) : place(where), told(std::move(what)) {}
Part::Part(std::string_view where, const std::string& name) : Part(where, Told(name)) {}
Part::Part(std::string_view where, int number) : Part(where, figure(std::to_string(number))) {}

Told say(std::string_view key, std::string_view english, std::vector<Part> parts) {
    Told told(filled(english, parts));
    told.key.append("refusals.").append(key);
    told.parts = std::move(parts);
    return told;
}

Told figure(std::string figures) {
    Told told(std::move(figures));
    told.figures = true;
    return told;
}

Told shown(measure::Length value, measure::Unit unit) {
    std::string text = measure::length_text(value, unit);
    text.erase(text.rfind(' '));
    const bool inch = unit == measure::Unit::inch;
    return say("length", "{figures} {unit}",
               {{"figures", figure(std::move(text))},
                {"unit", inch ? word("numbers.inch", "in") : word("numbers.millimetre", "mm")}});
}

Told word(std::string key, std::string english) {
    Told told(std::move(english));
    told.key = std::move(key);
    return told;
}

Told in_a_row(std::string_view key, std::string_view english, std::vector<Told> all) {
    measure::require(!all.empty(), "a row has a first");
    Told row = std::move(all.back());
    for (auto one = std::next(all.rbegin()); one != all.rend(); ++one)
        row = say(key, english, {{"first", std::move(*one)}, {"rest", std::move(row)}});
    return row;
}

}  // namespace kerfpacket::job
