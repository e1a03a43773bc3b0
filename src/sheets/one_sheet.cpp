#include "sheets/one_sheet.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>
#include <variant>

#include "sheets/cards/coupon_sheet.h"
#include "sheets/cards/install.h"
#include "sheets/cards/refused.h"
#include "sheets/cards/safety.h"
#include "sheets/cards/setup.h"
#include "sheets/cards/work_order.h"
#include "sheets/evidence/strain_sheet.h"
#include "sheets/evidence/survey_sheet.h"
#include "sheets/layout/pen.h"
#include "sheets/stock/stock_sheet.h"
#include "sheets/strips/checklist.h"
#include "sheets/strips/strips.h"
#include "sheets/templates/arch_template.h"
#include "sheets/templates/casing_sheet.h"
#include "sheets/templates/form_sheet.h"
#include "sheets/words/wording.h"

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

/// The pages of one kind of sheet of one piece. A work order still lacks the page numbers.
void add_own_sheet(Drafts& drafts, const std::string& sheet, const plan::Plan& plan, const plan::Piece& piece,
                   const Kit& kit) {
    if (sheet == "work-order") add_work_order(drafts, plan, piece, {}, kit);
    else if (sheet == "setup") add_setup_card(drafts, plan, piece, kit);
    else if (sheet == "strain") add_strain_sheet(drafts, plan, piece, kit);
    else if (sheet == "coupon") add_coupon_sheet(drafts, plan, piece, kit);
    else if (sheet == "survey") add_survey(drafts, plan, piece, kit);
    else if (sheet == "strips") add_strips(drafts, plan, piece, kit);
    else if (sheet == "checklist") add_checklist(drafts, plan, piece, kit);
    else if (sheet == "form") add_form(drafts, plan, piece, kit);
    else if (sheet == "install") add_install_card(drafts, plan, piece, kit);
    else if (sheet == "template" || sheet == "casing") {
        // One for the opening, whatever boards line it.
        if (piece.kind != plan::Kind::arch_liner || piece.board != 1) return;
        if (sheet == "template") add_template(drafts, plan, piece, kit);
        else add_casing(drafts, plan, piece, kit);
    } else throw std::runtime_error("templates/layout.toml: order names a sheet that does not exist: " + sheet);
    require_room(drafts.size(), sheet);
}

/// The sheets that hold nothing to stick on a board or to count on it.
bool can_be_shared(const std::string& sheet) {
    return sheet == "setup" || sheet == "coupon" || sheet == "strain" || sheet == "install";
}

Pages whole(const Drafts& drafts) { return {drafts.begin(), drafts.end()}; }

Drafts sheet_of(const std::string& sheet, const plan::Plan& plan, const plan::Piece& piece, const Kit& kit) {
    Drafts drafts;
    add_own_sheet(drafts, sheet, plan, piece, kit);
    return drafts;
}

/// What arithmetic leaves between two places, and no more: nobody sees it.
constexpr Length same_place = 0.001_mm;

bool close(Point a, Point b) { return geom::distance(a, b) < same_place; }

bool close(const Path& a, const Path& b) {
    return a.closed() == b.closed() &&
           std::equal(a.segments().begin(), a.segments().end(), b.segments().begin(), b.segments().end(),
                      [](const geom::Segment& one, const geom::Segment& other) {
                          return close(one.from, other.from) && close(one.to, other.to) &&
                                 std::abs((one.turn - other.turn).radians()) < 1e-6;
                      });
}

bool alike(const page::Item& a, page::Item b) {
    if (auto* path = std::get_if<page::PathItem>(&b)) {
        const auto* other = std::get_if<page::PathItem>(&a);
        if (other != nullptr && close(path->path, other->path)) path->path = other->path;
    } else if (auto* text = std::get_if<page::TextItem>(&b)) {
        const auto* other = std::get_if<page::TextItem>(&a);
        if (other != nullptr && close(text->anchor, other->anchor)) text->anchor = other->anchor;
    }
    return a == b;
}

}  // namespace

bool look_alike(const Pages& a, const Pages& b) {
    return std::equal(a.first, a.last, b.first, b.last, [](const Draft& one, const Draft& other) {
        return one.page.width == other.page.width && one.page.height == other.page.height && one.title == other.title &&
               one.subtitle == other.subtitle &&
               std::equal(one.page.items.begin(), one.page.items.end(), other.page.items.begin(),
                          other.page.items.end(), alike);
    });
}

bool of_job(const std::string& sheet) { return sheet == "safety" || sheet == "refused" || sheet == "stock"; }

void add_job_sheet(Drafts& drafts, const std::string& sheet, const plan::Plan& plan, const Kit& kit) {
    if (sheet == "safety") return add_safety_card(drafts, plan, kit);
    if (sheet == "stock") return add_stock_sheet(drafts, plan, kit);
    for (const plan::Refused& refused : plan.refused) add_refused(drafts, plan, refused, kit);
}

void add_piece_sheet(Drafts& drafts, const std::string& sheet, const plan::Plan& plan, const plan::Piece& piece,
                     const Kit& kit) {
    if (piece.boards == 1 || !can_be_shared(sheet)) return add_own_sheet(drafts, sheet, plan, piece, kit);
    plan::Piece named = piece;
    named.id = measured_id(piece);
    const Drafts own = sheet_of(sheet, plan, named, kit);
    std::string boards;
    for (const plan::Piece& other : plan.pieces) {
        if (other.boards == 1 || measured_id(other) != measured_id(piece)) continue;
        plan::Piece as = other;
        as.id = named.id;
        if (other.id != piece.id && !look_alike(whole(own), whole(sheet_of(sheet, plan, as, kit)))) continue;
        if (boards.empty() && other.id != piece.id) return;  // it stands with that one
        boards += (boards.empty() ? "" : "+") + std::to_string(other.board);
    }
    named.id += "/" + boards;
    add_own_sheet(drafts, sheet, plan, named, kit);
}

}  // namespace kerfpacket::sheets
