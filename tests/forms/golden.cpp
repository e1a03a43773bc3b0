// What stands on the field sheets, and where they are filled in: field-sheets.dump, renewed as the goldens of packets
// are, with KERFPACKET_RENEW_GOLDEN=1; read the difference before keeping it.

#include <gtest/gtest.h>

#include <cstdlib>

#include <fmt/format.h>

#include "filled.h"
#include "output/dump.h"

namespace kerfpacket::tests {
namespace {

std::string told(const page::Form& form) {
    std::string text;
    for (const page::FormField& field : form.fields) {
        text += fmt::format("field {} page {} \"{}\" most {} \"{}\"\n", field.name, field.page + 1, field.tip,
                            field.most, field.value);
        for (const page::FieldPlace& place : field.places)
            text +=
                fmt::format("  {:.1f},{:.1f} {:.1f},{:.1f} {}\n", place.area.low.x.points(), place.area.low.y.points(),
                            place.area.high.x.points(), place.area.high.y.points(), place.word);
    }
    return text;
}

TEST(FieldSheets, AreTheGoldenOnes) {
    const fs::path golden = fs::path(KERFPACKET_SOURCE_DIR) / "tests/forms/field-sheets.dump";
    const sheets::FieldSheets english =
        blank_sheets({sheets::Field::arch, sheets::Field::wall, sheets::Field::ordinates});
    const sheets::FieldSheets spanish = blank_sheets({sheets::Field::arch}, "es", measure::Unit::millimetre);
    const std::string now =
        output::dump(english.document) + told(english.form) + output::dump(spanish.document) + told(spanish.form);
    if (std::getenv("KERFPACKET_RENEW_GOLDEN") != nullptr) spill(golden, now);
    EXPECT_EQ(slurp(golden), now);
}

}  // namespace
}  // namespace kerfpacket::tests
