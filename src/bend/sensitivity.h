#pragma once
// What a small error of setting does to the verdict.

#include <vector>

#include "bend/assess.h"

namespace kerfpacket::bend {

enum class Changed { depth, spacing, kerf };

struct Change {
    Changed what = Changed::depth;
    Length by;                      ///< signed: deeper, wider apart, wider kerf are positive
    double utilisation = 0;         ///< after the change
    Verdict verdict = Verdict::ok;  ///< after the change
    bool impossible = false;        ///< leaves no web or no land: then there are no figures
};

struct Steps {
    Length depth;
    Length spacing;
    Length kerf;
};

/// Each setting by its step less and more, in the order of `Changed`.
std::vector<Change> sensitivity(const Cell& cell, const Material& material, KerfsOn side, Length radius,
                                const Steps& steps);

}  // namespace kerfpacket::bend
