#include <algorithm>
#include <cmath>

#include "job/parse.h"
#include "job/profile.h"
#include "job/tables.h"
#include "job/writer.h"

namespace kerfpacket::job {
namespace {

using namespace measure::literals;

constexpr std::string_view title = "the profile";
// Wider than what may be corrected, so that what is refused is told with its reason.
const NumberKey across{"across", 0.5, 2, "printed length over true length, from 0.98 to 1.02", "0.996"};
const NumberKey along{"along", 0.5, 2, "printed length over true length, from 0.98 to 1.02", "1.002"};
const LengthKey margins{"margins", Length(), most_margin, R"(["1/4 in", "1/4 in", "1/4 in", "1/2 in"])", true};

double factor(Context& context, TableReader& reader, const NumberKey& key) {
    const auto value = reader.number(key);
    if (!value) return 1;
    if (std::abs(*value - 1) > most_printer_error + 1e-12)
        context.error(
            reader.at(key.name), std::string(key.name) + " is more than 2 % off: that is what \"fit to page\" does",
            "switch page scaling off in the print dialog (\"actual size\", 100 %), print the check page again "
            "and measure it");
    return *value;
}

}  // namespace

ProfileReading read_profile(const Source& source, const std::string& name) {
    Parsed parsed = parse(source.text);
    ProfileReading reading;
    reading.profile.name = name;
    if (!parsed.usable) {
        reading.diagnostics = std::move(parsed.diagnostics);
        return reading;
    }
    Context context(source.text, std::move(parsed.broken_lines));
    TableReader reader(context, parsed.root, std::string(title));
    Profile& profile = reading.profile;
    for (const NumberKey* key : {&across, &along})
        if (!reader.has(key->name))
            reader.missing({key->name}, "the profile says nothing of " + std::string(key->name),
                           std::string(key->range));
    profile.across = factor(context, reader, across);
    profile.along = factor(context, reader, along);
    if (const auto feed =
            reader.choice<Feed>("feed", {{"short edge", Feed::short_edge}, {"long edge", Feed::long_edge}}))
        profile.feed = feed->value;
    if (const auto four = reader.lengths(margins, 4); four.size() == 4)
        profile.margins = {four[0].value, four[1].value, four[2].value, four[3].value};
    reader.finish();
    reading.diagnostics = all_told(std::move(parsed.diagnostics), context);
    return reading;
}

std::string profile_text(const Profile& profile) {
    Writer writer;
    writer.bare("across", measure::fixed(profile.across, 6));
    writer.bare("along", measure::fixed(profile.along, 6));
    writer.words("feed", profile.feed == Feed::short_edge ? "short edge" : "long edge");
    const Margins& m = profile.margins;
    writer.lengths("margins", {m.left, m.right, m.leading, m.trailing});
    return writer.take();
}

bool is_profile_name(std::string_view name) {
    const auto plain = [](char c) {
        return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == ' ' || c == '-' ||
               c == '_';
    };
    return !name.empty() && name.size() <= 40 && name.front() != ' ' && name.back() != ' ' &&
           std::all_of(name.begin(), name.end(), plain);
}

}  // namespace kerfpacket::job
