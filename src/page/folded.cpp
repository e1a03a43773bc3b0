#include "page/folded.h"

#include <algorithm>
#include <bit>
#include <cstdint>
#include <cstring>
#include <string>
#include <string_view>
#include <type_traits>
#include <utility>
#include <vector>

#include "measure/require.h"
#include "page/known_numbers.h"

namespace kerfpacket::page {
namespace {

/// Values one after the other. Whole numbers take seven bits a byte. The coordinates of a page repeat, in rows, columns
/// and corners: one that was there before is told by its number.
class Folding {
public:
    static constexpr bool folds = true;

    void whole(std::uint64_t& value) {
        std::uint64_t rest = value;
        for (; rest >= 0x80; rest >>= 7U) put(static_cast<char>(0x80U | (rest & 0x7FU)));
        put(static_cast<char>(rest));
    }
    void real(double& value) {
        const auto bits = std::bit_cast<std::uint64_t>(value);
        const KnownNumbers::Found found = numbers_.find_or_add(bits);
        std::uint64_t number = found.is_new ? 0 : found.place;
        whole(number);
        if (found.is_new) put({reinterpret_cast<const char*>(&bits), sizeof bits});
    }
    /// One that is near the last of its kind.
    void step(std::size_t& value) {
        const auto by = static_cast<std::int64_t>(value - std::exchange(last_, value));
        std::uint64_t either_way =
            by < 0 ? 2 * ~static_cast<std::uint64_t>(by) + 1 : 2 * static_cast<std::uint64_t>(by);
        whole(either_way);
    }
    void text(std::string& value) {
        std::uint64_t size = value.size();
        whole(size);
        put(value);
    }
    std::string_view bytes() const { return {bytes_.data(), used_}; }

private:
    void put(char byte) {
        if (used_ == bytes_.size()) grow(1);
        bytes_[used_++] = byte;
    }
    void put(std::string_view bytes) {
        if (bytes_.size() - used_ < bytes.size()) grow(bytes.size());
        std::copy(bytes.begin(), bytes.end(), bytes_.data() + used_);
        used_ += bytes.size();
    }
    void grow(std::size_t by) { bytes_.resize(2 * bytes_.size() + by); }

    std::string bytes_ = std::string(std::size_t{1} << 14U, '\0');
    std::size_t used_ = 0;
    KnownNumbers numbers_;
    std::size_t last_ = 0;
};

/// The same values back, in the same order. Bytes that end too soon are a Bug.
class Unfolding {
public:
    static constexpr bool folds = false;

    explicit Unfolding(std::string_view bytes) : bytes_(bytes) {}

    void whole(std::uint64_t& value) {
        value = 0;
        for (unsigned by = 0;; by += 7) {
            measure::require(!bytes_.empty(), "a folded page is whole");
            const auto byte = static_cast<unsigned char>(bytes_.front());
            bytes_.remove_prefix(1);
            value |= static_cast<std::uint64_t>(byte & 0x7FU) << by;
            if (byte < 0x80) return;
        }
    }
    void real(double& value) {
        std::uint64_t number = 0;
        whole(number);
        if (number == 0) {
            std::uint64_t bits = 0;
            std::memcpy(&bits, take(sizeof bits).data(), sizeof bits);
            numbers_.push_back(std::bit_cast<double>(bits));
            number = numbers_.size();
        }
        value = numbers_.at(number - 1);
    }
    void step(std::size_t& value) {
        std::uint64_t either_way = 0;
        whole(either_way);
        last_ += either_way % 2 == 1 ? ~(either_way / 2) : either_way / 2;
        value = last_;
    }
    void text(std::string& value) {
        std::uint64_t size = 0;
        whole(size);
        value = take(size);
    }
    bool at_end() const { return bytes_.empty(); }

private:
    std::string_view take(std::size_t size) {
        measure::require(size <= bytes_.size(), "a folded page is whole");
        const std::string_view taken = bytes_.substr(0, size);
        bytes_.remove_prefix(size);
        return taken;
    }

    std::string_view bytes_;
    std::vector<double> numbers_;
    std::size_t last_ = 0;
};

// What there is of each kind, once for both ways: folding reads these values, unfolding writes them.

template <typename Way, typename... Values>
void each_of(Way& way, Values&... values) {
    (each(way, values), ...);
}

template <typename Way, typename Whole>
requires std::is_enum_v<Whole> || std::is_integral_v<Whole>
void each(Way& way, Whole& value) {
    auto whole = static_cast<std::uint64_t>(value);
    way.whole(whole);
    value = static_cast<Whole>(whole);
}

template <typename Way>
void each(Way& way, std::string& value) {
    way.text(value);
}

template <typename Way>
void each(Way& way, Length& value) {
    double mm = value.mm();
    way.real(mm);
    value = Length::mm(mm);
}

template <typename Way>
void each(Way& way, Angle& value) {
    double radians = value.radians();
    way.real(radians);
    value = Angle::radians(radians);
}

template <typename Way>
void each(Way& way, Point& value) {
    each_of(way, value.x, value.y);
}

template <typename Way>
void each(Way& way, Rect& value) {
    each_of(way, value.low, value.high);
}

template <typename Way, typename Value>
void each(Way& way, std::vector<Value>& values) {
    std::uint64_t size = values.size();
    way.whole(size);
    if constexpr (!Way::folds) values.resize(size);
    for (Value& value : values) each(way, value);
}

template <typename Way>
void each(Way& way, std::vector<bool>& values) {
    std::uint64_t size = values.size();
    way.whole(size);
    if constexpr (!Way::folds) values.resize(size);
    constexpr std::size_t in_a_number = 56;
    for (std::size_t from = 0; from < values.size(); from += in_a_number) {
        const std::size_t count = std::min(in_a_number, values.size() - from);
        std::uint64_t bits = 0;
        for (std::size_t i = 0; i < count; ++i) bits |= static_cast<std::uint64_t>(values[from + i]) << i;
        way.whole(bits);
        if constexpr (!Way::folds)
            for (std::size_t i = 0; i < count; ++i) values[from + i] = (bits >> i & 1U) != 0;
    }
}

/// A value of a few bits.
template <typename Value>
struct Few {
    Value& value;
    unsigned bits;
};
template <typename Value>
Few(Value&, unsigned) -> Few<Value>;

/// Such values in one whole number, the first in its lowest bits.
template <typename Way, typename... Values>
void together(Way& way, const Few<Values>&... values) {
    std::uint64_t all = 0;
    unsigned from = 0;
    const auto put = [&]<typename Value>(const Few<Value>& few) {
        const auto bits = static_cast<std::uint64_t>(few.value);
        measure::require(bits >> few.bits == 0, "a small value is small");
        all |= bits << std::exchange(from, from + few.bits);
    };
    const auto take = [&]<typename Value>(const Few<Value>& few) {
        few.value = static_cast<Value>(all & ((std::uint64_t{1} << few.bits) - 1));
        all >>= few.bits;
    };
    if constexpr (Way::folds) (put(values), ...);
    way.whole(all);
    if constexpr (!Way::folds) (take(values), ...);
}

/// To the last bit, which == does not tell: 0 and -0.
bool same(Length a, Length b) { return std::bit_cast<std::uint64_t>(a.mm()) == std::bit_cast<std::uint64_t>(b.mm()); }
bool same(Point a, Point b) { return same(a.x, b.x) && same(a.y, b.y); }

/// Nearly all paths are straight lines, each from where the one before ends.
struct Manner {
    bool closed = false;
    bool chained = true;
    bool straight = true;
    std::size_t size = 0;
};

Manner manner_of(const geom::Path& path) {
    const std::vector<geom::Segment>& segments = path.segments();
    Manner manner{path.closed(), true, true, segments.size()};
    for (std::size_t i = 0; i < segments.size(); ++i) {
        manner.straight &= std::bit_cast<std::uint64_t>(segments[i].turn.radians()) == 0;
        manner.chained &= i == 0 || same(segments[i - 1].to, segments[i].from);
    }
    return manner;
}

template <typename Way>
void each(Way& way, geom::Path& value) {
    Manner manner = manner_of(value);
    together(way, Few{manner.closed, 1}, Few{manner.chained, 1}, Few{manner.straight, 1}, Few{manner.size, 32});
    const auto each_segment = [&](geom::Segment& segment, const geom::Segment* before) {
        if (before == nullptr || !manner.chained) each(way, segment.from);
        else segment.from = before->to;
        each(way, segment.to);
        if (!manner.straight) each(way, segment.turn);
    };
    const geom::Segment* before = nullptr;
    if constexpr (Way::folds) {
        for (const geom::Segment& segment : value.segments()) {
            geom::Segment copy = segment;
            each_segment(copy, before);
            before = &segment;
        }
    } else {
        std::vector<geom::Segment> segments(manner.size);
        for (geom::Segment& segment : segments) each_segment(segment, std::exchange(before, &segment));
        value = geom::Path(std::move(segments), manner.closed);
    }
}

template <typename Way>
void each(Way& way, Node& value) {
    each_of(way, value.tag, value.parent, value.alternative);
}

constexpr unsigned role_bits = 5;

template <typename Way>
void each(Way& way, PathItem& value) {
    together(way, Few{value.role, role_bits}, Few{value.filled, 1}, Few{value.ink, 1}, Few{value.dash, 2});
    each_of(way, value.path, value.width);
    way.step(value.node);
}

template <typename Way>
void each(Way& way, TextItem& value) {
    together(way, Few{value.role, role_bits}, Few{value.face, 2}, Few{value.align, 2}, Few{value.ink, 1});
    each_of(way, value.text, value.size, value.anchor, value.angle, value.advance);
    way.step(value.node);
}

template <typename Way>
void each(Way& way, LinkItem& value) {
    each_of(way, value.area, value.page);
    way.step(value.node);
}

template <typename Way>
void each(Way& way, CodeItem& value) {
    each_of(way, value.area, value.text, value.dark, value.side);
    way.step(value.node);
}

/// An item of the kind of this number.
template <std::size_t kind = 0>
Item empty_item(std::size_t number) {
    if constexpr (kind < std::variant_size_v<Item>) {
        return number == kind ? Item(std::in_place_index<kind>) : empty_item<kind + 1>(number);
    } else throw measure::Bug("a folded page holds an item of no kind");
}

template <typename Way>
void each(Way& way, Item& value) {
    std::uint64_t kind = value.index();
    way.whole(kind);
    if constexpr (!Way::folds)
        if (kind != value.index()) value = empty_item(kind);
    std::visit([&](auto& item) { each(way, item); }, value);
}

}  // namespace

Folded::Folded(Page& page) {
    Folding way;
    each(way, page.items);
    each(way, page.structure);
    const std::string_view bytes = way.bytes();
    bytes_.assign(bytes.begin(), bytes.end());
    // Assigned an empty list they would keep their room.
    page.items = std::vector<Item>();
    page.structure = std::vector<Node>();
}

void Folded::put_back(Page& page) const {
    if (bytes_.empty()) return;
    Unfolding way({bytes_.data(), bytes_.size()});
    each(way, page.items);
    each(way, page.structure);
    measure::require(way.at_end(), "a folded page holds nothing else");
}

const Page& opened(const Document& document, std::span<const Folded> folded, std::size_t page,
                   std::optional<Page>& room) {
    if (folded.empty() || folded[page].bytes() == 0) return document.pages.at(page);
    folded[page].put_back(room.emplace(document.pages.at(page)));
    return *room;
}

}  // namespace kerfpacket::page
