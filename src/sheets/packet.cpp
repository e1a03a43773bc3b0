#include "sheets/packet.h"

#include <algorithm>
#include <iterator>
#include <stdexcept>
#include <utility>

#include "sheets/cards/coupon_sheet.h"
#include "sheets/cards/install.h"
#include "sheets/cards/refused.h"
#include "sheets/cards/safety.h"
#include "sheets/cards/setup.h"
#include "sheets/cover/cover.h"
#include "sheets/evidence/strain_sheet.h"
#include "sheets/evidence/survey_sheet.h"
#include "sheets/layout/furniture.h"
#include "sheets/strips/checklist.h"
#include "sheets/strips/strips.h"
#include "sheets/templates/arch_template.h"
#include "sheets/templates/casing_sheet.h"
#include "sheets/templates/form_sheet.h"

namespace kerfpacket::sheets {
namespace {

/// A house has a few hundred; a thousand take some hundred MB to lay out.
constexpr std::size_t most_pages = 3000;

void require_room(std::size_t pages, const std::string& sheet) {
    if (pages <= most_pages) return;
    throw std::runtime_error("the packet has more than " + std::to_string(most_pages) +
                             " pages, at the sheets named \"" + sheet +
                             "\": split the job, or print on larger paper or a roll");
}

/// Pages of one kind of sheet, in the order of the pieces. The cover comes later: it tells where all others are.
Drafts make_sheet(const std::string& sheet, const plan::Plan& plan, const Kit& kit) {
    Drafts drafts;
    if (sheet == "safety") {
        add_safety_card(drafts, plan, kit);
        return drafts;
    }
    if (sheet == "refused") {
        for (const plan::Refused& refused : plan.refused) add_refused(drafts, plan, refused, kit);
        return drafts;
    }
    for (const plan::Piece& piece : plan.pieces) {
        if (sheet == "setup") add_setup_card(drafts, plan, piece, kit);
        else if (sheet == "strain") add_strain_sheet(drafts, plan, piece, kit);
        else if (sheet == "coupon") add_coupon_sheet(drafts, plan, piece, kit);
        else if (sheet == "survey") add_survey(drafts, plan, piece, kit);
        else if (sheet == "strips") add_strips(drafts, plan, piece, kit);
        else if (sheet == "checklist") add_checklist(drafts, plan, piece, kit);
        else if (sheet == "form") add_form(drafts, plan, piece, kit);
        else if (sheet == "install") add_install_card(drafts, plan, piece, kit);
        else if (sheet == "template" || sheet == "casing") {
            // One for the opening, whatever boards line it.
            if (piece.kind != plan::Kind::arch_liner || piece.board != 1) continue;
            if (sheet == "template") add_template(drafts, plan, piece, kit);
            else add_casing(drafts, plan, piece, kit);
        } else throw std::runtime_error("templates/layout.toml: order names a sheet that does not exist: " + sheet);
        require_room(drafts.size(), sheet);
    }
    return drafts;
}

std::vector<IndexEntry> index_of(const Drafts& drafts) {
    std::vector<IndexEntry> index;
    for (std::size_t i = 0; i < drafts.size(); ++i) {
        if (!drafts[i].outline.empty()) index.push_back({drafts[i].outline, i, i});
        else if (!index.empty()) index.back().last = i;
    }
    return index;
}

/// All sheets of a packet but those that tell where the others are: these stand before the sheets counted here.
struct Sheets {
    Drafts drafts;
    std::size_t cover_at = 0;
    std::size_t changes_at = 0;
    bool changes_first = false;  ///< where both stand at one place
};

Sheets make_sheets(const plan::Plan& plan, const Kit& kit) {
    Sheets sheets;
    bool cover = false;
    for (const std::string& sheet : kit.style.order) {
        if (sheet == "cover") {
            sheets.cover_at = sheets.drafts.size();
            cover = true;
        } else if (sheet == "changes") {
            sheets.changes_at = sheets.drafts.size();
            sheets.changes_first = !cover;
        } else {
            Drafts more = make_sheet(sheet, plan, kit);
            require_room(sheets.drafts.size() + more.size(), sheet);
            std::move(more.begin(), more.end(), std::back_inserter(sheets.drafts));
        }
    }
    return sheets;
}

/// Pages that stand under one entry of the index.
struct Run {
    IndexEntry entry;
    std::string sheet;
};

std::vector<Run> runs_of(const Drafts& drafts) {
    std::vector<Run> runs;
    for (const IndexEntry& entry : index_of(drafts)) runs.push_back({entry, drafts.at(entry.first).page.sheet});
    return runs;
}

bool look_alike(const Drafts& a, const IndexEntry& of_a, const Drafts& b, const IndexEntry& of_b) {
    const auto from = [](const Drafts& drafts, std::size_t i) {
        return drafts.begin() + static_cast<std::ptrdiff_t>(i);
    };
    return std::equal(from(a, of_a.first), from(a, of_a.last + 1), from(b, of_b.first), from(b, of_b.last + 1),
                      [](const Draft& one, const Draft& other) {
                          return one.page.width == other.page.width && one.page.height == other.page.height &&
                                 one.title == other.title && one.subtitle == other.subtitle &&
                                 one.page.items == other.page.items;
                      });
}

/// The sheets that do not look as they did, by their places among those of now.
Superseded superseded_by(const Drafts& now, const plan::Plan& plan, const plan::Plan& before, const Kit& kit) {
    // What a header says, and no more, is no change of a sheet.
    plan::Plan old_plan = before;
    old_plan.header.number = plan.header.number;
    old_plan.header.title = plan.header.title;
    old_plan.header.revision = plan.header.revision;
    old_plan.header.date = plan.header.date;
    old_plan.fingerprint = plan.fingerprint;
    const Drafts old = make_sheets(old_plan, kit).drafts;
    const std::vector<Run> runs = runs_of(now), old_runs = runs_of(old);
    const auto same_as = [](const Run& run) {
        return [&run](const Run& one) { return one.sheet == run.sheet && one.entry.title == run.entry.title; };
    };
    Superseded superseded;
    for (const Run& run : runs) {
        const auto found = std::find_if(old_runs.begin(), old_runs.end(), same_as(run));
        if (found == old_runs.end() || !look_alike(now, run.entry, old, found->entry))
            superseded.sheets.push_back(run.entry);
    }
    for (const Run& run : old_runs)
        if (std::none_of(runs.begin(), runs.end(), same_as(run))) superseded.gone.push_back(run.entry.title);
    return superseded;
}

/// Where the sheets, counted without them, stand with the cover and the change pages in their places.
struct Places {
    const Sheets& sheets;
    std::size_t cover = 1;
    std::size_t changes = 0;

    IndexEntry moved(IndexEntry entry) const {
        const std::size_t by =
            (entry.first >= sheets.cover_at ? cover : 0) + (entry.first >= sheets.changes_at ? changes : 0);
        entry.first += by;
        entry.last += by;
        return entry;
    }
    std::size_t first_change() const {
        const bool behind =
            sheets.cover_at < sheets.changes_at || (sheets.cover_at == sheets.changes_at && !sheets.changes_first);
        return sheets.changes_at + (behind ? cover : 0);
    }
};

std::vector<IndexEntry> moved(std::vector<IndexEntry> index, const Places& places) {
    for (IndexEntry& entry : index) entry = places.moved(std::move(entry));
    return index;
}

void insert(Drafts& into, std::size_t at, Drafts& drafts) {
    into.insert(into.begin() + static_cast<std::ptrdiff_t>(at), std::make_move_iterator(drafts.begin()),
                std::make_move_iterator(drafts.end()));
}

/// All sheets, the cover and the change pages in their places. Where the other pages stand depends on how many these
/// take, and that on how long their lists are: drawn once to count them, and again while the count was wrong.
Drafts in_order(const Revision& now, const Revision* before, const Kit& kit) {
    Sheets sheets = make_sheets(now.plan, kit);
    const std::vector<IndexEntry> index = index_of(sheets.drafts);
    Superseded superseded;
    if (before != nullptr) superseded = superseded_by(sheets.drafts, now.plan, before->plan, kit);
    Places places{sheets, 1, before != nullptr ? 1U : 0U};
    while (true) {
        std::vector<IndexEntry> entries = moved(index, places);
        Drafts changes;
        if (before != nullptr) {
            add_changes(changes, *before, now, {moved(superseded.sheets, places), superseded.gone}, kit);
            const std::size_t first = places.first_change();
            const auto behind = std::find_if(entries.begin(), entries.end(),
                                             [&](const IndexEntry& entry) { return entry.first > first; });
            entries.insert(behind, {changes.front().outline, first, first + changes.size() - 1});
        }
        Drafts cover;
        add_cover(cover, now.plan, entries, sheets.drafts.size() + places.cover + places.changes, kit);
        if (cover.size() == places.cover && changes.size() == places.changes) {
            insert(sheets.drafts, sheets.cover_at, cover);
            insert(sheets.drafts, places.first_change(), changes);
            return std::move(sheets.drafts);
        }
        // The lists keep their lengths, so the second count is the last.
        places.cover = cover.size();
        places.changes = changes.size();
    }
}

bool wanted(const Draft& draft, const Part& part) {
    const auto& sheets = part.sheets;
    if (!sheets.empty() && std::find(sheets.begin(), sheets.end(), draft.page.sheet) == sheets.end()) return false;
    const auto holds = [&](const auto& range) {
        return range.first <= draft.page.number && draft.page.number <= range.second;
    };
    if (!part.pages.empty() && std::none_of(part.pages.begin(), part.pages.end(), holds)) return false;
    if (part.from_cut && draft.kerfs.last < *part.from_cut) return false;
    return !part.strip || draft.strips.holds(*part.strip);
}

/// Links lead to where their pages stand now; one to a page that is left out goes.
void lead_links(page::Page& page, const std::vector<std::optional<std::size_t>>& places) {
    std::erase_if(page.items, [&](const page::Item& item) {
        const auto* link = std::get_if<page::LinkItem>(&item);
        return link != nullptr && !places.at(link->page);
    });
    for (page::Item& item : page.items)
        if (auto* link = std::get_if<page::LinkItem>(&item)) link->page = *places.at(link->page);
}

}  // namespace

const std::vector<std::string>& sheet_kinds(const Kit& kit) { return kit.style.order; }

namespace {

page::Document packet_of(Drafts drafts, const plan::Plan& plan, const Kit& kit, const Part& part) {
    page::Document document;
    document.title =
        kit.words("page.document_title",
                  {{"number", plan.header.number}, {"title", plan.header.title}, {"revision", plan.header.revision}});
    document.subject = kit.words("cover.title");
    document.language = kit.words("page.language");
    document.date = plan.header.date;
    std::vector<std::optional<std::size_t>> places(drafts.size());
    for (std::size_t i = 0; i < drafts.size(); ++i) {
        Draft& draft = drafts[i];
        draft.page.number = i + 1;
        if (!wanted(draft, part)) continue;
        draft.reprint = !part.whole();
        add_furniture(draft, plan, draft.second_language ? kit.second() : kit, i + 1, drafts.size());
        if (draft.second_language) draft.page.language = kit.second().words("page.language");
        put_on_paper(draft.page, plan, draft.use);
        places[i] = document.pages.size();
        if (!draft.outline.empty()) document.outline.push_back({draft.outline, document.pages.size(), 0});
        document.pages.push_back(std::move(draft.page));
    }
    for (page::Page& page : document.pages) lead_links(page, places);
    return document;
}

}  // namespace

page::Document make_packet(const plan::Plan& plan, const Kit& kit, const Part& part) {
    const std::vector<job::Value> nothing;  // only compared, and here with nothing
    return packet_of(in_order({plan, nothing}, nullptr, kit), plan, kit, part);
}

page::Document make_packet(const Revision& now, const Revision& before, const Kit& kit, const Part& part) {
    return packet_of(in_order(now, &before, kit), now.plan, kit, part);
}

}  // namespace kerfpacket::sheets
