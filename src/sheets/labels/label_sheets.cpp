#include "sheets/labels/label_sheets.h"

#include <algorithm>

#include "measure/require.h"
#include "page/placing.h"
#include "sheets/labels/label_drawing.h"
#include "sheets/layout/paper.h"

namespace kerfpacket::sheets {
namespace {

/// Free inside the edge of each label: they are seldom printed more truly than this.
constexpr Length inside_edge = 5_pt;
/// The same on a roll, whose printers leave more free.
constexpr Length inside_roll = 8_pt;
/// Of a label that runs along its roll and is cut as long as it comes to.
constexpr Length first_length = 108_pt;
constexpr Length length_step = 18_pt;
constexpr Length most_length = 864_pt;

/// What is kept free of a label at its sides.
struct Free {
    Length left, right, top, bottom;
};

/// All labels of a house in one setting.
struct Set {
    std::vector<PlacedLabel> placed;
    Length height;  ///< of the tallest
    std::size_t tallest = 0;
};

class LabelSheets {
public:
    LabelSheets(const plan::House& house, const job::LabelStock& stock, const Kit& kit)
        : house_(house),
          stock_(stock),
          kit_(kit),
          labels_(plan::labels_of(house)),
          settings_(label_settings(kit.style)) {
        measure::require(!labels_.empty(), "a house without anything to label");
        for (const plan::Label& label : labels_) texts_.push_back(label_text(label, kit));
        free_ = stock.paper.roll ? Free{inside_roll, inside_roll, inside_roll, inside_roll} : on_sheet();
    }

    tl::expected<page::Document, LabelsTooSmall> run(int from) {
        const job::Header& header = house_.first().header;
        document_.title = kit_.words("labels.title") + " " + header.number;
        document_.subject = kit_.words("labels.title");
        document_.language = kit_.words("page.language");
        document_.date = header.date;
        if (const auto set = best(stock_.width, stock_.height)) {
            if (stock_.paper.roll) on_roll(*set, stock_.width, false);
            else on_sheets(*set, from);
        } else if (!stock_.paper.roll || !along_roll()) {
            return tl::unexpected(too_small());
        }
        return std::move(document_);
    }

private:
    /// The printer's own margin may reach into the outer labels; all are set alike.
    Free on_sheet() const {
        Length margin;
        for (const plan::Plan* job : house_.jobs) margin = std::max(margin, job->printer.margin);
        const Length right = stock_.paper.width - stock_.left - stock_.across * (stock_.columns - 1) - stock_.width;
        const Length bottom = stock_.paper.height - stock_.top - stock_.down * (stock_.rows - 1) - stock_.height;
        return {std::max(inside_edge, margin - stock_.left), std::max(inside_edge, margin - right),
                std::max(inside_edge, margin - stock_.top), std::max(inside_edge, margin - bottom)};
    }

    std::optional<Set> placed(Length width, const LabelSetting& setting) const {
        Set set;
        for (const LabelText& text : texts_) {
            auto one = place_label(text, width - free_.left - free_.right, setting, kit_);
            if (!one) return std::nullopt;
            if (one->height > set.height) {
                set.height = one->height;
                set.tallest = set.placed.size();
            }
            set.placed.push_back(*std::move(one));
        }
        return set;
    }

    /// In the largest setting that finds room; a height of 0 is as long as it comes to.
    std::optional<Set> best(Length width, Length height) const {
        for (const LabelSetting& setting : settings_) {
            auto set = placed(width, setting);
            if (set && (height == Length() || set->height + free_.top + free_.bottom <= height)) return set;
        }
        return std::nullopt;
    }

    /// A narrow roll's labels run along it.
    bool along_roll() {
        if (stock_.height > Length()) {
            const auto set = best(stock_.height, stock_.width);
            if (set) on_roll(*set, stock_.height, true);
            return set.has_value();
        }
        for (Length length = first_length; length <= most_length; length = length + length_step)
            if (const auto set = best(length, stock_.width)) {
                on_roll(*set, length, true);
                return true;
            }
        return false;
    }

    void add_page(Length width, Length height) {
        page::Page page;
        page.sheet = "labels";
        page.width = width;
        page.height = height;
        page.number = document_.pages.size() + 1;
        document_.pages.push_back(std::move(page));
    }

    void draw(std::size_t i, const Set& set, Point low, Point high) {
        const Rect room{{low.x + free_.left, low.y + free_.bottom}, {high.x - free_.right, high.y - free_.top}};
        draw_label(document_.pages.back(), {room, labels_[i], texts_[i], set.placed[i]}, kit_);
    }

    void on_sheets(const Set& set, int from) {
        const std::size_t places = static_cast<std::size_t>(stock_.on_sheet());
        std::size_t place = static_cast<std::size_t>(from - 1);
        for (std::size_t i = 0; i < labels_.size(); ++i, ++place) {
            if (i == 0 || place % places == 0) add_page(stock_.paper.width, stock_.paper.height);
            const auto column = static_cast<double>(place % places % static_cast<std::size_t>(stock_.columns));
            const auto row = static_cast<double>(place % places / static_cast<std::size_t>(stock_.columns));
            const Point upper_left{stock_.left + stock_.across * column,
                                   stock_.paper.height - stock_.top - stock_.down * row};
            draw(i, set, {upper_left.x, upper_left.y - stock_.height}, {upper_left.x + stock_.width, upper_left.y});
        }
    }

    /// Each as long as it comes to, but the shortest no shorter than the code asks for.
    void on_roll(const Set& set, Length width, bool along) {
        for (std::size_t i = 0; i < labels_.size(); ++i) {
            Length height = along ? stock_.width : stock_.height;
            if (height == Length()) height = roll_page_end(set.placed[i].height + free_.top + free_.bottom);
            add_page(along && stock_.height == Length() ? roll_page_end(width) : width, height);
            draw(i, set, {}, {document_.pages.back().width, height});
            if (along) page::turn_left(document_.pages.back());
        }
    }

    /// As a rule reads it.
    Length rounded_up(Length value) const { return measure::up_to_tape(value, house_.first().header.units); }

    /// In whichever setting is the lowest: a smaller one may break its lines less well.
    std::optional<Set> lowest(Length width) const {
        std::optional<Set> best;
        for (const LabelSetting& setting : settings_)
            if (auto set = placed(width, setting); set && (!best || set->height < best->height)) best = std::move(set);
        return best;
    }

    LabelsTooSmall too_small() const {
        for (Length width = stock_.width;; width = width + 0.0625_in)
            if (const auto set = lowest(width))
                return {texts_[set->tallest].tag, rounded_up(width),
                        rounded_up(set->height + free_.top + free_.bottom)};
    }

    const plan::House& house_;
    const job::LabelStock& stock_;
    const Kit& kit_;
    std::vector<plan::Label> labels_;
    std::vector<LabelSetting> settings_;
    std::vector<LabelText> texts_;
    Free free_;
    page::Document document_;
};

}  // namespace

tl::expected<page::Document, LabelsTooSmall> make_labels(const plan::House& house, const job::LabelStock& stock,
                                                         int from, const Kit& kit) {
    return LabelSheets(house, stock, kit).run(from);
}

}  // namespace kerfpacket::sheets
