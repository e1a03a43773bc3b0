#pragma once
// The pieces of one place of the job: an opening, a wall.

#include <vector>

#include <tl/expected.hpp>

#include "curve/outline.h"
#include "plan/piece.h"
#include "plan/request.h"

namespace kerfpacket::plan {

using Pieces = tl::expected<std::vector<Piece>, job::Diagnostics>;

/// One for each board that lines the head, from the left; or what is wrong.
Pieces pieces_of(const job::Opening& opening, const job::Job& job);
Pieces pieces_of(const job::Wall& wall, const job::Job& job);

/// Both faces of a board along every run of what was measured.
struct FaceExtents {
    std::vector<curve::Extent> wall;
    std::vector<curve::Extent> finish;
};
/// Or which face of the board folds; of a head the board is its liner.
tl::expected<FaceExtents, job::Diagnostics> face_extents(const curve::Outline& outline, const Faces& face,
                                                         const job::Board& board, Kind kind, const job::Job& job);

/// The rib of a piece's form, or that a board is let go which must not be, or that stations lie beyond it.
tl::expected<FormRib, job::Diagnostics> checked_rib(const Piece& piece, const Request& board, const job::Form& form,
                                                    const job::Job& job);

}  // namespace kerfpacket::plan
