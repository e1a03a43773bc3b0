// What is written for people: short sentences, and links that lead somewhere.

#include <gtest/gtest.h>

#include <regex>
#include <set>
#include <sstream>

#include "support/program.h"

namespace kerfpacket::tests {
namespace {

constexpr std::size_t most_words = 30;

const fs::path top = KERFPACKET_SOURCE_DIR;

/// Every *.md of the repository, none of what was built.
std::vector<fs::path> documents() {
    std::vector<fs::path> found;
    for (const fs::directory_entry& entry : fs::directory_iterator(top))
        if (entry.path().extension() == ".md") found.push_back(entry.path());
    for (const char* folder : {"src", "templates", "tests", "fonts", "out-samples"})
        for (const fs::directory_entry& entry : fs::recursive_directory_iterator(top / folder))
            if (entry.path().extension() == ".md") found.push_back(entry.path());
    return found;
}

/// Lines of a document, but for code: what is fenced or indented by four.
std::vector<std::string> lines_without_code(const std::string& text) {
    std::vector<std::string> lines;
    bool fenced = false, in_list = false;
    std::istringstream all(text);
    for (std::string line; std::getline(all, line);) {
        if (line.starts_with("```")) {
            fenced = !fenced;
            lines.emplace_back();
            continue;
        }
        static const std::regex item(R"(^([-*]|[0-9]+\.) .*)");
        if (std::regex_match(line, item)) in_list = true;
        else if (!line.empty() && line[0] != ' ') in_list = false;
        // After an item of a list an indented line goes on with it.
        const bool indented = line.starts_with("    ") && !in_list;
        lines.push_back(fenced || indented ? "" : line);
    }
    return lines;
}

/// Sentences of the paragraphs, and of the items of lists: no headings, tables or code.
std::vector<std::string> sentences(const std::string& text) {
    static const std::regex item(R"(^ *([-*]|[0-9]+\.) (.*))");
    std::vector<std::string> paragraphs(1);
    std::smatch match;
    for (const std::string& line : lines_without_code(text)) {
        const bool apart = line.empty() || line[0] == '#' || line[0] == '|' || line.starts_with("![");
        if (apart || std::regex_match(line, match, item)) paragraphs.emplace_back();
        if (!apart) paragraphs.back() += (std::regex_match(line, match, item) ? match.str(2) : line) + " ";
    }
    std::vector<std::string> found;
    static const std::regex full_stop(R"([.!?]["')*]* )");
    for (const std::string& paragraph : paragraphs)
        for (std::sregex_token_iterator at(paragraph.begin(), paragraph.end(), full_stop, -1), none; at != none; ++at)
            if (!at->str().empty()) found.push_back(*at);
    return found;
}

std::size_t words_in(const std::string& sentence) {
    std::istringstream words(sentence);
    std::size_t count = 0;
    for (std::string word; words >> word;)
        if (std::any_of(word.begin(), word.end(), [](unsigned char c) { return std::isalnum(c) || c >= 0x80; }))
            ++count;
    return count;
}

/// What a heading is called in a link: small letters, hyphens for blanks, no signs.
std::string anchor(const std::string& heading) {
    std::string name;
    for (const char c : heading) {
        if (c == ' ') name += '-';
        else if (c == '-' || c == '_' || std::isalnum(static_cast<unsigned char>(c)))
            name += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
    }
    return name;
}

std::set<std::string> anchors_of(const fs::path& document) {
    static const std::regex heading(R"(^#+ +(.*))");
    std::set<std::string> names;
    std::smatch match;
    for (const std::string& line : lines_without_code(slurp(document)))
        if (std::regex_match(line, match, heading)) names.insert(anchor(match[1]));
    return names;
}

struct Link {
    fs::path document;
    std::string target;  ///< "../cli/README.md#exit-status"
};

std::vector<Link> links_of(const fs::path& document) {
    static const std::regex link(R"(\]\(([^)\s]+)\))");
    std::vector<Link> found;
    for (const std::string& line : lines_without_code(slurp(document)))
        for (std::sregex_iterator at(line.begin(), line.end(), link), end; at != end; ++at)
            found.push_back({document, at->str(1)});
    return found;
}

bool leads_somewhere(const Link& link) {
    if (link.target.starts_with("https://")) return true;
    const std::size_t hash = link.target.find('#');
    const std::string file = link.target.substr(0, hash);
    const fs::path place = file.empty() ? link.document : link.document.parent_path() / file;
    if (!fs::exists(place)) return false;
    return hash == std::string::npos || anchors_of(place).contains(link.target.substr(hash + 1));
}

TEST(Docs, SentencesAreCounted) {
    EXPECT_EQ(sentences("# One two.\n\nA b c.\nD e\nf g. H!\n\n| a. b | c. d |\n\n- i j 1.5 k. L\n  m n\n- o\n\n"
                        "Q.\n\n    code. code\n\n```\nx. y.\n```\nP."),
              (std::vector<std::string>{"A b c", "D e f g", "H", "i j 1.5 k", "L   m n ", "o ", "Q", "P"}));
    EXPECT_EQ(words_in("one - two, `three` | 4"), 4U);
}

TEST(Docs, SentencesAreShort) {
    int read = 0;
    for (const fs::path& document : documents()) {
        if (document.filename() != "README.md") continue;
        ++read;
        for (const std::string& sentence : sentences(slurp(document)))
            EXPECT_LE(words_in(sentence), most_words) << document << ": " << sentence;
    }
    EXPECT_GE(read, 6);
}

// 250 words a minute, common practice, no source: three minutes for all but the code.
TEST(Docs, TheFirstPageIsReadInThreeMinutes) {
    std::size_t words = 0;
    for (const std::string& line : lines_without_code(slurp(top / "README.md"))) words += words_in(line);
    EXPECT_GT(words, 300U);
    EXPECT_LE(words, 750U);
}

TEST(Docs, TheFirstArchIsReportedAsTheReadmeSays) {
    const std::string readme = slurp(top / "README.md");
    const std::size_t job = readme.find("```toml\n") + 8, job_end = readme.find("```\n", job);
    const std::size_t report = readme.find("\n    ", job_end), report_end = readme.find("\n\n1. ", report);
    ASSERT_TRUE(job_end < report && report < report_end && report_end != std::string::npos);
    const Folder folder;
    spill(folder / "arch.toml", readme.substr(job, job_end - job));
    const Outcome checked = run_program({KERFPACKET_PROGRAM, "check", (folder / "arch.toml").string()});
    EXPECT_EQ(checked.status, 0) << checked.err;
    std::istringstream lines(readme.substr(report, report_end - report));
    int compared = 0;
    for (std::string line; std::getline(lines, line);) {
        if (line.empty()) continue;
        ++compared;
        EXPECT_NE(("\n" + checked.out).find(line.substr(4) + "\n"), std::string::npos) << line << "\n" << checked.out;
    }
    EXPECT_GE(compared, 5);
}

TEST(Docs, LinksLeadSomewhere) {
    const fs::path readme = top / "README.md";
    EXPECT_TRUE(leads_somewhere({readme, "src/cli/README.md"}));
    EXPECT_FALSE(leads_somewhere({readme, "src/cli/NOWHERE.md"}));
    EXPECT_FALSE(leads_somewhere({readme, "src/cli/README.md#no-such-heading"}));
    std::size_t links = 0;
    for (const fs::path& document : documents())
        for (const Link& link : links_of(document)) {
            ++links;
            EXPECT_TRUE(leads_somewhere(link)) << document << ": " << link.target;
        }
    EXPECT_GT(links, 20U);
}

}  // namespace
}  // namespace kerfpacket::tests
