#include "sheets/cards/refused.h"

#include "sheets/changes.h"
#include "sheets/layout/flow.h"
#include "sheets/layout/furniture.h"
#include "sheets/words/refusal_words.h"
#include "sheets/words/tape.h"

namespace kerfpacket::sheets {
namespace {

class Sheet {
public:
    Sheet(Flow& flow, const plan::Plan& plan, const plan::Refused& refused)
        : flow_(flow), refused_(refused), tape_(plan.header.units, flow.kit().words) {}

    void draw() {
        statement();
        flow_.heading(words("refused.why"));
        for (const job::Diagnostic& reason : refused_.reasons) {
            line(refusal_text(reason.message, flow_.kit()), Face::bold);
            if (reason.at.line > 0)
                line(words("refused.line", {{"line", std::to_string(reason.at.line)}}), Face::regular);
        }
        flow_.heading(words("refused.do"));
        for (const job::Diagnostic& reason : refused_.reasons)
            if (!reason.hint.empty()) would_do(reason.hint);
        line(words("refused.again"), Face::regular);
        flow_.heading(words("refused.asked"));
        FlowTable table(flow_, {{"", 0.35}, {"", 0.65}});
        for (const job::Value& value : refused_.asked) {
            if (value.key == "id") continue;
            const auto [what, text] = value_words(value, flow_.kit(), tape_);
            table.row({what, text});
        }
    }

private:
    std::string words(std::string_view key, const fonts::Words::Values& values = {}) const {
        return flow_.kit().words(key, values);
    }

    /// Ways to choose from are numbered.
    void would_do(const job::Told& hint) {
        const std::vector<std::string> ways = refusal_ways(hint, flow_.kit());
        if (ways.empty()) return line(refusal_text(hint, flow_.kit()), Face::regular);
        line(words(ways.size() > 1 ? "refused.ways" : "refused.way"), Face::regular);
        for (std::size_t i = 0; i < ways.size(); ++i)
            flow_.listed(Role::caution, {.box = false, .words = std::to_string(i + 1), .indent = 16_pt}, ways[i],
                         {Face::regular, flow_.style().text});
    }

    /// In a box that nobody overlooks.
    void statement() {
        const fonts::Style& style = flow_.style();
        const Type type{Face::regular, style.text};
        const Length white = style.text;
        const Length inside = flow_.width() - white * 2;
        const std::string text = words("refused.statement");
        const Length head = leading(style.title);
        const Rect box = flow_.take(head + flow_.pen().paragraph_height(text, type, inside, leading(type.size)) +
                                    leading(type.size) + white * 1.5);
        Pen pen = flow_.pen();
        const std::string first = words("refused.do_not_cut", {{"piece", refused_.id}});
        const Length left = box.low.x + white;
        const Length top = box.high.y - white * 0.75;
        pen.text(Role::caution, {left, top - style.title * 0.95}, first,
                 pen.fitting(first, {Face::bold, style.title}, inside));
        pen.paragraph(Role::caution, {left, top - head - type.size * 0.95}, text, type, inside, leading(type.size));
        pen.box(Role::caution, box, style.end);
    }

    void line(const std::string& text, Face face) { flow_.listed(Role::caution, {}, text, {face, flow_.style().text}); }

    Flow& flow_;
    const plan::Refused& refused_;
    Tape tape_;
};

}  // namespace

void add_refused(Drafts& drafts, const plan::Plan& plan, const plan::Refused& refused, const Kit& kit) {
    Flow flow(drafts, kit, [&](bool first) {
        Draft draft = piece_page(plan, kit, refused.id, "refused", "refused", first);
        draft.subtitle = refused_name(refused, kit);
        return draft;
    });
    Sheet(flow, plan, refused).draw();
}

std::string refused_name(const plan::Refused& refused, const Kit& kit) {
    return kit.words(refused.kind == plan::Kind::arch_liner ? "piece.arch_liner" : "piece.wall_board");
}

std::string refused_ids(const plan::Plan& plan) {
    std::string ids;
    for (const plan::Refused& one : plan.refused) ids += (ids.empty() ? "" : ", ") + one.id;
    return ids;
}

}  // namespace kerfpacket::sheets
