#pragma once
// What the coupon record says: how to make it, how well it measures, the lines of the job file, the coupon it has.

#include <string>
#include <string_view>
#include <vector>

#include "plan/piece.h"
#include "sheets/cards/coupon_size.h"
#include "sheets/layout/kit.h"

namespace kerfpacket::sheets {

/// The job file's words for how a coupon is held, and for what stopped it.
std::vector<std::string_view> ways_to_hold();
std::vector<std::string_view> ends_of_bending();

/// The test of one kerf: what to do, what to write, and what the job file has of it.
std::vector<std::string> one_kerf_steps(const plan::Piece& piece, const CouponSize& size, const Kit& kit,
                                        const Tape& tape);

/// The same in the language of the sheet, each for a box to tick.
std::vector<std::string> to_tick(const std::vector<std::string_view>& words, const Kit& kit);
std::string held_word(bend::Held held, const Kit& kit);

/// Things to do, each with its box. The coupon's strips stand at the end of the record, or elsewhere.
std::vector<std::string> coupon_steps(const plan::Piece& piece, const CouponSize& size, bool strips_elsewhere,
                                      const Kit& kit, const Tape& tape);
/// What a small mistake of measuring does to the radius, at three rises.
std::string coupon_reading_error(const Kit& kit, const Tape& tape);
/// The table of the job file, with blanks for what is measured.
std::vector<std::string> coupon_lines(const plan::Piece& piece, const CouponSize& size, const Tape& tape);
/// Where those lines go.
std::vector<std::string> coupon_place(const plan::Piece& piece, const Kit& kit);
/// What of a trial of the shop file is known before it is bent: `key = value`, in the order of src/job/README.md.
std::vector<std::string> trial_lines(const plan::Piece& piece, const CouponSize& size, const Tape& tape);
/// What the coupon of the job file says.
std::vector<std::string> coupon_on_record(const plan::CouponResult& coupon, const Kit& kit, const Tape& tape);

}  // namespace kerfpacket::sheets
