#include "output/pdf_outline.h"

#include <fmt/format.h>

#include "measure/require.h"
#include "output/pdf_text.h"

namespace kerfpacket::output {
namespace {

/// An entry, or the root, with those next to it: none is 0.
struct Bookmark {
    Ref self, parent, before, next, first, last;
    int below = 0;  ///< entries under it, all of them open
};

std::string entry(const char* key, Ref to) { return to == Ref{} ? "" : fmt::format("/{} {}", key, named(to)); }

std::string links_of(const Bookmark& one) {
    return entry("Parent", one.parent) + entry("Prev", one.before) + entry("Next", one.next) +
           entry("First", one.first) + entry("Last", one.last) +
           (one.below > 0 ? fmt::format("/Count {}", one.below) : "");
}

}  // namespace

Ref add_outline(PdfFile& file, const page::Document& document, const std::vector<Ref>& pages) {
    std::vector<Bookmark> all{{file.reserve(), {}, {}, {}, {}, {}}};
    std::vector<std::size_t> path{0};  // from the root to the last entry
    for (const page::OutlineEntry& title : document.outline) {
        const auto level = static_cast<std::size_t>(title.level);
        measure::require(title.level >= 0 && level < path.size(), "an outline goes down one level at a time");
        Bookmark one{file.reserve(), all[path[level]].self, {}, {}, {}, {}};
        if (level + 1 < path.size()) {
            Bookmark& before = all[path[level + 1]];
            one.before = before.self;
            before.next = one.self;
        } else all[path[level]].first = one.self;
        all[path[level]].last = one.self;
        path.resize(level + 1);
        for (const std::size_t above : path) ++all[above].below;
        path.push_back(all.size());
        all.push_back(one);
    }
    file.put(all.front().self, "<</Type/Outlines" + links_of(all.front()) + ">>");
    for (std::size_t i = 1; i < all.size(); ++i) {
        const page::OutlineEntry& title = document.outline[i - 1];
        file.put(all[i].self, fmt::format("<</Title{}/Dest[{} /Fit]{}>>", text_string(title.title),
                                          named(pages.at(title.page)), links_of(all[i])));
    }
    return all.front().self;
}

std::string told_of(const page::Document& document, std::size_t page) {
    std::string title;
    for (const page::OutlineEntry& one : document.outline)
        if (one.page <= page) title = one.title;
    const std::size_t number = document.pages.at(page).number;
    return title + (title.empty() ? "" : ", ") + std::to_string(number == 0 ? page + 1 : number);
}

}  // namespace kerfpacket::output
