#pragma once
// Where a joint of a board can be, and what it does there, inside this room only.

#include <vector>

#include "plan/lay_out.h"
#include "plan/stock_boards.h"

namespace kerfpacket::plan {

/// What computing leaves.
inline constexpr Length hair = Length::mm(0.001);

/// Why a joint cannot be somewhere.
enum class Bar { none, short_blank, kept_out, by_hand, flat, strain };

/// What a joint does at a place: kerfs that go, from the first to the one after the last, and the flat that is left.
struct Place {
    Length at;  ///< middle of the scarf, from zero
    Bar bar = Bar::none;
    std::size_t first = 0;
    std::size_t end = 0;
    double curvature = 0;  ///< the sharpest in the scarf, in 1/mm; 0 where it is straight
    Length near;           ///< there, what lacks of a hand's breadth between the scarf and the bend
    Length off;            ///< how far the flat stands off the curve
    std::size_t gone() const { return end - first; }
};

/// The places of one board, and the blanks between them. Those of a board that climbs are told square to its kerfs,
/// which its joints follow; `front` is where a tape along its front edge finds them.
class Splicing {
public:
    Splicing(const Request& wanted, const Laid& laid, const job::Job& job);

    bool needed() const { return !board_.joints.empty() || between(nullptr, nullptr) > most() + hair; }
    Length most() const { return stock_.most; }  ///< the longest blank
    const LongestBlank& stock() const { return stock_; }
    Length scarf() const { return scarf_; }

    Place place(Length at) const;
    Length front(Length at) const { return at / cosine_ + shift_; }
    Length from_front(Length at) const { return (at - shift_) * cosine_; }
    /// Along the front edge, of what is told square to the kerfs.
    Length along_edge(Length square) const { return square / cosine_; }

    /// Places that a tape finds, every half inch or 10 mm, where a joint can be; in order.
    std::vector<Place> places() const;

    /// How long the blank between two joints is, as it is cut by tape; none for an end of the board.
    Length between(const Place* from, const Place* to) const;

    /// What a blank of that length takes from the shortest board of the stock that holds it.
    Length taken(Length length) const;

private:
    void bend_at(Place& place) const;

    const job::Board& board_;
    const Blank& blank_;
    bend::Verdict verdict_;
    bool by_hand_;
    Length kerf_;
    Length scarf_;
    measure::Unit unit_;
    LongestBlank stock_;
    double cosine_ = 1;  ///< of the kerfs' angle
    Length shift_{};     ///< of a place on the front edge
    Length lean_{};      ///< of a kerf over the board, along it
};

}  // namespace kerfpacket::plan
