// Languages and a shop's own words, from the command line to the page.

#include <gtest/gtest.h>

#include <cerrno>
#include <regex>

#include "cli/street.h"
#include "disk/calls.h"
#include "session.h"

namespace kerfpacket::tests {
namespace {

class ShopFolder : public testing::Test {
protected:
    ShopFolder() {
        spill(job(), good_job);
        spill(folder_ / "shop.toml", "words = \"ours\"\n");
        fs::create_directories(folder_ / "ours/en");
        fs::create_directories(folder_ / "ours/es");
    }
    fs::path job() const { return folder_ / "arch.toml"; }
    static std::string with_languages(const std::string& lines) {
        std::string text = good_job;
        return text.insert(text.find("units = "), lines);
    }
    Outcome run(const std::string& command, const std::vector<std::string>& more = {}) const {
        std::vector<std::string> words = {command, job().string()};
        words.insert(words.end(), more.begin(), more.end());
        return run_in_process(words);
    }
    /// All texts of one kind of sheet, a line each.
    std::string texts(const std::string& sheet, const std::string& language = "") const {
        std::ostringstream out, err;
        cli::Console console(out, err, false);
        cli::JobChoice choice{job()};
        choice.print.language = language;
        const auto planned = cli::planned(choice, console);
        if (!planned) throw std::runtime_error(err.str());
        const cli::Resources resources(KERFPACKET_BUILD_DIR, planned->plan.header, planned->inputs.words);
        const auto packet = cli::laid_out(*planned, resources.kit(), {}, console);
        if (!packet) throw std::runtime_error(err.str());
        std::string all;
        for (const page::Page& page : packet->pages)
            for (const page::Item& item : page.items)
                if (const auto* text = std::get_if<page::TextItem>(&item); text != nullptr && page.sheet == sheet)
                    all += text->text + "\n";
        return all;
    }

    const Folder folder_;
};

bool holds(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

// A shop's safety rules are not left out without a word.
TEST_F(ShopFolder, WordsThatAreThereAndCannotBeReadAreAnError) {
    spill(folder_ / "ours/en/shop.toml", "name = [\"Weir & Daughters\"]\n");
    const fs::path words = folder_ / "ours/en";
    for (const disk::Operation failing : {disk::Operation::list, disk::Operation::look}) {
        const disk::Gated gated([&](disk::Operation asked, const fs::path& what) {
            return asked == failing && what == words ? EACCES : 0;
        });
        const Outcome outcome = run("build");
        EXPECT_EQ(outcome.status, 2);
        EXPECT_TRUE(holds(outcome.err, words.string())) << outcome.err;
        EXPECT_TRUE(holds(outcome.err, "no permission")) << outcome.err;
    }
    fs::remove_all(words);
    spill(words, "rules");
    EXPECT_EQ(run("build").status, 2);
    fs::remove(words);
    fs::create_symlink("nowhere", words);
    EXPECT_EQ(run("build").status, 2);
    fs::remove(words);
    EXPECT_EQ(run("build").status, 0) << "a shop may have no words of that language";
}

TEST_F(ShopFolder, LanguageOfTheCommandLineWins) {
    EXPECT_TRUE(holds(texts("safety"), "WARNING"));
    EXPECT_TRUE(holds(texts("safety", "es"), "ADVERTENCIA"));
    EXPECT_FALSE(holds(texts("safety", "es"), "WARNING"));
    spill(job(), with_languages("language = \"es\"\n"));
    EXPECT_TRUE(holds(texts("safety"), "ADVERTENCIA"));
    EXPECT_TRUE(holds(texts("safety", "en"), "WARNING"));
    EXPECT_EQ(run("build", {"--language", "fr", "--force"}).status, 2);
}

TEST_F(ShopFolder, TheReportStaysEnglish) {
    const std::string english = run("check").out;
    const std::string spanish = run("check", {"--language", "es"}).out;
    EXPECT_TRUE(holds(spanish, "Kerfs OUTSIDE the bend: they OPEN")) << spanish;
    EXPECT_FALSE(holds(spanish, "ranuras"));
    // But for the fingerprint, which covers the language.
    EXPECT_EQ(english.size(), spanish.size());
}

TEST_F(ShopFolder, ASecondLanguageIsOnTheCards) {
    spill(job(), with_languages("language = \"es\"\nalso_in = \"en\"\n"));
    for (const char* language : {"", "en", "es"}) {
        const std::string safety = texts("safety", language);
        EXPECT_TRUE(holds(safety, "ADVERTENCIA") && holds(safety, "WARNING")) << language;
        const std::string list = texts("checklist", language);
        EXPECT_TRUE(holds(list, "Disco PARADO") && holds(list, "Blade STOPPED")) << language;
    }
    EXPECT_TRUE(holds(texts("checklist"), "10 hechas / done\n"));
    EXPECT_TRUE(holds(texts("checklist", "en"), "10 done / hechas\n"));
    // The second card speaks English throughout.
    EXPECT_TRUE(std::regex_search(texts("safety"), std::regex("página \\d+ de ")));
    EXPECT_TRUE(std::regex_search(texts("safety"), std::regex("page \\d+ of ")));
    EXPECT_FALSE(holds(texts("setup"), "Set-up card"));
}

TEST_F(ShopFolder, WordsAndRulesOfTheShopArePrinted) {
    spill(folder_ / "ours/en/materials.toml", "mdf = \"ultralight MDF\"\n");
    spill(folder_ / "ours/en/shop.toml",
          "name = [\"Weir & Daughters\"]\nsafety_rules = [\"Nobody saws alone.\"]\n"
          "checklist_rules = [\"Count again after a break.\"]\nsetup_rules = [\"Foreman signs.\"]\n");
    EXPECT_TRUE(holds(texts("setup"), "ultralight MDF"));
    EXPECT_TRUE(holds(texts("setup"), "Foreman signs."));
    EXPECT_TRUE(holds(texts("cover"), "Weir & Daughters"));
    EXPECT_TRUE(holds(texts("checklist"), "Count again after a break."));
    EXPECT_TRUE(holds(texts("safety"), "Nobody saws alone."));
    EXPECT_TRUE(holds(texts("safety"), "The saw maker's manual governs."));
    EXPECT_FALSE(holds(texts("safety", "es"), "Nobody saws alone."));
}

// What a packet needs of the shop's folder is text: without the folder it comes out the same.
TEST_F(ShopFolder, IsNotNeededOnceItsTextsAreRead) {
    spill(folder_ / "ours/en/shop.toml", "name = [\"Weir & Daughters\"]\n");
    std::ostringstream out, err;
    cli::Console console(out, err, false);
    const auto planned = cli::planned(cli::JobChoice{job()}, console);
    ASSERT_TRUE(planned);
    ASSERT_EQ(planned->inputs.words.size(), 1U);
    EXPECT_EQ(planned->inputs.words[0].name, "en/shop.toml");
    fs::remove_all(folder_ / "ours");
    const cli::Resources resources(KERFPACKET_BUILD_DIR, planned->plan.header, planned->inputs.words);
    EXPECT_EQ(resources.kit().words.list("shop.name").at(0), "Weir & Daughters");
}

TEST_F(ShopFolder, MistakesAreToldAndNothingIsWritten) {
    const auto refused = [&](const std::string& what) {
        const Outcome outcome = run("build");
        EXPECT_EQ(outcome.status, 2);
        EXPECT_TRUE(holds(outcome.err, what)) << outcome.err;
        EXPECT_FALSE(fs::exists(folder_ / "arch.pdf"));
    };
    const fs::path safety = folder_ / "ours/en/safety.toml";
    spill(safety, "first = \"Do as you like.\"\n");
    refused(safety.string() + ":1: safety.first stands as it is: cautions are only added to");
    fs::remove(safety);
    spill(folder_ / "ours/en/shop.toml", "name = [\"弧 arc\"]\n");
    refused((folder_ / "ours/en/shop.toml").string() + ":1: shop.name: ");
    fs::remove(folder_ / "ours/en/shop.toml");
    spill(folder_ / "ours/cover.toml", "title = \"x\"\n");
    refused((folder_ / "ours/cover.toml").string() + ": words stand in a folder of their language, en or es");
    fs::remove_all(folder_ / "ours");
    refused("words = \"ours\": there is no folder");
}

TEST_F(ShopFolder, AHugeFileOfWordsIsRefused) {
    spill(folder_ / "ours/en/cover.toml", "title = \"" + std::string(1'100'000, 'x') + "\"\n");
    const Outcome outcome = run("build");
    EXPECT_EQ(outcome.status, 2);
    EXPECT_TRUE(holds(outcome.err, "over 1 MB")) << outcome.err.substr(0, 300);
}

TEST(FieldSheet, WritesTheFormsThatAreAskedFor) {
    const Folder folder;
    const std::string out = (folder / "forms.pdf").string();
    EXPECT_EQ(run_in_process({"field-sheet", "--out", out}).out, out + ": 3 pages\n");
    EXPECT_EQ(run_in_process({"field-sheet", "wall", "--language", "es", "--out", out, "--force"}).out,
              out + ": 1 page\n");
    EXPECT_EQ(run_in_process({"field-sheet", "barrel", "--out", out}).status, 2);
    const Outcome roll = run_in_process({"field-sheet", "--media", "custom_roll_24in", "--out", out});
    EXPECT_EQ(roll.status, 2);
    EXPECT_TRUE(holds(roll.err, "field sheets stand on cut sheets")) << roll.err;
    spill(folder / "note.txt", "mine");
    EXPECT_EQ(run_in_process({"field-sheet", "--out", (folder / "note.txt").string()}).status, 2);
    EXPECT_EQ(slurp(folder / "note.txt"), "mine");
}

TEST(PrinterCheckPage, SpeaksSpanishButItsCommandDoesNot) {
    const Folder folder;
    const std::string out = (folder / "page.pdf").string();
    ASSERT_EQ(run_in_process({"printer-check", "--language", "es", "--out", out}).status, 0);
    const std::string text = run_program({"pdftotext", "-layout", out, "-"}).out;
    EXPECT_TRUE(holds(text, "Mida de extremo a extremo")) << text;
    EXPECT_TRUE(holds(text, "--units in"));
    EXPECT_FALSE(holds(text, "--units pulg"));
}

}  // namespace
}  // namespace kerfpacket::tests
