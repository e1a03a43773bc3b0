#include "sheets/labels/label_layout.h"

#include <algorithm>
#include <utility>

#include "sheets/layout/sheet_code.h"

namespace kerfpacket::sheets {
namespace {

constexpr double line_pitch = 1.2;  ///< of the type size
constexpr double ascent = 0.8;
constexpr double descent = 0.24;
constexpr Length between_words = 6_pt;

std::vector<std::string> in_pairs(const std::vector<std::string>& lines) {
    std::vector<std::string> pairs;
    for (std::size_t i = 0; i < lines.size(); i += 2)
        pairs.push_back(i + 1 < lines.size() ? lines[i] + "; " + lines[i + 1] : lines[i]);
    return pairs;
}

class Placing {
public:
    Placing(Length width, const LabelSetting& setting, const Kit& kit) : width_(width), setting_(setting), kit_(kit) {}

    std::optional<PlacedLabel> run(const LabelText& text) {
        const Face plain = setting_.condensed ? Face::condensed : Face::regular;
        const Face bold = setting_.condensed ? Face::condensed_bold : Face::bold;
        const Type tag{Face::bold, setting_.tag};
        const Type length{bold, setting_.length};
        const Type small_bold{bold, setting_.text};
        if (setting_.square) {
            squared(text, length, small_bold);
        } else if (setting_.joined) {
            row({{text.tag, tag}, {text.length, length}, {text.what, small_bold}});
        } else if (setting_.one_row) {
            row({{text.tag, tag}, {text.length, length}});
            say(text.what, small_bold);
        } else {
            row({{text.tag, tag}, {text.what, small_bold}});
            say(text.length, length);
        }
        for (const std::string& line : setting_.joined ? in_pairs(text.lines) : text.lines)
            say(line, {plain, setting_.text});
        if (!fits_) return std::nullopt;
        placed_.height = std::max(down_, sheet_code_side);
        return std::move(placed_);
    }

private:
    /// The tag as on every sheet, and what it stands for at its right.
    void squared(const LabelText& text, const Type& length, const Type& what) {
        const Type tag = Type{Face::bold, setting_.tag}.white().centred();
        placed_.tag_height = setting_.tag * 1.25;
        placed_.tag_width = std::max(placed_.tag_height, width(text.tag, tag) + between_words);
        placed_.lines.push_back({placed_.tag_width / 2, setting_.tag * 0.99, text.tag, tag});
        left_ = placed_.tag_width + between_words;
        say(text.what, what);
        say(text.length, length);
        left_ = {};
        down_ = std::max(down_, placed_.tag_height + setting_.text * 0.3);
    }

    /// Beside the code as long as the line's type reaches up to it.
    Length room() const {
        const bool beside = down_ < sheet_code_side + sheet_code_gap - 1_pt;
        return width_ - left_ - (beside ? sheet_code_side + sheet_code_gap : 0_pt);
    }

    void put(Length x, const std::string& text, const Type& type, Length ascent_of) {
        placed_.lines.push_back({x, down_ + ascent_of * ascent, text, type});
    }

    /// Side by side on one baseline, or else one below the other.
    void row(const std::vector<std::pair<std::string, Type>>& parts) {
        Length all;
        Length tallest;
        for (const auto& [text, type] : parts) {
            all = all + (all > Length() ? between_words : Length()) + kit_.faces.width(type.face, text, type.size);
            tallest = std::max(tallest, type.size);
        }
        if (all > room()) {
            for (const auto& [text, type] : parts) say(text, type);
            return;
        }
        Length x;
        for (const auto& [text, type] : parts) {
            put(x, text, type, tallest);
            x = x + kit_.faces.width(type.face, text, type.size) + between_words;
        }
        down_ = down_ + tallest * (ascent + descent);
    }

    void say(const std::string& text, const Type& type) {
        std::string line;
        for (std::size_t from = 0; from <= text.size();) {
            const std::size_t end = std::min(text.find(' ', from), text.size());
            const std::string word = text.substr(from, end - from);
            from = end + 1;
            std::string longer = line;
            if (!longer.empty()) longer.append(" ");
            longer.append(word);
            if (!line.empty() && width(longer, type) > room()) {
                finish(std::exchange(line, word), type);
            } else {
                line = std::move(longer);
            }
            // Below the code there may be more room.
            while (width(word, type) > room() && room() < width_ - left_) down_ = down_ + 1_pt;
            if (width(word, type) > room()) fits_ = false;
        }
        finish(line, type);
    }

    Length width(const std::string& text, const Type& type) const {
        return kit_.faces.width(type.face, text, type.size);
    }

    void finish(const std::string& line, const Type& type) {
        put(left_, line, type, type.size);
        down_ = down_ + type.size * line_pitch;
    }

    Length width_;
    const LabelSetting& setting_;
    const Kit& kit_;
    PlacedLabel placed_;
    Length down_;
    Length left_;  ///< of the lines, from the left of the room
    bool fits_ = true;
};

}  // namespace

std::vector<LabelSetting> label_settings(const fonts::Style& style) {
    const auto squared = [](Length tag, Length length, Length text) {
        return LabelSetting{tag, length, text, false, false, false, true};
    };
    return {squared(style.huge * 1.35, style.huge, style.strong),
            squared(style.huge * 1.2, style.huge, style.text),
            squared(style.huge, style.title, style.text),
            {style.huge, style.title, style.text},
            {style.huge, style.title, style.small, true},
            {style.title, style.strong, style.small, true, true},
            {style.strong, style.strong, style.small, true, true},
            {style.strong, style.strong, style.small, true, true, true}};
}

std::optional<PlacedLabel> place_label(const LabelText& text, Length width, const LabelSetting& setting,
                                       const Kit& kit) {
    return Placing(width, setting, kit).run(text);
}

}  // namespace kerfpacket::sheets
