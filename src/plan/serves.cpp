#include "plan/serves.h"

#include <algorithm>
#include <cmath>
#include <tuple>

namespace kerfpacket::plan {
namespace {

bool differ(Length a, Length b) { return measure::abs(a - b) > same_kerf; }

/// Kerfs that stand as far askew, and the same way.
bool same_lean(const Blank& a, const Blank& b) {
    const Length mine = a.zero == job::End::left ? a.lean : -a.lean;
    const Length other = b.zero == job::End::left ? b.lean : -b.lean;
    return !differ(mine, other);
}

bool same_board(const Piece& a, const Piece& b) {
    const auto& ours = a.cut.profile;
    const auto& theirs = b.cut.profile;
    const bool section = std::equal(ours.begin(), ours.end(), theirs.begin(), theirs.end(), [](auto one, auto other) {
        return !differ(one.height, other.height) && !differ(one.thickness, other.thickness);
    });
    return a.kind == b.kind && same_lean(a.blank(), b.blank()) && a.material == b.material && section &&
           !differ(a.cut.thickness, b.cut.thickness) && !differ(a.width, b.width);
}

/// Middles of the kerfs from the left end, rising: the front edge stays in front, whichever end is zero.
std::vector<Length> from_left(const Blank& blank) {
    std::vector<Length> places;
    for (const Kerf& kerf : blank.kerfs) places.push_back(blank.from_left(kerf.at));
    if (blank.zero == job::End::right) std::reverse(places.begin(), places.end());
    return places;
}

/// An old board, shifted along a new blank.
struct Match {
    Length shift;                        ///< what is added to a place on the new blank for its place on the old board
    std::vector<std::size_t> to_add;     ///< of the new kerfs, from the left
    std::vector<std::size_t> misplaced;  ///< of the old ones, from the left
    Length missing;                      ///< what the old board is too short by, both ends together

    bool serves() const { return misplaced.empty() && missing <= same_kerf; }
    /// What it is short of counts as the kerfs that would stand there.
    auto cost(Length spacing) const {
        const auto unlike = static_cast<double>(misplaced.size() + to_add.size());
        return std::tuple(!serves(), unlike + missing / spacing, std::abs(shift.mm()));
    }
};

class Matching {
public:
    /// `kept`: what of the new blank is not sawn off, from its left end.
    Matching(const Blank& was, const Blank& now, const std::array<Length, 2>& kept)
        : was_(from_left(was)), now_(from_left(now)), length_(was.length), kept_(kept) {}

    const std::vector<Length>& old_kerfs() const { return was_; }

    /// A shift at which it serves before one at which it does not, then the one with the fewest kerfs of either that
    /// have no like, then the least. Where one board has all the kerfs of the other, one of the two first kerfs has its
    /// like there, so that these shifts are all.
    Match best() const {
        const Length spacing = (kept_[1] - kept_[0]) / static_cast<double>(now_.size());
        Match best = at({});
        const auto attempt = [&](Length shift) {
            Match match = at(shift);
            if (match.cost(spacing) < best.cost(spacing)) best = std::move(match);
        };
        for (const Length place : was_) attempt(place - now_.front());
        for (const Length place : now_) attempt(was_.front() - place);
        return best;
    }

private:
    Match at(Length shift) const {
        Match match{shift, {}, {}, {}};
        match.missing = std::max(Length(), -(kept_[0] + shift)) + std::max(Length(), kept_[1] + shift - length_);
        std::size_t i = 0;
        std::size_t j = 0;
        while (i < was_.size() || j < now_.size()) {
            const bool both = i < was_.size() && j < now_.size();
            if (both && !differ(was_[i] - shift, now_[j])) {
                ++i;
                ++j;
            } else if (j == now_.size() || (both && was_[i] - shift < now_[j])) {
                // A kerf in what is sawn off does no harm.
                const Length place = was_[i] - shift;
                if (place > kept_[0] && place < kept_[1]) match.misplaced.push_back(i);
                ++i;
            } else {
                match.to_add.push_back(j++);
            }
        }
        return match;
    }

    std::vector<Length> was_;
    std::vector<Length> now_;
    Length length_;
    std::array<Length, 2> kept_;
};

Unfit cannot(const Piece& was, const Piece& now) {
    if (!same_board(was, now)) return Unfit::board;
    if (differ(was.cut.kerf, now.cut.kerf)) return Unfit::kerf_width;
    return was.cut.depth - now.cut.depth > same_kerf ? Unfit::too_deep : Unfit::none;
}

}  // namespace

Serves serves(const Piece& was, const Piece& now, const std::array<Length, 2>& finished) {
    Serves found;
    found.unfit = cannot(was, now);
    if (found.unfit != Unfit::none) return found;
    const Blank& blank = now.blank();
    std::array<Length, 2> kept{blank.from_left(finished[0]), blank.from_left(finished[1])};
    std::sort(kept.begin(), kept.end());
    const Matching matching(was.blank(), blank, kept);
    const Match match = matching.best();
    found.misplaced = static_cast<int>(match.misplaced.size());
    if (found.misplaced > 0) {
        found.unfit = Unfit::kerfs;
        const bool turned = was.blank().zero == job::End::right;
        found.first_misplaced =
            was.blank().from_left(matching.old_kerfs()[turned ? match.misplaced.back() : match.misplaced.front()]);
        return found;
    }
    found.longer = {match.shift, was.blank().length - match.shift - blank.length};
    found.missing = match.missing;
    if (found.missing > same_kerf) found.unfit = Unfit::too_short;
    for (const std::size_t i : match.to_add) {
        const bool turned = blank.zero == job::End::right;
        found.to_add.push_back(blank.kerfs[turned ? blank.kerfs.size() - 1 - i : i].n);
    }
    std::sort(found.to_add.begin(), found.to_add.end());
    found.deepen = now.cut.depth - was.cut.depth > same_kerf;
    return found;
}

}  // namespace kerfpacket::plan
