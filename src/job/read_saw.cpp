#include "job/tables.h"

namespace kerfpacket::job {
namespace {

using namespace measure::literals;

const LengthKey blade_diameter{"blade_diameter", 2_in, 36_in, R"("12 in")"};
const LengthKey kerf{"kerf", finest, 1_in, R"("0.118 in")"};
const LengthKey travel{"travel", 1_in, 120_in, R"("13-1/2 in")"};
const LengthKey rear_limit{"rear_limit", -12_in, 24_in, R"("1-1/4 in")", true};
const LengthKey trial_depth{"trial_depth", finest, 18_in, R"("3/8 in")"};
const LengthKey trial_at_fence{"trial_at_fence", Length(), 18_in, R"("1/8 in")", true};

const LengthKey trial_ends{"trial_ends", Length(), 18_in, R"("3/8 in")", true};

/// A length that keeps its value when the table leaves it out.
Sourced<Length> read_needed(TableReader& reader, const LengthKey& key, const Sourced<Length>& otherwise, Need need) {
    if (!reader.has(key.name) && given(otherwise)) need = Need::optional;
    const auto read = reader.length(key, need);
    return reader.has(key.name) ? read.value_or(Sourced<Length>{}) : otherwise;
}

bool is_other_blade(const Sourced<Length>& blade, const Sourced<Length>& than) {
    return given(blade) && given(than) && abs(blade.value - than.value) > 0.001_mm;
}

/// How deep the groove is where it meets the fence, or how far in front of the fence it ends. A depth of 0 only says
/// that it ends somewhere in front: read as ending at the fence it would put the blade too far back.
std::optional<TrialGroove> read_trial(Context& context, TableReader& reader) {
    const auto depth = reader.length(trial_depth, Need::optional);
    const auto at_fence = reader.length(trial_at_fence, Need::optional);
    const auto ends = reader.length(trial_ends, Need::optional);
    if (at_fence && at_fence->value == Length() && !reader.has(trial_ends.name))
        context.error(at_fence->at, "trial_at_fence 0 does not tell where the groove ends",
                      "measure from the fence to where the groove begins and give it as trial_ends, " +
                          for_example(trial_ends.name, trial_ends.example));
    if (at_fence && at_fence->value > Length() && ends && ends->value > Length())
        context.error(ends->at,
                      "a groove that is " + context.shown(at_fence->value) + " deep at the fence does not end " +
                          context.shown(ends->value) + " in front of it",
                      "expected trial_at_fence where it reaches the fence, trial_ends where it does not");
    if (!depth || (!at_fence && !ends)) return std::nullopt;
    return TrialGroove{*depth, at_fence.value_or(Sourced<Length>{}), ends};
}

/// The rear limit is given as such or by a trial groove; what is given takes the place of what the shop has.
void read_rear_limit(Context& context, TableReader& reader, Saw& saw) {
    const auto limit = reader.length(rear_limit, Need::optional);
    const bool has_depth = reader.has(trial_depth.name);
    const bool has_at_fence = reader.has(trial_at_fence.name);
    const bool has_ends = reader.has(trial_ends.name);
    const bool has_reading = has_at_fence || has_ends;
    if (has_depth != has_reading) {
        const LengthKey& lost = has_depth ? trial_at_fence : trial_depth;
        const LengthKey& there = has_depth ? trial_depth : has_at_fence ? trial_at_fence : trial_ends;
        reader.missing({lost.name}, std::string(lost.name) + " is missing from [saw]",
                       std::string(there.name) + " alone does not tell where the blade stops, " +
                           for_example(lost.name, lost.example));
    }
    if (reader.has(rear_limit.name) && (has_depth || has_reading))
        context.error(reader.at_name(has_depth      ? trial_depth.name
                                     : has_at_fence ? trial_at_fence.name
                                                    : trial_ends.name),
                      "the saw's rear limit is given in two ways",
                      "expected rear_limit, or trial_depth and trial_at_fence: keep one");
    const auto trial = read_trial(context, reader);
    if (!limit && !trial) return;
    saw.rear_limit = limit;
    saw.trial = trial;
}

}  // namespace

Saw read_saw(Context& context, const toml::table& table, const Saw& otherwise, Need need) {
    TableReader reader(context, table, "[saw]");
    Saw saw = otherwise;
    saw.blade_diameter = read_needed(reader, blade_diameter, saw.blade_diameter, need);
    if (is_other_blade(saw.blade_diameter, otherwise.blade_diameter)) {
        // Both were measured with the blade that was in the saw.
        saw.kerf = {};
        saw.trial = std::nullopt;
    }
    saw.kerf = read_needed(reader, kerf, saw.kerf, need);
    if (const auto reach = reader.length(travel, Need::optional)) saw.travel = reach;
    if (const auto* node = reader.find("mitre_limit", Need::optional, "50", {Takes::Kind::angle}))
        if (const auto limit = context.angle(*node, "mitre_limit")) saw.mitre_limit = limit;
    read_rear_limit(context, reader, saw);
    reader.finish();
    return saw;
}

}  // namespace kerfpacket::job
