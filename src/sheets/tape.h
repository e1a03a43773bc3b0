#pragma once
// Figures as a hand tape reads them, in the job's units.

#include <string>

#include "measure/fraction.h"
#include "measure/length.h"

namespace kerfpacket::sheets {

using measure::Length;
using measure::Unit;

class Tape {
public:
    explicit Tape(Unit unit) : unit_(unit) {}

    Unit unit() const { return unit_; }
    /// Nearest 1/16 in, or nearest millimetre: "5-1/4", "133".
    std::string plain(Length value) const;
    /// The same with its unit: "5-1/4 in", "133 mm".
    std::string with_unit(Length value) const;
    /// What `plain` rounds to.
    Length rounded(Length value) const;
    /// The value itself: a fraction where it is one, else decimals: "3/4 in", "0.118 in", "19.05 mm".
    std::string exact(Length value) const;
    std::string exact_plain(Length value) const;
    /// The other system, for a second look: millimetres in an inch job, inches in a millimetre job.
    std::string other(Length value) const;

    /// Whole steps at which a strip is set by its own mark: 1 in, 10 mm.
    Length mark_step() const { return unit_ == Unit::inch ? Length::inches(1) : Length::mm(10); }
    /// Steps at which the carpenter's tape checks the strips: 24 in, 600 mm.
    Length check_step() const { return unit_ == Unit::inch ? Length::inches(24) : Length::mm(600); }
    std::string unit_name() const { return unit_ == Unit::inch ? "in" : "mm"; }

private:
    Unit unit_;
};

}  // namespace kerfpacket::sheets
