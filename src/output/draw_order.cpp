#include "output/draw_order.h"

#include <algorithm>
#include <tuple>
#include <variant>

namespace kerfpacket::output {
namespace {

bool is_white(const page::Item& item) {
    if (const auto* path = std::get_if<page::PathItem>(&item)) return path->ink == page::Ink::white;
    if (const auto* text = std::get_if<page::TextItem>(&item)) return text->ink == page::Ink::white;
    return false;
}

/// Areas, then lines by pen, then all that is not a path.
auto rank(const page::Item& item) {
    const auto* path = std::get_if<page::PathItem>(&item);
    return path == nullptr ? std::tuple(true, false, page::Length{}, page::Dash::solid)
                           : std::tuple(false, !path->filled, path->width, path->dash);
}

}  // namespace

std::vector<const page::Item*> draw_order(const std::vector<page::Item>& items) {
    std::vector<const page::Item*> order;
    order.reserve(items.size());
    for (const page::Item& item : items) order.push_back(&item);
    const auto white = [](const page::Item* item) { return is_white(*item); };
    for (auto start = order.begin(); start != order.end();) {
        const auto end = std::find_if(start, order.end(), white);
        std::stable_sort(start, end, [](const page::Item* a, const page::Item* b) { return rank(*a) < rank(*b); });
        start = std::find_if_not(end, order.end(), white);
    }
    return order;
}

}  // namespace kerfpacket::output
