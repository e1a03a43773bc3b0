#include "fonts/toml_file.h"

#include <algorithm>
#include <fstream>
#include <iterator>
#include <stdexcept>

#include <fmt/format.h>

namespace kerfpacket::fonts {
namespace {

/// A description may quote the file: nothing of it may steer a terminal.
std::string harmless(std::string_view description) {
    std::string text(description);
    std::replace_if(
        text.begin(), text.end(), [](char c) { return static_cast<unsigned char>(c) < 0x20 || c == 0x7F; }, '?');
    return text;
}

}  // namespace

toml::table read_toml(const std::filesystem::path& file) {
    std::ifstream in(file, std::ios::binary);
    if (!in) throw std::runtime_error(fmt::format("cannot read {}: it belongs beside the program", file.string()));
    return parse_toml(std::string(std::istreambuf_iterator<char>(in), {}), file.string());
}

toml::table parse_toml(std::string_view text, const std::string& file) {
    auto root = text::parse(text);
    if (root) return *std::move(root);
    throw std::runtime_error(fmt::format("{}:{}: {}", file, root.error().line, harmless(root.error().description)));
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
