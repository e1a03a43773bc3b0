#include "sheets/strips/strip_roll.h"

#include <algorithm>
#include <cmath>

#include "plan/strip_room.h"
#include "sheets/layout/roll_furniture.h"
#include "sheets/strips/strip_ends.h"
#include "sheets/strips/strip_lean.h"
#include "sheets/strips/strip_layout.h"
#include "sheets/strips/strip_statement.h"

namespace kerfpacket::sheets {
namespace {

/// Above a strip: its caption.
constexpr Length caption_height = 13_pt;
constexpr Length row_gap = 2_pt;
constexpr Length wide_margin = 18_pt;
/// Strips no shorter than this: joints want work. Judgement.
constexpr Length shortest = 24_in;
/// What captions at the end of a page may take of its length.
constexpr Length captions_at_end = 10_in;

Lanes lanes_on(const Paper& roll, const plan::Piece& piece, const Kit& kit) {
    if (piece.strip == job::StripOn::edge) return edge_lanes(piece);
    return face_lanes(std::clamp(roll.width - plan::roll_edge * 2, plan::least_face_strip, kit.style.strip_height));
}

/// How strips lie side by side across the roll.
struct Across {
    Length edge;
    bool bar_below = false;
    bool captions = false;  ///< above the strips; else at the end of the page
    std::size_t rows = 1;
    Length first_base;  ///< lower edge of the uppermost strip
    Length pitch;
};

Across across(Length roll, Length height) {
    Across a;
    const Length captioned = height + caption_height;
    a.bar_below = roll >= roll_bar_row + captioned + wide_margin;
    a.captions = roll >= captioned + plan::roll_edge * 2;
    const Length free = roll - (a.captions ? captioned : height);
    a.edge = a.bar_below ? wide_margin : std::clamp(free / 2, plan::roll_edge, wide_margin);
    a.first_base = a.captions ? roll - a.edge - captioned : (roll - height) / 2;
    if (!a.bar_below) return a;
    a.pitch = captioned + row_gap;
    a.rows = 1 + static_cast<std::size_t>(std::floor((a.first_base - roll_bar_row) / a.pitch));
    return a;
}

/// Strips of one piece as they are spread over pages, and what they take.
struct Spread {
    std::vector<Strip> strips;
    std::size_t pages = 0;
    Length paper;  ///< along the feed, all pages

    bool better_than(const Spread& other) const {
        if (other.strips.empty()) return true;
        const Length same = 1_mm;
        if (measure::abs(paper - other.paper) > same) return paper < other.paper;
        return strips.size() < other.strips.size();
    }
};

/// The longest strip of those on a page, its lap included.
Length longest_of(const std::vector<Strip>& strips, std::size_t first, std::size_t end, Length lap) {
    Length longest;
    for (std::size_t i = first; i < std::min(end, strips.size()); ++i)
        longest = std::max(longest, strips[i].to - strips[i].from + (strips[i].joined_after ? lap : 0_pt));
    return longest;
}

class RollStrips {
public:
    RollStrips(const plan::Plan& plan, const plan::Piece& piece, const Kit& kit)
        : plan_(plan),
          piece_(piece),
          kit_(kit),
          roll_(paper_for(plan, Use::strips)),
          tape_(plan.header.units, kit.words),
          lanes_(lanes_on(roll_, piece, kit)),
          across_(across(roll_.width, lanes_.height)) {}

    void add(Drafts& drafts, const plan::Piece* coupon) {
        const Spread spread = least_paper();
        const StripContext context = context_for(spread.strips.size());
        if (all_boards() * spread.strips.size() <= across_.rows) {
            std::vector<Strip> all;
            for (std::size_t n = 0; n < all_boards(); ++n)
                all.insert(all.end(), spread.strips.begin(), spread.strips.end());
            drafts.push_back(page(context, all, 0, for_all(), coupon));
            drafts.back().outline = kit_.words("strip.outline", {{"piece", piece_.id}});
            return;
        }
        for (std::size_t first = 0; first < spread.strips.size(); first += across_.rows) {
            drafts.push_back(page(context, spread.strips, first, for_board(plan_, piece_, 1)));
            if (first == 0) drafts.back().outline = kit_.words("strip.outline", {{"piece", piece_.id}});
        }
    }

    bool holds(const plan::Piece& coupon) const {
        const Spread spread = least_paper();
        const Length content = longest_of(spread.strips, 0, spread.strips.size(), kit_.style.strip_lap);
        const std::vector<Strip> strips = strips_of(coupon, content);
        if (!across_.captions || all_boards() * spread.strips.size() + strips.size() > across_.rows) return false;
        page::Page scratch;
        return coupon_use_type(Pen(scratch, kit_), coupon_use(plan_, coupon, kit_),
                               beside(strips.back(), {}, content, {}))
            .has_value();
    }

private:
    /// A coupon's, no longer than those beside them.
    std::vector<Strip> strips_of(const plan::Piece& coupon, Length content) const {
        return cut_strips(coupon, content - kit_.style.strip_lap, tape_, kit_);
    }

    /// The room for words beside a coupon's last strip.
    Rect beside(const Strip& strip, Length left, Length content, Length base) const {
        const Length used = strip.to - strip.from + 16_pt;
        const bool from_left = piece_.blank().zero == job::End::left;
        return {{left + (from_left ? used : 0_pt), base},
                {left + content - (from_left ? 0_pt : used), base + lanes_.height}};
    }

    StripContext context_for(std::size_t strips) const {
        return {.plan = plan_,
                .piece = piece_,
                .tape = tape_,
                .strips = static_cast<int>(strips),
                .lap = kit_.style.strip_lap,
                .lanes = lanes_,
                .roll = true};
    }

    /// How many boards alike get a set of strips each.
    std::size_t all_boards() const { return plan_.packet.one_set ? 1 : static_cast<std::size_t>(piece_.quantity); }
    /// A page that holds the sets of all of them, side by side.
    ForBoards for_all() const {
        if (plan_.packet.one_set) return for_board(plan_, piece_, 1);
        return {1, piece_.quantity, piece_.quantity, 1};
    }

    /// `rows`: of strips on the page.
    Draft named(std::size_t rows, const ForBoards& boards) const {
        Draft draft = new_draft(plan_, "strips", Orientation::landscape, Use::strips, longest_page);
        name_strip_page(draft, plan_, piece_, kit_);
        draft.boards = boards;
        const Length lowest = across_.first_base - across_.pitch * static_cast<double>(rows - 1);
        draft.roll =
            RollPage{across_.edge, across_.bar_below ? lowest : 0_pt, strip_statements(plan_, piece_, kit_), {}, {}};
        draft.roll->notes.back() += "; " + kit_.words("strip.blade_covers");
        measure_roll_ends(draft, plan_, kit_);
        return draft;
    }

    Length ends() const {
        const Draft draft = named(across_.rows, for_all());  // its title is the longest
        return draft.roll->head + draft.roll->tail;
    }

    /// The shortest strips, as many as that or fewer.
    std::vector<Strip> cut_into(std::size_t count, Length whole, Length longest) const {
        constexpr Length step = 0.5_in;
        std::vector<Strip> strips;
        for (Length length = whole / static_cast<double>(count);; length += step) {
            strips = cut_strips(piece_, std::min(length, longest), tape_, kit_);
            if (strips.size() <= count || length >= longest) return strips;
        }
    }

    Spread least_paper() const {
        const Length ends = this->ends();
        const Length longest = std::min(roll_.height, longest_page) - ends - kit_.style.strip_lap -
                               (across_.captions ? 0_in : captions_at_end) - StripLean::overhang(piece_, lanes_);
        const std::vector<Strip> whole = cut_strips(piece_, 1e6_mm, tape_, kit_);
        Length length;
        for (const Strip& strip : whole) length += strip.to - strip.from;
        const auto pages = static_cast<std::size_t>(std::ceil(length / (longest * static_cast<double>(across_.rows))));
        Spread best;
        // Joints stand in lands: a strip more than arithmetic asks for may be needed.
        for (std::size_t count = 1; count <= pages * across_.rows + 1; ++count) {
            const Length each = length / static_cast<double>(count);
            if (each > longest) continue;
            if (count > 1 && each < shortest && !best.strips.empty()) break;
            Spread spread{cut_into(count, length, longest), 0, {}};
            for (std::size_t i = 0; i < spread.strips.size(); i += across_.rows)
                spread.paper += ends + longest_of(spread.strips, i, i + across_.rows, kit_.style.strip_lap);
            if (spread.better_than(best)) best = std::move(spread);
        }
        return best;
    }

    Draft page(StripContext context, const std::vector<Strip>& strips, std::size_t first, const ForBoards& boards,
               const plan::Piece* coupon = nullptr) const {
        const std::size_t end = std::min(strips.size(), first + across_.rows);
        std::vector<Strip> of_coupon;
        if (coupon != nullptr) of_coupon = strips_of(*coupon, longest_of(strips, first, end, context.lap));
        Draft draft = named(end - first + of_coupon.size(), boards);
        const Length overhang = StripLean::overhang(piece_, lanes_);
        Length content = longest_of(strips, first, end, context.lap) + overhang;
        for (std::size_t i = first; i < end; ++i) {
            if (across_.captions) {
                content = std::max(content, caption_width(context, strips[i], kit_, {Face::regular, kit_.style.small}));
                continue;
            }
            const Caption caption = caption_of(context, strips[i], kit_);
            draft.roll->notes.push_back(std::string(caption.name).append("   ").append(caption.kerfs));
            draft.roll->notes.push_back(caption.how_set);
        }
        measure_roll_ends(draft, plan_, kit_);
        const Length left = draft.roll->head;
        draft.page.width = left + content + draft.roll->tail;
        if (across_.captions) context.caption = CaptionRoom{left, left + content};
        const bool to_the_left = StripLean::to_the_left(piece_);
        const Length start = piece_.blank().zero == job::End::left ? left + (to_the_left ? overhang : 0_pt)
                                                                   : left + content - (to_the_left ? 0_pt : overhang);
        Pen pen(draft.page, kit_);
        std::size_t row = 0;
        const auto base = [&] { return across_.first_base - across_.pitch * static_cast<double>(row); };
        if (coupon != nullptr) {
            const StripContext its = context_for(context, *coupon, of_coupon.size());
            for (const Strip& strip : of_coupon) {
                draw_strip(pen, its, strip, {start, base()});
                if (&strip == &of_coupon.back())
                    draw_coupon_use(pen, coupon_use(plan_, *coupon, kit_), beside(strip, left, content, base()));
                ++row;
            }
            draft.also = "coupon";
        }
        for (std::size_t i = first; i < end; ++i, ++row) {
            count_strip(draft, piece_, strips[i]);
            draw_strip(pen, context, strips[i], {start, base()});
        }
        return draft;
    }

    /// Of a coupon among the strips of boards.
    StripContext context_for(const StripContext& board, const plan::Piece& coupon, std::size_t strips) const {
        return {.plan = plan_,
                .piece = coupon,
                .tape = tape_,
                .strips = static_cast<int>(strips),
                .lap = board.lap,
                .lanes = lanes_,
                .roll = true,
                .coupon = true,
                .whose = kit_.words("strip.whose_coupon"),
                .caption = board.caption};
    }

    const plan::Plan& plan_;
    const plan::Piece& piece_;
    const Kit& kit_;
    Paper roll_;
    Tape tape_;
    Lanes lanes_;
    Across across_;
};

}  // namespace

void add_roll_strips(Drafts& drafts, const plan::Plan& plan, const plan::Piece& piece, const Kit& kit,
                     const plan::Piece* coupon) {
    RollStrips(plan, piece, kit).add(drafts, coupon);
}

bool roll_holds_coupon(const plan::Plan& plan, const plan::Piece& piece, const plan::Piece& coupon, const Kit& kit) {
    return RollStrips(plan, piece, kit).holds(coupon);
}

}  // namespace kerfpacket::sheets
