#include "sheets/cards/work_steps.h"

#include <algorithm>
#include <iterator>
#include <utility>

#include "measure/require.h"
#include "sheets/cards/coupon_size.h"
#include "sheets/strips/strip_ends.h"
#include "sheets/templates/arch_opening.h"
#include "sheets/words/wording.h"

namespace kerfpacket::sheets {
namespace {

class Steps {
public:
    Steps(const plan::Plan& plan, const plan::Piece& piece, const std::vector<IndexEntry>& index, const Kit& kit,
          const Tape& tape)
        : plan_(plan), wish_(plan.packet), piece_(piece), index_(index), kit_(kit), tape_(tape) {}

    std::vector<WorkStep> all() {
        const bool kerfed = !piece_.blank().kerfs.empty();
        template_check();
        if (piece_.splay) round_stock();
        else stock();
        if (kerfed && first_kerfed()) coupon();
        if (kerfed) cuts();
        if (kerfed) bend();
        ends();
        casing();
        if (piece_.blank().is_part()) add("dry_joint", words("work_order.dry_joint_how"), {}, "install");
        add("fasten", words("work_order.fasten_how"), words("work_order.fasten_figure"), "install");
        return std::move(steps_);
    }

private:
    std::string words(std::string_view key, const fonts::Words::Values& values = {}) const {
        return kit_.words(key, values);
    }
    std::string counted(const std::string& key, std::size_t n) const {
        return n == 1 ? words(key + "_one") : words(key, {{"n", std::to_string(n)}});
    }

    /// The sheet of this kind that is the piece's own, the whole job's, or its opening's: that may stand with another
    /// board of it.
    std::optional<IndexEntry> sheet(std::string_view kind) const {
        const IndexEntry* best = nullptr;
        const std::string opening = measured_id(piece_);
        for (const IndexEntry& entry : index_) {
            if (entry.sheet != kind) continue;
            if (entry.piece.empty() || is_of(entry.piece, piece_.id)) return entry;
            const bool sibling = piece_.boards > 1 && entry.piece.starts_with(opening + "/");
            if (best == nullptr && (is_of(entry.piece, opening) || sibling)) best = &entry;
        }
        return best == nullptr ? std::nullopt : std::optional(*best);
    }

    void add(const std::string& key, std::string how, std::string figure, std::string_view kind) {
        steps_.push_back(
            {words("work_order." + key), std::move(how), std::move(figure), sheet(kind), wish_.leaves_out(kind)});
    }

    /// Once for an opening, whatever boards line it.
    bool first_of_opening() const { return piece_.kind == plan::Kind::arch_liner && piece_.board == 1; }

    /// The board of the plan that this is, or is a blank of.
    const plan::Piece* whole() const {
        const auto found = std::find_if(plan_.pieces.begin(), plan_.pieces.end(), [&](const plan::Piece& one) {
            return one.id == piece_.id || (one.spliced() && one.id == measured_id(piece_));
        });
        return found == plan_.pieces.end() ? nullptr : &*found;
    }

    /// Where a board is of several blanks the coupon is bent before the first of them that is kerfed.
    bool first_kerfed() const {
        const plan::Piece* whole = this->whole();
        if (whole == nullptr || !whole->spliced()) return true;
        const auto first = std::find_if(whole->blanks.begin(), whole->blanks.end(),
                                        [](const plan::Blank& blank) { return !blank.kerfs.empty(); });
        return first - whole->blanks.begin() + 1 == piece_.board;
    }

    /// By the figures of the template's map: of the wall, at the side that is drawn. A job may give those of the seen
    /// face, or of the other edge of a splayed jamb.
    void template_check() {
        if (!first_of_opening()) return;
        const plan::Piece* whole = this->whole();
        measure::require(whole != nullptr, "a blank is of a board of the plan");
        const ArchOpening opening(plan_, *whole);
        std::string rise = tape_.with_unit(opening.wall_rise());
        if (!opening.lines().springs_level()) rise = words("work_order.from_lower_spring", {{"rise", rise}});
        add("check", words(drawn("template", "work_order.check_how"), {{"rise", rise}}),
            words("work_order.check_figure", {{"span", tape_.with_unit(opening.wall_span())}}), "template");
    }

    /// Where the lengths to cut stand: a ticket for each board of stock, or else the cover's table.
    std::string_view cut_list() const { return sheet("stock") ? "stock" : "cover"; }

    void stock() {
        const std::string length = tape_.with_unit(plan::Piece::stock_length(piece_.blank()));
        add("buy", words("work_order.buy_how", {{"board", board_text(piece_, kit_, tape_)}, {"length", length}}),
            words("work_order.buy_figure", {{"n", std::to_string(piece_.quantity)}}), cut_list());
        // A run of moulding is milled already: it is looked over, not ripped.
        const fonts::Words::Values thick{{"thickness", tape_.exact(piece_.cut.thickness)},
                                         {"thinnest", tape_.exact(piece_.cut.thinnest())}};
        if (piece_.cut.moulded())
            add("run", words(piece_.cut.profile_told ? "work_order.run_how" : "work_order.run_how_untold", thick),
                tape_.exact(piece_.width), "setup");
        else add("rip", words("work_order.rip_how", thick), tape_.exact(piece_.width), cut_list());
        add("blank", words("work_order.blank_how", {{"piece", piece_.id}}), length, cut_list());
        cuts_of_ends(true, "scarf", "cover");  // while it lies flat, its tips where the blank ends
        for (const plan::LegBoard& board : piece_.leg_boards)
            add("leg", leg_board_text(piece_, board, kit_, tape_), tape_.with_unit(board.longest()), "cover");
    }

    /// The flat blank of a splayed liner: its template is stuck on before it is sawn.
    void round_stock() {
        const std::string length = tape_.with_unit(piece_.blank().box->x);
        const std::string width = tape_.with_unit(piece_.blank().box->y);
        add("buy",
            words("work_order.buy_how_round",
                  {{"board", board_text(piece_, kit_, tape_)}, {"length", length}, {"width", width}}),
            words("work_order.buy_figure", {{"n", std::to_string(piece_.quantity)}}), cut_list());
        add("stick_round", words("work_order.stick_round_how") + set_each("flat-blank"), {}, "flat-blank");
        add("saw_round", words("work_order.saw_round_how", {{"piece", piece_.id}}), length, "flat-blank");
        if (!first_of_opening()) return;
        for (const plan::LegBoard& board : piece_.leg_boards)
            add("leg", leg_board_text(piece_, board, kit_, tape_), tape_.with_unit(board.longest()), "flat-blank");
    }

    void coupon() {
        const CouponSize size = coupon_size(piece_, tape_.unit());
        const bool opening = size.side == bend::KerfsOn::outside;
        add("coupon",
            words(opening ? "work_order.coupon_how" : "work_order.coupon_how_close",
                  {{"radius", tape_.with_unit(piece_.radii.finish)}}),
            tape_.exact(size.length), "coupon");
        steps_.back().stops = true;
    }

    /// A set of what goes with each board is in the packet, or is to be printed.
    std::string set_each(std::string_view kind) const {
        if (piece_.quantity == 1 || wish_.leaves_out(kind)) return {};
        return words(wish_.one_set ? "work_order.print_each" : "work_order.set_each",
                     {{"n", std::to_string(piece_.quantity)}});
    }

    /// The same of checklists, which several boards can share. Before it is known how many there are, the longest
    /// words.
    std::string list_for_each() const {
        const auto lists = sheet("checklist");
        if (piece_.quantity == 1 || wish_.one_set || wish_.leaves_out("checklist") ||
            (lists && lists->sets == piece_.quantity))
            return set_each("checklist");
        const int sets = lists ? lists->sets : 1;
        return words(sets == 1 ? "work_order.set_columns" : "work_order.set_lists",
                     {{"n", std::to_string(piece_.quantity)}, {"lists", std::to_string(sets)}});
    }

    /// The words of a step that is told with the help of a sheet, or without it where the job leaves that out.
    std::string drawn(std::string_view kind, const std::string& key) const {
        return wish_.leaves_out(kind) ? key + "_without" : key;
    }

    void cuts() {
        if (!piece_.splay) stick_strips();
        saw_set();
        add("kerf", words(drawn("checklist", "work_order.kerf_how")) + list_for_each(),
            words("work_order.kerf_figure", {{"n", std::to_string(piece_.blank().kerfs.size())}}), "checklist");
    }

    void stick_strips() {
        add("stick",
            words(piece_.strip == job::StripOn::edge ? "work_order.stick_how_edge" : "work_order.stick_how") +
                set_each("strips"),
            {}, "strips");
        // On the least of papers a strip is this long; none but the longest boards take three digits.
        const bool many = piece_.blank().length > 3_in * 88;
        const std::size_t most_strips = many ? 888 : 88;
        steps_.back().widest = counted("work_order.stick_figure", most_strips);
        if (const auto& strips = steps_.back().told)
            steps_.back().figure = counted("work_order.stick_figure", static_cast<std::size_t>(strips->strips));
    }

    void saw_set() {
        const std::string web = web_text(piece_, kit_, tape_);
        const bool spacer = piece_.saw.spacer && *piece_.saw.spacer > Length();
        if (piece_.rake) saw_askew(web);
        else
            add("saw",
                spacer ? words("work_order.saw_how_spacer", {{"web", web}, {"spacer", tape_.exact(*piece_.saw.spacer)}})
                       : words("work_order.saw_how", {{"web", web}}),
                words("work_order.saw_figure", {{"depth", tape_.exact(piece_.cut.depth)}}), "setup");
    }

    void saw_askew(const std::string& web) {
        add("saw",
            words("work_order.saw_how_askew",
                  {{"angle", degrees_text(piece_.rake->kerf(), kit_)},
                   {"side", words(piece_.rake->to_the_right ? "setup.right" : "setup.left")},
                   {"web", web}}),
            words("work_order.saw_figure", {{"depth", tape_.exact(piece_.cut.depth)}}), "setup");
    }

    void bend() {
        if (piece_.form) add("form", words(drawn("form", "work_order.form_how")), {}, "form");
        add("bend", words("work_order.bend_how", {{"side", kerf_side(piece_, kit_)}}),
            words(piece_.circular ? "cover.radius" : "cover.least_radius",
                  {{"radius", tape_.with_unit(piece_.radii.tightest)}}),
            "install");
    }

    /// What goes off the ends, and how each that is not square is cut.
    void ends() {
        const auto [zero, far] = piece_.blank().trims;
        const bool marked = !piece_.blank().kerfs.empty();
        const std::string how = !marked                       ? "work_order.trim_how_plain"
                                : piece_.splay && zero == far ? "work_order.trim_how_round"
                                : piece_.splay                ? "work_order.trim_how_round_one"
                                : zero == far                 ? "work_order.trim_how"
                                                              : "work_order.trim_how_one";
        if (piece_.rake) end_cuts();
        else if (zero > Length() || far > Length())
            add("trim", words(how, {{"trim", tape_.exact(std::max(zero, far))}}),
                tape_.with_unit(waste_from(piece_) - waste_until(piece_)),
                !marked        ? "install"
                : piece_.splay ? "flat-blank"
                               : "strips");
        cuts_of_ends(false, "mitre", "strips");
    }

    /// How the ends of a board that climbs are cut; a joint has a row of its own.
    void end_cuts() {
        const bool from_left = piece_.blank().zero == job::End::left;
        const bool marked = !piece_.blank().kerfs.empty();
        std::string cuts, angles;
        for (const std::size_t side : {std::size_t{0}, std::size_t{1}}) {
            if (is_scarf(piece_, from_left ? side : 1 - side)) continue;
            cuts +=
                (cuts.empty() ? "" : ", ") + words(side == 0 ? "work_order.end_cut_left" : "work_order.end_cut_right",
                                                   {{"cut", end_cut_text(piece_.rake->ends.at(side), kit_)}});
            const std::string from_square = angle(piece_.rake->end(piece_.rake->ends.at(side)));
            if (angles != from_square) angles += (angles.empty() ? "" : ", ") + from_square;
        }
        if (cuts.empty()) return;
        add("end_cuts", words(marked ? "work_order.end_cuts_how" : "work_order.end_cuts_how_plain", {{"cuts", cuts}}),
            angles, "strips");
    }

    /// From square.
    std::string angle(measure::Angle from_square) const {
        return words("work_order.angle", {{"angle", degrees_text(from_square, kit_)}});
    }

    /// One row for each end that is a scarf, or a mitre.
    void cuts_of_ends(bool scarfs, const std::string& key, std::string_view kind) {
        const std::vector<std::string> where = mitre_texts(piece_, kit_);
        std::size_t n = 0;
        for (std::size_t i = 0; i < piece_.blank().ends.size(); ++i) {
            const plan::BoardEnd& end = piece_.blank().ends.at(i);
            if (end.mitre.radians() == 0) continue;
            const std::string& meets = where.at(n++);
            if (is_scarf(piece_, i) != scarfs) continue;
            const std::string how =
                plain_face_shorter(piece_, i) ? "work_order.mitre_how_shorter" : "work_order.mitre_how_longer";
            std::string said = words(how, {{"where", meets}});
            if (scarfs && piece_.rake) said += words("work_order.scarf_askew", {{"angle", angle(piece_.rake->kerf())}});
            steps_.push_back({words("work_order." + key), std::move(said),
                              words("work_order.angle", {{"angle", degrees_text(end.mitre, kit_)}}), sheet(kind)});
        }
    }

    void casing() {
        if (!first_of_opening() || !piece_.casing) return;
        const job::WallSide side = piece_.casing->wall_side;
        std::string how = words(drawn("casing", "work_order.casing_how"));
        if (side == job::WallSide::both) how += "; " + words("work_order.casing_both");
        if (side == job::WallSide::away) how += "; " + words("work_order.casing_away");
        add("casing", std::move(how),
            counted("work_order.casing_figure", std::get<plan::ArchLines>(piece_.lines).segments.size()), "casing");
    }

    const plan::Plan& plan_;
    const job::PacketWish& wish_;
    const plan::Piece& piece_;
    const std::vector<IndexEntry>& index_;
    const Kit& kit_;
    const Tape& tape_;
    std::vector<WorkStep> steps_;
};

}  // namespace

std::vector<WorkStep> work_steps(const plan::Plan& plan, const plan::Piece& piece, const std::vector<IndexEntry>& index,
                                 const Kit& kit, const Tape& tape) {
    return Steps(plan, piece, index, kit, tape).all();
}

}  // namespace kerfpacket::sheets
