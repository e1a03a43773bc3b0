#include "fonts/style.h"

#include "disk/read.h"
#include "fonts/parse_style.h"
#include "fonts/toml_file.h"

namespace kerfpacket::fonts {
namespace {

/// layout.toml while it is read.
struct Reader {
    std::filesystem::path file;
    toml::table table;

    /// A positive number of points.
    Length points(const char* group, const char* key) const {
        const std::string name = std::string(group) + "." + key;
        const toml::node* node = table[group][key].node();
        if (node == nullptr) refuse(file, table[group].node(), name, "is missing");
        const auto value = node->value<double>();
        if (!value || !(*value > 0 && *value < 1000))
            refuse(file, node, name, "must be a number of points, over 0 and under 1000");
        return Length::points(*value);
    }

    std::vector<std::string> names(const char* key) const {
        const toml::array* array = table[key].as_array();
        if (array == nullptr) refuse(file, table[key].node(), key, "must be a list of names");
        std::vector<std::string> result;
        for (const toml::node& entry : *array) {
            const auto name = entry.value_exact<std::string>();
            if (!name) refuse(file, &entry, key, "must hold nothing but names in quotes");
            result.push_back(*name);
        }
        return result;
    }
};

}  // namespace

Style parse_style(std::string_view text, const std::filesystem::path& file) {
    const Reader read{file, parse_toml(text, file.string())};
    return {
        .order = read.names("order"),
        .tiny = read.points("type", "tiny"),
        .small = read.points("type", "small"),
        .text = read.points("type", "text"),
        .strong = read.points("type", "strong"),
        .title = read.points("type", "title"),
        .huge = read.points("type", "huge"),
        .hair = read.points("line", "hair"),
        .fine = read.points("line", "fine"),
        .line = read.points("line", "line"),
        .heavy = read.points("line", "heavy"),
        .end = read.points("line", "end"),
        .strip_height = read.points("strip", "height"),
        .strip_lap = read.points("strip", "lap"),
        .tile_overlap = read.points("tile", "overlap"),
    };
}

Style read_style(const std::filesystem::path& templates) {
    const std::filesystem::path file = templates / "layout.toml";
    return parse_style(disk::must_read(file, text::most_bytes), file);
}

}  // namespace kerfpacket::fonts
