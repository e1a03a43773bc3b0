#include "sheets/safety.h"

#include "sheets/furniture.h"
#include "sheets/pen.h"

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

/// The signal panel and the line that comes before all others; returns the height below it.
Length signal_panel(Pen& pen) {
    const auto& style = pen.kit().style;
    const auto& words = pen.kit().words;
    const Length left = side_margin;
    const Length right = pen.page_width() - side_margin;
    const Length top = pen.from_top(72_pt);
    pen.fill(Role::caution, Path::rectangle({{left, top - 44_pt}, {right, top}}));
    warning_sign(pen, {left + 18_pt, top - 37_pt}, 31_pt);
    const Length signal = pen.text(Role::caution, {left + 72_pt, top - 31_pt}, words("safety.signal"),
                                   Type{Face::bold, style.huge}.white());
    const Length room = right - 12_pt - (left + 72_pt + signal + 10_pt);
    Type aside = Type{Face::regular, style.text}.white().at_right();
    for (const char* key : {"safety.hazard_1", "safety.hazard_2"}) aside = pen.fitting(words(key), aside, room);
    pen.text(Role::caution, {right - 12_pt, top - 19_pt}, words("safety.hazard_1"), aside);
    pen.text(Role::caution, {right - 12_pt, top - 33_pt}, words("safety.hazard_2"), aside);
    pen.box(Role::caution, {{left, top - 106_pt}, {right, top - 44_pt}}, style.heavy);
    pen.text(Role::caution, {left + 14_pt, top - 66_pt}, words("safety.first_1"), {Face::bold, style.strong});
    pen.text(Role::caution, {left + 14_pt, top - 82_pt}, words("safety.first_2"), {Face::bold, style.strong});
    pen.text(Role::caution, {left + 14_pt, top - 98_pt}, words("safety.first_3"), {Face::regular, style.text});
    return top - 106_pt;
}

/// Two blanks on a line of their own words: the manual's no-hands distance and its page.
void manual_blank(Pen& pen, Length base) {
    const auto& style = pen.kit().style;
    const auto& words = pen.kit().words;
    const Type type{Face::regular, style.text};
    const Length right = pen.page_width() - side_margin;
    const Scope list = pen.going_on(Tag::list);
    const Scope item = pen.within(Tag::list_item);
    tick_box(pen, {side_margin, base - 2_pt}, 11_pt);
    Length x = side_margin + 20_pt;
    x += pen.text(Role::caution, {x, base}, words("safety.no_hands"), type) + 8_pt;
    pen.line(Role::box, {x, base - 2_pt}, {x + 110_pt, base - 2_pt}, style.line);
    x += 122_pt;
    x += pen.text(Role::caution, {x, base}, words("safety.page"), type) + 8_pt;
    pen.line(Role::box, {x, base - 2_pt}, {right, base - 2_pt}, style.line);
}

/// How close lines and sections stand: closer where a shop adds its own below.
struct Spacing {
    Length line;
    Length section;
};

Length card_lines(Pen& pen, Length base, const std::vector<std::string>& lines, const Spacing& spacing) {
    const Length left = side_margin + 20_pt;
    for (const std::string& line : lines) {
        const Scope list = pen.going_on(Tag::list);
        const Scope item = pen.within(Tag::list_item);
        tick_box(pen, {side_margin, base - 2_pt}, 11_pt);
        pen.text(Role::caution, {left, base}, line,
                 pen.fitting(line, {Face::regular, pen.kit().style.text}, pen.page_width() - side_margin - left));
        base -= spacing.line;
    }
    return base;
}

Length card_section(Pen& pen, Length base, const std::string& name, const Spacing& spacing) {
    const auto& words = pen.kit().words;
    section(pen, side_margin, pen.page_width() - side_margin, base, words("safety." + name));
    base = card_lines(pen, base - 23_pt, words.list("safety." + name + "_lines"), spacing);
    if (name == "before") {
        manual_blank(pen, base);
        base -= spacing.line;
    }
    return base - spacing.section;
}

void add_one(Drafts& drafts, const plan::Plan& plan, const Kit& kit, bool second) {
    Draft draft = new_draft(plan, "safety", Orientation::portrait);
    draft.title = kit.words("safety.title");
    draft.subtitle = kit.words("safety.subtitle");
    draft.outline = kit.words("safety.title");
    Pen pen(draft.page, kit);
    draft.second_language = second;
    const std::vector<std::string>& rules = kit.words.list("shop.safety_rules");
    const Spacing spacing = rules.empty() ? Spacing{18_pt, 9_pt} : Spacing{15_pt, 7_pt};
    Length base = signal_panel(pen) - 24_pt;
    for (const char* name : {"before", "board", "cut", "you", "bend"}) base = card_section(pen, base, name, spacing);
    if (!rules.empty()) {
        section(pen, side_margin, pen.page_width() - side_margin, base, kit.words("shop.heading"));
        card_lines(pen, base - 21_pt, rules, spacing);
    }

    const Type type{Face::regular, kit.style.text};
    const Length sign = 47_pt;
    const Length right = pen.page_width() - side_margin;
    Length x = side_margin + pen.text(Role::text, {side_margin, sign}, kit.words("safety.read_by"), type) + 6_pt;
    pen.line(Role::box, {x, sign - 2_pt}, {right - 200_pt, sign - 2_pt}, kit.style.line);
    x = right - 190_pt;
    x += pen.text(Role::text, {x, sign}, kit.words("safety.date"), type) + 6_pt;
    pen.line(Role::box, {x, sign - 2_pt}, {right, sign - 2_pt}, kit.style.line);
    drafts.push_back(std::move(draft));
}

}  // namespace

void add_safety_card(Drafts& drafts, const plan::Plan& plan, const Kit& kit) {
    add_one(drafts, plan, kit, false);
    if (kit.second_words != nullptr) add_one(drafts, plan, kit.second(), true);
}

}  // namespace kerfpacket::sheets
