// Every operation fails once, in this process: nothing is lost, and what failed is told by its name.

#include "disk/calls.h"

#include <gtest/gtest.h>

#include <cerrno>
#include <iostream>
#include <sstream>

#include <fmt/format.h>

#include "faults/shop_floor.h"
#include "support/variable.h"

namespace kerfpacket::tests {
namespace {

using disk::Operation;

/// Counts the operations; one of them fails.
struct Failing {
    int number = 0;  ///< 0: none
    int error = EIO;
    int count = 0;
    Operation operation{};
    fs::path what;

    disk::Gate gate() {
        return [this](Operation asked, const fs::path& on) {
            if (++count != number) return 0;
            operation = asked;
            what = on;
            return error;
        };
    }
};

struct Counts {
    int cases = 0, refused = 0, written = 0, unharmed = 0;
};

/// What stands in for the standard input while it lives.
class Input {
public:
    explicit Input(std::istream& from) : before_(std::cin.rdbuf(from.rdbuf())) { std::cin.clear(); }
    Input(const Input&) = delete;
    Input& operator=(const Input&) = delete;
    ~Input() { std::cin.rdbuf(before_); }

private:
    std::streambuf* before_;
};

class Sweep {
public:
    explicit Sweep(const Scene& scene) : scene_(scene) {}

    Counts run() {
        {
            const Folder folder;
            scene_.set(folder.path());
            Failing none;
            done_ = started(folder, none);
            operations_ = none.count;
            EXPECT_EQ(done_.status, 0) << done_.err;
            after_ = contents(folder.path());
        }
        // In a sample the last operations are all there: it is they that write.
        const int step = all_cases() ? 1 : std::max(1, operations_ / 25);
        for (int i = 1; i <= operations_; i += i + 12 < operations_ ? step : 1)
            for (const int error : {EIO, EACCES}) fail(i, error);
        return counts_;
    }
    int operations() const { return operations_; }

private:
    Outcome started(const Folder& folder, Failing& failing) const {
        const Variable home("XDG_CONFIG_HOME", folder.path().string());
        const disk::Gated gated(failing.gate());
        std::istringstream lines(scene_.input);
        const Input input(lines);
        return run_in_process(scene_.command(folder.path()));
    }

    void fail(int number, int error) {
        const Folder folder;
        scene_.set(folder.path());
        const auto before = contents(folder.path());
        Failing failing;
        failing.number = number;
        failing.error = error;
        const Outcome outcome = started(folder, failing);
        auto after = contents(folder.path());
        const bool kept = !scene_.kept.empty() && after.erase(scene_.kept) > 0;
        const std::string which =
            fmt::format("{}, operation {} of {} ({} on {}), error {}\n{}{}", scene_.name, number, operations_,
                        static_cast<int>(failing.operation), failing.what.string(), error, outcome.out, outcome.err);
        ++counts_.cases;
        if (outcome.status == 2) {
            ++counts_.refused;
            EXPECT_TRUE(after == before) << which;
            EXPECT_TRUE(names(outcome.err, folder, failing.what)) << which;
        } else {
            // What does not matter may fail; what is in place without the disk's word for it is a caution.
            ++(outcome.status == 3 ? counts_.written : counts_.unharmed);
            EXPECT_TRUE(outcome.status == 0 || outcome.status == 3) << which;
            expect_done(after, which);
            EXPECT_EQ(outcome.status == 3 && !kept, outcome.err.find("caution: written, but") != std::string::npos)
                << which;
            EXPECT_EQ(kept, outcome.err.find("could not be removed") != std::string::npos) << which;
        }
    }

    /// The file that failed, or that which was to be written, stands in the message once.
    bool names(const std::string& said, const Folder& folder, const fs::path& what) const {
        const bool ours = what.filename().string().starts_with(".kerfpacket-");
        if (!what.empty() && !ours) return said.find(what.string()) != std::string::npos;
        return said.find(folder.path().string()) != std::string::npos;
    }

    /// As after a run in which nothing fails, but for what is hidden.
    void expect_done(std::map<std::string, std::string> after, const std::string& which) const {
        std::erase_if(after, [](const auto& file) { return file.first.find(".kerfpacket-") != std::string::npos; });
        EXPECT_TRUE(after == after_) << which;
    }

    const Scene& scene_;
    Outcome done_;
    int operations_ = 0;
    std::map<std::string, std::string> after_;
    Counts counts_;
};

TEST(Faults, EveryOperationFailsOnce) {
    Counts all;
    for (const Scene& scene : scenes()) {
        Sweep sweep(scene);
        const Counts counts = sweep.run();
        std::cout << fmt::format("{}: {} operations, {} cases: {} refused, {} written with a caution, {} unharmed\n",
                                 scene.name, sweep.operations(), counts.cases, counts.refused, counts.written,
                                 counts.unharmed);
        EXPECT_GT(counts.refused, 0) << scene.name;
        all.cases += counts.cases;
    }
    std::cout << all.cases << " cases\n";
    EXPECT_GT(all.cases, 300);
}

// The Failure that a gate makes is thrown from the very operation, whatever it is.
TEST(Faults, AGateIsAskedForEveryKindOfOperation) {
    std::map<Operation, int> seen;
    const Folder folder;
    const Variable home("XDG_CONFIG_HOME", folder.path().string());
    spill(folder / "job.toml", job_of("A"));
    fs::create_directories(folder / "empty");
    {
        const disk::Gated gated([&](Operation asked, const fs::path& /*on*/) {
            ++seen[asked];
            return 0;
        });
        EXPECT_EQ(run_in_process({"build", (folder / "job.toml").string()}).status, 0);
        fs::permissions(folder / "job.pdf", fs::perms{0600});
        EXPECT_EQ(run_in_process({"build", (folder / "job.toml").string()}).status, 0);
        EXPECT_EQ(run_in_process({"preview", (folder / "job.toml").string(), "--dpi", "10"}).status, 0);
    }
    for (const Operation one : {Operation::look, Operation::open, Operation::read, Operation::write, Operation::flush,
                                Operation::lock, Operation::rename, Operation::remove, Operation::make_folder,
                                Operation::list, Operation::pipe, Operation::fork, Operation::wait})
        EXPECT_GT(seen[one], 0) << static_cast<int>(one);
    EXPECT_EQ(fs::status(folder / "job.pdf").permissions(), fs::perms{0600});
}

}  // namespace
}  // namespace kerfpacket::tests
