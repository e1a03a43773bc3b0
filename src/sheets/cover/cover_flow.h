#pragma once
// The cover's pages as they fill from the top, and its parts.

#include <string>
#include <vector>

#include "sheets/cover/cover.h"
#include "sheets/layout/furniture.h"
#include "sheets/layout/pen.h"
#include "sheets/words/tape.h"

namespace kerfpacket::sheets {

class CoverFlow {
public:
    CoverFlow(Drafts& drafts, const plan::Plan& plan, const Kit& kit)
        : tape(plan.header.units, kit.words), drafts_(drafts), plan_(plan), kit_(kit) {}

    void start_page(bool first);
    /// Goes on to a further page where a part of this height no longer fits.
    void need(Length height) {
        if (y - height < lowest) start_page(false);
    }
    /// Height of a page under its header.
    Length page_room() { return drafts_.back().page.height - below_header - lowest; }

    Pen pen() { return {drafts_.back().page, kit_}; }
    Length right() { return drafts_.back().page.width - side_margin; }
    Length width() { return right() - side_margin; }
    std::string words(std::string_view key, const fonts::Words::Values& values = {}) const {
        return kit_.words(key, values);
    }
    const fonts::Style& style() const { return kit_.style; }
    const plan::Plan& plan() const { return plan_; }
    const Kit& kit() const { return kit_; }
    static Type regular(Length size) { return {Face::regular, size}; }
    static Type bold(Length size) { return {Face::bold, size}; }

    /// A heading with a rule under it, with room for some content on the same page.
    void heading(const char* key, Length content);

    Tape tape;
    Length y;  ///< how far the page is filled, from the bottom edge

    static constexpr Length lowest = 46_pt;
    static constexpr Length below_header = 72_pt;

private:
    Drafts& drafts_;
    const plan::Plan& plan_;
    const Kit& kit_;
};

/// The opening or wall of each piece, once, with its title.
void cover_drawings(CoverFlow& flow);
/// All boards, the notes on them, mitres and leg boards.
void cover_table(CoverFlow& flow);
void cover_index(CoverFlow& flow, const std::vector<IndexEntry>& index, std::size_t pages);

}  // namespace kerfpacket::sheets
