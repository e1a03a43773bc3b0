#include "plan/piece.h"

#include <algorithm>

namespace kerfpacket::plan {

Length Piece::stock_width() const {
    Length most = stock_width(whole);
    if (spliced()) most = {};
    for (const Blank& blank : blanks) most = std::max(most, stock_width(blank));
    return most;
}

bool Piece::one_of_twins() const {
    const auto* arch = std::get_if<ArchLines>(&lines);
    return boards == 2 && arch != nullptr && arch->symmetric;
}

Piece Piece::of_blank(std::size_t i) const {
    Piece one = *this;
    if (!spliced()) return one;
    one.id = blank_id(i);
    one.board = static_cast<int>(i) + 1;
    one.boards = static_cast<int>(blanks.size());
    one.whole = blanks.at(i);
    one.blanks = {one.whole};
    one.joints.clear();
    one.gaps.over_joints.clear();
    if (rake) one.rake = rake->of_part(i, blanks.size(), whole.zero);
    if (splay) {
        Length from;
        for (std::size_t k = 0; k < i; ++k) from += blanks[k].length;
        one.splay = splay->part(whole, from, from + blanks[i].length);
    }
    int before = 0;
    for (std::size_t k = 0; k < i; ++k) before += static_cast<int>(blanks[k].kerfs.size());
    const int kerfs = static_cast<int>(one.whole.kerfs.size());
    std::erase_if(one.weak_links, [&](int n) { return n <= before || n > before + kerfs; });
    for (int& n : one.weak_links) n -= before;
    return one;
}

}  // namespace kerfpacket::plan
