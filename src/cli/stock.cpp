#include "cli/stock.h"

#include <optional>

#include "cli/house.h"
#include "cli/nest_report.h"
#include "cli/resources.h"
#include "cli/stock_json.h"
#include "cli/stock_report.h"
#include "plan/make_stock_plan.h"
#include "sheets/stock/offcut_coupons.h"

namespace kerfpacket::cli {
namespace {

/// Offcuts are told as they are sawn off: what the coupons leave of them stands on the sheet.
std::string coupons_first(const plan::StockPlan& plan, const std::vector<const plan::Plan*>& jobs,
                          const sheets::Kit& kit) {
    const int asked = sheets::coupons_asked({jobs, &plan}, kit);
    return asked == 0 ? std::string() : kit.words("stock.coupons_first", {{"n", std::to_string(asked)}}) + "\n";
}

std::string told(const StockChoice& choice, const plan::StockPlan& plan, const std::vector<const plan::Plan*>& jobs,
                 const sheets::Kit& kit) {
    const plan::NestPlan casing = plan::nest_plan(jobs, plan::Nested::segments);
    const plan::NestPlan ribs = plan::nest_plan(jobs, plan::Nested::ribs);
    if (choice.csv) return stock_csv(plan, kit) + nest_rows(casing, kit) + nest_rows(ribs, kit);
    if (!choice.json)
        return stock_report(plan, kit) + coupons_first(plan, jobs, kit) + nest_report(casing, kit) +
               nest_report(ribs, kit);
    Json values = stock_values(plan);
    values["casing"] = nest_values(casing);
    values["ribs"] = nest_values(ribs);
    return values.dump(2) + "\n";
}

}  // namespace

Status stock(const StockChoice& choice, Console& console, const std::filesystem::path& home) {
    const std::optional<PlannedHouse> house = planned_house(choice.jobs, choice.job, console);
    if (!house) return Status::errors;
    const plan::StockPlan* known = house->house().stock;
    const plan::StockPlan plan = known != nullptr ? *known : plan::make_stock_plan(house->plans());
    if (!house->together) tell_no_room(plan, house->jobs, console);
    // The command line speaks English, whatever language the sheets are in.
    const Resources english(home, "en");
    const sheets::Kit kit = english.kit();
    console.result(told(choice, plan, house->plans(), kit));
    return plan.refused.empty() ? house->status() : Status::cautions;
}

}  // namespace kerfpacket::cli
