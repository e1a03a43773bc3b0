#include "sheets/packet.h"

#include <algorithm>
#include <iterator>
#include <stdexcept>
#include <utility>

#include "sheets/arch_template.h"
#include "sheets/casing_sheet.h"
#include "sheets/checklist.h"
#include "sheets/coupon_sheet.h"
#include "sheets/cover.h"
#include "sheets/form_sheet.h"
#include "sheets/furniture.h"
#include "sheets/install.h"
#include "sheets/safety.h"
#include "sheets/setup.h"
#include "sheets/strain_sheet.h"
#include "sheets/strips.h"
#include "sheets/survey_sheet.h"

namespace kerfpacket::sheets {
namespace {

/// Pages of one kind of sheet, in the order of the pieces. The cover comes later: it tells where all others are.
Drafts make_sheet(const std::string& sheet, const plan::Plan& plan, const Kit& kit) {
    Drafts drafts;
    if (sheet == "safety") {
        add_safety_card(drafts, plan, kit);
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

/// All sheets with the cover in its place. Where the other pages stand depends on how many the cover takes, and that
/// on how long its index is: drawn once to count them and once more if the first guess of one page was wrong.
Drafts in_order(const plan::Plan& plan, const Kit& kit) {
    std::size_t cover_at = 0;
    Drafts others;
    for (const std::string& sheet : kit.style.order) {
        if (sheet == "cover") {
            cover_at = others.size();
            continue;
        }
        Drafts more = make_sheet(sheet, plan, kit);
        std::move(more.begin(), more.end(), std::back_inserter(others));
    }
    std::size_t cover_pages = 1;
    while (true) {
        std::vector<IndexEntry> index = index_of(others);
        for (IndexEntry& entry : index) {
            if (entry.first >= cover_at) {
                entry.first += cover_pages;
                entry.last += cover_pages;
            }
        }
        Drafts cover;
        add_cover(cover, plan, index, others.size() + cover_pages, kit);
        if (cover.size() == cover_pages) {
            others.insert(others.begin() + static_cast<std::ptrdiff_t>(cover_at),
                          std::make_move_iterator(cover.begin()), std::make_move_iterator(cover.end()));
            return others;
        }
        // The index keeps its length, so the second count is the last.
        cover_pages = cover.size();
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

page::Document make_packet(const plan::Plan& plan, const Kit& kit, const Part& part) {
    Drafts drafts = in_order(plan, kit);
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

}  // namespace kerfpacket::sheets
