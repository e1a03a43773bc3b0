// [printer.labels]: what labels are printed on. Columns and rows must find room on their sheet.
#include <algorithm>
#include <cmath>

#include "job/same_size.h"
#include "job/tables.h"

namespace kerfpacket::job {
namespace {

using namespace measure::literals;

constexpr int most_labels_a_side = 60;
constexpr Length least_side = 0.25_in;
const LengthKey width{"width", least_side, 48_in, R"("4 in")"};
const LengthKey height{"height", least_side, 68_in, R"("2 in")"};
const LengthKey across{"across", least_side, 48_in, R"("4 3/16 in")"};
const LengthKey down{"down", least_side, 68_in, R"("2 in")"};
const LengthKey left{"left", Length(), 24_in, R"("5/32 in")", true};
const LengthKey top{"top", Length(), 24_in, R"("1/2 in")", true};

/// One way over the sheet: columns across, or rows down.
struct Way {
    std::string_view count_key, size_key, step_key, edge_key;
    int count;
    Length size;
    Length step;
    Length edge;
    Length paper;

    Length end() const { return edge + step * (count - 1) + size; }
};

bool is_more(Length a, Length b) { return a > b && !same_size(a, b); }

/// How many find room, and what would do where not even one does.
std::string what_fits(Context& context, const Way& way) {
    const Length room = way.paper - way.edge - way.size;
    if (is_more(-room, Length()))
        return "expected " + std::string(way.edge_key) + " and " + std::string(way.size_key) + " of at most " +
               context.shown(way.paper) + " together";
    const int fit = 1 + static_cast<int>(std::floor((room + 0.1_mm) / way.step));
    const std::string fewer = "expected at most " + std::to_string(fit) + " " + std::string(way.count_key);
    const bool closer = !is_more(way.size * (way.count - 1), room);
    return closer ? fewer + ", or a smaller " + std::string(way.step_key) : fewer;
}

void check(Context& context, const TableReader& reader, const Way& way) {
    if (is_more(way.size, way.step)) {
        context.error(reader.at(reader.has(way.step_key) ? way.step_key : way.size_key),
                      "labels lie over each other: " + std::string(way.step_key) + " " + context.shown(way.step) +
                          " from one to the next, each " + context.shown(way.size),
                      "expected at least " + context.shown(way.size));
        return;
    }
    if (!is_more(way.end(), way.paper)) return;
    const std::string what = way.count == 1
                                 ? std::string(way.edge_key) + " and " + std::string(way.size_key) + " come to "
                                 : std::to_string(way.count) + " " + std::string(way.count_key) + " end at ";
    context.error(
        reader.at(way.count == 1 ? way.size_key : way.count_key),
        "labels do not fit their paper: " + what + context.shown(way.end()) + " of " + context.shown(way.paper),
        what_fits(context, way));
}

/// A roll has one column, one label below the other.
void read_roll(Context& context, TableReader& reader, LabelStock& labels) {
    for (const std::string_view key : {"columns", "rows", "width", "across", "down", "left", "top"})
        reader.refuse(key, std::string(key) + " is of a sheet of labels, and the paper is a roll",
                      "a roll has one label below the other, as wide as the roll: expected height alone, or nothing");
    labels.width = labels.across = labels.paper.width;
    if (const auto given = reader.length(height, Need::optional)) labels.height = labels.down = given->value;
    if (labels.height > labels.paper.height)
        context.error(reader.at("height"), "the label is longer than a page can be",
                      "expected at most " + context.shown(labels.paper.height));
}

void read_sheet(Context& context, TableReader& reader, LabelStock& labels) {
    const std::size_t before = context.mistakes();
    bool whole = labels.paper.width > Length();
    // Of a roll none of them is needed: a schema must not ask for them.
    for (const LengthKey* key : {&width, &height, &left, &top}) {
        if (reader.has(key->name)) continue;
        whole = false;
        reader.missing({key->name}, std::string(key->name) + " of the labels is not given",
                       "measure it on the sheet: " + for_example(key->name, key->example));
    }
    for (const std::string_view key : {"columns", "rows"}) {
        if (reader.has(key)) continue;
        whole = false;
        reader.missing({key}, "the " + std::string(key) + " of the labels are not given",
                       "count them on the sheet: " + for_example(key, "2"));
    }
    const auto count = [&](std::string_view key) {
        const auto given = reader.whole(key, most_labels_a_side);
        return given ? given->value : 1;
    };
    labels.columns = count("columns");
    labels.rows = count("rows");
    labels.width = reader.length_or(width, Length()).value;
    labels.height = reader.length_or(height, Length()).value;
    labels.across = reader.length_or(across, labels.width).value;
    labels.down = reader.length_or(down, labels.height).value;
    labels.left = reader.length_or(left, Length()).value;
    labels.top = reader.length_or(top, Length()).value;
    if (!whole || context.mistakes() > before) return;
    const Way columns{"columns",     "width",     "across",          "left", labels.columns, labels.width,
                      labels.across, labels.left, labels.paper.width};
    const Way rows{"rows",     "height",           "down", "top", labels.rows, labels.height, labels.down,
                   labels.top, labels.paper.height};
    check(context, reader, columns);
    check(context, reader, rows);
}

}  // namespace

std::optional<LabelStock> read_labels(Context& context, const toml::table& table) {
    TableReader reader(context, table, "[printer.labels]");
    const std::size_t before = context.mistakes();
    LabelStock labels;
    labels.at = reader.at();
    const auto paper = read_media(context, reader, "media", Need::required);
    if (paper) labels.paper = paper->value;
    if (paper && paper->value.roll) read_roll(context, reader, labels);
    else read_sheet(context, reader, labels);
    reader.finish();
    if (context.mistakes() > before || !paper) return std::nullopt;
    return labels;
}

}  // namespace kerfpacket::job
