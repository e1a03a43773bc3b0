#include "sheets/layout/sign_off.h"

#include <numeric>

namespace kerfpacket::sheets {
namespace {

constexpr Length date_blank = 64_pt;
constexpr Length word_gap = 5_pt;
constexpr Length blank_gap = 10_pt;

}  // namespace

void sign_off(Pen& pen, Length left, Length right, Length base, const std::vector<std::string>& names,
              const std::string& date) {
    const Type type{Face::regular, pen.kit().style.small};
    const auto blank = [&](Length from, const std::string& word, Length to) {
        const Length x = from + pen.text(Role::text, {from, base}, word, type) + word_gap;
        pen.line(Role::box, {x, base - 2_pt}, {to, base - 2_pt}, pen.kit().style.line);
    };
    const Length date_left = right - date_blank - word_gap - pen.width(date, type);
    const Length words = std::accumulate(
        names.begin(), names.end(), Length(),
        [&](Length sum, const std::string& name) { return sum + pen.width(name, type) + word_gap + blank_gap; });
    const Length room = (date_left - left - words) / static_cast<double>(names.size());
    Length x = left;
    for (const std::string& name : names) {
        const Length end = x + pen.width(name, type) + word_gap + room;
        blank(x, name, end);
        x = end + blank_gap;
    }
    blank(date_left, date, right);
}

void sign_off(Flow& flow, const std::vector<std::string>& names) {
    const Rect room = flow.take_foot(flow.style().small * 2.6);
    Pen pen = flow.pen();
    sign_off(pen, room.low.x, room.high.x, room.low.y + 6_pt, names, flow.kit().words("page.date"));
}

}  // namespace kerfpacket::sheets
