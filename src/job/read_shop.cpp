#include "job/shop.h"

#include "job/keys.h"
#include "job/parse.h"
#include "job/tables.h"
#include "job/validate.h"

namespace kerfpacket::job {
namespace {

void forget(std::optional<Sourced<Length>>& value) {
    if (value) value->at = {};
}

/// No value of the shop file may be pointed at in the text of a job file.
void forget_places(Shop& shop) {
    shop.saw.blade_diameter.at = {};
    shop.saw.kerf.at = {};
    forget(shop.saw.travel);
    forget(shop.saw.rear_limit);
    if (shop.saw.trial) {
        shop.saw.trial->depth.at = shop.saw.trial->at_fence.at = {};
        forget(shop.saw.trial->ends);
    }
    if (shop.printer)
        for (auto* profile : {&shop.printer->profile, &shop.printer->strip_profile, &shop.printer->template_profile})
            if (*profile) (*profile)->name.at = {};
    if (shop.beside.labels) shop.beside.labels->at = {};
    for (auto& length : shop.stock.lengths) length.at = {};
    for (auto* rows : {&shop.stock.boards, &shop.stock.sheets})
        for (auto& row : *rows) row.at = row.material.at = row.thickness.at = row.width.at = row.length.at = {};
    for (auto& material : shop.materials) material.name.at = {};
    for (auto& trial : shop.trials) {
        trial.material.at = trial.thickness.at = trial.kerf.at = {};
        Coupon& tried = trial.tried;
        tried.chord.at = tried.rise.at = tried.held.at = tried.outcome.at = tried.at = {};
        forget(tried.kerf_depth);
        forget(tried.spacing);
    }
}

Shop read_tables(Context& context, const toml::table& root) {
    TableReader top(context, root, "the shop file");
    Shop shop;
    read_units(context, root);
    top.choice("units", unit_words());
    shop.tape = read_tape(top);
    if (const auto* saw = top.table("saw", Need::optional, "[saw]"))
        shop.saw = read_saw(context, *saw, {}, Need::optional);
    check_saw(context, shop.saw);
    if (shop.saw.trial && !given(shop.saw.blade_diameter) && context.mistakes() == 0)
        context.error(shop.saw.trial->depth.at, "the blade that cut the trial groove is not given",
                      "expected blade_diameter beside trial_depth");
    if (const auto* printer = top.table("printer", Need::optional, "[printer]"))
        shop.printer = read_printer(context, *printer, default_printer(), shop.beside);
    if (const auto* stock = top.table("stock", Need::optional, "[stock]")) shop.stock = read_stock(context, *stock, {});
    if (const auto* rates = top.table("rates", Need::optional, "[rates]"))
        shop.beside.rates = read_rates(context, *rates, {});
    shop.materials = read_materials(context, top);
    shop.trials = read_trials(context, top, shop.saw.kerf);
    if (auto words = top.words("words", 240, R"("our-words")", Need::optional)) shop.words = std::move(words->value);
    top.finish();
    if (const auto bare = context.without_unit(); bare && !top.has("units"))
        context.error(*bare, "a number without a unit",
                      R"(write the unit beside it, in quotes, or units = "in" or "mm" at the top of the shop file)");
    return shop;
}

}  // namespace

KeyNotes notes_of_shop(const std::string& text) {
    const Parsed parsed = parse(text);
    Context context(text, {});
    KeyNotes notes;
    context.notes = &notes;
    read_tables(context, parsed.root);
    return notes;
}

ShopReading read_shop(const Source& source) {
    Parsed parsed = parse(source.text);
    ShopReading reading;
    if (!parsed.usable) {
        reading.shop.faulty = true;
        reading.diagnostics = std::move(parsed.diagnostics);
        return reading;
    }
    Context context(source.text, std::move(parsed.broken_lines));
    reading.shop = read_tables(context, parsed.root);
    reading.shop.faulty = context.mistakes() > 0;
    forget_places(reading.shop);
    reading.diagnostics = all_told(std::move(parsed.diagnostics), context);
    return reading;
}

}  // namespace kerfpacket::job
