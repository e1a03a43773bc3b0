#include "output/code_areas.h"

#include <algorithm>
#include <string>

namespace kerfpacket::output {
namespace {

constexpr std::size_t finder_side = 7;

bool is_finder(const page::CodeItem& code, std::size_t top, std::size_t left) {
    constexpr std::size_t middle = finder_side / 2;
    const auto off = [](std::size_t i) { return i > middle ? i - middle : middle - i; };
    for (std::size_t row = 0; row < finder_side; ++row)
        for (std::size_t column = 0; column < finder_side; ++column)
            if (code.dark.at((top + row) * code.side + left + column) ==
                (std::max(off(row), off(column)) == middle - 1))
                return false;
    return true;
}

/// Calls `take` with top and left of each finder.
template <typename Take>
void each_finder(const page::CodeItem& code, const Take& take) {
    const std::size_t far = code.side - finder_side;
    for (const std::size_t top : {std::size_t{0}, far})
        for (const std::size_t left : {std::size_t{0}, far})
            if (is_finder(code, top, left)) take(top, left);
}

}  // namespace

std::vector<CodeArea> finder_areas(const page::CodeItem& code) {
    std::vector<CodeArea> areas;
    each_finder(code, [&](std::size_t top, std::size_t left) {
        const std::size_t low = code.side - top - finder_side;
        for (const CodeArea& part : {CodeArea{1, 7, 0, 0}, CodeArea{1, 7, 0, 6}, CodeArea{5, 1, 0, 1},
                                     CodeArea{5, 1, 6, 1}, CodeArea{3, 3, 2, 2}})
            areas.push_back({part.height, part.width, left + part.column, low + part.row});
    });
    return areas;
}

std::vector<CodeArea> areas_but_finders(const page::CodeItem& code) {
    const std::size_t side = code.side;
    std::string dark(code.dark.begin(), code.dark.end());
    each_finder(code, [&](std::size_t top, std::size_t left) {
        for (std::size_t row = top; row < top + finder_side; ++row)
            dark.replace(row * side + left, finder_side, finder_side, '\0');
    });
    std::vector<CodeArea> areas;
    for (std::size_t i = dark.find('\1'); i != std::string::npos; i = dark.find('\1', i)) {
        const std::size_t end = std::min(dark.find('\0', i), (i / side + 1) * side);
        const std::string run = dark.substr(i, end - i);
        // Down as far as the whole run is dark.
        std::size_t rows = 0;
        for (std::size_t from = i; from < dark.size() && dark.compare(from, run.size(), run) == 0; from += side, ++rows)
            dark.replace(from, run.size(), run.size(), '\0');
        areas.push_back({rows, run.size(), i % side, side - i / side - rows});
    }
    std::sort(areas.begin(), areas.end());
    return areas;
}

}  // namespace kerfpacket::output
