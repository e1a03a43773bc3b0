#include "text/toml.h"

#include "text/scan.h"

namespace kerfpacket::text {

tl::expected<toml::table, Mistake> parse(std::string_view text) {
    if (auto refused = unreasonable(text)) return tl::unexpected(*std::move(refused));
    try {
        return toml::parse(text);
    } catch (const toml::parse_error& error) {
        const auto at = error.source().begin;
        return tl::unexpected(
            Mistake{static_cast<int>(at.line), static_cast<int>(at.column), std::string(error.description()), false});
    }
}

}  // namespace kerfpacket::text
