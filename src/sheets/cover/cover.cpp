#include "sheets/cover/cover.h"

#include <algorithm>
#include <array>
#include <iterator>
#include <optional>
#include <utility>

#include "plan/stopped.h"
#include "sheets/cards/refused.h"
#include "sheets/cover/cover_parts.h"
#include "sheets/words/settings_words.h"
#include "sheets/words/wording.h"

namespace kerfpacket::sheets {
namespace {

/// The shop's own name, over what the job is called.
void shop_name(Cover& cover) {
    Face face = Face::bold;
    for (const std::string& line : cover.kit().words.list("shop.name")) {
        const Rect room = cover.flow.take(cover.style().text * 1.2);
        Pen pen = cover.flow.pen();
        pen.text(Role::text, room.low, line, pen.fitting(line, {face, cover.style().text}, room.width()));
        face = Face::regular;
    }
}

/// Title and number: side by side, or the title below where it is long.
void name_block(Cover& cover) {
    const job::Header& header = cover.plan.header;
    const fonts::Style& style = cover.style();
    const std::string job = cover.words("cover.job", {{"number", header.number}, {"revision", header.revision}});
    const Rect line = cover.flow.take(style.huge);
    const Length base = line.high.y - style.huge * 0.83;
    Pen pen = cover.flow.pen();
    const Length used = pen.text(Role::text, {line.high.x, base}, job,
                                 pen.fitting(job, Cover::bold(style.title), line.width() * 0.6).at_right());
    const Length room = line.width() - used - 16_pt;
    Type title = Cover::bold(style.huge);
    for (const Length size : {style.title, style.strong})
        if (pen.width(header.title, title) > room) title.size = size;
    if (pen.width(header.title, title) <= room) pen.text(Role::text, {line.low.x, base}, header.title, title);
    else cover.flow.paragraph(Role::text, header.title, Cover::bold(style.title));
}

/// "2 arched openings, curved wall".
std::string summary(const Cover& cover) {
    std::ptrdiff_t openings = 0;
    std::ptrdiff_t walls = 0;
    for (const plan::Piece& piece : cover.plan.pieces)
        if (piece.board == 1) ++(piece.kind == plan::Kind::arch_liner ? openings : walls);
    for (const plan::Refused& one : cover.plan.refused) ++(one.kind == plan::Kind::arch_liner ? openings : walls);
    const auto part = [&](std::ptrdiff_t n, const char* one, const char* many) {
        return n == 1 ? cover.words(one) : cover.words(many, {{"n", std::to_string(n)}});
    };
    if (openings == 0) return part(walls, "cover.only_wall", "cover.walls");
    std::string text = part(openings, "cover.one_opening", "cover.openings");
    if (walls > 0) text += ", " + part(walls, "cover.one_wall", "cover.walls");
    return text;
}

/// What the packet is about, and its date and units.
void summary_line(Cover& cover) {
    const Length size = cover.style().text;
    const Rect room = cover.flow.take(leading(size));
    const Length base = first_base(room, size);
    const std::string units =
        cover.words(cover.tape.unit() == measure::Unit::inch ? "cover.units_inch" : "cover.units_mm");
    const std::string date = date_text(cover.plan.header.date, cover.kit().words) + "    " + units;
    const std::string text = summary(cover);
    Pen pen = cover.flow.pen();
    const Type date_type = pen.fitting(date, Cover::regular(size), room.width() * 0.6);
    pen.text(Role::text, {room.high.x, base}, date, date_type.at_right());
    const Length left = room.width() - pen.width(date, date_type) - 16_pt;
    pen.text(Role::text, {room.low.x, base}, text, pen.fitting(text, Cover::regular(size), left));
}

void banner(Cover& cover) {
    const auto& pieces = cover.plan.pieces;
    const fonts::Style& style = cover.style();
    const auto count = [&](bend::Verdict verdict) {
        return std::count_if(pieces.begin(), pieces.end(), [&](const plan::Piece& p) {
            return p.bend.verdict == verdict && plan::stopped(p) != plan::Stopped::weak_link;
        });
    };
    const auto breaks = count(bend::Verdict::break_likely);
    const auto careful = count(bend::Verdict::caution);
    const auto weak = std::count_if(pieces.begin(), pieces.end(),
                                    [](const plan::Piece& p) { return plan::stopped(p) == plan::Stopped::weak_link; });
    const bool stopped = breaks + weak > 0;
    const char* key = weak > 0      ? "cover.banner_weak_link"
                      : breaks > 0  ? "cover.banner_break"
                      : careful > 0 ? "cover.banner_caution"
                                    : "cover.banner_ok";
    const std::string text = cover.words(key, {{"ok", std::to_string(count(bend::Verdict::ok))},
                                               {"caution", std::to_string(careful)},
                                               {"break", std::to_string(breaks)},
                                               {"weak", std::to_string(weak)}});
    // Whose coupons the pieces rest on stands on their own sheets.
    const bool all =
        std::all_of(pieces.begin(), pieces.end(), [](const plan::Piece& p) { return p.coupon && p.coupon->counts; });
    // Beside "do not cut" it would read as leave to go on once a coupon holds.
    const std::string aside = stopped ? std::string()
                              : all   ? coupon_state(pieces.front(), cover.kit())
                                      : cover.words("piece.coupon_first");
    cover.flow.skip(style.strong);
    const Rect frame = cover.flow.take(style.strong * 2.3);
    const Length base = frame.high.y - style.strong * 1.54;
    Pen pen = cover.flow.pen();
    pen.box(Role::caution, frame, stopped ? style.end : style.heavy);
    const Type small = pen.fitting(aside, Cover::regular(style.text), frame.width() * 0.4).at_right();
    const Length room = frame.width() - pen.width(aside, small) - 34_pt;
    pen.text(Role::caution, {frame.low.x + 12_pt, base}, text, pen.fitting(text, Cover::bold(style.strong), room));
    pen.text(Role::caution, {frame.high.x - 10_pt, base}, aside, small);
}

/// What cannot be made, over everything else that can: with the pages that say why.
void refused_banner(Cover& cover, const std::vector<IndexEntry>& index) {
    const auto& refused = cover.plan.refused;
    if (refused.empty()) return;
    const auto is_first = [&](const IndexEntry& entry) {
        return entry.title == cover.words("refused.outline", {{"piece", refused.front().id}});
    };
    const auto first = std::find_if(index.begin(), index.end(), is_first);
    if (first == index.end()) return;  // a shop may leave the sheet out
    const IndexEntry last = *std::min(first + static_cast<std::ptrdiff_t>(refused.size()) - 1, index.end() - 1);
    const std::string pages = first->first == last.last
                                  ? cover.words("cover.refused_page", {{"page", std::to_string(first->first + 1)}})
                                  : cover.words("cover.refused_pages", {{"first", std::to_string(first->first + 1)},
                                                                        {"last", std::to_string(last.last + 1)}});
    const std::string text =
        cover.words("cover.banner_refused", {{"pieces", refused_ids(cover.plan)}, {"pages", pages}});
    const Rect box = cover.flow.boxed(Role::caution, text, Cover::bold(cover.style().strong), cover.style().end);
    cover.flow.pen().link(box, first->first);
}

/// False where they go on to a further page.
bool cautions(Cover& cover) {
    const auto& pieces = cover.plan.pieces;
    if (std::all_of(pieces.begin(), pieces.end(), [](const plan::Piece& p) { return p.cautions.empty(); })) return true;
    const Length size = cover.style().text;
    Lead lead{.box = false, .words = {}, .indent = size * 2.36};
    for (const plan::Piece& piece : pieces)
        lead.indent = std::max(lead.indent, cover.flow.pen().width(piece.id, Cover::bold(size)) + 8_pt);
    bool together = true;
    std::optional<Length> above;
    cover.flow.under_heading(cover.words("cover.cautions"), [&] {
        for (const plan::Piece& piece : pieces) {
            lead.words = piece.id;
            for (const plan::Caution& caution : piece.cautions) {
                cover.flow.listed(Role::caution, lead, caution_text(caution, cover.kit(), cover.tape),
                                  Cover::regular(size));
                together &= !above || cover.flow.y() < *above;
                above = cover.flow.y();
            }
        }
    });
    return together;
}

/// How closely it is set, in parts of what is usual.
struct Setting {
    double drawings = 1;  ///< their height
    double white = 1;     ///< between blocks
};
constexpr std::array settings{Setting{}, Setting{0.8, 0.8}, Setting{0.6, 0.6}, Setting{0.6, 0.3}, Setting{0.5, 0.3}};

/// The cover in a setting.
struct Drawn {
    Drafts drafts;
    bool together = true;  ///< the cautions stand on one page

    bool better_than(const Drawn& other) const {
        if (drafts.size() != other.drafts.size()) return drafts.size() < other.drafts.size();
        return together && !other.together;
    }
};

Drawn drawn(const plan::Plan& plan, const std::vector<IndexEntry>& index, std::size_t pages, const Kit& kit,
            const Setting& setting) {
    Drawn made;
    const auto new_page = [&](bool first) {
        Draft draft = new_draft(plan, "cover", Orientation::portrait);
        draft.title = kit.words("cover.title");
        draft.subtitle = first ? std::string() : kit.words("cover.continued");
        draft.outline = first ? kit.words("cover.title") : std::string();
        return draft;
    };
    Flow flow(made.drafts, kit, new_page, {72_pt, 44_pt, setting.white});
    const Tape tape(plan.header.units, kit.words);
    Cover cover{flow, plan, tape, setting.drawings};
    shop_name(cover);
    name_block(cover);
    summary_line(cover);
    banner(cover);
    refused_banner(cover, index);
    cover_drawings(cover);
    cover_table(cover);
    made.together = cautions(cover);
    cover_index(cover, index, pages);
    return made;
}

}  // namespace

void add_cover(Drafts& drafts, const plan::Plan& plan, const std::vector<IndexEntry>& index, std::size_t pages,
               const Kit& kit) {
    // A lower drawing and less white often save a page, or keep the cautions on one page.
    Drawn best = drawn(plan, index, pages, kit, settings.front());
    const auto cannot_be_better = [&] {
        return best.together && (best.drafts.size() == 1 ||
                                 drawn(plan, index, pages, kit, settings.back()).drafts.size() == best.drafts.size());
    };
    if (!cannot_be_better())
        for (std::size_t i = 1; i < settings.size() && best.drafts.size() > 1; ++i)
            if (Drawn closer = drawn(plan, index, pages, kit, settings.at(i)); closer.better_than(best))
                best = std::move(closer);
    std::move(best.drafts.begin(), best.drafts.end(), std::back_inserter(drafts));
}

}  // namespace kerfpacket::sheets
