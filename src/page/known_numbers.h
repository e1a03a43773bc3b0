#pragma once
// Numbers that repeat, told by where they first came.

#include <cstddef>
#include <cstdint>
#include <vector>

namespace kerfpacket::page {

/// Which numbers were there before. A page has thousands, and every one is looked for.
class KnownNumbers {
public:
    /// The number's place among those that differ, from 1; of one that is new the place that it has from now on.
    struct Found {
        std::uint64_t place;
        bool is_new;
    };
    Found find_or_add(std::uint64_t bits) {
        if (2 * count_ >= slots_.size()) grow();
        Slot& slot = slot_of(bits);
        if (slot.place != 0) return {slot.place, false};
        slot = {bits, ++count_};
        return {count_, true};
    }

private:
    struct Slot {
        std::uint64_t bits = 0;
        std::uint64_t place = 0;  ///< 0 where it is empty
    };

    /// Where it stands, or the empty slot where it will.
    Slot& slot_of(std::uint64_t bits) {
        // Numbers differ in their high bits as a rule; the golden ratio carries them all up to where they are read.
        std::size_t at = (bits ^ bits >> 32U) * 0x9E3779B97F4A7C15U >> (64U - slot_bits_);
        while (slots_[at].place != 0 && slots_[at].bits != bits) at = (at + 1) % slots_.size();
        return slots_[at];
    }
    void grow() {
        std::vector<Slot> smaller(std::size_t{1} << ++slot_bits_);
        smaller.swap(slots_);
        for (const Slot& slot : smaller)
            if (slot.place != 0) slot_of(slot.bits) = slot;
    }

    unsigned slot_bits_ = 10;
    std::vector<Slot> slots_{std::size_t{1} << slot_bits_};
    std::size_t count_ = 0;
};

}  // namespace kerfpacket::page
