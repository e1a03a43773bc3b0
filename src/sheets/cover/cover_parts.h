#pragma once
// What the parts of the cover share, and the parts.

#include <string>
#include <vector>

#include "sheets/cover/cover.h"
#include "sheets/layout/flow.h"
#include "sheets/words/tape.h"

namespace kerfpacket::sheets {

struct Cover {
    Flow& flow;
    const plan::Plan& plan;
    const Tape& tape;
    double drawn = 1;  ///< how high the drawings are, of their usual height

    const Kit& kit() const { return flow.kit(); }
    const fonts::Style& style() const { return flow.style(); }
    std::string words(std::string_view key, const fonts::Words::Values& values = {}) const {
        return kit().words(key, values);
    }
    static Type regular(Length size) { return {Face::regular, size}; }
    static Type bold(Length size) { return {Face::bold, size}; }
};

/// The opening or wall of each piece, once, with its title.
void cover_drawings(Cover& cover);
/// All boards, the notes on them, mitres and leg boards.
void cover_table(Cover& cover);
/// What the job file leaves out and what was taken for it; nothing where it says everything.
void cover_taken(Cover& cover);
void cover_index(Cover& cover, const std::vector<IndexEntry>& index, std::size_t pages);

}  // namespace kerfpacket::sheets
