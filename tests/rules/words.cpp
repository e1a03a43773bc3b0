// No sheet promises what the calculation cannot know.

#include <gtest/gtest.h>

#include "support/program.h"
#include "support/promise.h"

namespace kerfpacket::tests {
namespace {

TEST(Words, PromisesAreFound) {
    EXPECT_EQ(promise_in("This is a Safe cut."), "Safe");
    EXPECT_EQ(promise_in("cut safely"), "safely");
    EXPECT_EQ(promise_in("it will\nbend"), "will\nbend");
    EXPECT_EQ(promise_in("OSHA-compliant"), "compliant");
    EXPECT_EQ(promise_in("Es un corte seguro."), "seguro");
    EXPECT_EQ(promise_in("así se doblará"), "se doblar\xC3\xA1");
    EXPECT_EQ(promise_in("cumple con la norma"), "cumple");
    EXPECT_EQ(promise_in("Tarjeta de seguridad; PROBABLE ROTURA; doble la tabla; al doblar"), "");
    EXPECT_EQ(promise_in("safety_rules = []"), "");
    EXPECT_EQ(promise_in("Safety card; ask your safety office; it will likely break; bend it"), "");
}

TEST(Words, TemplatesPromiseNothing) {
    int files = 0;
    for (const fs::directory_entry& entry :
         fs::recursive_directory_iterator(fs::path(KERFPACKET_SOURCE_DIR) / "templates")) {
        if (entry.path().extension() != ".toml") continue;
        ++files;
        EXPECT_EQ(promise_in(slurp(entry.path())), "") << entry.path();
    }
    EXPECT_GE(files, 44);
}

TEST(Words, SourcesOfSheetsPromiseNothing) {
    for (const char* room : {"sheets", "plan", "cli"})
        for (const fs::directory_entry& entry :
             fs::recursive_directory_iterator(fs::path(KERFPACKET_SOURCE_DIR) / "src" / room))
            if (entry.is_regular_file()) { EXPECT_EQ(promise_in(slurp(entry.path())), "") << entry.path(); }
}

// Decimal marks and units follow the language because every figure of a sheet becomes text in one file.
TEST(Words, SheetsWriteFiguresInOnePlace) {
    int files = 0;
    for (const fs::directory_entry& entry :
         fs::recursive_directory_iterator(fs::path(KERFPACKET_SOURCE_DIR) / "src" / "sheets")) {
        if (!entry.is_regular_file() || entry.path().filename() == "tape.cpp") continue;
        ++files;
        const std::string text = slurp(entry.path());
        for (const char* way : {"measure::fixed", "measure::mm_text", "measure::inch_text", "measure::length_text"})
            EXPECT_EQ(text.find(way), std::string::npos) << entry.path() << ": " << way;
    }
    EXPECT_GT(files, 100);
}

}  // namespace
}  // namespace kerfpacket::tests
