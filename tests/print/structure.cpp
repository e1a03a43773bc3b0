// The packets' structure and text as poppler gives them to a reader, beside the display list they were written from.

#include <gtest/gtest.h>

#include <algorithm>
#include <map>
#include <sstream>

#include "output/pdf.h"
#include "support/laid_out.h"
#include "support/program.h"

namespace kerfpacket::tests {
namespace {

/// A line of what pdfinfo tells of the tree: an element, or text in quotes.
struct Told {
    std::size_t depth = 0;
    std::string type;  ///< empty for text
    std::string text;
};

std::string said_by(const std::vector<std::string>& words) {
    const Outcome outcome = run_program(words);
    EXPECT_EQ(outcome.status, 0) << words.front();
    EXPECT_EQ(outcome.err, "") << words.front();
    return outcome.out;
}

/// With all texts ("-struct-text", for which poppler reads a page anew for each of its elements) or without
/// ("-struct").
std::vector<Told> structure_of(const std::string& pdf, const char* how = "-struct") {
    std::vector<Told> all;
    std::istringstream lines(said_by({"pdfinfo", how, pdf}));
    for (std::string line; std::getline(lines, line);) {
        const std::size_t from = line.find_first_not_of(' ');
        if (from == std::string::npos || line[from] == '/') continue;  // attributes
        if (line[from] == '"') all.push_back({from / 2, "", line.substr(from + 1, line.rfind('"') - from - 1)});
        else all.push_back({from / 2, line.substr(from, line.find_first_of(" :", from) - from), ""});
    }
    return all;
}

std::string squeezed(std::string text) {
    std::erase_if(text, [](unsigned char c) { return c <= ' '; });
    return text;
}

/// One page of the tree: what stands below its Sect.
std::vector<std::vector<Told>> sections(const std::vector<Told>& all) {
    std::vector<std::vector<Told>> pages;
    for (const Told& told : all) {
        if (told.depth == 1) pages.emplace_back();
        else if (told.depth > 1 && !pages.empty()) pages.back().push_back(told);
    }
    return pages;
}

class Structure : public testing::TestWithParam<fs::path> {
protected:
    static std::string pdf() { return built_sample(GetParam()); }
};

TEST_P(Structure, IsADocumentOfOneSectionAPageEachWithItsHeadingFirst) {
    const std::vector<Told> all = structure_of(pdf());
    ASSERT_FALSE(all.empty());
    EXPECT_EQ(all.front().type, "Document");
    for (const Told& told : all) EXPECT_TRUE(told.depth != 1 || told.type == "Sect") << told.type;
    const page::Document document = laid_out(GetParam() / "job.toml");
    const auto pages = sections(all);
    ASSERT_EQ(pages.size(), document.pages.size());
    for (std::size_t i = 0; i < pages.size(); ++i) {
        ASSERT_FALSE(pages[i].empty()) << i + 1;
        EXPECT_EQ(pages[i][0].type, "H1") << i + 1;
    }
}

TEST_P(Structure, HasTablesWithHeadsListsAndFigures) {
    std::map<std::string, int> count;
    const std::vector<Told> all = structure_of(pdf());
    std::vector<std::string> path;  // types from the root to here
    for (const Told& told : all) {
        if (told.type.empty()) continue;
        path.resize(told.depth);
        path.push_back(told.type);
        ++count[told.type];
        const std::string& parent = told.depth > 0 ? path[told.depth - 1] : path[0];
        if (told.type == "TR") { EXPECT_EQ(parent, "Table"); }
        if (told.type == "TH" || told.type == "TD") { EXPECT_EQ(parent, "TR"); }
        if (told.type == "LI") { EXPECT_EQ(parent, "L"); }
        if (told.type == "LBody") { EXPECT_EQ(parent, "LI"); }
    }
    for (const char* type : {"H1", "H2", "P", "Table", "TR", "TH", "TD", "L", "LI", "Figure"})
        EXPECT_GT(count[type], 2) << type;
    EXPECT_EQ(count["LI"], count["LBody"]);
    const std::string attributes = said_by({"pdfinfo", "-struct", pdf()});
    EXPECT_NE(attributes.find("/Scope /Column"), std::string::npos);
    EXPECT_NE(attributes.find("/Scope /Row"), std::string::npos);
}

/// What poppler reads, part after part, is what the sheets say: nothing lost, nothing out of its place.
TEST_P(Structure, IsReadInTheOrderOfTheParts) {
    const page::Document document = laid_out(GetParam() / "job.toml");
    const auto pages = sections(structure_of(pdf(), "-struct-text"));
    ASSERT_EQ(pages.size(), document.pages.size());
    for (std::size_t i = 0; i < pages.size(); ++i) {
        const page::Page& page = document.pages[i];
        std::vector<std::pair<std::size_t, std::string>> expected;
        for (const page::Item& item : page.items) {
            const auto* text = std::get_if<page::TextItem>(&item);
            const auto part = page::read_with(page, item);
            // A figure is told by its alternative; its words come in the order of drawing.
            if (text == nullptr || !part || page.structure[*part].tag == page::Tag::figure) continue;
            expected.emplace_back(*part, squeezed(text->text));
        }
        std::stable_sort(expected.begin(), expected.end(),
                         [](const auto& a, const auto& b) { return a.first < b.first; });
        std::string ours;
        for (const auto& [part, text] : expected) ours += text;
        std::string theirs;
        bool in_figure = false;
        for (const Told& told : pages[i]) {
            if (!told.type.empty()) in_figure = told.type == "Figure";
            else if (!in_figure) theirs += squeezed(told.text);
        }
        EXPECT_EQ(theirs, ours) << "page " << i + 1 << " " << page.sheet;
    }
}

TEST_P(Structure, TheCoverComesTitleFirstAndItsTableRowByRow) {
    const page::Document document = laid_out(GetParam() / "job.toml");
    const std::string text = said_by({"pdftotext", "-l", "1", "-raw", pdf(), "-"});
    const page::Page& cover = document.pages.front();
    std::vector<std::string> in_order;
    for (const page::Item& item : cover.items) {
        const auto* words = std::get_if<page::TextItem>(&item);
        if (words == nullptr) continue;
        const page::Tag tag = cover.structure[words->node].tag;
        if (tag == page::Tag::title) in_order.insert(in_order.begin(), words->text);
        if (tag == page::Tag::row_header) in_order.push_back(words->text);
    }
    ASSERT_GT(in_order.size(), 1U);
    std::size_t at = 0;
    for (const std::string& words : in_order) {
        const std::size_t found = text.find(words, at);
        ASSERT_NE(found, std::string::npos) << words << " after " << at << " in\n" << text;
        at = found + words.size();
    }
}

/// Copied out, with or without the tree: every level line of every page is there in one piece.
TEST_P(Structure, EveryLineIsInTheTextThatIsCopiedOut) {
    const page::Document document = laid_out(GetParam() / "job.toml");
    int lines = 0;
    for (std::size_t i = 0; i < document.pages.size(); ++i) {
        const std::string number = std::to_string(i + 1);
        const std::string text = squeezed(said_by({"pdftotext", "-f", number, "-l", number, "-raw", pdf(), "-"}));
        for (const page::Item& item : document.pages[i].items) {
            const auto* line = std::get_if<page::TextItem>(&item);
            if (line == nullptr || line->angle != geom::Angle{}) continue;
            ++lines;
            EXPECT_NE(text.find(squeezed(line->text)), std::string::npos) << "page " << number << ": " << line->text;
        }
    }
    EXPECT_GT(lines, 500);
}

TEST_P(Structure, SaysTitleAndLanguage) {
    const page::Document document = laid_out(GetParam() / "job.toml");
    const std::string said = said_by({"pdfinfo", pdf()});
    EXPECT_NE(said.find(document.title), std::string::npos) << said;
    EXPECT_NE(said.find("Tagged:          yes"), std::string::npos) << said;
    const std::string json = said_by({"qpdf", "--json", "--json-key=qpdf", pdf()});
    EXPECT_NE(json.find("\"/Lang\": \"u:" + document.language + "\""), std::string::npos);
}

INSTANTIATE_TEST_SUITE_P(Samples, Structure, testing::ValuesIn(sample_folders()), [](const auto& sample) {
    std::string name = sample.param.filename().string();
    std::replace_if(
        name.begin(), name.end(), [](char c) { return std::isalnum(static_cast<unsigned char>(c)) == 0; }, '_');
    return name;
});

/// The validator of PDFBox (libpdfbox2-java), which knows ISO 19005-1.
class Archive : public testing::Test {
protected:
    static std::string findings(const std::string& pdf) {
        std::string path;
        for (const char* jar : {"preflight", "pdfbox2", "xmpbox", "fontbox2", "commons-logging", "commons-io",
                                "javax.activation", "jaxb-api"})
            path += std::string(KERFPACKET_JARS) + "/" + jar + ".jar:";
        const Outcome outcome = run_program({"java", "-cp", path, "org.apache.pdfbox.preflight.Validator_A1b", pdf});
        return outcome.out + outcome.err;
    }
    const Folder folder_;
};

TEST_F(Archive, WithoutAttachmentsItIsPdfA1b) {
    for (const std::string& job : {std::string("harbor-stair"), std::string("alder-court")}) {
        const fs::path file = fs::path(KERFPACKET_SOURCE_DIR) / "out-samples" / job / "job.toml";
        const std::string pdf = (folder_ / (job + ".pdf")).string();
        const fonts::Faces faces(KERFPACKET_BUILD_DIR "/fonts");
        spill(pdf, output::pdf(laid_out(file), faces));
        const std::string said = findings(pdf);
        EXPECT_NE(said.find("is a valid PDF/A-1b file"), std::string::npos) << said;
    }
}

/// Part 3 allows what part 1 does not: another part in the metadata, embedded files, and objects packed together, which
/// the validator cannot even read past. It is given a copy in which they stand apart, and nothing else is changed.
TEST_F(Archive, WithAttachmentsOnlyWhatPart3AllowsIsFound) {
    for (const fs::path& sample : sample_folders()) {
        const std::string apart = (folder_ / "apart.pdf").string();
        said_by({"qpdf", "--object-streams=disable", "--stream-data=preserve", "--newline-before-endstream",
                 built_sample(sample), apart});
        std::istringstream lines(findings(apart));
        int found = 0;
        for (std::string line; std::getline(lines, line);) {
            const std::size_t colon = line.find(" : ");
            if (colon == std::string::npos || std::isdigit(static_cast<unsigned char>(line[0])) == 0) continue;
            ++found;
            const std::string code = line.substr(0, colon);
            EXPECT_TRUE(code == "7.11.2" || code == "3.1.11" || code == "1.4.7" || code == "1.2.9")
                << sample << ": " << line;
        }
        EXPECT_GT(found, 0) << sample << ": the validator did not run";
    }
}

}  // namespace
}  // namespace kerfpacket::tests
