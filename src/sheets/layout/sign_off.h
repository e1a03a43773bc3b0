#pragma once
// Blanks in which people answer for a sheet with their names.

#include <string>
#include <vector>

#include "sheets/layout/flow.h"
#include "sheets/layout/pen.h"

namespace kerfpacket::sheets {

/// On one line, from `left` to `right`: each name with a blank to sign in, then the word for the date with a blank.
void sign_off(Pen& pen, Length left, Length right, Length base, const std::vector<std::string>& names,
              const std::string& date);
/// The same at the foot of the page that a flow has come to.
void sign_off(Flow& flow, const std::vector<std::string>& names);

}  // namespace kerfpacket::sheets
