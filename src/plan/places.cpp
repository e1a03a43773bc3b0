#include "plan/places.h"

#include "plan/checks.h"
#include "plan/make_lines.h"

namespace kerfpacket::plan {

tl::expected<FaceExtents, job::Diagnostics> face_extents(const curve::Outline& outline, const Faces& face,
                                                         const job::Board& board, Kind kind, const job::Job& job) {
    const auto& thickness = board.thickness;
    const auto wall = outline.extents(face.wall);
    const bool liner = kind == Kind::arch_liner;
    if (!wall)
        return tl::unexpected(job::Diagnostics{folded(
            wall.error(), thickness.at,
            liner ? job::say("back_liner", "back of the liner") : job::say("back_board", "back of the board"), job)});
    const auto finish = outline.extents(face.finish);
    if (!finish)
        return tl::unexpected(job::Diagnostics{folded(
            finish.error(), thickness.at,
            liner ? job::say("face_liner", "face of the liner") : job::say("face_board", "face of the board"), job)});
    return FaceExtents{*wall, *finish};
}

tl::expected<FormRib, job::Diagnostics> checked_rib(const Piece& piece, const Request& board, const job::Form& form,
                                                    const job::Job& job) {
    if (auto wrong = check_freed(piece, form); !wrong.empty()) return tl::unexpected(std::move(wrong));
    FormRib rib = form_rib(piece, board, form, job.header.units);
    if (auto wrong = check_stations(rib, form, job); !wrong.empty()) return tl::unexpected(std::move(wrong));
    return rib;
}

}  // namespace kerfpacket::plan
