// [rates]: what a shop reckons its work by.
#include "job/tables.h"

namespace kerfpacket::job {
namespace {

/// The least tells a rate from a slip: nothing takes no time at all.
NumberKey key_of(Rate rate) {
    const std::string_view name = rate_keys.at(static_cast<std::size_t>(rate));
    switch (rate) {
        case Rate::hour: return {name, 0.01, 1000000, "from 0.01 to 1000000, the price of an hour", "60"};
        case Rate::paper:
        case Rate::glue:
        case Rate::sharpening: return {name, 0.01, 100000, "from 0.01 to 100000, the price of one", "12.50"};
        case Rate::glue_covers: return {name, 0.01, 100000, "from 0.01 to 100000, of one container", "30"};
        case Rate::blade_lasts: return {name, 1, 1000000, "from 1 to 1000000, in feet or metres of kerf", "2000"};
        default: return {name, 0.01, 600, "from 0.01 to 600, in minutes", "1.5"};
    }
}

}  // namespace

Rates read_rates(Context& context, const toml::table& table, const Rates& otherwise) {
    TableReader reader(context, table, "[rates]");
    Rates rates = otherwise;
    for (std::size_t i = 0; i < rate_count; ++i)
        if (const auto given = reader.number(key_of(static_cast<Rate>(i)))) rates.given.at(i) = given;
    reader.finish();
    return rates;
}

}  // namespace kerfpacket::job
