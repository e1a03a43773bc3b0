#pragma once
// Figures as a hand tape reads them, in the job's units and as a language writes them. On the sheets every number that
// has decimals, and every date, becomes text here.

#include <string>
#include <string_view>

#include "fonts/words.h"
#include "measure/fraction.h"
#include "measure/length.h"

namespace kerfpacket::sheets {

using measure::Length;
using measure::Unit;

/// A number with a fixed count of decimals: "0.62", "0,62".
std::string number(double value, int places, const fonts::Words& words);
/// A number with as few decimals as tell it, nine at most: "35.5".
std::string shortest(double value, const fonts::Words& words);
/// Figures that have a point as their decimal mark, as a language writes them: "8.27 x 11.69".
std::string with_decimal(std::string figures, std::string_view mark);
/// A day given as YYYY-MM-DD: "October 19, 2026", "19 de octubre de 2026"; nothing for none.
std::string date_text(const std::string& day, const fonts::Words& words);

class Tape {
public:
    /// As a job file writes figures, and as the command line tells them, in every language.
    explicit Tape(Unit unit) : unit_(unit), unit_name_(unit == Unit::inch ? "in" : "mm") {}
    /// As the sheets of a language write them.
    Tape(Unit unit, const fonts::Words& words)
        : unit_(unit),
          decimal_(words("numbers.decimal")),
          unit_name_(words(unit == Unit::inch ? "numbers.inch" : "numbers.millimetre")) {}

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
    /// A number with a fixed count of decimals.
    std::string number(double value, int places) const;

    /// Whole steps at which a strip is set by its own mark: 1 in, 10 mm.
    Length mark_step() const { return unit_ == Unit::inch ? Length::inches(1) : Length::mm(10); }
    /// Steps at which the carpenter's tape checks the strips: 24 in, 600 mm.
    Length check_step() const { return unit_ == Unit::inch ? Length::inches(24) : Length::mm(600); }
    const std::string& unit_name() const { return unit_name_; }

private:
    Unit unit_;
    std::string decimal_ = ".";
    std::string unit_name_;
};

}  // namespace kerfpacket::sheets
