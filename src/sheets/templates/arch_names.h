#pragma once
// What the lines of an arch template are called, and the note on its tiles.

#include "sheets/templates/arch_opening.h"
#include "sheets/templates/template_drawing.h"

namespace kerfpacket::sheets {

/// `drawing` must have its centre line and base lines.
std::vector<Name> arch_names(const Pen& pen, const ArchOpening& arch, const Tape& tape, const TemplateDrawing& drawing);

std::vector<NoteRow> arch_note(const Kit& kit, const ArchOpening& arch);

}  // namespace kerfpacket::sheets
