#include "fonts/toml_file.h"

#include <fstream>
#include <stdexcept>

#include <fmt/format.h>

namespace kerfpacket::fonts {

toml::table read_toml(const std::filesystem::path& file) {
    std::ifstream in(file, std::ios::binary);
    if (!in) throw std::runtime_error(fmt::format("cannot read {}: it belongs beside the program", file.string()));
    try {
        return toml::parse(in, file.string());
    } catch (const toml::parse_error& error) {
        throw std::runtime_error(
            fmt::format("{}:{}: {}", file.string(), error.source().begin.line, error.description()));
    }
}

void refuse(const std::filesystem::path& file, const toml::node* where, std::string_view key, std::string_view what) {
    const auto line = where == nullptr ? 0 : where->source().begin.line;
    const std::string place = line == 0 ? file.string() : fmt::format("{}:{}", file.string(), line);
    throw std::runtime_error(fmt::format("{}: {} {}", place, key, what));
}

std::string required_text(const std::filesystem::path& file, const toml::table& table, std::string_view key) {
    const toml::node* node = table.get(key);
    if (node == nullptr) refuse(file, &table, key, "is missing");
    const auto text = node->value_exact<std::string>();
    if (!text) refuse(file, node, key, "must be text in quotes");
    return *text;
}

}  // namespace kerfpacket::fonts
