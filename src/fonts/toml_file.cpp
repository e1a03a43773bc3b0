#include "fonts/toml_file.h"

#include <stdexcept>

#include <fmt/format.h>

#include "disk/read.h"

namespace kerfpacket::fonts {

toml::table read_toml(const std::filesystem::path& file) {
    return parse_toml(disk::must_read(file, text::most_bytes), file.string());
}

toml::table parse_toml(std::string_view text, const std::string& file) {
    auto root = text::parse(text);
    if (root) return *std::move(root);
    throw std::runtime_error(fmt::format("{}:{}: {}", file, root.error().line, root.error().description));
}

std::string place_of(const std::filesystem::path& file, const toml::node* where) {
    const auto line = where == nullptr ? 0 : where->source().begin.line;
    return line == 0 ? file.string() : fmt::format("{}:{}", file.string(), line);
}

void refuse(const std::filesystem::path& file, const toml::node* where, std::string_view key, std::string_view what) {
    throw std::runtime_error(fmt::format("{}: {} {}", place_of(file, where), key, what));
}

std::string required_text(const std::filesystem::path& file, const toml::table& table, std::string_view key) {
    const toml::node* node = table.get(key);
    if (node == nullptr) refuse(file, &table, key, "is missing");
    const auto text = node->value_exact<std::string>();
    if (!text) refuse(file, node, key, "must be text in quotes");
    return *text;
}

}  // namespace kerfpacket::fonts
