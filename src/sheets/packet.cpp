#include "sheets/packet.h"

#include <algorithm>
#include <iterator>
#include <stdexcept>
#include <utility>

#include "disk/process.h"
#include "measure/require.h"
#include "sheets/cards/work_order.h"
#include "sheets/cover/cover.h"
#include "sheets/folded_packet.h"
#include "sheets/layout/finish.h"
#include "sheets/one_sheet.h"

namespace kerfpacket::sheets {
namespace {

std::vector<IndexEntry> index_of(const Drafts& drafts) {
    std::vector<IndexEntry> index;
    for (std::size_t i = 0; i < drafts.size(); ++i) {
        const page::Page& page = drafts[i].page;
        if (!drafts[i].outline.empty()) index.push_back({drafts[i].outline, i, i, page.sheet, page.piece});
        if (index.empty()) continue;
        index.back().last = i;
        index.back().sets = std::max(index.back().sets, drafts[i].boards.set);
        index.back().strips = std::max(index.back().strips, drafts[i].strips.last());
        if (drafts[i].also.empty()) continue;
        const auto told = std::find_if(index.rbegin(), index.rend(),
                                       [&](const IndexEntry& entry) { return entry.sheet == drafts[i].also; });
        if (told != index.rend() && !told->also) told->also = i;
    }
    return index;
}

/// All sheets of a packet but those that tell where the others are: these stand before the sheets counted here.
struct Sheets {
    Drafts drafts;
    std::vector<page::Folded> folded;  ///< of each draft that waits folded; of others nothing
    std::size_t cover_at = 0;
    std::size_t changes_at = 0;
    bool changes_first = false;  ///< where both stand at one place
};

/// A sheet for one of several boards has as many sets of pages as there are boards; they look alike but for its number.
/// A page that holds the sets of all is no sheet for one.
void add_sets(Sheets& sheets, std::size_t from, const std::string& sheet) {
    Drafts& drafts = sheets.drafts;
    const Drafts set(drafts.begin() + static_cast<std::ptrdiff_t>(from), drafts.end());
    if (set.empty() || set.front().boards.n == 0 || set.front().boards.count() > 1) return;
    for (int n = 2; n <= set.front().boards.of; ++n) {
        require_room(drafts.size() + set.size(), sheet);
        for (Draft draft : set) {
            draft.boards = {n, n, draft.boards.of, n};
            draft.outline.clear();
            sheets.folded.push_back(sheets.folded[drafts.size() - set.size()]);
            drafts.push_back(std::move(draft));
        }
    }
}

/// Thousands of pages wait for each other: none takes more than it needs, and those behind the first `open` are folded.
void let_wait(Sheets& sheets, std::size_t from, std::size_t open) {
    sheets.folded.resize(sheets.drafts.size());
    for (std::size_t i = from; i < sheets.drafts.size(); ++i) {
        page::Page& page = sheets.drafts[i].page;
        if (i < open) page.items.shrink_to_fit();
        else sheets.folded[i] = page::Folded(page);
    }
}

/// How pages wait for each other, and how many are drawn at once.
struct Waiting {
    std::size_t open = all_open;
    unsigned threads = 1;
};

/// Sheets of pieces that follow each other in the order come piece by piece: all of a board lies together. They are
/// drawn side by side, each for itself.
void add_pieces(Sheets& sheets, const std::vector<std::string>& kinds, const plan::Plan& plan, const Kit& kit,
                const Waiting& waiting) {
    if (kinds.empty()) return;
    const PieceSheets of_pieces(plan, kit, kinds);
    const auto kind_of = [&](std::size_t number) -> const std::string& { return kinds[number % kinds.size()]; };
    disk::SideBySide<Drafts> drawn(plan.pieces.size() * kinds.size(), waiting.threads);
    const auto new_maker = [&] {
        return [&](std::size_t number) {
            Drafts drafts;
            of_pieces.add(drafts, kind_of(number), number / kinds.size());
            return drafts;
        };
    };
    drawn.run(new_maker, [&](std::size_t number, Drafts drafts) {
        const std::size_t from = sheets.drafts.size();
        require_room(from + drafts.size(), kind_of(number));
        std::move(drafts.begin(), drafts.end(), std::back_inserter(sheets.drafts));
        let_wait(sheets, from, waiting.open);
        if (one_for_each_board(kind_of(number))) add_sets(sheets, from, kind_of(number));
    });
}

Sheets make_sheets(const plan::Plan& plan, const Kit& kit, const Waiting& waiting) {
    Sheets sheets;
    bool cover = false;
    std::vector<std::string> of_pieces;
    for (const std::string& sheet : kit.style.order) {
        if (plan.packet.leaves_out(sheet)) continue;
        const bool told_last = sheet == "cover" || sheet == "changes";
        if (!told_last && !of_job(sheet)) {
            of_pieces.push_back(sheet);
            continue;
        }
        add_pieces(sheets, std::exchange(of_pieces, {}), plan, kit, waiting);
        if (sheet == "cover") {
            sheets.cover_at = sheets.drafts.size();
            cover = true;
        } else if (sheet == "changes") {
            sheets.changes_at = sheets.drafts.size();
            sheets.changes_first = !cover;
        } else {
            const std::size_t from = sheets.drafts.size();
            add_job_sheet(sheets.drafts, sheet, plan, kit);
            let_wait(sheets, from, waiting.open);
        }
    }
    add_pieces(sheets, of_pieces, plan, kit, waiting);
    return sheets;
}

/// Those of the first set: the others look like it.
Pages pages_of(const Drafts& drafts, const IndexEntry& entry) {
    return {drafts.begin() + static_cast<std::ptrdiff_t>(entry.first),
            drafts.begin() + static_cast<std::ptrdiff_t>(entry.last_of_set()) + 1};
}

/// The sheets that do not look as they did, by their places among those of now.
Superseded superseded_by(const Drafts& now, const plan::Plan& plan, const plan::Plan& before, const Kit& kit,
                         unsigned threads) {
    // What a header says, and no more, is no change of a sheet.
    plan::Plan old_plan = before;
    old_plan.header.number = plan.header.number;
    old_plan.header.title = plan.header.title;
    old_plan.header.revision = plan.header.revision;
    old_plan.header.date = plan.header.date;
    old_plan.fingerprint = plan.fingerprint;
    const Drafts old = make_sheets(old_plan, kit, {all_open, threads}).drafts;
    const std::vector<IndexEntry> runs = index_of(now), old_runs = index_of(old);
    const auto same_as = [](const IndexEntry& run) {
        return [&run](const IndexEntry& one) { return one.sheet == run.sheet && one.title == run.title; };
    };
    Superseded superseded;
    for (const IndexEntry& run : runs) {
        const auto found = std::find_if(old_runs.begin(), old_runs.end(), same_as(run));
        if (found == old_runs.end() || !look_alike(pages_of(now, run), pages_of(old, *found)))
            superseded.sheets.push_back(run);
    }
    for (const IndexEntry& run : old_runs)
        if (std::none_of(runs.begin(), runs.end(), same_as(run))) superseded.gone.push_back(run.title);
    return superseded;
}

/// Where the sheets, counted without them, stand with the cover and the change pages in their places.
struct Places {
    const Sheets& sheets;
    std::size_t cover = 1;
    std::size_t changes = 0;

    std::size_t moved(std::size_t page) const {
        return page + (page >= sheets.cover_at ? cover : 0) + (page >= sheets.changes_at ? changes : 0);
    }
    IndexEntry moved(IndexEntry entry) const {
        const std::size_t pages = entry.last - entry.first;
        entry.first = moved(entry.first);
        entry.last = entry.first + pages;
        if (entry.also) entry.also = moved(*entry.also);
        return entry;
    }
    std::size_t first_cover() const {
        return sheets.cover_at + (sheets.cover_at < sheets.changes_at || !sheets.changes_first ? 0 : changes);
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

void insert(Sheets& into, std::size_t at, Drafts& drafts) {
    const auto place = static_cast<std::ptrdiff_t>(at);
    into.folded.insert(into.folded.begin() + place, drafts.size(), {});
    into.drafts.insert(into.drafts.begin() + place, std::make_move_iterator(drafts.begin()),
                       std::make_move_iterator(drafts.end()));
}

/// Draws the work orders again as they are set, now that it is known where what they tell of stands.
void number_work_orders(Sheets& sheets, const plan::Plan& plan, const Places& places, const Kit& kit) {
    const std::vector<IndexEntry> index = index_of(sheets.drafts);
    std::vector<IndexEntry> entries = moved(index, places);
    if (places.cover > 0)
        entries.push_back(
            {kit.words("cover.title"), places.first_cover(), places.first_cover() + places.cover - 1, "cover"});
    for (const IndexEntry& entry : index) {
        if (entry.sheet != "work-order") continue;
        Drafts numbered;
        for (const plan::Piece& piece : plan.pieces)
            for (std::size_t i = 0; i < piece.blanks.size(); ++i)
                if (piece.blank_id(i) == entry.piece)
                    numbered = numbered_work_order(sheets.drafts[entry.first], plan, piece.of_blank(i), entries, kit);
        measure::require(numbered.size() == entry.last - entry.first + 1, "page numbers take no page");
        for (std::size_t i = 0; i < numbered.size(); ++i) {
            sheets.drafts[entry.first + i] = std::move(numbered[i]);
            sheets.folded[entry.first + i] = {};
        }
    }
}

/// All sheets, the cover and the change pages in their places. Where the other pages stand depends on how many these
/// take, and that on how long their lists are: drawn once to count them, and again while the count was wrong.
Sheets in_order(const Revision& now, const Revision* before, const Kit& kit, Waiting waiting) {
    // What is compared with the sheets of before stays open.
    if (before != nullptr) waiting.open = all_open;
    Sheets sheets = make_sheets(now.plan, kit, waiting);
    const std::vector<IndexEntry> index = index_of(sheets.drafts);
    Superseded superseded;
    if (before != nullptr) superseded = superseded_by(sheets.drafts, now.plan, before->plan, kit, waiting.threads);
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
            number_work_orders(sheets, now.plan, places, kit);
            insert(sheets, sheets.cover_at, cover);
            insert(sheets, places.first_change(), changes);
            return sheets;
        }
        // The lists keep their lengths, so the second count is the last.
        places.cover = cover.size();
        places.changes = changes.size();
    }
}

/// Whether a page is, by its number in the whole packet and by what it holds.
bool wanted(const Draft& draft, std::size_t number, const Part& part) {
    const auto named = [&](const std::string& sheet) { return sheet == draft.page.sheet || sheet == draft.also; };
    if (!part.sheets.empty() && std::none_of(part.sheets.begin(), part.sheets.end(), named)) return false;
    const auto holds = [&](const auto& range) { return range.first <= number && number <= range.second; };
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

/// What the document says of itself.
page::Document empty_packet(const plan::Plan& plan, const Kit& kit) {
    page::Document document;
    document.title =
        kit.words("page.document_title",
                  {{"number", plan.header.number}, {"title", plan.header.title}, {"revision", plan.header.revision}});
    document.subject = kit.words("cover.title");
    document.language = kit.words("page.language");
    document.date = plan.header.date;
    return document;
}

/// Where the wanted pages will stand.
std::vector<std::optional<std::size_t>> places_of(const Drafts& drafts, const Part& part) {
    std::vector<std::optional<std::size_t>> places;
    std::size_t count = 0;
    for (std::size_t i = 0; i < drafts.size(); ++i)
        places.push_back(wanted(drafts[i], i + 1, part) ? std::optional(count++) : std::nullopt);
    return places;
}

/// A page as the document takes it.
struct Finished {
    Draft draft;
    page::Letters letters;
    page::Folded folded;
};

}  // namespace

page::FoldedDocument make_folded_packet(const Revision& now, const Revision* before, const Kit& kit, const Part& part,
                                        std::size_t open, unsigned threads) {
    Sheets sheets = in_order(now, before, kit, {open, threads});
    page::FoldedDocument packet{empty_packet(now.plan, kit), {}, {}};
    const std::vector<std::optional<std::size_t>> places = places_of(sheets.drafts, part);
    std::vector<std::size_t> shown;
    for (std::size_t i = 0; i < places.size(); ++i)
        if (places[i]) shown.push_back(i);
    packet.document.pages.reserve(shown.size());
    packet.folded.reserve(shown.size());
    disk::SideBySide<Finished> finished(shown.size(), threads);
    const auto new_maker = [&] {
        return [&](std::size_t number) {
            const std::size_t i = shown[number];
            Finished one{std::move(sheets.drafts[i]), {}, {}};
            std::exchange(sheets.folded[i], {}).put_back(one.draft.page);
            one.draft.reprint = !part.whole();
            finish_page(one.draft, now.plan, kit, i + 1, places.size());
            lead_links(one.draft.page, places);
            one.draft.page.items.shrink_to_fit();
            one.letters.take(one.draft.page);
            if (number >= open) one.folded = page::Folded(one.draft.page);
            return one;
        };
    };
    finished.run(new_maker, [&](std::size_t number, Finished one) {
        take_page(packet.document, std::move(one.draft));
        packet.folded.push_back(std::move(one.folded));
        packet.letters.take(one.letters);
        if (number >= open && number % page::many_folded == 0) disk::give_memory_back();
    });
    return packet;
}

page::Document make_packet(const plan::Plan& plan, const Kit& kit, const Part& part) {
    const std::vector<job::Value> nothing;  // only compared, and here with nothing
    return make_folded_packet({plan, nothing}, nullptr, kit, part, all_open).document;
}

page::Document make_packet(const Revision& now, const Revision& before, const Kit& kit, const Part& part) {
    return make_folded_packet(now, &before, kit, part, all_open).document;
}

}  // namespace kerfpacket::sheets
