// out-samples/every-key.toml, with the shop file beside it, holds every key that the readers know, and plans. The list
// of keys is the readers' own: each table is given a key that nobody knows, and what they say is known there counts.

#include <gtest/gtest.h>

#include <map>
#include <set>
#include <sstream>

#include <toml++/toml.h>

#include "job/keys.h"
#include "job/read.h"
#include "support/program.h"
#include "text/toml.h"

namespace kerfpacket::tests {
namespace {

/// Titles of tables, as messages have them, and keys.
using Keys = std::map<std::string, std::set<std::string>>;

const fs::path samples = fs::path(KERFPACKET_SOURCE_DIR) / "out-samples";
/// Far from every key, so that no near miss is suggested in place of the list.
const std::string unknown = "qqqqqqqqqqqq";
constexpr std::string_view known_here = "known here: ";

void note_keys(const toml::table& table, const std::string& path, bool repeated, const std::string& top, Keys& keys) {
    const std::string title = path.empty() ? top : repeated ? "[[" + path + "]]" : "[" + path + "]";
    for (const auto& [key, node] : table) {
        const std::string name(key.str());
        keys[title].insert(name);
        const std::string below = path.empty() ? name : path + "." + name;
        if (const auto* inner = node.as_table()) note_keys(*inner, below, false, top, keys);
        if (const auto* list = node.as_array())
            for (const auto& element : *list)
                if (const auto* inner = element.as_table()) note_keys(*inner, below, true, top, keys);
    }
}

/// The keys that stand in a text.
Keys keys_in(const std::string& text, const std::string& top) {
    Keys keys;
    const auto root = text::parse(text);
    if (!root) ADD_FAILURE() << root.error().description;
    else note_keys(*root, "", false, top, keys);
    return keys;
}

/// The text with a key that nobody knows in each of its tables, and above the first.
std::string probed(const std::string& text) {
    std::string all = unknown + " = 0\n";
    std::istringstream lines(text);
    for (std::string line; std::getline(lines, line);) {
        all += line + "\n";
        if (line.starts_with("[")) all += unknown + " = 0\n";
    }
    return all;
}

/// What the readers say is known in each table of a probed text.
Keys keys_of(const job::Diagnostics& told, const std::string& top) {
    Keys keys;
    for (const job::Diagnostic& one : told) {
        const std::size_t in = one.message.find(unknown + "\" in ");
        if (in == std::string::npos) continue;
        const std::string title = one.message.substr(in + unknown.size() + 5);
        EXPECT_TRUE(one.hint.starts_with(known_here)) << title << ": " << one.hint;
        std::string list = one.hint.substr(std::min(known_here.size(), one.hint.size()));
        for (std::size_t comma; (comma = list.find(", ")) != std::string::npos; list.erase(0, comma + 2))
            keys[title].insert(list.substr(0, comma));
        keys[title].insert(list);
    }
    EXPECT_TRUE(keys.contains(top));
    return keys;
}

struct Sample {
    std::string job = slurp(samples / "every-key.toml");
    std::string shop = slurp(samples / "every-key-shop.toml");
};

const std::string job_title = "the job file";
const std::string shop_title = "the shop file";

Keys known_keys(const Sample& sample) {
    Keys known = keys_of(job::read_job({"job.toml", probed(sample.job)}).diagnostics, job_title);
    for (const auto& [title, keys] :
         keys_of(job::read_shop({"shop.toml", probed(sample.shop)}).diagnostics, shop_title))
        known[title].insert(keys.begin(), keys.end());
    return known;
}

/// "[saw] travel" for every key that is known and does not stand.
std::set<std::string> lacking(const Sample& sample) {
    Keys given = keys_in(sample.job, job_title);
    for (const auto& [title, keys] : keys_in(sample.shop, shop_title)) given[title].insert(keys.begin(), keys.end());
    std::set<std::string> all;
    for (const auto& [title, keys] : known_keys(sample))
        for (const std::string& key : keys)
            if (!given[title].contains(key)) all.insert(title + " " + key);
    return all;
}

/// The text without the lines that begin with these words.
std::string without(const std::string& text, const std::string& begin) {
    std::string rest;
    std::istringstream lines(text);
    for (std::string line; std::getline(lines, line);)
        if (!line.starts_with(begin)) rest += line + "\n";
    EXPECT_NE(rest, text) << begin;
    return rest;
}

TEST(EveryKey, StandsInTheSample) { EXPECT_EQ(lacking({}), std::set<std::string>{}); }

TEST(EveryKey, OneThatIsTakenOutIsMissed) {
    Sample sample;
    sample.job = without(sample.job, "tick = ");
    sample.job = without(sample.job, "reverse_radius = ");
    sample.job = without(sample.job, "also_in = ");
    sample.shop = without(sample.shop, "trial_ends = ");
    sample.shop = without(sample.shop, "tape = ");
    EXPECT_EQ(lacking(sample),
              (std::set<std::string>{"[opening.liner] tick", "[wall.board] tick", "[[opening]] reverse_radius",
                                     "[job] also_in", "[saw] trial_ends", "the shop file tape"}));
}

TEST(EveryKey, ATableThatIsTakenOutIsMissed) {
    Sample sample;
    sample.job = without(without(sample.job, "[opening.template]"), "sheets = ");
    sample.job = without(sample.job, "half = ");
    EXPECT_EQ(lacking(sample), (std::set<std::string>{"[[opening]] template"}));
}

TEST(EveryKey, HasItsPlaceInTheDescription) {
    const std::string description = slurp(fs::path(KERFPACKET_SOURCE_DIR) / "src/job/README.md");
    int looked_for = 0;
    for (const auto& [title, keys] : known_keys({}))
        for (const std::string& key : keys) {
            ++looked_for;
            EXPECT_NE(description.find("`" + key + "`"), std::string::npos) << title << " " << key;
        }
    EXPECT_GT(looked_for, 100);
}

/// "[opening.liner]" and "[[opening]]" as "opening.liner" and "opening"; the file itself as "".
std::string inside(const std::string& title) {
    const std::size_t from = title.find_first_not_of('[');
    return from == 0 ? "" : title.substr(from, title.find(']') - from);
}

/// By the names of the tables, in the job file and the shop file together.
Keys in_the_table_of_keys() {
    Keys keys;
    for (const auto& tables : {job::job_keys(), job::shop_keys()})
        for (const job::KnownTable& table : tables)
            for (const job::KeyNote& note : table.keys) keys[table.name].insert(note.key);
    return keys;
}

// What schema and manual page are made from is found with empty tables, this with all values: they agree.
TEST(EveryKey, IsInTheTableOfKeys) {
    Keys known;
    for (const auto& [title, keys] : known_keys({})) known[inside(title)].insert(keys.begin(), keys.end());
    EXPECT_EQ(in_the_table_of_keys(), known);
}

/// The commands that the head of the sample gives, in order.
std::vector<std::string> commands() {
    constexpr std::string_view begin = "#     kerfpacket ";
    std::vector<std::string> found;
    std::istringstream lines(Sample().job);
    for (std::string line; std::getline(lines, line);)
        if (line.starts_with(begin)) found.push_back(quoted(KERFPACKET_PROGRAM) + " " + line.substr(begin.size()));
    return found;
}

TEST(EveryKey, IsPlannedAsItsHeadSays) {
    const Folder folder;
    const std::string before =
        "cd " + quoted(samples.string()) + " && XDG_CONFIG_HOME=" + quoted(folder.path().string());
    const std::vector<std::string> all = commands();
    ASSERT_EQ(all.size(), 4U);
    for (const std::string& command : all) {
        const Outcome outcome = run_program({"sh", "-c", command}, before);
        EXPECT_TRUE(outcome.status == 0 || outcome.status == 3) << command << "\n" << outcome.err;
        EXPECT_EQ(outcome.err.find("do not cut"), std::string::npos) << outcome.err;
    }
}

}  // namespace
}  // namespace kerfpacket::tests
