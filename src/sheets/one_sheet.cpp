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
#include "sheets/climb/climb_sheet.h"
#include "sheets/evidence/strain_sheet.h"
#include "sheets/evidence/survey_sheet.h"
#include "sheets/layout/pen.h"
#include "sheets/splay/flat_blank.h"
#include "sheets/stock/stock_sheet.h"
#include "sheets/strips/checklist.h"
#include "sheets/strips/strips.h"
#include "sheets/templates/arch_template.h"
#include "sheets/templates/casing_sheet.h"
#include "sheets/templates/form_sheet.h"
#include "sheets/words/wording.h"

namespace kerfpacket::sheets {
namespace {

/// What arithmetic leaves between two places, and no more: nobody sees it.
constexpr Length same_place = 0.001_mm;

/// A house has a few hundred; a thousand take some hundred MB to lay out.
constexpr std::size_t most_pages = 3000;

/// The pages of one kind of sheet of one piece. A work order still lacks the page numbers.
void add_own_sheet(Drafts& drafts, const std::string& sheet, const plan::Plan& plan, const plan::Piece& piece,
                   const Kit& kit) {
    if (sheet == "work-order") add_work_order(drafts, plan, piece, kit);
    else if (sheet == "climb") add_climb_sheet(drafts, plan, piece, kit);
    else if (sheet == "setup") add_setup_card(drafts, plan, piece, kit);
    else if (sheet == "strain") add_strain_sheet(drafts, plan, piece, kit);
    else if (sheet == "coupon") add_coupon_sheet(drafts, plan, piece, kit);
    else if (sheet == "survey") add_survey(drafts, plan, piece, kit);
    else if (sheet == "flat-blank") add_flat_blank(drafts, plan, piece, kit);
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

/// The cards, which two boards of one opening can share.
bool is_card(const std::string& sheet) {
    return sheet == "setup" || sheet == "coupon" || sheet == "strain" || sheet == "install";
}

/// What two openings or walls can share besides: all but what is stuck on a board, counted on it or handed out with it.
bool can_be_shared(const std::string& sheet) {
    return is_card(sheet) || sheet == "template" || sheet == "casing" || sheet == "form";
}

/// Whether two pieces may have a sheet in common: told quickly, and not worth drawing it for both where not.
bool may_share(const std::string& sheet, const plan::Piece& a, const plan::Piece& b) {
    if (a.boards > 1 && measured_id(a) == measured_id(b)) return is_card(sheet);
    return a.boards == 1 && b.boards == 1 && a.kind == b.kind && a.material == b.material &&
           a.blank().kerfs.size() == b.blank().kerfs.size() && a.cut.depth == b.cut.depth &&
           measure::abs(a.width - b.width) < same_place &&
           measure::abs(a.blank().length - b.blank().length) < same_place;
}

/// More names than that leave the header no room.
constexpr std::size_t most_sharing = 4;

Pages whole(const Drafts& drafts) { return {drafts.begin(), drafts.end()}; }

Drafts sheet_of(const std::string& sheet, const plan::Plan& plan, const plan::Piece& piece, const Kit& kit) {
    Drafts drafts;
    add_own_sheet(drafts, sheet, plan, piece, kit);
    return drafts;
}

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

void require_room(std::size_t pages, const std::string& sheet) {
    if (pages <= most_pages) return;
    throw std::runtime_error("the packet has more than " + std::to_string(most_pages) +
                             " pages, at the sheets named \"" + sheet +
                             "\": split the job, print one set for boards alike ([packet] copies = 1), or print on "
                             "larger paper or a roll");
}

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

bool of_board(const std::string& sheet) { return sheet == "strips" || sheet == "flat-blank" || sheet == "checklist"; }

bool one_for_each_board(const std::string& sheet) { return of_board(sheet) && sheet != "checklist"; }

bool of_blank(const std::string& sheet) { return of_board(sheet) || sheet == "work-order"; }

PieceSheets::PieceSheets(const plan::Plan& plan, const Kit& kit, const std::vector<std::string>& sheets)
    : plan_(plan), kit_(kit) {
    for (const std::string& sheet : sheets)
        if (can_be_shared(sheet)) groups_.emplace(sheet, groups_of(sheet));
    const auto records = groups_.find("coupon");
    if (records == groups_.end() || std::find(sheets.begin(), sheets.end(), "strips") == sheets.end()) return;
    for (std::size_t i = 0; i < plan.pieces.size(); ++i)
        if (auto coupon = find_coupon_on_strips(i, records->second)) coupons_.emplace(i, *std::move(coupon));
}

std::vector<PieceSheets::Group> PieceSheets::groups_of(const std::string& sheet) const {
    std::vector<Group> groups;
    std::vector<Drafts> drawn;  // of the first of each, once it was compared
    for (std::size_t i = 0; i < plan_.pieces.size(); ++i) {
        const plan::Piece& piece = plan_.pieces[i];
        Drafts own;
        const auto shared = std::find_if(groups.begin(), groups.end(), [&](const Group& group) {
            const plan::Piece& first = plan_.pieces[group.front()];
            if (group.size() == most_sharing || !may_share(sheet, first, piece)) return false;
            const auto as_first = [&](plan::Piece one) {
                one.id = measured_id(first);
                one.quantity = 1;
                return sheet_of(sheet, plan_, one, kit_);
            };
            Drafts& of_first = drawn[static_cast<std::size_t>(&group - groups.data())];
            if (of_first.empty()) of_first = as_first(first);
            if (own.empty()) own = as_first(piece);
            return look_alike(whole(of_first), whole(own));
        });
        if (shared != groups.end()) {
            shared->push_back(i);
        } else {
            groups.push_back({i});
            drawn.emplace_back();
        }
    }
    return groups;
}

std::vector<std::size_t> PieceSheets::firsts(const std::string& sheet) const {
    std::vector<std::size_t> firsts;
    for (const Group& group : groups_.at(sheet)) firsts.push_back(group.front());
    return firsts;
}

/// The first of a group, under the name and in the number of all.
plan::Piece PieceSheets::named(const std::string& sheet, const Group& group) const {
    plan::Piece piece = plan_.pieces[group.front()];
    const bool cards = piece.boards > 1 && is_card(sheet);
    for (const std::size_t i : group) {
        if (i == group.front()) continue;
        const plan::Piece& other = plan_.pieces[i];
        piece.id += cards ? "+" + std::to_string(other.board) : ", " + other.id;
        piece.quantity += other.quantity;
    }
    return piece;
}

/// Not of a board that is stopped: its coupon is not, and the sheets of its strips say so in a band. Named for the
/// piece alone, whoever shares the record: what changes of another does not change these sheets.
std::optional<plan::Piece> PieceSheets::find_coupon_on_strips(std::size_t piece,
                                                              const std::vector<Group>& records) const {
    const plan::Piece& own = plan_.pieces[piece];
    if (own.spliced() || own.blank().kerfs.empty() || own.bend.verdict == bend::Verdict::break_likely) return {};
    for (const Group& group : records) {
        if (group.front() != piece) continue;
        std::optional<plan::Piece> coupon = coupon_alone(plan_, own, kit_);
        if (coupon && coupon_with_strips(plan_, own, *coupon, kit_)) return coupon;
    }
    return {};
}

void PieceSheets::add_one(Drafts& drafts, const std::string& sheet, std::size_t piece, const plan::Piece& named) const {
    const auto coupon = coupons_.find(piece);
    if (coupon == coupons_.end() || (sheet != "coupon" && sheet != "strips"))
        return add_own_sheet(drafts, sheet, plan_, named, kit_);
    if (sheet == "coupon") add_coupon_sheet(drafts, plan_, named, kit_, true);
    else add_strips(drafts, plan_, named, kit_, &coupon->second);
    require_room(drafts.size(), sheet);
}

void PieceSheets::add(Drafts& drafts, const std::string& sheet, std::size_t piece) const {
    const plan::Piece& own = plan_.pieces[piece];
    if (of_blank(sheet) && own.spliced()) {
        for (std::size_t i = 0; i < own.blanks.size(); ++i)
            if (!of_board(sheet) || !own.blanks[i].kerfs.empty())
                add_own_sheet(drafts, sheet, plan_, own.of_blank(i), kit_);
        return;
    }
    if (!can_be_shared(sheet)) return add_one(drafts, sheet, piece, own);
    for (const Group& group : groups_.at(sheet))
        if (group.front() == piece) add_one(drafts, sheet, piece, named(sheet, group));
}

}  // namespace kerfpacket::sheets
