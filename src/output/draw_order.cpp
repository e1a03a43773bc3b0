#include "output/draw_order.h"

#include <algorithm>
#include <cstddef>
#include <tuple>
#include <variant>

namespace kerfpacket::output {
namespace {

bool is_white(const page::Item& item) {
    if (const auto* path = std::get_if<page::PathItem>(&item)) return path->ink == page::Ink::white;
    if (const auto* text = std::get_if<page::TextItem>(&item)) return text->ink == page::Ink::white;
    return false;
}

/// An item with what it is sorted by, found once.
struct Ranked {
    const page::Item* item;
    bool white;
    std::tuple<bool, std::size_t, bool, page::Length, page::Dash> rank;
};

Ranked ranked(const page::Page& page, const page::Item& item) {
    const auto* path = std::get_if<page::PathItem>(&item);
    const auto reader = page::read_with(page, item);
    if (path != nullptr)
        return {&item, is_white(item), {false, reader.value_or(0), !path->filled, path->width, path->dash}};
    // Words that nobody reads aloud come last.
    return {&item, is_white(item), {true, reader.value_or(page.structure.size()), false, {}, page::Dash::solid}};
}

}  // namespace

std::vector<const page::Item*> draw_order(const page::Page& page) {
    std::vector<Ranked> order;
    order.reserve(page.items.size());
    for (const page::Item& item : page.items) order.push_back(ranked(page, item));
    const auto white = [](const Ranked& one) { return one.white; };
    for (auto start = order.begin(); start != order.end();) {
        const auto end = std::find_if(start, order.end(), white);
        std::stable_sort(start, end, [](const Ranked& a, const Ranked& b) { return a.rank < b.rank; });
        start = std::find_if_not(end, order.end(), white);
    }
    std::vector<const page::Item*> items;
    items.reserve(order.size());
    for (const Ranked& one : order) items.push_back(one.item);
    return items;
}

}  // namespace kerfpacket::output
