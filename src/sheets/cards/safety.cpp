#include "sheets/cards/safety.h"

#include <algorithm>

#include "sheets/layout/flow.h"
#include "sheets/layout/sign_off.h"

namespace kerfpacket::sheets {
namespace {

/// A warning triangle with its exclamation mark, white on black.
void warning_sign(Pen& pen, Point low_left, Length height) {
    const Length width = height * 1.2;
    pen.fill(Role::caution,
             Path::polyline({low_left, {low_left.x + width, low_left.y}, {low_left.x + width / 2, low_left.y + height}},
                            true),
             Ink::white);
    const Scope sign = pen.within(Tag::artifact);  // the word beside it says the same
    pen.text(Role::caution, {low_left.x + width / 2, low_left.y + height * 0.14}, "!",
             Type{Face::bold, pen.kit().style.title}.centred());
}

/// The signal panel and the lines that come before all others.
void signal_panel(Flow& flow) {
    const auto& style = flow.style();
    const auto& words = flow.kit().words;
    const Type strong{Face::bold, style.strong};
    const Type text{Face::regular, style.text};
    const Length white = 14_pt;
    const Length inside = flow.width() - white * 2;
    const Type signal{Face::bold, style.huge};
    // What the hazard is stands right of the sign and its word, and makes the panel as high as it needs.
    const Length sign = 70_pt;
    const Length aside_left = sign + flow.pen().width(words("safety.signal"), signal) + 14_pt;
    const Length aside_width = flow.width() - aside_left - 12_pt;
    const Length hazard =
        flow.pen().paragraph_height(words("safety.hazard"), text, aside_width, leading(text.size)) + leading(text.size);
    const Length black = std::max(style.huge * 1.8, hazard + leading(text.size));
    const auto height = [&](const char* key, const Type& type) {
        return flow.pen().paragraph_height(words(key), type, inside, leading(type.size)) + leading(type.size);
    };
    const Length first = height("safety.first", strong);
    const Rect room = flow.take(black + first + height("safety.first_after", text) + 10_pt);
    Pen pen = flow.pen();
    const Length foot = room.high.y - black;
    pen.fill(Role::caution, Path::rectangle({{room.low.x, foot}, room.high}));
    warning_sign(pen, {room.low.x + 18_pt, foot + (black - 31_pt) / 2}, 31_pt);
    pen.text(Role::caution, {room.low.x + sign, foot + (black - style.huge * 0.73) / 2}, words("safety.signal"),
             signal.white());
    pen.paragraph(Role::caution, {room.low.x + aside_left, foot + (black + hazard) / 2 - text.size},
                  words("safety.hazard"), text.white(), aside_width, leading(text.size));
    pen.box(Role::caution, {room.low, {room.high.x, foot}}, style.heavy);
    const Length base = foot - strong.size * 1.4;
    pen.paragraph(Role::caution, {room.low.x + white, base}, words("safety.first"), strong, inside,
                  leading(strong.size));
    pen.paragraph(Role::caution, {room.low.x + white, base - first}, words("safety.first_after"), text, inside,
                  leading(text.size));
}

void section_of(Flow& flow, const std::string& name) {
    const auto& words = flow.kit().words;
    flow.heading(words("safety." + name));
    const Type type{Face::regular, flow.style().text};
    for (const std::string& line : words.list("safety." + name + "_lines")) flow.item(Role::caution, line, type);
    if (name == "before") flow.blank_item({{words("safety.no_hands"), 90_pt}, {words("safety.page"), 90_pt}});
}

void add_one(Drafts& drafts, const plan::Plan& plan, const Kit& kit, bool second) {
    Flow flow(drafts, kit, [&](bool first) {
        Draft draft = new_draft(plan, "safety", Orientation::portrait);
        draft.title = kit.words("safety.title");
        draft.subtitle = kit.words("safety.subtitle");
        if (first) draft.outline = kit.words("safety.title");
        draft.second_language = second;
        return draft;
    });
    signal_panel(flow);
    for (const char* name : {"before", "board", "cut", "you", "bend"}) section_of(flow, name);
    const std::vector<std::string>& rules = kit.words.list("shop.safety_rules");
    if (!rules.empty()) flow.heading(kit.words("shop.heading"));
    for (const std::string& rule : rules) flow.item(Role::caution, rule, {Face::regular, kit.style.text});
    sign_off(flow, {kit.words("safety.read_by")});
}

}  // namespace

void add_safety_card(Drafts& drafts, const plan::Plan& plan, const Kit& kit) {
    add_one(drafts, plan, kit, false);
    if (kit.second_words != nullptr) add_one(drafts, plan, kit.second(), true);
}

}  // namespace kerfpacket::sheets
