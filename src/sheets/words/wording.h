#pragma once
// Sentences that more than one sheet, or the command line, says about a piece.

#include <string>
#include <vector>

#include "plan/piece.h"
#include "sheets/layout/kit.h"
#include "sheets/words/tape.h"

namespace kerfpacket::sheets {

/// "Arch liner", "Wall board".
std::string piece_name(const plan::Piece& piece, const Kit& kit);
/// "segmental", "pointed, lancet": the head of an opening; empty for a wall.
std::string shape_name(const plan::Piece& piece, const Kit& kit);
/// What the job calls the opening or wall: the piece's name without the number of its board.
std::string measured_id(const plan::Piece& piece);
/// "Kerfs OUTSIDE the bend: they OPEN"; for a board that bends both ways "Kerfs OPEN, then CLOSE where marked".
std::string kerf_side(const plan::Piece& piece, const Kit& kit);
/// Whether the kerfs of a run open; else they close.
bool opens(const plan::BendRun& run);
/// "Tick = blade CENTER".
std::string tick_meaning(const plan::Piece& piece, const Kit& kit);
/// Whether the zero end is at the left of whoever stands at the saw with the blank before him, kerf face up.
bool zero_at_left(const plan::Piece& piece);
/// The key with what the edges of the board add to it as it lies there: "_room", "_top" (and what a molded edge adds),
/// "_splay".
std::string front_edge(const std::string& key, const plan::Piece& piece);
/// Which end is zero and which edge is the front, in words.
std::string zero_end(const plan::Piece& piece, const Kit& kit);
/// The key, with what a moulded edge adds to it: "_moulded" for the top, "_plain" for the bottom, "_both"; else as it
/// is.
std::string with_moulded_edge(const std::string& key, const plan::Piece& piece);
/// "ok", "NEAR THE LIMIT", "WILL LIKELY BREAK".
std::string verdict_word(bend::Verdict verdict, const Kit& kit);
/// A caution as a sentence, lengths as a hand tape reads them.
std::string caution_text(const plan::Caution& caution, const Kit& kit, const Tape& tape);
/// "3/4 x 7-1/4 in MDF".
std::string board_text(const plan::Piece& piece, const Kit& kit, const Tape& tape);

/// "1/2 in", "1/4 to 1/2 in"; without the gaps over joints.
std::string spacing_text(const plan::Piece& piece, const Kit& kit, const Tape& tape);
std::string spacing_plain(const plan::Piece& piece, const Kit& kit, const Tape& tape);
/// What is left under the kerfs; of a moulded board from the thinnest to the thickest place.
std::string web_text(const plan::Piece& piece, const Kit& kit, const Tape& tape);
/// Whether the gaps between kerfs, but for those over joints, differ by more than arithmetic does.
bool varied_spacing(const plan::Piece& piece);
/// The kerf with the least to spare.
const plan::Kerf& governing_kerf(const plan::Piece& piece);

/// "Letter 8-1/2 x 11 in", "Roll 62 mm wide".
std::string media_text(const job::Media& media, const Kit& kit);

/// "35.6".
std::string degrees_text(measure::Angle angle, const Kit& kit);
/// "plumb": how an end of a board that climbs is cut, as it hangs.
std::string end_cut_text(job::EndCut cut, const Kit& kit);
/// One for each end of a piece that is cut on a mitre: "35.6 degrees where it meets A/2".
std::vector<std::string> mitre_texts(const plan::Piece& piece, const Kit& kit);
/// "S/1 to S/2: scarf 45.0 degrees, 3/4 in long, its middle 96 in from zero of the whole board, in straight wood".
std::string joint_text(const plan::Piece& piece, std::size_t joint, const Kit& kit, const Tape& tape);
/// Whether the top of a splayed leg stands higher at its wide edge, by what a tape tells.
bool climbs(const plan::LegBoard& board, const Tape& tape);
/// "left leg: 81-3/4 in along the back, 80-15/16 in along the face, mitre 35.6 degrees at the top".
std::string leg_board_text(const plan::Piece& piece, const plan::LegBoard& board, const Kit& kit, const Tape& tape);

}  // namespace kerfpacket::sheets
