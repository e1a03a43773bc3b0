#pragma once
// Field sheets: blank forms for what is measured on site, each blank with the key of the job file that it goes to.

#include <vector>

#include "job/media.h"
#include "measure/fraction.h"
#include "page/document.h"
#include "sheets/layout/kit.h"

namespace kerfpacket::sheets {

enum class Field { arch, wall, ordinates };

/// One page for each, on cut sheets. Nothing on them is to scale.
page::Document make_field_sheets(const std::vector<Field>& fields, const job::Media& media, measure::Unit unit,
                                 const Kit& kit);

}  // namespace kerfpacket::sheets
