// The packet lies piece by piece, and each piece begins with a work order whose page numbers are true.

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <set>

#include "../../support/boxes.h"
#include "../../support/kit.h"
#include "../../support/languages.h"
#include "sheets/layout/page_index.h"
#include "sheets/packet.h"
#include "sheets/words/tape.h"
#include "sheets/words/wording.h"

namespace kerfpacket::sheets {
namespace {

using namespace tests;

plan::Plan alder() { return planned(job_of(alder_court())); }

bool holds(const page::Page& page, const std::string& words) {
    const auto all = texts(page);
    return std::any_of(all.begin(), all.end(), [&](const page::TextItem& text) { return text.text == words; });
}

std::vector<const page::Page*> orders_of(const page::Document& document) {
    std::vector<const page::Page*> found;
    for (const page::Page& page : document.pages)
        if (page.sheet == "work-order") found.push_back(&page);
    return found;
}

TEST(WorkOrder, EveryPieceHasOneAndItsSheetsLieTogetherBehindIt) {
    const plan::Plan plan = alder();
    ASSERT_GE(plan.pieces.size(), 2U);
    const page::Document document = make_packet(plan, kit());
    ASSERT_EQ(orders_of(document).size(), plan.pieces.size());
    std::vector<std::string> order;  // of the pieces, as their pages follow each other
    for (const page::Page& page : document.pages) {
        if (page.piece.empty()) continue;
        // What is of a whole opening, or of several boards, lies with the first of them.
        const auto first = std::find_if(plan.pieces.begin(), plan.pieces.end(),
                                        [&](const plan::Piece& piece) { return is_of(page.piece, piece.id); });
        const std::string name = first == plan.pieces.end() ? page.piece + "/1" : first->id;
        if (!order.empty() && order.back() == name) continue;
        EXPECT_EQ(page.sheet, "work-order") << page.piece;
        order.push_back(name);
    }
    std::vector<std::string> ids;
    for (const plan::Piece& piece : plan.pieces) ids.push_back(piece.id);
    EXPECT_EQ(order, ids);
}

TEST(WorkOrder, CoverAndSafetyCardComeFirst) {
    const page::Document document = make_packet(alder(), kit());
    std::vector<std::string> kinds;
    for (const page::Page& page : document.pages)
        if (kinds.empty() || kinds.back() != page.sheet) kinds.push_back(page.sheet);
    ASSERT_GE(kinds.size(), 4U);
    EXPECT_EQ(kinds[0], "cover");
    EXPECT_EQ(kinds[1], "safety");
    EXPECT_EQ(kinds[2], "stock") << "for two boards";
    EXPECT_EQ(kinds[3], "work-order");
}

/// Every number in the page column leads to a sheet that begins on that page and is of the piece, or of the whole job.
void expect_true_pages(const page::Document& document) {
    int numbers = 0;
    for (const page::Page* order : orders_of(document)) {
        std::set<std::string> told;
        for (const page::Item& item : order->items) {
            const auto* link = std::get_if<page::LinkItem>(&item);
            if (link == nullptr) continue;
            const page::Page& there = document.pages.at(link->page);
            told.insert(there.sheet);
            const std::string& piece = order->piece;
            const std::string opening = piece.substr(0, piece.find('/'));
            EXPECT_TRUE(there.piece.empty() || is_of(there.piece, piece) || there.piece == opening ||
                        (there.sheet == "form" && there.piece == opening + "/1"))
                << there.piece;
            if (link->page > 0) {
                const page::Page& before = document.pages.at(link->page - 1);
                EXPECT_FALSE(before.sheet == there.sheet && before.piece == there.piece) << "not its first page";
            }
            std::size_t last = link->page;
            while (last + 1 < document.pages.size() && document.pages[last + 1].sheet == there.sheet &&
                   document.pages[last + 1].piece == there.piece)
                ++last;
            const std::string words =
                std::to_string(link->page + 1) + (last > link->page ? "-" + std::to_string(last + 1) : std::string());
            const auto all = texts(*order);
            EXPECT_TRUE(std::any_of(all.begin(), all.end(),
                                    [&](const page::TextItem& text) {
                                        return text.text == words &&
                                               link->area.contains(in_text(text, text.advance / 2, {}));
                                    }))
                << words << " on the work order of " << piece;
            ++numbers;
        }
        // The lengths to cut stand on the tickets of the stock plan where there is one.
        const bool tickets = std::any_of(document.pages.begin(), document.pages.end(),
                                         [](const page::Page& page) { return page.sheet == "stock"; });
        for (const char* sheet : {tickets ? "stock" : "cover", "coupon", "setup", "strips", "checklist", "install"})
            EXPECT_TRUE(told.contains(sheet)) << order->piece << ": nothing tells of " << sheet;
    }
    EXPECT_GE(numbers, 8);
}

TEST(WorkOrder, ItsPageNumbersAreTrue) {
    for (const job::Job& job : {job_of(alder_court()), job_of(harbor_stair()), job_of(fern_street())})
        expect_true_pages(make_packet(planned(job), kit()));
}

TEST(WorkOrder, ItsPageNumbersAreTrueBehindAChangePage) {
    const plan::Plan plan = alder();
    plan::Plan before = plan;
    before.header.revision = "0";
    for (plan::Piece& piece : before.pieces) piece.whole.length += measure::Length::mm(1);
    const std::vector<job::Value> nothing;
    expect_true_pages(make_packet({plan, nothing}, {before, nothing}, kit()));
}

TEST(WorkOrder, AReprintKeepsTheNumbersOfTheWholePacket) {
    const plan::Plan plan = alder();
    const page::Document whole = make_packet(plan, kit());
    const page::Document part = make_packet(plan, kit(), {{"work-order"}, {}, {}, {}});
    ASSERT_EQ(part.pages.size(), orders_of(whole).size());
    for (std::size_t i = 0; i < part.pages.size(); ++i) {
        const page::Page& page = part.pages[i];
        EXPECT_EQ(page.number, orders_of(whole)[i]->number);
        for (const page::TextItem& text : texts(*orders_of(whole)[i])) EXPECT_TRUE(holds(page, text.text)) << text.text;
    }
}

TEST(WorkOrder, SaysTheFiguresOfItsBoard) {
    for (const job::Job& job : {job_of(alder_court()), job_of(harbor_stair())}) {
        const plan::Plan plan = planned(job);
        const page::Document document = make_packet(plan, kit());
        const Tape tape(plan.header.units, kit().words);
        for (std::size_t i = 0; i < plan.pieces.size(); ++i) {
            const plan::Piece& piece = plan.pieces[i];
            const page::Page& order = *orders_of(document).at(i);
            EXPECT_TRUE(holds(order, tape.exact(piece.width)));
            EXPECT_TRUE(holds(order, tape.with_unit(piece.blank().length)));
            EXPECT_TRUE(holds(order, std::to_string(piece.blank().kerfs.size()) + " cuts"));
            EXPECT_TRUE(holds(order, tape.exact(piece.cut.depth) + " deep"));
            EXPECT_TRUE(holds(order, "qty " + std::to_string(piece.quantity)));
        }
    }
}

TEST(WorkOrder, SaysWhichFaceAMitreLeavesShorter) {
    const plan::Plan plan = alder();
    const page::Document document = make_packet(plan, kit());
    int mitres = 0;
    for (std::size_t i = 0; i < plan.pieces.size(); ++i) {
        const plan::Blank& blank = plan.pieces[i].blank();
        const page::Page& order = *orders_of(document).at(i);
        std::string all;
        for (const page::TextItem& text : texts(order)) all += text.text + " ";
        for (std::size_t end = 0; end < 2; ++end) {
            const plan::BoardEnd& cut = blank.ends.at(end);
            if (cut.mitre.radians() == 0) continue;
            ++mitres;
            // Nearer to the other end is shorter.
            const measure::Length other = end == 0 ? blank.length : measure::Length();
            const bool shorter = measure::abs(other - cut.plain_face) < measure::abs(other - cut.kerf_face);
            EXPECT_NE(all.find(shorter ? "plain face shorter" : "plain face longer"), std::string::npos);
            EXPECT_TRUE(holds(order, degrees_text(cut.mitre, kit()) + "°"));
        }
    }
    EXPECT_GE(mitres, 2);
}

std::vector<std::string> pieces_with(const page::Document& document, const std::string& sheet) {
    std::vector<std::string> all;
    for (const page::Page& page : document.pages)
        if (page.sheet == sheet && (all.empty() || all.back() != page.piece)) all.push_back(page.piece);
    return all;
}

using Names = std::vector<std::string>;

TEST(AlikeBoards, ShareWhatReadsTheSameAndNothingElse) {
    const plan::Plan plan = alder();
    ASSERT_EQ(plan.pieces.size(), 2U);
    const std::string one = plan.pieces[0].id, two = plan.pieces[1].id, both = one + "+2";
    const page::Document document = make_packet(plan, kit());
    EXPECT_EQ(pieces_with(document, "setup"), Names{both});
    EXPECT_EQ(pieces_with(document, "install"), Names{both});
    for (const char* sheet : {"work-order", "strips", "checklist"})
        EXPECT_EQ(pieces_with(document, sheet), (Names{one, two})) << sheet;
    bool tagged = false;
    for (const page::Page& page : document.pages) tagged = tagged || (page.sheet == "setup" && holds(page, both));
    EXPECT_TRUE(tagged) << "the card says whose it is";
}

TEST(AlikeBoards, ThatAreCutDifferentlyShareNoCard) {
    plan::Plan plan = alder();
    plan.pieces[1].cut.depth += measure::Length::inches(1.0 / 16);
    const page::Document document = make_packet(plan, kit());
    EXPECT_EQ(pieces_with(document, "setup"), (Names{plan.pieces[0].id, plan.pieces[1].id}));
    EXPECT_EQ(pieces_with(document, "coupon"), (Names{plan.pieces[0].id, plan.pieces[1].id}));
}

TEST(AlikeBoards, BoardsOfASheet) {
    EXPECT_TRUE(is_of("N/1", "N/1"));
    EXPECT_TRUE(is_of("N/1+2", "N/1"));
    EXPECT_TRUE(is_of("N/1+2", "N/2"));
    EXPECT_FALSE(is_of("N/1+2", "N/12"));
    EXPECT_FALSE(is_of("N/12", "N/1"));
    EXPECT_FALSE(is_of("M/1+2", "N/2"));
    EXPECT_FALSE(is_of("A+2", "2"));
    EXPECT_FALSE(is_of("", "A"));
}

class WorkOrders : public testing::TestWithParam<std::string> {};

TEST_P(WorkOrders, TakeOnePageEach) {
    for (const job::Job& job : {job_of(alder_court()), job_of(harbor_stair()), job_of(fern_street())}) {
        const plan::Plan plan = planned(job);
        EXPECT_EQ(orders_of(make_packet(plan, kit(GetParam()))).size(), plan.pieces.size());
    }
}

INSTANTIATE_TEST_SUITE_P(Both, WorkOrders, testing::ValuesIn(tests::languages()));

/// Half round, narrow finish radius 18, jamb 8 deep, 20 degrees, 1/2 in MDF.
job::Opening splayed(job::Edge measured, job::Toward toward) {
    job::Opening opening =
        semicircle(measured == job::Edge::narrow ? 36_in : 36_in + 16_in * std::tan(std::numbers::pi / 9));
    opening.measured_to = job::Surface::finish;
    opening.legs = {{at_line(60_in, 53), at_line(60_in, 53)}};
    opening.liner.width.value = 8_in;
    opening.liner.thickness.value = 0.5_in;
    opening.splay = job::Splay{at_line(measure::Angle::degrees(20), 41), measured, toward, {40, 1}};
    return opening;
}

// Whichever edge was measured, the template is of the room's: by the right triangles of the jamb (8 tan 20 wider at
// each side where it is the wide one) and of the slanted board (1/2 / cos 20 thick in the plane of the wall).
TEST(WorkOrder, ASplayedOpeningIsCheckedByTheEdgeThatItsTemplateShows) {
    const Tape tape(measure::Unit::inch, kit().words);
    const double angle = std::numbers::pi / 9;
    for (const job::Edge measured : {job::Edge::narrow, job::Edge::wide})
        for (const job::Toward toward : {job::Toward::room, job::Toward::away}) {
            const double wider = toward == job::Toward::room ? 8 * std::tan(angle) : 0;
            const measure::Length radius = measure::Length::inches(18 + wider + 0.5 / std::cos(angle));
            const page::Document document = make_packet(planned(job_of(splayed(measured, toward))), kit());
            const page::Page& order = *orders_of(document).at(0);
            EXPECT_TRUE(holds(order, "span " + tape.with_unit(radius * 2)));
            std::string how;
            for (const page::TextItem& text : texts(order)) how += text.text + " ";
            EXPECT_NE(how.find("rise " + tape.with_unit(radius)), std::string::npos) << how;
            const auto on_template = [&](const page::Page& page) {
                return page.sheet == "template" && holds(page, tape.with_unit(radius * 2)) &&
                       holds(page, tape.with_unit(radius));
            };
            EXPECT_TRUE(std::any_of(document.pages.begin(), document.pages.end(), on_template));
        }
}

// At the saw the wide edge lies at the fence. Where it is the room's, the board lies there turned about: its end at the
// left is the right one from the room.
TEST(ZeroEnd, OfASplayedBoardNamesItsSpringAsItIsSeenFromTheRoom) {
    for (const job::End zero : {job::End::left, job::End::right})
        for (const job::Toward toward : {job::Toward::room, job::Toward::away}) {
            job::Opening opening = splayed(job::Edge::narrow, toward);
            opening.liner.zero = zero;
            const plan::Plan plan = planned(job_of(opening));
            const std::string told = zero_end(plan.pieces.at(0), kit());
            EXPECT_NE(told.find(zero == job::End::left ? "the LEFT spring" : "the RIGHT spring"), std::string::npos)
                << told;
            const bool at_left = (zero == job::End::left) != (toward == job::Toward::room);
            EXPECT_NE(told.find(at_left ? "zero at the left " : "zero at the right "), std::string::npos) << told;
        }
}

// Arcs struck on the template are those of a curve that is on it: measured on the far side, they would be another
// arch's.
TEST(WorkOrder, ASplayedOpeningsTemplateTellsTheArcsOfItsOwnEdgeAlone) {
    for (const job::Edge measured : {job::Edge::narrow, job::Edge::wide})
        for (const job::Toward toward : {job::Toward::room, job::Toward::away}) {
            job::Opening opening = splayed(measured, toward);
            opening.shape.value = job::Shape::three_centred;
            opening.span.value = 60_in;
            opening.rise.value = 22_in;
            const page::Document document = make_packet(planned(job_of(opening)), kit());
            const bool told = std::any_of(document.pages.begin(), document.pages.end(), [](const page::Page& page) {
                return page.sheet == "template" && holds(page, kit().words("template.trammel"));
            });
            EXPECT_EQ(told, (measured == job::Edge::wide) == (toward == job::Toward::room));
        }
}

}  // namespace
}  // namespace kerfpacket::sheets
