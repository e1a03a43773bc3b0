#pragma once
// Work on many cores whose outcome is the same as on one.

#include <algorithm>
#include <condition_variable>
#include <cstddef>
#include <exception>
#include <mutex>
#include <optional>
#include <system_error>
#include <thread>
#include <vector>

#include "disk/leftovers.h"

namespace kerfpacket::disk {

/// The cores that this process may run on: what the machine has, or fewer where whoever started the program allows it
/// fewer (a container, a batch queue). At least one.
unsigned cores_allowed();

/// Threads that work at most on one job: a core each, but few, for each takes address space of its own.
inline unsigned cores() { return std::min(cores_allowed(), 4U); }

/// Things made side by side and taken in order, few of them kept at a time. Made is what a maker makes.
template <typename Made>
class SideBySide {
public:
    SideBySide(std::size_t count, unsigned threads) : slots_(count), threads_(threads) {}

    /// Every thread makes things with a maker of its own, which `new_maker` gives it: a call with the number of a
    /// thing. `take` is called in this thread, with the number and the thing. What either throws is thrown here, in
    /// order.
    template <typename NewMaker, typename Take>
    void run(const NewMaker& new_maker, const Take& take) {
        std::vector<std::thread> helpers;
        const auto helper = [&] {
            // Who tidies up must be who writes files.
            leave_signals_to_others();
            auto maker = new_maker();
            while (const auto number = next(true)) make(maker, *number);
        };
        for (unsigned i = 1; i < threads_ && i < slots_.size(); ++i) try {
                helpers.emplace_back(helper);
            } catch (const std::system_error&) { break; }  // then with those that there are
        std::exception_ptr failed;
        try {
            auto maker = new_maker();
            for (std::size_t i = 0; i < slots_.size(); ++i) take(i, wait_for(i, maker));
        } catch (...) { failed = std::current_exception(); }
        stop();
        for (std::thread& one : helpers) one.join();
        if (failed) std::rethrow_exception(failed);
    }

private:
    struct Slot {
        std::optional<Made> made;
        std::exception_ptr failed;
        bool ready() const { return made || failed; }
    };

    /// The next thing to make: nothing when all are begun, or for one who does not wait when enough lie ready.
    std::optional<std::size_t> next(bool waits) {
        constexpr std::size_t ahead = 32;
        std::unique_lock lock(mutex_);
        while (!stopped_ && next_ < slots_.size()) {
            if (next_ < taken_ + ahead) return next_++;
            if (!waits) break;
            changed_.wait(lock);
        }
        return std::nullopt;
    }

    template <typename Maker>
    void make(Maker& maker, std::size_t number) {
        Slot slot;
        try {
            slot.made = maker(number);
        } catch (...) { slot.failed = std::current_exception(); }
        const std::scoped_lock lock(mutex_);
        slots_[number] = std::move(slot);
        changed_.notify_all();
    }

    /// Makes others as long as this one is not there.
    template <typename Maker>
    Made wait_for(std::size_t number, Maker& maker) {
        while (true) {
            {
                const std::scoped_lock lock(mutex_);
                if (slots_[number].ready()) break;
            }
            if (const auto other = next(false)) make(maker, *other);
            else {
                std::unique_lock lock(mutex_);
                changed_.wait(lock, [&] { return slots_[number].ready(); });
            }
        }
        const std::scoped_lock lock(mutex_);
        ++taken_;
        changed_.notify_all();
        if (slots_[number].failed) std::rethrow_exception(slots_[number].failed);
        Made made = *std::move(slots_[number].made);
        slots_[number].made.reset();
        return made;
    }

    void stop() {
        const std::scoped_lock lock(mutex_);
        stopped_ = true;
        changed_.notify_all();
    }

    std::vector<Slot> slots_;
    unsigned threads_;
    std::mutex mutex_;
    std::condition_variable changed_;
    std::size_t next_ = 0;
    std::size_t taken_ = 0;
    bool stopped_ = false;
};

}  // namespace kerfpacket::disk
