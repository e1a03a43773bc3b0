#include "cli/field_sheet.h"

#include <fmt/format.h>

#include "cli/resources.h"
#include "cli/sheet_target.h"
#include "cli/trouble.h"
#include "output/pdf.h"
#include "sheets/blanks/field_sheet.h"

namespace kerfpacket::cli {
namespace {

std::vector<sheets::Field> fields_of(const std::string& shape) {
    using sheets::Field;
    if (shape == "arch") return {Field::arch};
    if (shape == "wall") return {Field::wall};
    if (shape == "ordinates") return {Field::ordinates};
    return {Field::arch, Field::wall, Field::ordinates};
}

}  // namespace

Status field_sheet(const FieldSheetChoice& choice, Console& console, const std::filesystem::path& home) {
    const job::Media media = known_media(choice.media);
    if (media.roll) throw std::runtime_error(fmt::format("--media {}: field sheets stand on cut sheets", choice.media));
    const SheetTarget target(choice.out, choice.force);
    const Resources resources(home, choice.language);
    const sheets::FieldSheets blank =
        sheets::make_field_sheets(fields_of(choice.shape), media, units_of(choice.units, media), resources.kit());
    target.write(output::form_pdf(blank.document, blank.form, resources.faces()), console);
    console.done(fmt::format("{}: {}\n", target.file().string(), counted(blank.document.pages.size(), "page")));
    console.next(
        fmt::format("fill it in on a screen and run: kerfpacket start --from {}; or print it and run: kerfpacket start",
                    target.file().string()));
    return Status::done;
}

}  // namespace kerfpacket::cli
