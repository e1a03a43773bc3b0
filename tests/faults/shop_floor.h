#pragma once
// Folders as they stand before a command runs, and what may have become of them after.

#include <gtest/gtest.h>

#include <cstdlib>
#include <functional>
#include <map>

#include "unit/cli/session.h"

namespace kerfpacket::tests {

/// All that stands in a folder, by name. What nobody sees (".kerfpacket-...") is left out where it may be left behind.
inline std::map<std::string, std::string> contents(const fs::path& folder, bool hidden = true) {
    std::map<std::string, std::string> all;
    for (const fs::directory_entry& entry : fs::recursive_directory_iterator(folder)) {
        const std::string name = fs::relative(entry.path(), folder).string();
        if (!hidden && entry.path().filename().string().starts_with(".kerfpacket-")) continue;
        all[name] = entry.is_regular_file() ? slurp(entry.path()) : "(no file)";
    }
    return all;
}

/// Whether every case is to be run, or a sample.
inline bool all_cases() {
    const char* asked = std::getenv("KERFPACKET_FAULTS");  // NOLINT(concurrency-mt-unsafe): one thread
    return asked != nullptr && std::string(asked) == "all";
}

inline std::string with(std::string text, const std::string& what, const std::string& by) {
    return text.replace(text.find(what), what.size(), by);
}

inline std::string job_of(const std::string& revision) {
    return with(with(good_job, "revision = \"B\"", "revision = \"" + revision + "\""), "span = \"72 in\"",
                "span = \"7" + std::to_string(revision.front() - 'A') + " in\"");
}

inline int words_in(const std::string& text, const std::string& part) {
    int count = 0;
    for (std::size_t at = text.find(part); at != std::string::npos; at = text.find(part, at + 1)) ++count;
    return count;
}

/// A command and the folder it runs in.
struct Scene {
    std::string name;
    std::vector<std::string> words;  ///< "@" stands for the folder
    std::function<void(const fs::path&)> set;
    std::string input{};  ///< lines that it is given
    std::string kept{};   ///< what it may leave behind when it is broken off, to go on later

    std::vector<std::string> command(const fs::path& folder) const {
        std::vector<std::string> all = words;
        for (std::string& word : all)
            if (word.starts_with("@")) word = folder.string() + word.substr(1);
        return all;
    }
};

/// Revision A as built, its job file now B.
inline void set_revision_a(const fs::path& folder) {
    static const std::string packet = [] {
        const Folder own;
        spill(own / "job.toml", job_of("A"));
        if (run_in_process({"build", (own / "job.toml").string()}).status != 0) throw std::runtime_error("no packet");
        return slurp(own / "job.pdf");
    }();
    spill(folder / "job.toml", job_of("B"));
    spill(folder / "job.pdf", packet);
}

/// What is asked of the arch that the sheet does not tell.
inline const char* const sheet_answers = "\n2026-09-14\n\n\n\nmdf\n3/8 in\n\n\n\n\n10 in\n0.118\n\n\n\n\n\n";

inline std::vector<Scene> scenes() {
    const auto job = [](const fs::path& folder) { spill(folder / "job.toml", job_of("A")); };
    const auto shop = [job](const fs::path& folder) {
        job(folder);
        spill(folder / "shop.toml", "words = \"ours\"\n");
        fs::create_directories(folder / "ours/en");
        spill(folder / "ours/en/shop.toml", "name = [\"Weir & Daughters\"]\n");
    };
    const auto labels = [](const fs::path& folder) {
        spill(folder / "job.toml",
              with(job_of("A"), "[[opening]]", "[printer.labels]\nmedia = \"custom_roll_62mm\"\n\n[[opening]]"));
    };
    const auto none = [](const fs::path& /*folder*/) {};
    const auto sheet = [](const fs::path& folder) {
        fs::copy_file(fs::path(KERFPACKET_SOURCE_DIR) / "tests/fuzz/corpus-form/arch.pdf", folder / "sheet.pdf");
    };
    return {{"build", {"build", "@/job.toml"}, shop},
            {"revise", {"build", "@/job.toml"}, set_revision_a},
            {"revise by force", {"build", "@/job.toml", "--force"}, set_revision_a},
            {"reprint", {"build", "@/job.toml", "--only", "strips"}, job},
            {"preview", {"preview", "@/job.toml", "--dpi", "20", "--out", "@/pictures"}, job},
            {"printer-check", {"printer-check", "--out", "@/check.pdf"}, none},
            {"profile",
             {"printer-check", "--profile", "laser", "--first", "top", "--level", "7 in", "--upright", "9 in"},
             none},
            {"labels", {"labels", "@/job.toml"}, labels},
            {"bid", {"bid", "@/job.toml"}, job},
            {"start", {"start", "@/arch.toml", "--example", "segmental"}, none},
            {"start from a sheet",
             {"start", "--from", "@/sheet.pdf", "@/arch.toml"},
             sheet,
             sheet_answers,
             "arch.toml.part"},
            {"field-sheet", {"field-sheet", "--out", "@/form.pdf"}, none}};
}

}  // namespace kerfpacket::tests
