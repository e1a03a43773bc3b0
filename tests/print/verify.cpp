// verify: intact packets are told so, and every one that was changed is caught, sealed again or not.

#include "cli/verify.h"

#include <gtest/gtest.h>

#include <fmt/format.h>

#include "output/seal.h"
#include "print/filed.h"
#include "print/packet.h"
#include "print/tamper.h"

namespace kerfpacket::tests {
namespace {

bool holds(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

const FiledPacket& filed() {
    static const FiledPacket packet;
    return packet;
}

/// Another packet of this program.
const std::string& other_packet() {
    static const std::string bytes = [] {
        const Folder folder;
        spill(folder / "other.toml", harbor_stair("1/2 in"));
        const Outcome built = run_in_process({"build", (folder / "other.toml").string()});
        if (built.status != 0 && built.status != 3) throw std::runtime_error(built.err);
        return slurp(folder / "other.pdf");
    }();
    return bytes;
}

Outcome verified(const std::string& bytes, const std::vector<std::string>& more = {}) {
    const Folder folder;
    spill(folder / "filed.pdf", bytes);
    std::vector<std::string> words = {"verify", (folder / "filed.pdf").string()};
    words.insert(words.end(), more.begin(), more.end());
    Outcome outcome = run_in_process(words);
    // Nothing is written, and the packet stands as it was.
    EXPECT_EQ(std::distance(fs::directory_iterator(folder.path()), fs::directory_iterator()), 1);
    EXPECT_EQ(slurp(folder / "filed.pdf"), bytes);
    return outcome;
}

TEST(Verify, APacketAsItWasWrittenIsIntact) {
    const Outcome outcome = verified(filed().bytes());
    EXPECT_EQ(outcome.status, 0) << outcome.err;
    EXPECT_TRUE(holds(outcome.out, "filed.pdf: intact; made again from its own job file it comes out the same\n"))
        << outcome.out;
    EXPECT_TRUE(holds(outcome.out, "job K-7, \"Mill Lane arch\", revision B, fingerprint ")) << outcome.out;
    EXPECT_TRUE(holds(outcome.out, "written by kerfpacket ")) << outcome.out;
    EXPECT_EQ(outcome.err, "");
}

TEST(Verify, EverySampleIsIntact) {
    for (const fs::path& sample : sample_folders()) {
        const Folder folder;
        const std::string packet = (folder / "packet.pdf").string();
        const int built = run_in_process({"build", (sample / "job.toml").string(), "--out", packet}).status;
        ASSERT_TRUE(built == 0 || built == 3) << sample;
        const Outcome outcome = run_in_process({"verify", packet, (sample / "job.toml").string()});
        EXPECT_EQ(outcome.status, 0) << sample << outcome.out << outcome.err;
        EXPECT_TRUE(holds(outcome.out, "job.toml: would print the same sheets\n")) << outcome.out;
    }
}

TEST(Verify, NeedsNothingButThePacket) {
    // Neither job, nor shop file, nor printer, nor words of the shop are where they were.
    setenv("XDG_CONFIG_HOME", "/nonexistent", 1);  // NOLINT(concurrency-mt-unsafe): one thread
    EXPECT_EQ(verified(filed().bytes()).status, 0);
    setenv("XDG_CONFIG_HOME", (filed().folder() / "config").c_str(), 1);  // NOLINT(concurrency-mt-unsafe): one thread
}

TEST(Verify, AReprintIsMadeAgainAsAReprint) {
    const std::string part = (filed().folder() / "part.pdf").string();
    for (const std::vector<std::string>& which : std::vector<std::vector<std::string>>{
             {"--only", "strips,checklist"}, {"--pages", "2,4-5"}, {"--from-cut", "40"}, {"--strip", "2"}}) {
        std::vector<std::string> words = which;
        words.insert(words.end(), {"--out", part});
        filed().build(words);
        const Outcome outcome = verified(slurp(part));
        EXPECT_EQ(outcome.status, 0) << outcome.out << outcome.err;
        EXPECT_TRUE(holds(outcome.out, "a reprint of ")) << outcome.out;
    }
    fs::remove(part);
}

TEST(Verify, ChoicesOfTheCommandLineAreKept) {
    const std::string packet = (filed().folder() / "es.pdf").string();
    filed().build({"--media", "iso_a4_210x297mm", "--half", "--language", "es", "--out", packet});
    EXPECT_EQ(verified(slurp(packet)).status, 0);
    // The job on the disk is asked as it was printed.
    EXPECT_EQ(verified(slurp(packet), {filed().job().string()}).status, 0);
    fs::remove(packet);
}

using Change = std::function<std::string(const std::string&)>;
using Changes = std::vector<std::pair<std::string, Change>>;

std::string flipped(std::string bytes, std::size_t at) {
    bytes.at(at) = static_cast<char>(static_cast<unsigned char>(bytes.at(at)) ^ 1U);
    return bytes;
}

/// What anybody can do to a file.
Changes plain_changes() {
    Changes all;
    for (std::size_t i = 1; i <= 8; ++i)
        all.emplace_back(fmt::format("bit flipped at {} of 9", i),
                         [i](const std::string& b) { return flipped(b, b.size() * i / 9); });
    const auto seal_at = [](const std::string& b) { return b.rfind("%kerfpacket seal "); };
    all.emplace_back("digit of the seal", [=](const std::string& b) { return flipped(b, seal_at(b) + 20); });
    all.emplace_back("seal of another packet", [=](const std::string& b) {
        return std::string(b).replace(seal_at(b), 82, other_packet().substr(seal_at(other_packet()), 82));
    });
    all.emplace_back("seal gone", [](const std::string& b) { return unsealed(b); });
    all.emplace_back("two seals",
                     [=](const std::string& b) { return std::string(b).insert(seal_at(b), b.substr(seal_at(b), 82)); });
    all.emplace_back("last byte gone", [](const std::string& b) { return b.substr(0, b.size() - 1); });
    all.emplace_back("half of it", [](const std::string& b) { return b.substr(0, b.size() / 2); });
    all.emplace_back("byte appended", [](const std::string& b) { return b + "\n"; });
    all.emplace_back("header of another version",
                     [](const std::string& b) { return replaced(b, "%PDF-1.7", "%PDF-1.6"); });
    all.emplace_back("incremental update", [](const std::string& b) {
        // A new empty object behind the end, as editors append what they change (ISO 32000-1, 7.5.6).
        const std::size_t last = b.rfind("startxref\n") + 10;
        const std::string before = b.substr(last, b.find('\n', last) - last);
        return b + fmt::format(
                       "9999 0 obj\nnull\nendobj\nxref\n9999 1\n{:010} 00000 n \ntrailer\n<< /Size 10000 /Root "
                       "1 0 R /Prev {} >>\nstartxref\n{}\n%%EOF\n",
                       b.size(), before, b.size() + 23);
    });
    all.emplace_back("written again by another program",
                     [](const std::string& b) { return rewritten(b, [](QPDF& /*nothing*/) {}); });
    return all;
}

/// The statement with one of its words replaced.
Change stating(const std::string& what, const std::string& by) {
    return [=](const std::string& b) {
        return with_embedded(b, "packet.json", replaced(embedded(b, "packet.json"), what, by));
    };
}

Change editing(const std::string& file, const std::string& what, const std::string& by) {
    return [=](const std::string& b) { return with_embedded(b, file, replaced(embedded(b, file), what, by)); };
}

Change on_page(const std::function<void(QPDF&, QPDFObjectHandle)>& change) {
    return [=](const std::string& b) {
        return resealed(rewritten(b, [&](QPDF& pdf) { change(pdf, pdf.getAllPages().at(3)); }));
    };
}

/// What takes somebody who knows how the seal is made.
Changes sealed_changes() {
    using Object = QPDFObjectHandle;
    Changes all;
    for (std::size_t i = 1; i <= 3; ++i)
        all.emplace_back(fmt::format("bit of a stream flipped at {} of 5", i),
                         [i](const std::string& b) { return resealed(flipped(b, b.size() * i / 5)); });
    all.emplace_back("figures of a page", on_page([](QPDF& /*pdf*/, Object page) {
                         page.coalesceContentStreams();
                         const auto data = page.getKey("/Contents").getStreamData();
                         std::string text(reinterpret_cast<const char*>(data->getBuffer()), data->getSize());
                         // The last digit of where a line ends.
                         char& digit = text.at(text.find(" l ") - 1);
                         digit = digit == '7' ? '3' : '7';
                         page.getKey("/Contents").replaceStreamData(text, Object::newNull(), Object::newNull());
                     }));
    all.emplace_back("page gone", on_page([](QPDF& pdf, Object page) { pdf.removePage(page); }));
    all.emplace_back("page twice", on_page([](QPDF& pdf, Object page) { pdf.addPage(page.shallowCopy(), false); }));
    all.emplace_back("pages in another order", on_page([](QPDF& pdf, Object page) {
                         pdf.removePage(page);
                         pdf.addPage(page, true);
                     }));
    all.emplace_back("page turned",
                     on_page([](QPDF& /*pdf*/, Object page) { page.replaceKey("/Rotate", Object::newInteger(90)); }));
    all.emplace_back("page larger", on_page([](QPDF& /*pdf*/, Object page) {
                         page.replaceKey("/MediaBox", Object::parse("[0 0 618 800]"));
                     }));
    all.emplace_back("scaling allowed",
                     on_page([](QPDF& pdf, Object /*page*/) { pdf.getRoot().removeKey("/ViewerPreferences"); }));
    all.emplace_back("title", on_page([](QPDF& pdf, Object /*page*/) {
                         pdf.getTrailer().getKey("/Info").replaceKey("/Title", Object::newString("Job K-8"));
                     }));
    all.emplace_back("rise in the job file", editing("job.toml", "6 1/8 in", "6 1/4 in"));
    all.emplace_back("revision in the job file", editing("job.toml", "revision = \"B\"", "revision = \"C\""));
    all.emplace_back("job file of another packet", [](const std::string& b) {
        return with_embedded(b, "job.toml", embedded(other_packet(), "job.toml"));
    });
    all.emplace_back("job file with a mistake", editing("job.toml", "span = ", "spam = "));
    all.emplace_back("printer", editing("printers.office.toml", "0.99600", "0.99700"));
    all.emplace_back("shop file", editing("shop.toml", "[printer]", "[stock]\nlengths = [\"5 ft\"]\n[printer]"));
    all.emplace_back("words of the shop", editing("words.en.shop.toml", "Weir", "Weird"));
    all.emplace_back("job file of the revision before", editing("previous.job.toml", "6 in", "5 in"));
    all.emplace_back("revision stated", stating("\"revision\": \"B\"", "\"revision\": \"C\""));
    all.emplace_back("fingerprint stated", stating("\"fingerprint\": \"", "\"fingerprint\": \"0"));
    all.emplace_back("paper stated", stating("\"media\": \"\"", "\"media\": \"iso_a4_210x297mm\""));
    all.emplace_back("part stated",
                     stating("\"print\":", "\"part\": {\"only\": [\"strips\"], \"pages\": \"\"}, \"print\":"));
    all.emplace_back("half stated", stating("\"half\": false", "\"half\": true"));
    all.emplace_back("file of the printer named otherwise",
                     [](const std::string& b) { return with_name(b, "printers.office.toml", "printers.other.toml"); });
    all.emplace_back("files gone", [](const std::string& b) {
        return resealed(rewritten(b, [](QPDF& pdf) { pdf.getRoot().removeKey("/AF"); }));
    });
    all.emplace_back("written again",
                     [](const std::string& b) { return resealed(rewritten(b, [](QPDF& /*nothing*/) {})); });
    return all;
}

TEST(Verify, EveryTamperedPacketIsCaught) {
    const std::string good = filed().bytes();
    std::size_t caught = 0;
    for (const Changes& changes : {plain_changes(), sealed_changes()})
        for (const auto& [what, change] : changes) {
            const std::string bad = change(good);
            ASSERT_NE(bad, good) << what;
            const Outcome outcome = verified(bad);
            EXPECT_EQ(outcome.status, 2) << what << "\n" << outcome.out << outcome.err;
            EXPECT_TRUE(holds(outcome.out, "CHANGED") || holds(outcome.err, "filed.pdf is "))
                << what << "\n"
                << outcome.out << outcome.err;
            EXPECT_FALSE(holds(outcome.err, "mistake in kerfpacket")) << what << "\n" << outcome.err;
            caught += outcome.status == 2 ? 1 : 0;
        }
    std::cout << caught << " caught\n";
    EXPECT_GE(caught, 30U);
}

// Where the version differs nothing can be made again: the seal alone tells, and the figures that can be compared.
TEST(Verify, APacketOfAnotherVersionIsComparedAsFarAsItCan) {
    const std::string later =
        stating(fmt::format("\"version\": \"{}\"", KERFPACKET_VERSION), "\"version\": \"9.0.1\"")(filed().bytes());
    Outcome outcome = verified(later);
    EXPECT_EQ(outcome.status, 3) << outcome.out << outcome.err;
    EXPECT_TRUE(holds(outcome.out, "intact as far as its seal tells")) << outcome.out;
    EXPECT_TRUE(holds(outcome.out, "its own job file still has that number, revision and fingerprint")) << outcome.out;
    EXPECT_TRUE(holds(outcome.out, "written by kerfpacket 9.0.1")) << outcome.out;
    EXPECT_EQ(verified(flipped(later, later.size() / 2)).status, 2);
    outcome = verified(editing("job.toml", "6 1/8 in", "6 1/4 in")(later));
    EXPECT_EQ(outcome.status, 2);
    EXPECT_TRUE(holds(outcome.out, "its own job file is not the one that it was made from")) << outcome.out;
    outcome = verified(editing("job.toml", "[saw]", "[sow]")(later));
    EXPECT_EQ(outcome.status, 3);
    EXPECT_TRUE(holds(outcome.out, "its own job file cannot be printed by this version")) << outcome.out;
}

TEST(Verify, TellsWhetherTheJobWouldStillPrintThis) {
    const FiledPacket packet;
    const auto against_job = [&] { return run_in_process({"verify", packet.pdf().string(), packet.job().string()}); };
    EXPECT_EQ(against_job().status, 0);
    // A remark changes nothing.
    const std::string text = slurp(packet.job());
    spill(packet.job(), "# measured twice\n" + text);
    EXPECT_TRUE(holds(against_job().out, "arch.toml: would print the same sheets\n"));
    spill(packet.job(), replaced(text, "6 1/8 in", "6 1/4 in"));
    Outcome outcome = against_job();
    EXPECT_EQ(outcome.status, 3);
    EXPECT_TRUE(holds(outcome.out, "arch.toml: would print other sheets\n")) << outcome.out;
    EXPECT_TRUE(holds(outcome.out, "rise was ")) << outcome.out;
    spill(packet.job(), text);
    spill(packet.profile(), FiledPacket::profile_text("1.00000"));
    outcome = against_job();
    EXPECT_EQ(outcome.status, 3);
    EXPECT_TRUE(holds(outcome.out, "the printer office was measured again")) << outcome.out;
    spill(packet.profile(), FiledPacket::profile_text("0.99600"));
    spill(packet.words(), "name = [\"Weir & Sons\"]\n");
    outcome = against_job();
    EXPECT_EQ(outcome.status, 3);
    EXPECT_TRUE(holds(outcome.out, "the shop's own words have changed")) << outcome.out;
    spill(packet.job(), replaced(text, "span", "spam"));
    EXPECT_EQ(against_job().status, 2);
}

}  // namespace
}  // namespace kerfpacket::tests
