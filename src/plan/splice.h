#pragma once
// A board longer than can be had, or carried, made of blanks that are scarfed: where its joints lie.

#include <tl/expected.hpp>

#include "plan/lay_out.h"

namespace kerfpacket::plan {

/// Shorter blanks are not worth a joint. Judgement.
inline constexpr Length least_blank = Length::inches(24);
/// How far a straight stretch at a joint may stand off the curve: what is seen along a finished edge. Judgement.
inline constexpr Length most_flat = Length::inches(1.0 / 64);

/// A board with its joints; one without any has itself for its only blank.
struct Spliced {
    Laid laid;  ///< the whole board, as if it were of one length, without the kerfs that its joints leave no room for
    std::vector<Joint> joints;
    std::vector<Blank> blanks;  ///< from zero on
};

/// Joints where the job puts them; else where they are wanted: none in a board that the stock holds, or of which nobody
/// says what is sold; as few as do, in
/// straight wood before bent, then where the bend is least, then where the blanks waste the least stock. Told is why
/// there can be none where one must be, or what is wrong with those that the job wishes for.
tl::expected<Spliced, job::Diagnostics> splice(const Request& wanted, const Laid& laid, const Wood& wood,
                                               const job::Job& job);

}  // namespace kerfpacket::plan
