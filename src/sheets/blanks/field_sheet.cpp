#include "sheets/blanks/field_sheet.h"

#include "measure/require.h"
#include "sheets/blanks/field_pages.h"

namespace kerfpacket::sheets {
namespace {

const char* name_of(Field field) {
    switch (field) {
        case Field::arch: return "arch";
        case Field::wall: return "wall";
        case Field::ordinates: return "ordinates";
    }
    throw measure::Bug("a field sheet without a name");
}

/// What the names of the fields of its piece begin with.
const char* group_of(Field field) {
    switch (field) {
        case Field::arch: return "opening";
        case Field::wall: return "wall";
        case Field::ordinates: return "points";
    }
    throw measure::Bug("a field sheet of no piece");
}

page::Page make_page(Field field, const job::Media& media, Unit unit, const Kit& kit, page::Form& filled,
                     std::size_t number) {
    page::Page page;
    page.sheet = std::string("field-") + name_of(field);
    page.width = media.width;
    page.height = media.height;
    FieldForm form(page, filled, kit, unit, name_of(field), group_of(field), number);
    if (field == Field::arch) field_arch(form);
    if (field == Field::wall) field_wall(form);
    if (field == Field::ordinates) field_ordinates(form, unit);
    form.notes();
    return page;
}

}  // namespace

FieldSheets make_field_sheets(const std::vector<Field>& fields, const job::Media& media, measure::Unit unit,
                              const Kit& kit) {
    measure::require(!media.roll, "field sheets stand on cut sheets");
    FieldSheets sheets;
    page::Document& document = sheets.document;
    document.title = kit.words("field.title");
    document.subject = document.title;
    document.language = kit.words("page.language");
    page::FormField marker;
    marker.name = form_marker;
    marker.kind = page::FieldKind::hidden;
    marker.places.emplace_back();
    marker.value = form_kind + document.language;
    sheets.form.fields.push_back(std::move(marker));
    for (const Field field : fields) {
        document.outline.push_back(
            {kit.words(std::string("field.") + name_of(field) + "_title"), document.pages.size(), 0});
        const std::size_t number = document.pages.size() + 1;
        document.pages.push_back(make_page(field, media, unit, kit, sheets.form, number));
        document.pages.back().number = number;
    }
    return sheets;
}

}  // namespace kerfpacket::sheets
