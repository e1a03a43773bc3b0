// Every job has a golden: the text dump of its packet, in tests/golden/NAME.dump. The jobs are tests/golden/NAME.toml
// and out-samples/NAME/job.toml. A new job needs no code: add its file and renew. tests/golden/before/NAME.toml is the
// revision before of a job. Of all-shapes, the sample that is one picture, the first page alone is kept.
//
// To renew after a change that is meant, then read the difference in version control before keeping it:
//     KERFPACKET_RENEW_GOLDEN=1 build/tests/golden/golden_dumps
//
// Of the pages of one sheet that follow each other the first and the last stand in full; those between are of the same
// make and are told by their heading and the number of their lines. Headers, footers, check bars and hatches stand
// once, where they first come, then only their number. Units and property tests see all of them.

#include <gtest/gtest.h>

#include <fmt/format.h>

#include <algorithm>
#include <cstdlib>
#include <map>
#include <sstream>

#include "job/choices.h"
#include "job/read.h"
#include "output/dump.h"
#include "output/pdf.h"
#include "sheets/bid/bid_sheet.h"
#include "sheets/folded_packet.h"
#include "sheets/labels/label_sheets.h"
#include "support/laid_out.h"
#include "support/program.h"

namespace kerfpacket::tests {
namespace {

const fs::path all_shapes = fs::path(KERFPACKET_SOURCE_DIR) / "out-samples" / "all-shapes.toml";
const fs::path goldens = fs::path(KERFPACKET_SOURCE_DIR) / "tests" / "golden";

std::map<std::string, fs::path> jobs() {
    std::map<std::string, fs::path> all{{all_shapes.stem().string(), all_shapes}};
    for (const fs::path& sample : sample_folders()) all[sample.filename().string()] = sample / "job.toml";
    for (const fs::directory_entry& entry : fs::directory_iterator(goldens))
        if (entry.path().extension() == ".toml") all[entry.path().stem().string()] = entry.path();
    return all;
}

using Lines = std::vector<std::string>;

Lines lines_of(const std::string& text) {
    Lines lines;
    std::istringstream in(text);
    for (std::string line; std::getline(in, line);) lines.push_back(line);
    return lines;
}

std::string text_of(const Lines& lines) {
    std::string text;
    for (const std::string& line : lines) text.append(line).append("\n");
    return text;
}

std::string first_word(const std::string& line) { return line.substr(0, line.find(' ')); }

/// Where a line of words ends follows from its words and its type.
std::string without_width(const std::string& line) {
    const std::size_t at = line.rfind(" wide ");
    return line.starts_with("page ") || at == std::string::npos || line.find('"', at) != std::string::npos
               ? line
               : line.substr(0, at);
}

/// The dump of a document, pages between the first and the last of a sheet cut down to their heading.
Lines abridged(const page::Document& document) {
    const auto same_sheet = [&](std::size_t a, std::size_t b) {
        return document.pages.at(a).sheet == document.pages.at(b).sheet &&
               document.pages.at(a).piece == document.pages.at(b).piece;
    };
    const auto between = [&](std::size_t i) {
        return i > 0 && i + 1 < document.pages.size() && same_sheet(i - 1, i) && same_sheet(i, i + 1);
    };
    Lines kept;
    std::size_t pages = 0;
    bool cut = false;
    // What is on every sheet stands in full on the first that has it, then only how much of it there is.
    std::map<std::string, std::size_t> everywhere{{"furniture", 0}, {"check-bar", 0}, {"hatch", 0}};
    std::map<std::string, int> more;
    for (const std::string& line : lines_of(output::dump(document))) {
        if (line.starts_with("page ")) {
            cut = between(pages);
            kept.push_back(line);
            const std::size_t items = document.pages.at(pages++).items.size();
            if (cut) kept.back().append(": ").append(std::to_string(items)).append(" lines");
            continue;
        }
        if (line.empty()) {
            for (const auto& [role, count] : more) kept.push_back(fmt::format("{} of {}", count, role));
            more.clear();
            kept.push_back(line);
            continue;
        }
        if (cut) continue;
        const auto known = everywhere.find(first_word(line));
        if (known != everywhere.end()) {
            if (known->second == 0) known->second = pages;
            if (known->second != pages) {
                ++more[known->first];
                continue;
            }
        }
        kept.push_back(without_width(line));
    }
    for (const auto& [role, count] : more) kept.push_back(fmt::format("{} of {}", count, role));
    return kept;
}

/// The first line in which two dumps differ, told from both sides; empty when they are the same.
std::string first_difference(const Lines& golden, const Lines& now) {
    for (std::size_t i = 0; i < std::max(golden.size(), now.size()); ++i) {
        const std::string before = i < golden.size() ? golden[i] : "(the golden ends here)";
        const std::string after = i < now.size() ? now[i] : "(the packet ends here)";
        if (before != after) return fmt::format("line {}\n  golden: {}\n  now:    {}", i + 1, before, after);
    }
    return "";
}

page::Document to_keep(const fs::path& job) {
    const fs::path before = goldens / "before" / job.filename();
    page::Document document = laid_out(job, job.parent_path() == goldens && fs::exists(before) ? before : fs::path());
    if (job == all_shapes) {
        document.pages.resize(1);
        document.outline.clear();
    }
    return document;
}

class Golden : public testing::TestWithParam<std::string> {};

void expect_golden(const fs::path& file, const page::Document& document) {
    const Lines now = abridged(document);
    if (std::getenv("KERFPACKET_RENEW_GOLDEN") != nullptr) {  // NOLINT(concurrency-mt-unsafe): one thread
        spill(file, text_of(now));
        GTEST_SKIP() << file << " written";
    }
    ASSERT_TRUE(fs::exists(file)) << "renew: see the head of tests/golden/dumps.cpp";
    EXPECT_EQ(first_difference(lines_of(slurp(file)), now), "")
        << file << " differs. If that is meant: KERFPACKET_RENEW_GOLDEN=1 golden_dumps, then read the difference.";
}

TEST_P(Golden, IsWhatTheJobLaysOutToday) {
    expect_golden(goldens / (GetParam() + ".dump"), to_keep(jobs().at(GetParam())));
}

cli::Planned planned(const fs::path& job) {
    std::ostringstream out, err;
    cli::Console console(out, err, false);
    auto found = cli::planned(cli::JobChoice{job}, console);
    if (!found) throw std::runtime_error(err.str());
    return *found;
}

/// As most of a packet of many pages wait, and drawn as on a machine of many cores.
TEST_P(Golden, IsTheSamePacketWithItsPagesFoldedAndOnSixteenThreads) {
    const fs::path job = jobs().at(GetParam()), before = goldens / "before" / job.filename();
    const cli::Planned now = planned(job), old = planned(fs::exists(before) ? before : job);
    const cli::Resources resources(KERFPACKET_BUILD_DIR, now.plan.header, now.inputs.words);
    const sheets::Revision revision{now.plan, now.canonical.values}, superseded{old.plan, old.canonical.values};
    for (const sheets::Revision* other : {static_cast<const sheets::Revision*>(nullptr), &superseded}) {
        const auto laid_out = [&](std::size_t open, unsigned threads) {
            return sheets::make_folded_packet(revision, other, resources.kit(), {}, open, threads);
        };
        const page::FoldedDocument open = laid_out(sheets::all_open, 1);
        page::FoldedDocument folded = laid_out(1, 16);
        ASSERT_GT(folded.document.pages.size(), 1U);
        EXPECT_GT(folded.folded.back().bytes(), 0U);
        EXPECT_EQ(output::dump(folded), output::dump(open));
        EXPECT_TRUE(output::pdf(std::move(folded), resources.faces()) == output::pdf(open.document, resources.faces()));
    }
}

/// What stands beside the packet of tests/golden/beside/house.toml, in a language.
class Beside : public testing::TestWithParam<std::string> {
protected:
    Beside() : resources_(KERFPACKET_BUILD_DIR, GetParam()) {
        std::ostringstream out, err;
        cli::Console console(out, err, false);
        house_ = cli::planned(cli::JobChoice{goldens / "beside" / "house.toml"}, console);
        if (!house_) throw std::runtime_error(err.str());
    }
    const cli::Planned& house() const { return *house_; }
    sheets::Kit kit() const { return resources_.kit(); }

private:
    cli::Resources resources_;
    std::optional<cli::Planned> house_;
};

TEST_P(Beside, LabelsAreWhatTheyWere) {
    const auto labels = sheets::make_labels(house().plan, house().beside.labels.value(), 4, kit());
    ASSERT_TRUE(labels);
    expect_golden(goldens / "beside" / ("labels-" + GetParam() + ".dump"), *labels);
}

TEST_P(Beside, TheBidIsWhatItWas) {
    expect_golden(goldens / "beside" / ("bid-" + GetParam() + ".dump"),
                  sheets::make_bid(house().plan, house().beside.rates, 37, kit()));
}

INSTANTIATE_TEST_SUITE_P(Languages, Beside, testing::Values("en", "es"),
                         [](const auto& language) { return language.param; });

std::vector<std::string> names() {
    std::vector<std::string> all;
    for (const auto& [name, file] : jobs()) all.push_back(name);
    return all;
}

INSTANTIATE_TEST_SUITE_P(Jobs, Golden, testing::ValuesIn(names()), [](const auto& name) {
    std::string plain = name.param;
    std::replace_if(
        plain.begin(), plain.end(), [](char c) { return c == '-'; }, '_');
    return plain;
});

TEST(Goldens, AllBelongToAJob) {
    int dumps = 0;
    for (const fs::directory_entry& entry : fs::directory_iterator(goldens)) {
        if (entry.path().extension() != ".dump") continue;
        ++dumps;
        EXPECT_TRUE(jobs().contains(entry.path().stem().string())) << entry;
    }
    EXPECT_GE(dumps, 1);
}

TEST(AllShapes, StandOnOnePage) {
    const job::Reading reading = job::read_job(job::load(all_shapes).value());
    ASSERT_TRUE(reading.complete && reading.diagnostics.empty());
    const page::Document document = to_keep(all_shapes);
    std::string page;
    for (const page::Item& item : document.pages.front().items)
        if (const auto* text = std::get_if<page::TextItem>(&item)) page += text->text + "\n";
    for (const auto& [word, shape] : job::shape_words()) {
        const auto first = std::find_if(reading.job.openings.begin(), reading.job.openings.end(),
                                        [&, wanted = shape](const auto& o) { return o.shape.value == wanted; });
        ASSERT_NE(first, reading.job.openings.end()) << word;
    }
    for (const job::Opening& opening : reading.job.openings)
        EXPECT_NE(page.find(opening.id.value + "   "), std::string::npos) << opening.id.value;
}

TEST(Goldens, ADifferenceIsTold) {
    EXPECT_EQ(first_difference({"a", "b"}, {"a", "b"}), "");
    EXPECT_EQ(first_difference({"a", "b"}, {"a", "c"}), "line 2\n  golden: b\n  now:    c");
    EXPECT_EQ(first_difference({"a"}, {"a", "c"}), "line 2\n  golden: (the golden ends here)\n  now:    c");
    EXPECT_EQ(first_difference({"a", "b"}, {"a"}), "line 2\n  golden: b\n  now:    (the packet ends here)");
}

}  // namespace
}  // namespace kerfpacket::tests
