#include "sheets/evidence/strain_sheet.h"

#include "sheets/evidence/limit_chart.h"
#include "sheets/evidence/strain_plot.h"
#include "sheets/evidence/strain_words.h"
#include "sheets/layout/furniture.h"
#include "sheets/words/wording.h"

namespace kerfpacket::sheets {
namespace {

constexpr Length lowest = 50_pt;
constexpr Length heading_height = 31_pt;  ///< from what stands above a heading to its rule
constexpr Length leading = 14_pt;
constexpr Length between_sentences = 3_pt;

class StrainSheet {
public:
    StrainSheet(Draft& draft, const plan::Plan& plan, const plan::Piece& piece, const Kit& kit)
        : pen_(draft.page, kit),
          piece_(piece),
          kit_(kit),
          tape_(plan.header.units, kit.words),
          sentences_(strain_reading(piece, kit, tape_)),
          right_(draft.page.width - side_margin),
          y_(draft.page.height - 60_pt) {}

    void draw() {
        // The two drawings share what the words leave.
        const Length each = (y_ - lowest - reading_height() - heading_height * 2) / 2;
        heading("strain.plot");
        draw_strain_plot(pen_, take(each), piece_, tape_);
        heading("strain.chart", kit_.words("strain.chart_aside",
                                           {{"board", board_text(piece_, kit_, tape_)},
                                            {"kerf", tape_.exact(piece_.kerf)},
                                            {"side", kit_.words(outside() ? "strain.outside" : "strain.inside")}}));
        draw_limit_chart(pen_, take(each), piece_, tape_);
        reading();
    }

private:
    Type text() const { return {Face::regular, kit_.style.text}; }
    Length width() const { return right_ - side_margin; }

    /// The side that governs, where the board bends both ways.
    bool outside() const {
        return (piece_.bends_both_ways() ? governing_kerf(piece_).on : piece_.kerfs_on) == bend::KerfsOn::outside;
    }

    void heading(const char* key, const std::string& aside = {}) {
        y_ -= heading_height;
        section(pen_, side_margin, right_, y_ + 6.5_pt, kit_.words(key), aside);
    }

    Rect take(Length height) {
        y_ -= height;
        return {{side_margin, y_}, {right_, y_ + height}};
    }

    Length reading_height() const {
        Length height = heading_height;
        for (const std::string& sentence : sentences_)
            height += leading + between_sentences + pen_.paragraph_height(sentence, text(), width(), leading);
        return height;
    }

    void reading() {
        heading("strain.reading");
        for (const std::string& sentence : sentences_)
            y_ = pen_.paragraph(Role::text, {side_margin, y_ - leading}, sentence, text(), width(), leading) -
                 between_sentences;
    }

    Pen pen_;
    const plan::Piece& piece_;
    const Kit& kit_;
    Tape tape_;
    std::vector<std::string> sentences_;
    Length right_;
    Length y_;  ///< how far the page is filled, from the bottom edge
};

}  // namespace

void add_strain_sheet(Drafts& drafts, const plan::Plan& plan, const plan::Piece& piece, const Kit& kit) {
    Draft draft = new_draft(plan, "strain", Orientation::portrait);
    const Tape tape(plan.header.units, kit.words);
    draft.page.piece = piece.id;
    draft.tag = piece.id;
    draft.title = kit.words("strain.title");
    draft.subtitle = kit.words("strain.subtitle", {{"what", piece_name(piece, kit)},
                                                   {"kerfs", std::to_string(piece.kerfs.size())},
                                                   {"depth", tape.exact(piece.kerf_depth)}});
    draft.outline = kit.words("strain.outline", {{"piece", piece.id}});
    StrainSheet(draft, plan, piece, kit).draw();
    drafts.push_back(std::move(draft));
}

}  // namespace kerfpacket::sheets
