#include "job/writer.h"

#include <algorithm>
#include <utility>

#include "job/text.h"

namespace kerfpacket::job {

void Writer::header(std::string_view line) {
    written_.text.append("\n").append(line).append("\n");
    const std::size_t from = line.find_first_not_of('[');
    table_ = line.substr(from, line.find(']') - from);
    const bool of_a_piece = table_.starts_with("opening.") || table_.starts_with("wall.");
    if (!of_a_piece) piece_.clear();
    ++rows_[table_ + " " + piece_];
}

void Writer::put(std::string_view key, const std::string& text, std::vector<Element> elements) {
    written_.text.append(key).append(" = ").append(text).append("\n");
    if (key == "id" || key == "name") piece_ = std::get<Words>(elements.at(0).at(0)).text;
    const bool of_many = table_ == "trial" || table_.starts_with("stock.") || table_.ends_with(".coupon");
    const int row = of_many ? rows_[table_ + " " + piece_] : 1;
    written_.values.push_back({table_, piece_, std::string(key), std::move(elements), row});
}

void Writer::value(std::string_view key, Scalar scalar) {
    const std::string text = canonical(scalar);
    put(key, text, {{std::move(scalar)}});
}

void Writer::row(std::string_view key, std::vector<Element> elements) {
    std::string list = "[";
    for (const Element& element : elements) list += (list.size() > 1 ? ", " : "") + canonical(element);
    put(key, list + "]", std::move(elements));
}

void Writer::lengths(std::string_view key, const std::vector<Length>& lengths) {
    std::vector<Element> elements;
    elements.reserve(lengths.size());
    for (const Length length : lengths) elements.push_back({length});
    row(key, std::move(elements));
}

void Writer::rows(std::string_view key, std::vector<Element> elements) {
    std::string list = "[\n";
    for (const Element& element : elements) list.append("    ").append(canonical(element)).append(",\n");
    put(key, list + "]", std::move(elements));
}

void Writer::comment(std::string_view words) { written_.text.append("# ").append(words).append("\n"); }

void Writer::typed(std::string_view key, std::string_view toml, std::string_view comment) {
    constexpr std::size_t column = 34;
    std::string line = std::string(key) + " = ";
    // A list of several lines has its comment where it begins, so that nothing stands behind its last bracket.
    const std::size_t first = std::min(toml.find('\n'), toml.size());
    line += toml.substr(0, first);
    if (!comment.empty()) {
        const std::size_t wide = characters(line);
        line += std::string(wide < column ? column - wide : 2, ' ') + "# " + std::string(comment);
    }
    written_.text.append(line).append(toml.substr(first)).append("\n");
}

int Writer::lines() const { return static_cast<int>(std::count(written_.text.begin(), written_.text.end(), '\n')); }

}  // namespace kerfpacket::job
