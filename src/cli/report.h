#pragma once
// What a plan and its packet come to, for people and for scripts.

#include <string>

#include "page/document.h"
#include "plan/plan.h"
#include "sheets/packet.h"

namespace kerfpacket::cli {

/// Paragraphs for a person, in the job's units; the last line is the verdict, fit to be read aloud.
std::string report(const plan::Plan& plan, const page::Document& packet, const sheets::Kit& kit);

/// That last line, with its line break: "A: ok, 143 kerfs 3/8 in deep. Coupon first.".
std::string verdict_line(const plan::Plan& plan);

/// The same for scripts: JSON of schema 1, lengths in millimetres, angles in degrees.
std::string report_json(const plan::Plan& plan, const page::Document& packet, const sheets::Kit& kit);

/// A kind of sheet and how many pages of the packet it takes.
struct SheetCount {
    std::string name;
    std::size_t pages = 0;
};

/// Kinds of sheets in packet order.
std::vector<SheetCount> sheet_counts(const page::Document& packet);

}  // namespace kerfpacket::cli
