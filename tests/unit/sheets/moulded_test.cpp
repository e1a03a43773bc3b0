// What the sheets of a moulded board say and draw: its section at full size, which edge is which, both webs.

#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>

#include "../../support/boxes.h"
#include "../../support/kit.h"
#include "../../support/languages.h"
#include "job/read.h"
#include "sheets/packet.h"

namespace kerfpacket::tests {
namespace {

using namespace measure::literals;

plan::Plan moulded_plan(const char* name) {
    const std::filesystem::path file = std::filesystem::path(KERFPACKET_SOURCE_DIR) / "tests" / "golden" / name;
    return plan::make_plan(job::read_job(job::load(file).value()).job).value();
}

std::vector<page::Page> pages_of(const page::Document& document, const std::string& sheet, const std::string& piece) {
    std::vector<page::Page> found;
    for (const page::Page& page : document.pages)
        if (page.sheet == sheet && page.piece == piece) found.push_back(page);
    return found;
}

std::string all_text(const std::vector<page::Page>& pages) {
    std::string all;
    for (const page::Page& page : pages)
        for (const page::TextItem& text : texts(page)) all += text.text + "\n";
    return all;
}

bool says(const std::string& all, const std::string& words) { return all.find(words) != std::string::npos; }

TEST(MouldedCard, SectionIsDrawnAtFullSize) {
    const plan::Plan plan = moulded_plan("moulded.toml");
    const page::Document document = sheets::make_packet(plan, kit());
    const plan::Piece& piece = plan.pieces.front();
    ASSERT_EQ(piece.id, "M");
    bool found = false;
    for (const page::Page& page : pages_of(document, "setup", "M"))
        for (const page::PathItem& item : paths(page, page::Role::outline)) {
            const geom::Rect bounds = item.path.bounds();
            if (measure::abs(bounds.width() - piece.width) > 0.001_mm) continue;
            if (measure::abs(bounds.height() - piece.cut.thickness) > 0.001_mm) continue;
            // The thin edge: the outline ends 3/8 in under the back, at the right.
            for (const geom::Segment& side : item.path.segments())
                if (measure::abs(side.from.x - bounds.high.x) < 0.001_mm &&
                    measure::abs(bounds.high.y - side.from.y - 0.375_in) < 0.001_mm)
                    found = true;
        }
    EXPECT_TRUE(found);
}

TEST(MouldedCard, SheetsSayWhichEdgeAndBothWebs) {
    const plan::Plan plan = moulded_plan("moulded.toml");
    const page::Document document = sheets::make_packet(plan, kit());
    const sheets::Tape tape(plan.header.units, kit().words);
    for (const plan::Piece& piece : plan.pieces) {
        const std::string setup = all_text(pages_of(document, "setup", piece.id));
        EXPECT_TRUE(says(setup, tape.exact(piece.cut.thinnest_web()))) << piece.id;
        EXPECT_TRUE(says(setup, tape.exact(piece.cut.web()))) << piece.id;
        const bool judged_thin = piece.moulded_use[1] > piece.moulded_use[0];
        EXPECT_TRUE(says(setup, kit().words(judged_thin ? "setup.bears_thin_note" : "setup.bears_thick_note")));
        for (const char* sheet : {"setup", "checklist"}) {
            const std::string all = all_text(pages_of(document, sheet, piece.id));
            const std::string edge = kit().words(piece.id == "M"   ? "piece.front_top_moulded"
                                                 : piece.id == "N" ? "piece.front_top_plain"
                                                                   : "piece.front_top");
            EXPECT_TRUE(says(all, edge)) << piece.id << ' ' << sheet;
        }
        for (const page::Page& page : document.pages)
            if (page.sheet == "setup" || page.sheet == "strain" || page.sheet == "checklist") {
                EXPECT_EQ(text_faults(page), std::vector<std::string>{}) << page.sheet << ' ' << page.piece;
            }
    }
    EXPECT_TRUE(says(all_text(pages_of(document, "setup", "L")), kit().words("setup.profile_untold")));
    EXPECT_TRUE(says(all_text(pages_of(document, "strips", "M")), kit().words("strip.front_edge_moulded")));
    EXPECT_TRUE(says(all_text(pages_of(document, "strips", "N")), kit().words("strip.front_edge_plain")));
}

TEST(MouldedCard, SpanishSheetsSayTheSame) {
    const plan::Plan plan = moulded_plan("moldurada.toml");
    const sheets::Kit& es = kit("es");
    const page::Document document = sheets::make_packet(plan, es);
    EXPECT_TRUE(says(all_text(pages_of(document, "setup", "Z")), es.words("piece.front_top_both")));
    EXPECT_TRUE(says(all_text(pages_of(document, "strain", "Z")), es.words("strain.next")));
    for (const page::Page& page : document.pages)
        if (page.sheet == "setup" || page.sheet == "strain" || page.sheet == "checklist") {
            EXPECT_EQ(text_faults(page), std::vector<std::string>{}) << page.sheet;
        }
}

TEST(Checklist, AsksForDepthAndWebInEveryBlock) {
    const plan::Plan plan = moulded_plan("moulded.toml");
    const page::Document document = sheets::make_packet(plan, kit());
    const sheets::Tape tape(plan.header.units, kit().words);
    for (const plan::Piece& piece : plan.pieces) {
        std::size_t asked = 0;
        const std::string depth = kit().words("checklist.depth", {{"depth", tape.exact_plain(piece.cut.depth)}});
        for (const page::Page& page : pages_of(document, "checklist", piece.id))
            for (const page::TextItem& text : texts(page)) asked += text.text == depth;
        EXPECT_EQ(asked, (piece.blank().kerfs.size() + 9) / 10) << piece.id;
    }
}

}  // namespace
}  // namespace kerfpacket::tests
