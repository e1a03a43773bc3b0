// What an opening or a wall may have besides its board: a casing, a bending form, wishes for the template.
#include "job/choices.h"
#include "job/tables.h"

namespace kerfpacket::job {
namespace {

using namespace measure::literals;

const LengthKey casing_width{"width", 0.25_in, 24_in, R"("3-1/2 in")"};
const LengthKey reveal{"reveal", Length(), 12_in, R"("3/16 in")", true};
const LengthKey casing_board{"board", 0.25_in, 120_in, R"("7-1/4 in")"};
const LengthKey step{"step", 0.125_in, longest, R"("6 in")"};
const LengthKey stations{"stations", Length(), longest, R"(["6 in", "15 in", "24 in"])", true};
const LengthKey below{"below", 0.5_in, 24_in, R"("4 in")"};

constexpr int most_segments = 100;
constexpr int most_ribs = 100;
constexpr int least_ribs = 2;  // a board does not lie on one alone

}  // namespace

Casing read_casing(Context& context, const toml::table& table, bool splayed) {
    TableReader reader(context, table, "[opening.casing]");
    Casing casing;
    casing.width = reader.needed_length(casing_width);
    casing.reveal = reader.length_or(reveal, Length());
    reader.usual("reveal", casing.reveal.value);
    if (const auto side = reader.choice<WallSide>("wall_side", wall_side_words())) casing.wall_side = side->value;
    if (splayed) reader.usual("wall_side", Words{"room"});
    casing.segments = reader.whole("segments", most_segments);
    casing.board = reader.length(casing_board, Need::optional);
    reader.finish();
    return casing;
}

TemplateWish read_template(Context& context, const toml::table& table) {
    TableReader reader(context, table, "[opening.template]");
    TemplateWish wish;
    if (const auto sheets = reader.choice<Sheets>("sheets", {{"grid", Sheets::grid}, {"along", Sheets::along}}))
        wish.sheets = sheets->value;
    wish.half = reader.flag("half", true);
    if (reader.has("half")) wish.half_at = reader.at("half");
    reader.finish();
    return wish;
}

Form read_form(Context& context, const toml::table& table, std::string_view title) {
    TableReader reader(context, table, std::string(title));
    Form form;
    form.at = reader.at();
    form.step = reader.length(step, Need::optional);
    form.stations = reader.lengths(stations, 0);
    if (reader.flag("freed", false)) form.freed = reader.at("freed");
    form.ribs = reader.whole("ribs", most_ribs, least_ribs);
    form.below = reader.length(below, Need::optional);
    if (reader.has("step") && reader.has("stations"))
        context.error(reader.at("stations"), "the form's ordinates are given in two ways",
                      "expected step or stations, not both");
    reader.finish();
    return form;
}

}  // namespace kerfpacket::job
