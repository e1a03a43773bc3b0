#pragma once
// What a mark strip needs of its board and of its paper, and what is refused because it cannot be had.

#include <string>

#include "plan/blank.h"
#include "plan/cut.h"

namespace kerfpacket::plan {

/// An edge strip's numerals stand in the web, 13 pt high, with the distances below them. Judgement, from proofs.
inline constexpr Length least_edge_web = Length::inches(5.0 / 16);
/// The part of an edge strip that is folded over the arris. Judgement.
inline constexpr Length edge_flap = Length::points(19);
/// Nothing of a strip is nearer than this to the edges of a roll along the feed.
inline constexpr Length roll_edge = Length::points(4);
/// The lowest face strip whose numerals are 13 pt high.
inline constexpr Length least_face_strip = Length::points(62.5);
/// Nobody reads marks that are closer.
inline constexpr Length closest_marks = Length::inches(1.0 / 16);

/// The height of strips on a board of that thickness, at least.
Length least_strip_height(job::StripOn strip, Length thickness);

/// Whether an edge strip's numerals have room in that web; a face strip's always have.
bool web_has_strip_room(job::StripOn strip, Length web);

/// Marks too close to be read, an edge strip on a web too thin for its numerals, a roll too narrow for the strips.
job::Diagnostics check_strips(const std::string& id, const Cutting& cut, const Blank& blank, const job::Board& board,
                              const job::Job& job);

}  // namespace kerfpacket::plan
