#pragma once
// Field sheets: blank forms for what is measured on site, each blank with the key of the job file that it goes to.

#include <vector>

#include "job/media.h"
#include "measure/fraction.h"
#include "page/document.h"
#include "page/form.h"
#include "sheets/layout/kit.h"

namespace kerfpacket::sheets {

enum class Field { arch, wall, ordinates };

/// The sheets, and what can be filled in on them.
struct FieldSheets {
    page::Document document;
    page::Form form;
};

/// The field that says what form it is, and by which table of names it is read: "field-sheet 1 en-US".
inline constexpr const char* form_marker = "kerfpacket";
inline constexpr const char* form_kind = "field-sheet 1 ";

/// One page for each, on cut sheets. Nothing on them is to scale.
FieldSheets make_field_sheets(const std::vector<Field>& fields, const job::Media& media, measure::Unit unit,
                              const Kit& kit);

}  // namespace kerfpacket::sheets
