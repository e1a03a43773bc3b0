#include "plan/labels.h"

#include <algorithm>
#include <map>

namespace kerfpacket::plan {
namespace {

class Listing {
public:
    explicit Listing(const House& house) : house_(house) {}

    std::vector<Label> run() {
        for (const Plan* job : house_.jobs)
            for (const Piece& piece : job->pieces) add(piece, *job);
        if (house_.stock != nullptr) add_offcuts(*house_.stock);
        return std::move(labels_);
    }

private:
    void add(Label label) {
        label.number = ++numbers_[label.job];
        labels_.push_back(label);
    }

    /// What belongs to an opening and not to one of its boards comes with the first.
    void add(const Piece& piece, const Plan& job) {
        for (int copy = 1; copy <= piece.quantity; ++copy) {
            Label label;
            label.job = &job;
            label.piece = &piece;
            label.copy = copy;
            label.copies = piece.quantity;
            add_boards(label);
            if (piece.board == 1) add_segments(label);
        }
        if (piece.has_own_ribs()) add_rib(piece, job);
    }

    void add_boards(Label label) {
        const Piece& piece = *label.piece;
        for (label.part = 0; label.part < piece.blanks.size(); ++label.part) {
            label.width = piece.stock_width(piece.blanks[label.part]);
            label.length =
                measure::round_to_tape(Piece::stock_length(piece.blanks[label.part]), label.job->header.units);
            add(label);
        }
        label.part = 0;
        label.width = piece.width;
        for (const LegBoard& leg : piece.leg_boards) {
            label.of = leg.side == job::End::left ? Label::Of::left_leg : Label::Of::right_leg;
            label.length = measure::round_to_tape(leg.longest(), label.job->header.units);
            add(label);
        }
    }

    void add_segments(Label label) {
        const auto* arch = std::get_if<ArchLines>(&label.piece->lines);
        if (arch == nullptr) return;
        label.of = Label::Of::segment;
        label.of_all = static_cast<int>(arch->segments.size());
        for (const CasingSegment& segment : arch->segments) {
            label.n = segment.n;
            label.segment = &segment;
            label.length = segment.length_to_saw(label.job->header.units);
            label.width = segment.width_to_saw(label.job->header.units);
            add(label);
        }
    }

    /// Ribs are cut alike; where the job does not say how many, one label is for the pattern.
    void add_rib(const Piece& piece, const Plan& job) {
        Label label;
        label.job = &job;
        label.of = Label::Of::rib;
        label.piece = &piece;
        label.length = piece.form->ordinates.back().x - piece.form->ordinates.front().x;
        label.of_all = std::max(1, piece.form->ribs);
        for (label.n = 1; label.n <= label.of_all; ++label.n) add(label);
    }

    Label an_offcut() const {
        Label label;
        label.of = Label::Of::offcut;
        label.job = &house_.first();
        label.more_jobs = static_cast<int>(house_.jobs.size()) - 1;
        label.n = 0;
        label.of_all = 0;
        return label;
    }

    void add_offcuts(const StockPlan& stock) {
        Label label = an_offcut();
        for (const StockSection& section : stock.sections) label.of_all += static_cast<int>(section.sticks.size());
        for (const StockSection& section : stock.sections)
            for (const CutStick& stick : section.sticks) {
                ++label.n;
                if (!stick.kept) continue;
                label.section = &section;
                label.length = stick.offcut;
                label.width = section.width;
                add(label);
            }
        add_sheet_offcuts(stock);
    }

    /// What is left beside the strips, then the ends of these.
    void add_sheet_offcuts(const StockPlan& stock) {
        Label label = an_offcut();
        for (const SheetSection& section : stock.sheets) label.of_all += static_cast<int>(section.sheets.size());
        for (const SheetSection& section : stock.sheets) {
            label.sheets = &section;
            for (const CutSheet& sheet : section.sheets) {
                ++label.n;
                if (sheet.kept) add_offcut(label, sheet.length, sheet.offcut);
                for (const CutStrip& strip : sheet.strips)
                    if (strip.cut.kept) add_offcut(label, strip.cut.offcut, strip.width);
            }
        }
    }

    void add_offcut(Label label, Length length, Length width) {
        label.length = length;
        label.width = width;
        add(label);
    }

    const House& house_;
    std::vector<Label> labels_{};
    std::map<const Plan*, int> numbers_{};
};

}  // namespace

std::vector<Label> labels_of(const House& house) { return Listing(house).run(); }

}  // namespace kerfpacket::plan
