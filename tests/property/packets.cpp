// Jobs by chance all the way to their pages: none ends the program, none prints what is no number or words on words.

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cstdlib>
#include <filesystem>
#include <iostream>
#include <optional>
#include <utility>

#include "../support/boxes.h"
#include "../support/kit.h"
#include "../support/random_job.h"
#include "job/read.h"
#include "measure/require.h"
#include "output/dump.h"
#include "plan/plan.h"
#include "sheets/packet.h"

namespace kerfpacket {
namespace {

using namespace measure::literals;

/// KERFPACKET_PACKETS asks for more.
int packets() {
    const char* wanted = std::getenv("KERFPACKET_PACKETS");  // NOLINT(concurrency-mt-unsafe): one thread
    return wanted != nullptr ? std::atoi(wanted) : 150;      // NOLINT(cert-err34-c): 0 fails the test
}

constexpr std::array languages{"es", "en", "es, en", "en, es"};

void words_keep_apart(const page::Document& packet, const std::string& language, const std::string& job) {
    for (const page::Page& page : packet.pages) {
        // A narrow page is of a roll, and printed out to the printer's own margin.
        const bool roll = std::min(page.width, page.height) < 8.25_in;
        for (const std::string& fault : tests::text_faults(page, roll ? 4_pt : 18_pt, roll ? 4_pt : 18_pt))
            ADD_FAILURE() << language << ", " << page.sheet << ": " << fault << '\n' << job;
    }
}

/// Jobs that once had words on words, found by more chance than a test run has time for.
TEST(FoundJobs, have_words_that_keep_apart) {
    int jobs = 0;
    for (const auto& file : std::filesystem::directory_iterator(KERFPACKET_SOURCE_DIR "/tests/property/found")) {
        const job::Reading reading = job::read_job(job::load(file.path()).value());
        ASSERT_TRUE(reading.diagnostics.empty()) << file;
        for (const char* language : languages)
            words_keep_apart(sheets::make_packet(plan::make_plan(reading.job).value(), tests::kit(language)), language,
                             file.path().filename());
        ++jobs;
    }
    EXPECT_GT(jobs, 4);
}

TEST(RandomPackets, have_pages_of_finite_figures_and_words_that_keep_apart) {
    tests::RandomJobs random(5150);
    int laid_out = 0, compared = 0;
    std::optional<std::pair<std::string, plan::Plan>> last;  // the revision before, a wholly other job
    for (int i = 0; i < packets(); ++i) {
        const job::Source source{"by chance", random.next()};
        const job::Reading reading = job::read_job(source);
        if (!reading.diagnostics.empty()) continue;
        const std::string language = languages[static_cast<std::size_t>(i) % languages.size()];
        std::optional<plan::Plan> plan;
        page::Document packet;
        try {
            const auto made = plan::make_plan(reading.job);
            if (!made) continue;
            plan = *made;
            packet = sheets::make_packet(*plan, tests::kit(language));
        } catch (const measure::Bug& bug) {
            ADD_FAILURE() << bug.what() << '\n' << source.text;
            continue;
        }
        const std::string text = job::normalised(reading.job);
        if (last && laid_out % 5 == 0) {
            const page::Document revised =
                sheets::make_packet({*plan, text}, {last->second, last->first}, tests::kit(language));
            // A change page and its line on the cover, which may go on to a further page for it.
            const auto others = [](const page::Document& document) {
                return std::count_if(document.pages.begin(), document.pages.end(), [](const page::Page& page) {
                    return page.sheet != "changes" && page.sheet != "cover";
                });
            };
            EXPECT_EQ(others(revised), others(packet)) << source.text;
            const auto changes = std::count_if(revised.pages.begin(), revised.pages.end(),
                                               [](const page::Page& page) { return page.sheet == "changes"; });
            EXPECT_GE(changes, 1) << source.text;
            const auto more = static_cast<std::ptrdiff_t>(revised.pages.size() - packet.pages.size()) - changes;
            EXPECT_TRUE(more == 0 || more == 1) << more << '\n' << source.text;
            for (const page::Page& page : revised.pages)
                if (page.sheet == "changes" || page.sheet == "cover")
                    for (const std::string& fault : tests::text_faults(page, 18_pt, 18_pt))
                        ADD_FAILURE() << language << ", " << page.sheet << ": " << fault << '\n' << source.text;
            ++compared;
        }
        ASSERT_GE(packet.pages.size(), 5U) << source.text;
        const std::string dump = output::dump(packet);
        for (const char* no_figure : {" nan", " -nan", ",nan", " inf", ",inf", " -inf"})
            ASSERT_EQ(dump.find(no_figure), std::string::npos) << source.text;
        words_keep_apart(packet, language, source.text);
        ++laid_out;
        last.emplace(text, *plan);
    }
    EXPECT_GT(compared, packets() / 20);
    std::cout << laid_out << " laid out\n";
    EXPECT_GT(laid_out, packets() / 3);
}

}  // namespace
}  // namespace kerfpacket
