#include "page/folded.h"

#include <algorithm>
#include <bit>
#include <cstdint>
#include <cstring>
#include <memory>
#include <new>
#include <string_view>
#include <type_traits>
#include <unordered_map>
#include <utility>

#include <libdeflate.h>

#include "measure/require.h"

namespace kerfpacket::page {
namespace {

/// Values one after the other. Whole numbers take seven bits a byte. The coordinates of a page repeat, in rows, columns
/// and corners: one that was there before is told by its number.
class Folding {
public:
    static constexpr bool folds = true;

    void whole(std::uint64_t& value) {
        std::uint64_t rest = value;
        for (; rest >= 0x80; rest >>= 7U) bytes_ += static_cast<char>(0x80U | (rest & 0x7FU));
        bytes_ += static_cast<char>(rest);
    }
    void real(double& value) {
        const auto bits = std::bit_cast<std::uint64_t>(value);
        const auto [known, is_new] = numbers_.try_emplace(bits, numbers_.size() + 1);
        std::uint64_t number = is_new ? 0 : known->second;
        whole(number);
        if (is_new) bytes_.append(reinterpret_cast<const char*>(&bits), sizeof bits);
    }
    void text(std::string& value) {
        std::uint64_t size = value.size();
        whole(size);
        bytes_ += value;
    }
    const std::string& bytes() const { return bytes_; }

private:
    std::string bytes_;
    std::unordered_map<std::uint64_t, std::uint64_t> numbers_;
};

class Unfolding {
public:
    static constexpr bool folds = false;

    explicit Unfolding(std::string_view bytes) : bytes_(bytes) {}

    void whole(std::uint64_t& value) {
        value = 0;
        for (unsigned by = 0;; by += 7) {
            const auto byte = static_cast<unsigned char>(take(1).front());
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

template <typename Way>
void each(Way& way, geom::Segment& value) {
    each_of(way, value.from, value.to, value.turn);
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
    constexpr std::size_t together = 56;
    for (std::size_t from = 0; from < values.size(); from += together) {
        const std::size_t count = std::min(together, values.size() - from);
        std::uint64_t bits = 0;
        for (std::size_t i = 0; i < count; ++i) bits |= static_cast<std::uint64_t>(values[from + i]) << i;
        way.whole(bits);
        if constexpr (!Way::folds)
            for (std::size_t i = 0; i < count; ++i) values[from + i] = (bits >> i & 1U) != 0;
    }
}

template <typename Way>
void each(Way& way, geom::Path& value) {
    std::vector<geom::Segment> segments = value.segments();
    bool closed = value.closed();
    each(way, segments);
    each(way, closed);
    if constexpr (!Way::folds) value = geom::Path(std::move(segments), closed);
}

template <typename Way>
void each(Way& way, Node& value) {
    each_of(way, value.tag, value.parent, value.alternative);
}

template <typename Way>
void each(Way& way, PathItem& value) {
    each_of(way, value.role, value.path, value.width, value.dash, value.filled, value.ink, value.node);
}

template <typename Way>
void each(Way& way, TextItem& value) {
    each_of(way, value.role, value.text, value.face, value.size, value.anchor, value.align, value.angle, value.advance,
            value.ink, value.node);
}

template <typename Way>
void each(Way& way, LinkItem& value) {
    each_of(way, value.area, value.page, value.node);
}

template <typename Way>
void each(Way& way, CodeItem& value) {
    each_of(way, value.area, value.text, value.dark, value.side, value.node);
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
    if constexpr (!Way::folds) value = empty_item(kind);
    std::visit([&](auto& item) { each(way, item); }, value);
}

/// Thousands of pages are packed and unpacked: the quickest level.
std::string packed(const std::string& bytes) {
    struct Free {
        void operator()(libdeflate_compressor* one) const { libdeflate_free_compressor(one); }
    };
    thread_local const std::unique_ptr<libdeflate_compressor, Free> compressor(libdeflate_alloc_compressor(1));
    if (!compressor) throw std::bad_alloc();
    const std::size_t most = libdeflate_deflate_compress_bound(compressor.get(), bytes.size());
    const auto room = std::make_unique_for_overwrite<char[]>(most);  // NOLINT(*-avoid-c-arrays)
    const std::size_t size =
        libdeflate_deflate_compress(compressor.get(), bytes.data(), bytes.size(), room.get(), most);
    measure::require(size > 0, "packed bytes find room");
    return {room.get(), size};  // and no more room than that
}

std::string unpacked(const std::string& bytes, std::size_t size) {
    struct Free {
        void operator()(libdeflate_decompressor* one) const { libdeflate_free_decompressor(one); }
    };
    thread_local const std::unique_ptr<libdeflate_decompressor, Free> decompressor(libdeflate_alloc_decompressor());
    if (!decompressor) throw std::bad_alloc();
    std::string text(size, '\0');
    const auto done = libdeflate_deflate_decompress(decompressor.get(), bytes.data(), bytes.size(), text.data(),
                                                    text.size(), nullptr);
    measure::require(done == LIBDEFLATE_SUCCESS, "a folded page is whole");
    return text;
}

}  // namespace

Folded::Folded(Page& page) {
    Folding way;
    each(way, page.items);
    each(way, page.structure);
    packed_ = packed(way.bytes());
    unpacked_size_ = way.bytes().size();
    // Assigned an empty list they would keep their room.
    page.items = std::vector<Item>();
    page.structure = std::vector<Node>();
}

void Folded::put_back(Page& page) const {
    if (packed_.empty()) return;
    const std::string bytes = unpacked(packed_, unpacked_size_);
    Unfolding way(bytes);
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
