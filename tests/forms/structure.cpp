// What the fields are in the file: ISO 32000-1, 12.7 and 14.8.4.4.

#include <gtest/gtest.h>

#include <set>

#include "cli/field_sheet.h"
#include "cli/found.h"
#include "filled.h"

namespace kerfpacket::tests {
namespace {

using Object = QPDFObjectHandle;
using sheets::Field;

const std::vector<Field> all{Field::arch, Field::wall, Field::ordinates};

TEST(FormFields, HaveNamesOfTheirOwnAndTellWhatBelongsThere) {
    for (const std::string language : {"en", "es"}) {
        std::set<std::string> names, tips;
        for (const page::FormField& field : blank_sheets(all, language).form.fields) {
            EXPECT_TRUE(names.insert(field.name).second) << field.name;
            EXPECT_EQ(field.name.find_first_not_of("abcdefghijklmnopqrstuvwxyz0123456789-"), std::string::npos);
            EXPECT_EQ(field.tip.empty(), field.kind == page::FieldKind::hidden) << field.name;
        }
        EXPECT_GT(names.size(), 100U);
    }
}

TEST(FormFields, LieOnTheirPagesAndApart) {
    for (const std::string language : {"en", "es"}) {
        const sheets::FieldSheets sheets = blank_sheets(all, language);
        std::vector<std::pair<std::size_t, page::Rect>> places;
        for (const page::FormField& field : sheets.form.fields) {
            if (field.kind == page::FieldKind::hidden) continue;
            const page::Page& page = sheets.document.pages.at(field.page);
            for (const page::FieldPlace& place : field.places) {
                EXPECT_GE(place.area.low.x.points(), 18) << field.name;
                EXPECT_LE(place.area.high.x.points(), page.width.points() - 18) << field.name;
                EXPECT_GE(place.area.height().points(), 9.9) << field.name;
                EXPECT_GE(place.area.width().points(), 9.9) << field.name;
                for (const auto& [at, other] : places)
                    EXPECT_FALSE(at == field.page && place.area.low.x < other.high.x &&
                                 other.low.x < place.area.high.x && place.area.low.y < other.high.y &&
                                 other.low.y < place.area.high.y)
                        << language << field.name;
                places.emplace_back(field.page, place.area);
            }
        }
    }
}

TEST(FormFields, AreWhatEveryViewerCanFillIn) {
    const std::string blank = blank_form(all);
    QPDF pdf;
    open(pdf, blank);
    Object form = pdf.getRoot().getKey("/AcroForm");
    EXPECT_EQ(form.getKeys(), (std::set<std::string>{"/DA", "/DR", "/Fields"}));
    std::set<QPDFObjGen> streams;
    int texts = 0;
    const auto in_tree = [&](Object widget) {
        Object numbers = pdf.getRoot().getKey("/StructTreeRoot").getKey("/ParentTree").getKey("/Nums");
        for (int i = 0; i + 1 < numbers.getArrayNItems(); i += 2)
            if (numbers.getArrayItem(i).getIntValue() == widget.getKey("/StructParent").getIntValue()) {
                Object element = numbers.getArrayItem(i + 1);
                return element.getKey("/S").isNameAndEquals("/Form") &&
                       element.getKey("/K").getKey("/Obj").isSameObjectAs(widget);
            }
        return false;
    };
    for (Object field : fields_of(pdf)) {
        const std::string name = field.getKey("/T").getUTF8Value();
        if (name == "kerfpacket") continue;
        if (field.getKey("/FT").isNameAndEquals("/Tx")) {
            ++texts;
            EXPECT_TRUE(streams.insert(field.getKey("/AP").getKey("/N").getObjGen()).second)
                << name << " shares its appearance: one figure would show in two blanks";
            EXPECT_TRUE(in_tree(field)) << name;
            continue;
        }
        for (Object box : field.getKey("/Kids").getArrayAsVector()) EXPECT_TRUE(in_tree(box)) << name;
    }
    EXPECT_GT(texts, 80);
}

TEST(FormFields, ClaimNoArchive) {
    const std::string blank = blank_form();
    QPDF pdf;
    open(pdf, blank);
    const auto bytes = pdf.getRoot().getKey("/Metadata").getStreamData();
    const std::string xmp(reinterpret_cast<const char*>(bytes->getBuffer()), bytes->getSize());
    EXPECT_EQ(xmp.find("<pdfaid:part>"), std::string::npos);
    EXPECT_EQ(blank_form(), blank_form()) << "the same bytes, always";
}

TEST(FieldSheet, ThatSomebodyFilledInIsNeverReplaced) {
    const Folder folder;
    const fs::path file = folder / "f.pdf";
    const auto again = [&] {
        std::ostringstream out, err;
        cli::Console console(out, err, false);
        cli::FieldSheetChoice choice;
        choice.out = file;
        return cli::field_sheet(choice, console, KERFPACKET_BUILD_DIR);
    };
    EXPECT_EQ(again(), cli::Status::done);
    const std::string blank = slurp(file);
    EXPECT_EQ(again(), cli::Status::done) << "a blank one is ours to replace";
    for (const Values& values :
         {Values{{"opening-1-span", "58¾"}}, Values{{"job-1-units", "mm"}}, Values{{"opening-1-shape", "tudor"}}}) {
        const std::string by_hand = filled(blank, values);
        spill(file, by_hand);
        EXPECT_THROW(again(), std::runtime_error) << values.begin()->first;
        EXPECT_EQ(slurp(file), by_hand);
    }
    ASSERT_EQ(run_program({"qpdf", "--flatten-annotations=all", file.string(), (folder / "flat.pdf").string()}).status,
              0);
    spill(file, slurp(folder / "flat.pdf"));
    EXPECT_THROW(again(), std::runtime_error) << "flattened, its figures are ink";
}

}  // namespace
}  // namespace kerfpacket::tests
