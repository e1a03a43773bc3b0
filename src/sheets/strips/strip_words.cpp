#include "sheets/strips/strip_words.h"

#include <algorithm>

#include "sheets/layout/furniture.h"

namespace kerfpacket::sheets {
namespace {

constexpr Length clear = 3_pt;
/// Between the words of two marks, which nobody may read as one.
constexpr Length apart = 9_pt;
constexpr int cost_of_shortening = 25;

/// A way to set words: type, baseline, which halves of the lane it takes (1 upper, 2 lower), how unwelcome it is.
struct Manner {
    Type type;
    Length up;
    int halves;
    int cost;
};

std::vector<Manner> manners(const fonts::Style& style, const Lanes& lanes) {
    const Type tiny{Face::condensed_bold, style.tiny};
    std::vector<Manner> all{{{Face::bold, style.small}, lanes.words, 3, 0},
                            {{Face::condensed_bold, style.small}, lanes.words, 3, 1}};
    // A flap is too low for two halves.
    if (lanes.edge) all.push_back({tiny, lanes.words, 3, 4});
    else all.insert(all.end(), {{tiny, lanes.words + 6.2_pt, 1, 4}, {tiny, lanes.words - 2.8_pt, 2, 4}});
    return all;
}

struct Place {
    const std::string* text;
    const Manner* manner;
    Length from;
    Length to;
    int cost;

    bool meets(const Place& other) const {
        return (manner->halves & other.manner->halves) != 0 && from < other.to + apart && other.from < to + apart;
    }
};

/// Tries all ways to set the words of a strip and keeps the least unwelcome. A strip has few marks, so that is quick.
class Arrangement {
public:
    Arrangement(Pen& pen, const Lanes& lanes, const std::vector<MarkWords>& all, const Lane& lane)
        : pen_(pen), all_(all), lane_(lane), manners_(manners(pen.kit().style, lanes)), chosen_(all.size()) {
        for (const MarkWords& words : all) places_.push_back(places(words));
        choose(0, 0);
    }

    const std::vector<const Place*>& best() const { return best_; }
    void draw(Length base) const {
        for (std::size_t i = 0; i < all_.size(); ++i)
            if (best_[i] != nullptr) set(all_[i], *best_[i], base);
    }

private:
    static Length box_side(const Type& type) { return type.size + 1_pt; }
    Length width(const std::string& text, bool box, const Type& type) const {
        return pen_.width(text, type) + (box ? box_side(type) + 4_pt : 0_pt);
    }

    bool covers_a_mark(Length from, Length to) const {
        return std::any_of(all_.begin(), all_.end(), [&](const MarkWords& other) {
            return from - clear < other.mark && other.mark < to + clear;
        });
    }

    std::vector<Place> places(const MarkWords& words) const {
        std::vector<Place> free;
        add_places(words, words.text, 0, free);
        if (!words.shorter.empty()) add_places(words, words.shorter, cost_of_shortening, free);
        return free;
    }

    void add_places(const MarkWords& words, const std::string& text, int cost, std::vector<Place>& free) const {
        for (const Manner& manner : manners_) {
            const Length wide = width(text, words.box, manner.type);
            for (const Length from : {words.mark + words.gap, words.mark - words.gap - wide}) {
                const Length to = from + wide;
                if (!lane_.is_free(from - clear, to + clear)) continue;
                if (!covers_a_mark(from, to)) free.push_back({&text, &manner, from, to, cost + manner.cost});
                // Half the lane leaves the other half of a line to be seen, the lower half a tape mark's arrow too.
                else if (manner.halves < 3)
                    free.push_back({&text, &manner, from, to, cost + manner.cost + 10 * (3 - manner.halves)});
            }
        }
    }

    void choose(std::size_t i, int cost) {
        if (cost >= least_cost_) return;
        if (i == all_.size()) {
            least_cost_ = cost;
            best_ = chosen_;
            return;
        }
        for (const Place& place : places_[i]) {
            if (std::any_of(chosen_.begin(), chosen_.begin() + static_cast<std::ptrdiff_t>(i),
                            [&](const Place* other) { return other != nullptr && place.meets(*other); }))
                continue;
            chosen_[i] = &place;
            choose(i + 1, cost + place.cost);
        }
        chosen_[i] = nullptr;
        choose(i + 1, cost + all_[i].worth);
    }

    void set(const MarkWords& words, const Place& place, Length base) const {
        Point start{place.from, base + place.manner->up};
        const Type& type = place.manner->type;
        if (words.box) {
            tick_box(pen_, {start.x, start.y - 1.5_pt}, box_side(type));
            start.x += box_side(type) + 4_pt;
        }
        pen_.text_on_white(words.role, start, *place.text, type);
    }

    Pen& pen_;
    const std::vector<MarkWords>& all_;
    const Lane& lane_;
    std::vector<Manner> manners_;
    std::vector<std::vector<Place>> places_;
    std::vector<const Place*> chosen_;
    std::vector<const Place*> best_;
    int least_cost_ = 1'000'000;
};

/// Marks so far apart that their words cannot meet are set apart: a long strip has many.
std::vector<std::vector<MarkWords>> neighbourhoods(std::vector<MarkWords> all) {
    constexpr Length reach = 600_pt;
    std::vector<Length> marks;
    marks.reserve(all.size());
    for (const MarkWords& words : all) marks.push_back(words.mark);
    std::sort(marks.begin(), marks.end());
    std::vector<std::vector<MarkWords>> groups;
    for (std::size_t i = 0; i < marks.size(); ++i) {
        if (i + 1 < marks.size() && marks[i + 1] - marks[i] < reach) continue;
        const auto beyond = std::stable_partition(all.begin(), all.end(),
                                                  [&](const MarkWords& words) { return words.mark <= marks[i]; });
        if (beyond == all.begin()) continue;
        groups.emplace_back(all.begin(), beyond);
        all.erase(all.begin(), beyond);
    }
    return groups;
}

}  // namespace

void set_mark_words(Pen& pen, Length base, const Lanes& lanes, const std::vector<MarkWords>& all, Lane& lane) {
    for (const std::vector<MarkWords>& group : neighbourhoods(all)) {
        const Arrangement arrangement(pen, lanes, group, lane);
        arrangement.draw(base);
        for (const Place* place : arrangement.best())
            if (place != nullptr) lane.force(place->from - clear, place->to + clear);
    }
    for (const MarkWords& words : all) lane.force(words.mark - clear, words.mark + clear);
}

}  // namespace kerfpacket::sheets
