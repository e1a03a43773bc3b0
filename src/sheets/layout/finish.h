#pragma once
// From a sheet as it was drafted to a page of a document.

#include <cstddef>

#include "plan/plan.h"
#include "sheets/layout/draft.h"
#include "sheets/layout/kit.h"

namespace kerfpacket::sheets {

/// Draws what stands on every sheet in the language of the draft, and puts the page on its paper. `number` and `count`
/// are those of the whole packet.
void finish_page(Draft& draft, const plan::Plan& plan, const Kit& kit, std::size_t number, std::size_t count);
/// Takes a finished page and its heading into the document.
void take_page(page::Document& document, Draft&& draft);

}  // namespace kerfpacket::sheets
