#pragma once
// Our own toml files (faces, layout, words): a mistake in one is told with file, line and key.

#include <filesystem>
#include <string>
#include <string_view>

#include "text/toml.h"

namespace kerfpacket::fonts {

/// Parses a file; throws std::runtime_error "FILE:LINE: what is wrong", disk::Failure where it cannot be read.
toml::table read_toml(const std::filesystem::path& file);
/// The same with its text at hand.
toml::table parse_toml(std::string_view text, const std::string& file);

/// "FILE:LINE"; the line is left out when it is unknown.
std::string place_of(const std::filesystem::path& file, const toml::node* where);

/// Throws std::runtime_error "FILE:LINE: KEY what is wrong".
[[noreturn]] void refuse(const std::filesystem::path& file, const toml::node* where, std::string_view key,
                         std::string_view what);

/// The text under a key; throws as `refuse` when there is none.
std::string required_text(const std::filesystem::path& file, const toml::table& table, std::string_view key);

}  // namespace kerfpacket::fonts
