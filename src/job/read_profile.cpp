#include "job/read_profile.h"

#include <cmath>

#include "job/parse.h"
#include "job/tables.h"
#include "job/text.h"
#include "job/values.h"

namespace kerfpacket::job {
namespace {

using namespace measure::literals;

const LengthKey left{"left", Length(), most_margin, R"("1/4 in")", true};
const LengthKey right{"right", Length(), most_margin, R"("1/4 in")", true};
const LengthKey leading{"leading", Length(), most_margin, R"("1/4 in")", true};
const LengthKey trailing{"trailing", Length(), most_margin, R"("1/4 in")", true};

const std::vector<std::pair<std::string_view, Feed>>& feed_words() {
    static const std::vector<std::pair<std::string_view, Feed>> words = {{"short edge", Feed::short_edge},
                                                                         {"long edge", Feed::long_edge}};
    return words;
}

/// Printed length over true length.
double read_factor(Context& context, TableReader& reader, const NumberKey& key) {
    const auto factor = reader.number(key, Need::required);
    if (!factor) return 1;
    if (!is_printer_error(*factor))
        context.error(reader.at(key.name),
                      std::string(key.name) + " says that the printer prints " + printer_error(*factor) +
                          ": more than 2 % is the page made to fit",
                      fit_to_page_hint);
    return *factor;
}

Margins read_margins(Context& context, TableReader& top) {
    const auto* table = top.table("margins", Need::required, "[margins]");
    if (table == nullptr) return {};
    TableReader reader(context, *table, "[margins]");
    const Margins margins{reader.needed_length(left).value, reader.needed_length(right).value,
                          reader.needed_length(leading).value, reader.needed_length(trailing).value};
    reader.finish();
    return margins;
}

Profile read_tables(Context& context, const toml::table& root, std::string_view name) {
    constexpr std::string_view range = "from 0.5 to 1.5: printed length over true length";
    TableReader top(context, root, "the printer profile");
    Profile profile;
    read_units(context, root);
    top.choice("units", unit_words());
    if (const auto own = top.words("name", 40, "\"" + std::string(name) + "\"")) {
        profile.name = own->value;
        if (own->value != name)
            context.error(own->at, "this is the profile of " + in_quotes(own->value) + ", not of " + in_quotes(name),
                          "the file has the name of its profile, with .toml behind it");
    }
    if (const auto feed = top.choice("feed", feed_words(), Need::required)) profile.feed = feed->value;
    profile.across = read_factor(context, top, {"across", 0.5, 1.5, range, "0.996"});
    profile.along = read_factor(context, top, {"along", 0.5, 1.5, range, "1.002"});
    profile.margins = read_margins(context, top);
    top.finish();
    if (const auto bare = context.without_unit(); bare && !top.has("units"))
        context.error(*bare, "a number without a unit", "write the unit beside it, in quotes");
    return profile;
}

}  // namespace

const std::string fit_to_page_hint =
    "switch off \"fit to page\", \"shrink to fit\" and any scale but 100 % in the print dialogue, then print and "
    "measure "
    "the check page again";

bool is_printer_error(double factor) { return std::abs(factor - 1) <= most_printer_error + 0.000005; }

ProfileReading read_profile(const Source& source, std::string_view name) {
    Parsed parsed = parse(source.text);
    ProfileReading reading;
    if (!parsed.usable) {
        reading.diagnostics = std::move(parsed.diagnostics);
        return reading;
    }
    Context context(source.text, std::move(parsed.broken_lines));
    Profile profile = read_tables(context, parsed.root, name);
    reading.diagnostics = all_told(std::move(parsed.diagnostics), context);
    if (reading.diagnostics.empty()) reading.profile = std::move(profile);
    return reading;
}

std::string profile_text(const Profile& profile) {
    std::string text = "\n# A printer as it was measured with the page of \"kerfpacket printer-check\".\n";
    const auto line = [&](std::string_view key, const std::string& value) {
        text.append(key).append(" = ").append(value).append("\n");
    };
    line("name", canonical(Words{profile.name}));
    line("feed", canonical(Words{profile.feed == Feed::short_edge ? "short edge" : "long edge"}));
    line("across", measure::fixed(profile.across, 5));
    line("along", measure::fixed(profile.along, 5));
    text += "\n[margins]\n";
    line("left", canonical(profile.margins.left));
    line("right", canonical(profile.margins.right));
    line("leading", canonical(profile.margins.leading));
    line("trailing", canonical(profile.margins.trailing));
    return text;
}

std::string printer_error(double factor) {
    const std::string percent = measure::fixed(std::abs(factor - 1) * 100, 2);
    if (percent == "0.00") return "true";
    return percent + (factor < 1 ? " % short" : " % long");
}

}  // namespace kerfpacket::job
