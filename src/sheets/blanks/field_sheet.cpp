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

page::Page make_page(Field field, const job::Media& media, Unit unit, const Kit& kit) {
    page::Page page;
    page.sheet = std::string("field-") + name_of(field);
    page.width = media.width;
    page.height = media.height;
    FieldForm form(page, kit, unit, name_of(field));
    if (field == Field::arch) field_arch(form);
    if (field == Field::wall) field_wall(form);
    if (field == Field::ordinates) field_ordinates(form, unit);
    form.notes();
    return page;
}

}  // namespace

page::Document make_field_sheets(const std::vector<Field>& fields, const job::Media& media, measure::Unit unit,
                                 const Kit& kit) {
    measure::require(!media.roll, "field sheets stand on cut sheets");
    page::Document document;
    document.title = kit.words("field.title");
    document.subject = document.title;
    document.language = kit.words("page.language");
    for (const Field field : fields) {
        document.outline.push_back(
            {kit.words(std::string("field.") + name_of(field) + "_title"), document.pages.size(), 0});
        document.pages.push_back(make_page(field, media, unit, kit));
        document.pages.back().number = document.pages.size();
    }
    return document;
}

}  // namespace kerfpacket::sheets
