// What is cut to, joined on or measured outlasts photocopying: on two models of a copier lines of 0.25 pt broke up and
// those of 0.5 pt stayed (layout system; common practice, no source).

#include <gtest/gtest.h>

#include "print/content.h"
#include "print/packet.h"

namespace kerfpacket::tests {
namespace {

using namespace measure::literals;

/// The thinnest line of a part of a packet, and how many lines it has.
std::pair<Length, std::size_t> thinnest(const BuiltPacket& packet, const std::string& sheet) {
    const Folder folder;
    const fs::path pdf = folder / "part.pdf";
    const Outcome outcome = run_program(
        {KERFPACKET_PROGRAM, "build", packet.job().string(), "--only", sheet, "--force", "--out", pdf.string()});
    if (outcome.status != 0 && outcome.status != 3) throw std::runtime_error(outcome.err);
    Length least = 100_pt;
    std::size_t lines = 0;
    for (const PrintedPage& page : read_content(pdf))
        for (const Mark& mark : page.marks) {
            if (mark.width == 0_pt) continue;
            least = std::min(least, mark.width);
            ++lines;
        }
    return {least, lines};
}

TEST(Weights, NoLineOfAStripOrATemplateIsThinnerThanACopierKeeps) {
    const std::vector<std::pair<const char*, std::vector<std::string>>> jobs{{"two-rows", {"strips"}},
                                                                             {"metric-right", {"strips"}},
                                                                             {"dos-idiomas", {"strips", "template"}},
                                                                             {"spliced-right-edge-es", {"strips"}}};
    for (const auto& [name, sheets] : jobs) {
        const BuiltPacket packet(golden_job(name), {"--force"});
        for (const std::string& sheet : sheets) {
            const auto [least, lines] = thinnest(packet, sheet);
            EXPECT_GE(least.points(), 0.5 - 1e-6) << name << ", " << sheet;
            EXPECT_GT(lines, 20U) << name << ", " << sheet;
        }
    }
}

}  // namespace
}  // namespace kerfpacket::tests
