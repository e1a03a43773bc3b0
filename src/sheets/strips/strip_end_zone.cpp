#include "sheets/strips/strip_end_zone.h"

#include <algorithm>
#include <cmath>

#include "sheets/layout/lane.h"

namespace kerfpacket::sheets {
namespace {

/// From a line of words to the ends of its zone.
constexpr Length zone_inset = Length::points(8);
constexpr Length rounding = Length::mm(1e-6);

/// From the baseline of a line to that of its last row.
Length rows_below(const EndZone::Line& line) { return line.next.empty() ? Length() : line.type.size * 1.15; }

Face condensed(Face face) { return face == Face::bold ? Face::condensed_bold : Face::condensed; }

}  // namespace

bool EndZone::set_as(const Line& line, const std::string& text, Face face) {
    Type type = line.type;
    type.face = face;
    const Length wide = std::max(pen_.width(text, type), pen_.width(line.next, type));
    if (wide > whole_.width() - zone_inset * 2 + rounding) return false;
    const Length base = whole_.low.y + line.up;
    // The white ground of the words reaches that far.
    const Length low = base - type.size * 0.26 - rows_below(line);
    const Length high = base + type.size * 0.86 + line.under;
    Lane lane(whole_.low.x + zone_inset, whole_.high.x - zone_inset);
    std::vector<Length> starts{from_left_ ? whole_.low.x + zone_inset : whole_.high.x - zone_inset - wide};
    for (const Rect& area : taken_) {
        if (area.high.y <= low || area.low.y >= high) continue;
        lane.force(area.low.x - apart_, area.high.x + apart_);
        starts.push_back(from_left_ ? area.high.x + apart_ : area.low.x - apart_ - wide);
    }
    std::sort(starts.begin(), starts.end());
    if (!from_left_) std::reverse(starts.begin(), starts.end());
    const auto start =
        std::find_if(starts.begin(), starts.end(), [&](Length left) { return lane.is_free(left, left + wide); });
    if (start == starts.end()) return false;
    const Point anchor{from_left_ ? *start : *start + wide, base};
    const Type set = from_left_ ? type : type.at_right();
    pen_.text_on_white(Role::limit, anchor, text, set);
    if (!line.next.empty()) pen_.text_on_white(Role::limit, anchor - Point{{}, rows_below(line)}, line.next, set);
    const Length top = type.size * 0.75;
    taken_.push_back({{*start, base - rows_below(line)}, {*start + wide, base + top}});
    if (line.up + top > lanes_.above_numerals()) in_lane_.push_back(taken_.back());
    return true;
}

bool EndZone::set(const Line& line) {
    return set_as(line, line.text, line.type.face) || set_as(line, line.text, condensed(line.type.face)) ||
           (!line.shorter.empty() && set_as(line, line.shorter, condensed(line.type.face)));
}

bool EndZone::fits_between_lines(const Line& line, Length up) const {
    const Length low = up - line.type.size * 0.26 - rows_below(line);
    const Length high = up + line.type.size * 0.86;
    // No words on the fold of an edge strip.
    return low >= 1_pt && high <= lanes_.height - 1_pt && (!lanes_.edge || low >= lanes_.mark || high <= lanes_.mark);
}

bool EndZone::set_anywhere(const Line& line) { return set(line) || set_at_one_of(heights(line, lanes_.height), line); }

bool EndZone::set_in_rows(const Line& line) {
    if (set_below_lane(line)) return true;
    const std::size_t middle = line.text.size() / 2;
    const std::size_t before = line.text.rfind(' ', middle);
    const std::size_t after = line.text.find(' ', middle);
    if (before == std::string::npos && after == std::string::npos) return false;
    const bool first = after == std::string::npos || (before != std::string::npos && middle - before < after - middle);
    const std::size_t at = first ? before : after;
    Line rows = line;
    rows.next = line.text.substr(at + 1);
    rows.text.resize(at);
    rows.shorter.clear();
    return set_below_lane(rows);
}

bool EndZone::set_below_lane(const Line& line) {
    Line lower = line;
    lower.under = line.type.size * 0.3;
    return set_at_one_of(heights(line, lanes_.above_numerals() - line.type.size * 0.75), lower);
}

std::vector<Length> EndZone::heights(const Line& line, Length below) const {
    std::vector<Length> heights;
    for (Length up = 2_pt; up < below; up += 0.5_pt)
        if (fits_between_lines(line, up)) heights.push_back(up);
    return heights;
}

bool EndZone::set_at_one_of(std::vector<Length> heights, const Line& line) {
    std::stable_sort(heights.begin(), heights.end(),
                     [&](Length a, Length b) { return measure::abs(a - line.up) < measure::abs(b - line.up); });
    return std::any_of(heights.begin(), heights.end(), [&](Length up) {
        Line there = line;
        there.up = up;
        return set(there);
    });
}

}  // namespace kerfpacket::sheets
