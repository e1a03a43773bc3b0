// Filled in by programs that know nothing of the sheet, ten awkward values each, and read back.

#include <gtest/gtest.h>

#include "filled.h"

namespace kerfpacket::tests {
namespace {

const std::vector<std::pair<std::string, std::string>> awkward{
    {"job-1-number", "J-20\\41 (b)"},        {"job-1-title", "Sta. María, Nº 5 – café Łódź Ω"},
    {"job-1-measured-by", "Ana & «Bo» <x>"}, {"job-1-tape", "# 3 \"old\" 'tape' ☐"},
    {"opening-1-span", "4′ 10¾″"},           {"opening-1-rise", "13 5⁄8”"},
    {"opening-1-leg-left", "80⅜"},           {"opening-1-leg-right", "2041,5 mm"},
    {"opening-1-depth-left", "–1/16"},       {"opening-1-depth", "4\u00A05/8 in"},
};

const fs::path scripts = fs::path(KERFPACKET_SOURCE_DIR) / "tests/forms";

/// By name, or by what belongs there.
std::string lines_of(const Values& values) {
    std::string text;
    for (const auto& [name, value] : values) text += name + "\t" + value + "\n";
    return text;
}

std::map<std::string, std::string> tips() {
    std::map<std::string, std::string> all;
    for (const page::FormField& field : blank_sheets({sheets::Field::arch}).form.fields) all[field.name] = field.tip;
    return all;
}

void expect_all_of(const fs::path& form) {
    const Values read = values_of(output::read_form(slurp(form), form));
    for (const auto& [name, value] : awkward) {
        ASSERT_TRUE(read.contains(name)) << name;
        EXPECT_EQ(read.at(name), value) << name;
    }
    EXPECT_EQ(read.at("opening-1-shape"), "three-centred");
    EXPECT_EQ(read.at("job-1-units"), "mm");
}

void expect_all(const std::vector<std::string>& command, const Values& typed) {
    const Folder folder;
    spill(folder / "in.pdf", blank_form());
    spill(folder / "values", lines_of(typed));
    std::vector<std::string> words = command;
    for (const char* file : {"in.pdf", "out.pdf", "values"}) words.push_back((folder / file).string());
    const Outcome ran = run_program(words);
    ASSERT_EQ(ran.status, 0) << ran.err;
    expect_all_of(folder / "out.pdf");
}

Values by_their_words() {
    Values typed(awkward.begin(), awkward.end());
    typed["opening-1-shape"] = "three-centred";
    typed["job-1-units"] = "mm";
    return typed;
}

TEST(FilledBy, Pypdf) { expect_all({FORMS_PYTHON, (scripts / "fill_pypdf.py").string()}, by_their_words()); }

// Its viewer in a browser saves the same bytes, but for the time.
TEST(FilledBy, PdfJs) { expect_all({"node", (scripts / "fill_pdfjs.js").string()}, by_their_words()); }

// Debian has no package of it, so what it saved is kept; README.md there tells how it was made.
TEST(FilledBy, PdfLib) { expect_all_of(scripts / "filled-by-pdf-lib.pdf"); }

TEST(FilledBy, Poppler) {
    Values typed(awkward.begin(), awkward.end());
    typed[tips()["opening-1-shape"] + ": " + kit().words("piece.shape_three_centred")] = "x";
    typed[tips()["job-1-units"] + ": " + kit().words("field.millimetres")] = "x";
    expect_all({FORMS_PYTHON, (scripts / "fill_poppler.py").string()}, typed);
}

TEST(FilledBy, Mupdf) {
    Values typed;
    for (const auto& [name, value] : awkward) typed[tips()[name]] = value;
    typed[tips()["opening-1-shape"] + ": " + kit().words("piece.shape_three_centred")] = "x";
    typed[tips()["job-1-units"] + ": " + kit().words("field.millimetres")] = "x";
    expect_all({"mutool", "run", (scripts / "fill_mupdf.js").string()}, typed);
}

}  // namespace
}  // namespace kerfpacket::tests
