#include "sheets/cover/cover.h"

#include <algorithm>

#include "sheets/cards/refused.h"
#include "sheets/cover/cover_flow.h"
#include "sheets/words/settings_words.h"
#include "sheets/words/wording.h"

namespace kerfpacket::sheets {
namespace {

/// The shop's own name, over what the job is called.
void shop_name(CoverFlow& flow) {
    Face face = Face::bold;
    for (const std::string& line : flow.kit().words.list("shop.name")) {
        Pen pen = flow.pen();
        flow.y -= 13_pt;
        pen.text(Role::text, {side_margin, flow.y}, line, pen.fitting(line, {face, flow.style().text}, flow.width()));
        face = Face::regular;
    }
}

void name_block(CoverFlow& flow) {
    Pen pen = flow.pen();
    const job::Header& header = flow.plan().header;
    const fonts::Style& style = flow.style();
    const Length y = flow.y;
    const Length right = flow.right();
    const std::string job = flow.words("cover.job", {{"number", header.number}, {"revision", header.revision}});
    const Length job_width = pen.text(Role::text, {right, y - 20_pt}, job, CoverFlow::bold(style.title).at_right());
    Type title = CoverFlow::bold(style.huge);
    const Length room = right - side_margin - job_width - 16_pt;
    for (const Length size : {style.huge, style.title, style.strong}) {
        title.size = size;
        if (pen.width(header.title, title) <= room) break;
    }
    if (pen.width(header.title, title) > room) {
        title.size = style.title;
        flow.y = pen.paragraph(Role::text, {side_margin, y - 40_pt}, header.title, title, right - side_margin, 20_pt) +
                 20_pt;
    } else {
        pen.text(Role::text, {side_margin, y - 20_pt}, header.title, title);
    }
    const std::string units =
        flow.words(flow.tape.unit() == measure::Unit::inch ? "cover.units_inch" : "cover.units_mm");
    pen.text(Role::text, {right, flow.y - 38_pt}, date_text(header.date, flow.kit().words) + "    " + units,
             CoverFlow::regular(style.text).at_right());
}

/// "2 arched openings, curved wall".
std::string summary(const CoverFlow& flow) {
    std::ptrdiff_t openings = 0;
    std::ptrdiff_t walls = 0;
    for (const plan::Piece& piece : flow.plan().pieces)
        if (piece.board == 1) ++(piece.kind == plan::Kind::arch_liner ? openings : walls);
    for (const plan::Refused& one : flow.plan().refused) ++(one.kind == plan::Kind::arch_liner ? openings : walls);
    const auto part = [&](std::ptrdiff_t n, const char* one, const char* many) {
        return n == 1 ? flow.words(one) : flow.words(many, {{"n", std::to_string(n)}});
    };
    if (openings == 0) return part(walls, "cover.only_wall", "cover.walls");
    std::string text = part(openings, "cover.one_opening", "cover.openings");
    if (walls > 0) text += ", " + part(walls, "cover.one_wall", "cover.walls");
    return text;
}

void banner(CoverFlow& flow) {
    const auto& pieces = flow.plan().pieces;
    const auto count = [&](bend::Verdict verdict) {
        return std::count_if(pieces.begin(), pieces.end(),
                             [&](const plan::Piece& p) { return p.bend.verdict == verdict; });
    };
    const auto breaks = count(bend::Verdict::break_likely);
    const auto careful = count(bend::Verdict::caution);
    Pen pen = flow.pen();
    const Length right = flow.right();
    const Rect frame{{side_margin, flow.y - 30_pt}, {right, flow.y}};
    pen.box(Role::caution, frame, breaks > 0 ? flow.style().end : flow.style().heavy);
    const char* key = breaks > 0 ? "cover.banner_break" : careful > 0 ? "cover.banner_caution" : "cover.banner_ok";
    const std::string text = flow.words(key, {{"ok", std::to_string(count(bend::Verdict::ok))},
                                              {"caution", std::to_string(careful)},
                                              {"break", std::to_string(breaks)}});
    // Whose coupons the pieces rest on stands on their own sheets.
    const bool all =
        std::all_of(pieces.begin(), pieces.end(), [](const plan::Piece& p) { return p.coupon && p.coupon->counts; });
    const std::string aside = all ? coupon_state(pieces.front(), flow.kit()) : flow.words("piece.coupon_first");
    const Type small = CoverFlow::regular(flow.style().text).at_right();
    Type type = CoverFlow::bold(flow.style().strong);
    type = pen.fitting(text, type, flow.width() - pen.width(aside, small) - 34_pt);
    pen.text(Role::caution, {side_margin + 12_pt, flow.y - 20_pt}, text, type);
    pen.text(Role::caution, {right - 10_pt, flow.y - 20_pt}, aside, small);
    flow.y -= 30_pt;
}

/// What cannot be made, over everything else that can: with the pages that say why.
void refused_banner(CoverFlow& flow, const std::vector<IndexEntry>& index) {
    const auto& refused = flow.plan().refused;
    if (refused.empty()) return;
    const auto is_first = [&](const IndexEntry& entry) {
        return entry.title == flow.words("refused.outline", {{"piece", refused.front().id}});
    };
    const auto first = std::find_if(index.begin(), index.end(), is_first);
    if (first == index.end()) return;  // a shop may leave the sheet out
    const IndexEntry last = *std::min(first + static_cast<std::ptrdiff_t>(refused.size()) - 1, index.end() - 1);
    const std::string pages = first->first == last.last
                                  ? flow.words("cover.refused_page", {{"page", std::to_string(first->first + 1)}})
                                  : flow.words("cover.refused_pages", {{"first", std::to_string(first->first + 1)},
                                                                       {"last", std::to_string(last.last + 1)}});
    const std::string text =
        flow.words("cover.banner_refused", {{"pieces", refused_ids(flow.plan())}, {"pages", pages}});
    const Type type = CoverFlow::bold(flow.style().strong);
    const Length width = flow.width() - 24_pt;
    const Length top = flow.y - 6_pt;
    Pen pen = flow.pen();
    flow.y = pen.paragraph(Role::caution, {side_margin + 12_pt, top - 19_pt}, text, type, width, 16_pt) - 11_pt;
    pen.box(Role::caution, {{side_margin, flow.y}, {flow.right(), top}}, flow.style().end);
    pen.link({{side_margin, flow.y}, {flow.right(), top}}, first->first);
}

void cautions(CoverFlow& flow) {
    const auto& pieces = flow.plan().pieces;
    if (std::all_of(pieces.begin(), pieces.end(), [](const plan::Piece& p) { return p.cautions.empty(); })) return;
    flow.need(60_pt);
    flow.heading("cover.cautions", 30_pt);
    const Type bold = CoverFlow::bold(flow.style().text);
    Length indent = 26_pt;
    for (const plan::Piece& piece : pieces) indent = std::max(indent, flow.pen().width(piece.id, bold) + 8_pt);
    const Length width = flow.width() - indent;
    const Type type = CoverFlow::regular(flow.style().text);
    for (const plan::Piece& piece : pieces) {
        for (const plan::Caution& caution : piece.cautions) {
            const std::string text = caution_text(caution, flow.kit(), flow.tape);
            flow.need(30_pt + flow.pen().paragraph_height(text, type, width, 13.5_pt));
            Pen pen = flow.pen();
            const Scope list = pen.going_on(Tag::list);
            const Scope item = pen.within(Tag::list_item);
            pen.text(Role::caution, {side_margin, flow.y - 13_pt}, piece.id, bold);
            flow.y =
                pen.paragraph(Role::caution, {side_margin + indent, flow.y - 13_pt}, text, type, width, 13.5_pt) - 2_pt;
        }
    }
}

}  // namespace

void CoverFlow::start_page(bool first) {
    Draft draft = new_draft(plan_, "cover", Orientation::portrait);
    draft.title = words("cover.title");
    draft.subtitle = first ? std::string() : words("cover.continued");
    draft.outline = first ? words("cover.title") : std::string();
    drafts_.push_back(std::move(draft));
    y = drafts_.back().page.height - below_header;
}

void CoverFlow::heading(const char* key, Length content) {
    need(26_pt + content);
    Pen pen = this->pen();
    y -= 18_pt;
    section(pen, side_margin, right(), y, words(key));
    y -= 8_pt;
}

void add_cover(Drafts& drafts, const plan::Plan& plan, const std::vector<IndexEntry>& index, std::size_t pages,
               const Kit& kit) {
    CoverFlow flow(drafts, plan, kit);
    flow.start_page(true);
    shop_name(flow);
    name_block(flow);
    {
        Pen pen = flow.pen();
        pen.text(Role::text, {side_margin, flow.y - 38_pt}, summary(flow), CoverFlow::regular(kit.style.text));
        flow.y -= 52_pt;
    }
    banner(flow);
    refused_banner(flow, index);
    cover_drawings(flow);
    cover_table(flow);
    cautions(flow);
    cover_index(flow, index, pages);
}

}  // namespace kerfpacket::sheets
