#include "fonts/toml_file.h"

#include <algorithm>
#include <stdexcept>

#include <fmt/format.h>

#include "disk/read.h"

namespace kerfpacket::fonts {
namespace {

/// Of a file that stands beside the program.
constexpr std::size_t most_own_bytes = 1'000'000;

/// A description may quote the file: nothing of it may steer a terminal.
std::string harmless(std::string_view description) {
    std::string text(description);
    std::replace_if(
        text.begin(), text.end(), [](char c) { return static_cast<unsigned char>(c) < 0x20 || c == 0x7F; }, '?');
    return text;
}

}  // namespace

toml::table read_toml(const std::filesystem::path& file) {
    return parse_toml(disk::must_read(file, most_own_bytes), file.string());
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
