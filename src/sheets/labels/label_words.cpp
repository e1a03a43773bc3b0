#include "sheets/labels/label_words.h"

#include "plan/stopped.h"
#include "sheets/stock/sheet_words.h"
#include "sheets/stock/stock_words.h"
#include "sheets/words/wall_side.h"
#include "sheets/words/wording.h"

namespace kerfpacket::sheets {
namespace {

using Of = plan::Label::Of;

class Wording {
public:
    Wording(const plan::Label& label, const Kit& kit)
        : label_(label), plan_(*label.job), kit_(kit), tape_(plan_.header.units, kit.words) {}

    LabelText text() {
        text_.length = label_.of == Of::segment ? words("segment_board", {{"length", tape_.plain(label_.length)},
                                                                          {"width", tape_.with_unit(label_.width)}})
                                                : tape_.with_unit(label_.length);
        if (label_.of == Of::offcut) offcut();
        else of_piece();
        of_job();
        return std::move(text_);
    }

private:
    std::string words(const std::string& key, const fonts::Words::Values& values = {}) const {
        return kit_.words("labels." + key, values);
    }
    void line(const std::string& key, const fonts::Words::Values& values = {}) {
        text_.lines.push_back(words(key, values));
    }
    const plan::Piece& piece() const { return *label_.piece; }

    void of_job() {
        const std::string& number = plan_.header.number;
        const std::string n = std::to_string(label_.number);
        if (label_.more_jobs > 0)
            line("jobs", {{"number", number}, {"more", std::to_string(label_.more_jobs)}, {"n", n}});
        else line("job", {{"number", number}, {"revision", plan_.header.revision}, {"n", n}});
    }

    void offcut() {
        text_.tag = words("offcut");
        const bool sheet = label_.sheets != nullptr;
        text_.what = words(sheet ? "offcut_of_sheet" : "offcut_of",
                           {{"n", std::to_string(label_.n)}, {"m", std::to_string(label_.of_all)}});
        if (sheet)
            text_.length = words("segment_board",
                                 {{"length", tape_.plain(label_.length)}, {"width", tape_.with_unit(label_.width)}});
        text_.lines.push_back(sheet ? sheet_board(*label_.sheets, kit_, tape_)
                                    : section_text(*label_.section, kit_, tape_));
    }

    void of_piece() {
        text_.tag = label_.of == Of::blank ? piece().blank_id(label_.part) : measured_id(piece());
        text_.what = what();
        if (label_.copies > 1)
            text_.what =
                words("copy",
                      {{"what", text_.what}, {"n", std::to_string(label_.copy)}, {"m", std::to_string(label_.copies)}});
        // As `stops` and `outlines` have it: a label must not lead to a board that the packet stops.
        if (label_.of == Of::blank && plan::stopped(piece()) != plan::Stopped::no)
            text_.what = kit_.words("refused.do_not_cut", {{"piece", text_.tag}}) + "; " + text_.what;
        if (label_.of != Of::segment && label_.of != Of::rib) text_.lines.push_back(board_text(piece(), kit_, tape_));
        if (label_.of == Of::blank) blank(piece().of_blank(label_.part));
        if (label_.of == Of::left_leg || label_.of == Of::right_leg) leg();
        if (label_.of == Of::segment) line("segment_how");
        if (label_.of == Of::rib) rib();
        const bool wall = piece().kind == plan::Kind::wall_board;
        line(wall ? "goes_wall" : "goes_opening", {{"id", measured_id(piece())}, {"title", plan_.header.title}});
    }

    std::string what() const {
        switch (label_.of) {
            case Of::blank:
                if (!piece().spliced()) return words("blank");
                return words("blank_part", {{"n", std::to_string(label_.part + 1)},
                                            {"m", std::to_string(piece().blanks.size())},
                                            {"piece", piece().id}});
            case Of::left_leg: return words("left_leg");
            case Of::right_leg: return words("right_leg");
            case Of::segment: return segment();
            case Of::rib:
                return label_.of_all == 1
                           ? words("rib")
                           : words("rib_of", {{"n", std::to_string(label_.n)}, {"m", std::to_string(label_.of_all)}});
            case Of::offcut: break;
        }
        return {};
    }

    std::string segment() const {
        const std::string side = wall_side_text(piece(), *label_.segment, kit_);
        return words("segment", {{"n", std::to_string(label_.n)}, {"m", std::to_string(label_.of_all)}}) +
               (side.empty() ? "" : ", " + side);
    }

    void blank(const plan::Piece& one) {
        const plan::Blank& blank = one.blank();
        if (blank.kerfs.empty()) line("no_kerfs");
        else
            line("kerfs", {{"n", std::to_string(blank.kerfs.size())},
                           {"depth", tape_.exact(one.cut.depth)},
                           {"side", side(blank)}});
        line(zero_at_left(one) ? "zero_left" : "zero_right", {{"edge", kit_.words(front_edge("labels.edge", one))}});
    }

    std::string side(const plan::Blank& blank) const {
        if (blank.bends_both_ways()) return words("both_ways");
        return words(!blank.runs.empty() && !opens(blank.runs.front()) ? "close" : "open");
    }

    void leg() {
        const job::End side = label_.of == Of::left_leg ? job::End::left : job::End::right;
        for (const plan::LegBoard& leg : piece().leg_boards)
            if (leg.side == side) leg_cuts(leg);
    }

    /// A splayed leg has no miter: its long edges are beveled, and it is longer at one of them where the head climbs.
    void leg_cuts(const plan::LegBoard& leg) {
        const auto& splay = piece().splay;
        if (!splay) return line("mitre", {{"angle", degrees_text(leg.mitre, kit_)}});
        line("bevel", {{"angle", degrees_text(splay->alpha, kit_)}});
        if (climbs(leg, tape_))
            line("leg_lengths",
                 {{"narrow", tape_.with_unit(leg.face)}, {"wide", tape_.with_unit(leg.face + leg.climb)}});
    }

    void rib() {
        line(piece().form->at_kerf_face ? "rib_kerf_face" : "rib_seen_face");
        line(piece().blank().zero == job::End::left ? "rib_left" : "rib_right");
    }

    const plan::Label& label_;
    const plan::Plan& plan_;
    const Kit& kit_;
    Tape tape_;
    LabelText text_;
};

}  // namespace

LabelText label_text(const plan::Label& label, const Kit& kit) { return Wording(label, kit).text(); }

}  // namespace kerfpacket::sheets
