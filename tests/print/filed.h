#pragma once
// A packet that carries all that a packet can carry: shop, printer, words, and the revision before.

#include <cstdlib>

#include "support/program.h"
#include "unit/cli/session.h"

namespace kerfpacket::tests {

/// A job with a shop's saw, words and a measured printer, built as revision A, then changed and built as revision B.
class FiledPacket {
public:
    FiledPacket() {
        setenv("XDG_CONFIG_HOME", (folder_ / "config").c_str(), 1);  // NOLINT(concurrency-mt-unsafe): one thread
        fs::create_directories(folder_ / "config/kerfpacket/printers");
        spill(profile(), profile_text("0.99600"));
        spill(folder_ / "shop.toml", "words = \"ours\"\n[printer]\nprofile = \"office\"\n");
        fs::create_directories(folder_ / "ours/en");
        spill(words(), "name = [\"Weir & Daughters\"]\n");
        spill(job(), with("A", "6 in"));
        build();
        spill(job(), with("B", "6 1/8 in"));
        build();
    }

    static std::string with(const std::string& revision, const std::string& rise) {
        std::string text = good_job;
        text.replace(text.find("\"B\""), 3, '"' + revision + '"');
        // A whole template, so that --half makes a difference.
        return text.replace(text.find("\"6 in\""), 6, '"' + rise + '"') + "[opening.template]\nhalf = false\n";
    }
    static std::string profile_text(const std::string& across) {
        return "name = \"office\"\nfeed = \"short edge\"\nacross = " + across +
               "\nalong = 1.00200\n[margins]\nleft = \"6 mm\"\nright = \"6 mm\"\nleading = \"6 mm\"\n"
               "trailing = \"6 mm\"\n";
    }

    fs::path folder() const { return folder_.path(); }
    fs::path job() const { return folder_ / "arch.toml"; }
    fs::path pdf() const { return folder_ / "arch.pdf"; }
    fs::path profile() const { return folder_ / "config/kerfpacket/printers/office.toml"; }
    fs::path words() const { return folder_ / "ours/en/shop.toml"; }
    std::string bytes() const { return slurp(pdf()); }

    Outcome build(const std::vector<std::string>& more = {}) const {
        std::vector<std::string> all = {"build", job().string()};
        all.insert(all.end(), more.begin(), more.end());
        Outcome outcome = run_in_process(all);
        if (outcome.status != 0) throw std::runtime_error(outcome.err);
        return outcome;
    }
    static Outcome verify(const fs::path& packet) { return run_in_process({"verify", packet.string()}); }

    /// Every file below the folder with its bytes, to see that nothing was written.
    std::vector<std::pair<std::string, std::string>> everything() const {
        std::vector<std::pair<std::string, std::string>> all;
        for (const fs::directory_entry& entry : fs::recursive_directory_iterator(folder_.path()))
            if (entry.is_regular_file()) all.emplace_back(entry.path().string(), slurp(entry.path()));
        std::sort(all.begin(), all.end());
        return all;
    }

private:
    Folder folder_;
};

}  // namespace kerfpacket::tests
