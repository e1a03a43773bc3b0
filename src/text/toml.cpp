#include "text/toml.h"

#include "text/scan.h"
#include "text/wording.h"

namespace kerfpacket::text {

tl::expected<toml::table, Mistake> parse(std::string_view text) {
    if (auto refused = unreasonable(text)) return tl::unexpected(*std::move(refused));
    try {
        return toml::parse(text);
    } catch (const toml::parse_error& error) {
        const auto at = error.source().begin;
        const std::string_view heard = error.description();
        return tl::unexpected(Mistake{static_cast<int>(at.line), static_cast<int>(at.column), plain_words(heard), false,
                                      is_repeated(heard), is_bracketed(heard)});
    }
}

}  // namespace kerfpacket::text
