#pragma once
// Plan in, Document out: the sheets of a packet in their order.

#include "page/document.h"
#include "plan/plan.h"
#include "sheets/kit.h"

namespace kerfpacket::sheets {

/// Lays out the whole packet. Throws fonts::MissingCharacter when no face has a character of the job, and
/// std::runtime_error when a template lacks a word.
page::Document make_packet(const plan::Plan& plan, const Kit& kit);

}  // namespace kerfpacket::sheets
