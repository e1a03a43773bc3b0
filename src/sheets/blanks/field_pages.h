#pragma once
// What stands on each field sheet.

#include "sheets/blanks/field_form.h"

namespace kerfpacket::sheets {

void field_arch(FieldForm& form);
void field_wall(FieldForm& form);
void field_ordinates(FieldForm& form, Unit unit);

/// What the figures describe, in the words of a table of the job file. `group` begins the names of its fields.
void field_surface(FieldForm& form, const std::string& group);
/// Of a splayed jamb: the edge that the figures describe, named by the words of `measured`, and where the wide one is.
void field_splay(FieldForm& form, const std::string& group, const std::string& measured);

}  // namespace kerfpacket::sheets
