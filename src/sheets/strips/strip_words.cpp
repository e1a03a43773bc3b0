#include "sheets/strips/strip_words.h"

#include <algorithm>
#include <array>
#include <limits>

#include "sheets/layout/furniture.h"

namespace kerfpacket::sheets {
namespace {

constexpr Length clear = 3_pt;
/// Between the words of two marks, which nobody may read as one.
constexpr Length apart = 9_pt;
/// How unwelcome words are that are shorter, that stand off their mark, an arrow that crosses another mark, words that
/// hide one.
constexpr int cost_of_shortening = 25;
constexpr int cost_of_arrow = 40;
constexpr int cost_of_crossing = 12;
constexpr int cost_of_hiding = 80;
/// How far off words may stand, and in which steps they are tried.
constexpr Length furthest = 240_pt;
constexpr Length step_off = 12_pt;
/// From a mark to words that an arrow joins to it, at least.
constexpr Length arrow = 13_pt;
constexpr Length arrow_head = 4_pt;
/// Arrangements that are looked at: on all but the most crowded strips that is all there are.
constexpr int most_tries = 400'000;

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
    else all.insert(all.end(), {{tiny, lanes.words + 6_pt, 1, 4}, {tiny, lanes.words - 2.6_pt, 2, 4}});
    return all;
}

struct Span {
    Length from;
    Length to;
};

struct Place {
    const std::string* text;
    const Manner* manner;
    Span words;
    Span taken;  ///< with the arrow to the mark
    bool arrow;
    int cost;

    bool meets(const Place& other) const {
        return (manner->halves & other.manner->halves) != 0 && taken.from < other.taken.to + apart &&
               other.taken.from < taken.to + apart;
    }
};

/// Tries all ways to set the words of a strip and keeps the least unwelcome. A strip has few marks, so that is quick.
class Arrangement {
public:
    Arrangement(Pen& pen, const Lanes& lanes, const std::vector<MarkWords>& all, const std::vector<Length>& lines,
                const Lane& lane)
        : pen_(pen),
          all_(all),
          lines_(lines),
          lane_(lane),
          manners_(manners(pen.kit().style, lanes)),
          chosen_(all.size()) {
        for (std::vector<std::vector<Place>>& places : places_) {
            arrange(places, &places != &places_.front());
            const auto missing = [&](const MarkWords& words) {
                return best_[static_cast<std::size_t>(&words - all_.data())] == nullptr &&
                       words.worth > Worth::plain_face;
            };
            if (std::none_of(all_.begin(), all_.end(), missing)) return;
        }
    }

    const std::vector<const Place*>& best() const { return best_; }
    void draw(Length base) const {
        for (std::size_t i = 0; i < all_.size(); ++i)
            if (best_[i] != nullptr && all_[i].draw_mark) all_[i].draw_mark();
        for (std::size_t i = 0; i < all_.size(); ++i)
            if (best_[i] != nullptr) set(all_[i], *best_[i], base);
    }

private:
    static Length box_side(const Type& type) { return type.size + 1_pt; }
    Length width(const std::string& text, bool box, const Type& type) const {
        return pen_.width(text, type) + (box ? box_side(type) + 4_pt : 0_pt);
    }

    int marks_within(Length from, Length to) const {
        const auto within = [&](Length mark) { return from - clear < mark && mark < to + clear; };
        return static_cast<int>(
            std::count_if(all_.begin(), all_.end(), [&](const MarkWords& other) { return within(other.mark); }) +
            std::count_if(lines_.begin(), lines_.end(), within));
    }

    void arrange(std::vector<std::vector<Place>>& all_places, bool arrows) {
        for (const MarkWords& words : all_) all_places.push_back(places(words, arrows));
        least_of_rest_.assign(all_.size() + 1, 0);
        for (std::size_t i = all_.size(); i-- > 0;) {
            int least = static_cast<int>(all_[i].worth);
            for (const Place& place : all_places[i]) least = std::min(least, place.cost);
            least_of_rest_[i] = least_of_rest_[i + 1] + least;
        }
        tries_ = 0;
        choose(all_places, 0, 0);
    }

    std::vector<Place> places(const MarkWords& words, bool arrows) const {
        std::vector<Place> free;
        add_places(words, words.text, arrows, 0, free);
        for (std::size_t i = 0; i < words.shorter.size(); ++i)
            add_places(words, words.shorter[i], arrows, cost_of_shortening * static_cast<int>(i + 1), free);
        if (arrows)
            std::stable_sort(free.begin(), free.end(), [](const Place& a, const Place& b) { return a.cost < b.cost; });
        return free;
    }

    void add_places(const MarkWords& words, const std::string& text, bool arrows, int cost,
                    std::vector<Place>& free) const {
        using Side = MarkWords::Side;
        for (const Manner& manner : manners_) {
            const Length wide = width(text, words.box, manner.type);
            for (const bool right : {true, false}) {
                const auto away = [&](Length gap) { return right ? words.mark + gap : words.mark - gap - wide; };
                if (words.side == Side::both || right == (words.side == Side::right))
                    add_place(words, {&text, &manner, {away(words.gap), {}}, {}, false, cost + manner.cost}, wide,
                              free);
                if (!arrows) continue;
                const int with_arrow = cost + manner.cost + cost_of_arrow;
                for (int i = 0; step_off * i < furthest; ++i)
                    add_place(words, {&text, &manner, {away(arrow + step_off * i), {}}, {}, true, with_arrow + i}, wide,
                              free);
            }
        }
    }

    void add_place(const MarkWords& words, Place place, Length wide, std::vector<Place>& free) const {
        place.words.to = place.words.from + wide;
        place.taken = place.words;
        if (place.arrow) {
            place.taken = {std::min(place.words.from, words.mark), std::max(place.words.to, words.mark)};
            const int crossed =
                marks_within(place.taken.from, place.taken.to) - marks_within(place.words.from, place.words.to) - 1;
            place.cost += std::max(0, crossed) * cost_of_crossing;
        }
        // An arrow's tip stands at its mark, whatever begins there: a zone's words, or the lap.
        const auto off = [&](Length end) { return place.arrow && end == words.mark ? 0_pt : clear; };
        if (!lane_.is_free(place.taken.from - off(place.taken.from), place.taken.to + off(place.taken.to))) return;
        if (marks_within(place.words.from, place.words.to) > 0) {
            // Half the lane leaves the other half of a line to be seen, the lower half a tape mark's arrow too.
            if (place.manner->halves == 3 && !words.over_marks) return;
            place.cost += place.manner->halves == 3 ? cost_of_hiding : 10 * (3 - place.manner->halves);
        }
        free.push_back(place);
    }

    void choose(const std::vector<std::vector<Place>>& places, std::size_t i, int cost) {
        if (cost + least_of_rest_[i] >= least_cost_ || ++tries_ > most_tries) return;
        if (i == all_.size()) {
            least_cost_ = cost;
            best_ = chosen_;
            return;
        }
        for (const Place& place : places[i]) {
            if (std::any_of(chosen_.begin(), chosen_.begin() + static_cast<std::ptrdiff_t>(i),
                            [&](const Place* other) { return other != nullptr && place.meets(*other); }))
                continue;
            chosen_[i] = &place;
            choose(places, i + 1, cost + place.cost);
        }
        chosen_[i] = nullptr;
        choose(places, i + 1, cost + static_cast<int>(all_[i].worth));
    }

    void set(const MarkWords& words, const Place& place, Length base) const {
        Point start{place.words.from, base + place.manner->up};
        const Type& type = place.manner->type;
        if (place.arrow) draw_arrow(words, place, start.y + type.size * 0.36);
        if (words.box) {
            tick_box(pen_, {start.x, start.y - 1.5_pt}, box_side(type));
            start.x += box_side(type) + 4_pt;
        }
        // On a strip whose marks lean, words of the wood left of a cut lean as the cut does, not as their far end.
        const bool to_mark = words.side == MarkWords::Side::left && !words.box && place.words.to <= words.mark;
        if (to_mark) start.x = place.words.to;
        pen_.text_on_white(words.role, start, *place.text, to_mark ? type.at_right() : type);
    }

    void draw_arrow(const MarkWords& words, const Place& place, Length up) const {
        const bool from_right = place.words.from > words.mark;
        const Length end = from_right ? place.words.from - 2_pt : place.words.to + 2_pt;
        pen_.line(words.role, {words.mark, up}, {end, up}, pen_.kit().style.line);
        pen_.arrow_head(words.role, {words.mark, up}, {from_right ? -1.0 : 1.0, 0}, arrow_head, arrow_head);
    }

    Pen& pen_;
    const std::vector<MarkWords>& all_;
    const std::vector<Length>& lines_;
    const Lane& lane_;
    std::vector<Manner> manners_;
    std::array<std::vector<std::vector<Place>>, 2> places_;  ///< without arrows, and with them
    std::vector<int> least_of_rest_;                         ///< what the words from here on cost at least
    std::vector<const Place*> chosen_;
    std::vector<const Place*> best_;
    int least_cost_ = std::numeric_limits<int>::max();
    int tries_ = 0;
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

void set_mark_words(Pen& pen, Length base, const Lanes& lanes, const std::vector<MarkWords>& all,
                    const std::vector<Length>& lines, Lane& lane) {
    for (const std::vector<MarkWords>& group : neighbourhoods(all)) {
        const Arrangement arrangement(pen, lanes, group, lines, lane);
        arrangement.draw(base);
        for (const Place* place : arrangement.best())
            if (place != nullptr) lane.force(place->taken.from - clear, place->taken.to + clear);
    }
    for (const MarkWords& words : all) lane.force(words.mark - clear, words.mark + clear);
    for (const Length line : lines) lane.force(line - clear, line + clear);
}

}  // namespace kerfpacket::sheets
