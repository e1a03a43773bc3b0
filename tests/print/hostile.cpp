// verify and build on files that were made to hurt: a plain message, nothing written, bounded memory and time.

#include <gtest/gtest.h>

#include <iostream>
#include <random>

#include <fmt/format.h>

#include "print/crafted.h"
#include "print/filed.h"
#include "print/run_on.h"
#include "print/tamper.h"
#include "support/sanitizer.h"

namespace kerfpacket::tests {
namespace {

bool holds(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

/// Refused in one line that says `why`.
void expect_refused(const std::string& what, const std::string& bytes, const std::string& why) {
    const Ending run = run_on(bytes);
    EXPECT_EQ(run.status, 2) << what << "\n" << run.out << run.err;
    EXPECT_TRUE(holds(run.err, "file.pdf " + why)) << what << "\n" << run.out << run.err;
    EXPECT_EQ(std::count(run.err.begin(), run.err.end(), '\n'), 1) << run.err;
    EXPECT_EQ(run.out, "") << what;
    EXPECT_LT(run.megabytes, most_megabytes) << what;
    EXPECT_LT(run.seconds, most_seconds) << what;
    std::cout << fmt::format("{}: {:.0f} MB, {:.1f} s\n", what, run.megabytes, run.seconds);
}

const std::string& good_packet() {
    static const std::string bytes = FiledPacket().bytes();
    return bytes;
}

TEST(Hostile, WhatIsNoPdf) {
    expect_refused("nothing", "", "is no PDF");
    expect_refused("a letter", "Dear Sir,\n", "is no PDF");
    expect_refused("a head alone", "%PDF-1.7\n", "is damaged");
    std::mt19937 random(7);
    std::string noise = "%PDF-1.7\n";
    for (int i = 0; i < 100'000; ++i) noise += static_cast<char>(random());
    expect_refused("noise", noise, "is damaged");
}

TEST(Hostile, WhatIsNoPacketOfOurs) {
    expect_refused("another's PDF", pdf_of({"<< /Type /Catalog >>"}), "is not a packet that kerfpacket wrote");
    expect_refused(
        "a form",
        pdf_of({"<< /Type /Catalog >>", "<< /Producer (kerfpacket " KERFPACKET_VERSION ") >>"}, "/Info 2 0 R"),
        "is no packet: it does not carry what kerfpacket puts into every packet");
}

TEST(Hostile, WhatIsCutShort) {
    const std::string good = good_packet();
    for (std::size_t i = 0; i < 12; ++i) {
        const Ending run = run_on(good.substr(0, good.size() * i / 12));
        EXPECT_EQ(run.status, 2) << i;
        EXPECT_TRUE(holds(run.err, "file.pdf is no PDF") || holds(run.err, "file.pdf is damaged")) << run.err;
    }
}

TEST(Hostile, WhatIsEncrypted) {
    const Folder folder;
    const std::string from = (folder / "good.pdf").string(), to = (folder / "locked.pdf").string();
    spill(from, good_packet());
    for (const char* user : {"secret", ""}) {
        ASSERT_EQ(run_program({"qpdf", from, "--encrypt", user, "owner", "256", "--", to}).status, 0);
        expect_refused("encrypted", slurp(to), "is encrypted; no packet is");
        expect_refused("encrypted, sealed", resealed(slurp(to)), "is encrypted; no packet is");
    }
}

TEST(Hostile, FilesThatUnpackWithoutEnd) {
    if (address_sanitizer) GTEST_SKIP() << "the sanitizer's memory is counted too";
    const std::string zeros = deflated_zeros(1'000U << 20U);
    const std::string over = "is no packet: a file in it is over 1 MB";
    expect_refused("1 GB in a file", packet_of({{"job.toml", stream("/Filter /FlateDecode", zeros)}}), over);
    expect_refused("packed twice",
                   packet_of({{"job.toml", stream("/Filter [/FlateDecode /FlateDecode]", deflated(zeros))}}), over);
    // Nothing comes out of what is skipped, but time passes.
    expect_refused("spaces in hexadecimal",
                   packet_of({{"job.toml", stream("/Filter [/FlateDecode /ASCIIHexDecode]",
                                                  deflated(std::string(200U << 20U, ' ') + ">"))}}),
                   "is no packet: it does not carry what");
    expect_refused("an unknown filter", packet_of({{"job.toml", stream("/Filter /Unheard", "x")}}),
                   "is damaged: a file in it cannot be unpacked");
    expect_refused("one byte too many", packet_of({{"packet.json", stream("", std::string(1'000'001, ' '))}}), over);
    std::vector<std::pair<std::string, std::string>> many(300, {"words.en.cover.toml", stream("", "")});
    expect_refused("300 files", packet_of(many), "is no packet: it holds too many files");
    many.assign(250, {"words.en.cover.toml", stream("/Filter /FlateDecode", deflated(std::string(1'000'000, ' ')))});
    expect_refused("250 MB in 250 files", packet_of(many), "is no packet");
}

TEST(Hostile, ObjectStreamsThatUnpackWithoutEnd) {
    const std::string takes = "is no packet: reading it takes more memory or time than any packet";
    const std::string zeros = deflated_zeros(2'000U << 20U);
    const Ending run = run_on(with_object_stream("/Filter /FlateDecode", zeros));
    EXPECT_EQ(run.status, 2);
    EXPECT_TRUE(holds(run.err, takes) || holds(run.err, "file.pdf is ")) << run.err;
    EXPECT_LT(run.megabytes, most_megabytes);
    EXPECT_LT(run.seconds, most_seconds);
    std::cout << fmt::format("2 GB of objects: {:.0f} MB, {:.1f} s, {}", run.megabytes, run.seconds, run.err);
    const Ending twice = run_on(with_object_stream("/Filter [/FlateDecode /FlateDecode]", deflated(zeros)));
    EXPECT_EQ(twice.status, 2);
    EXPECT_LT(twice.megabytes, most_megabytes);
    EXPECT_LT(twice.seconds, most_seconds);
}

TEST(Hostile, WhatIsDeepOrTurnsInACircle) {
    if (address_sanitizer) GTEST_SKIP() << "the sanitizer's memory is counted too";
    const std::string deep(1'000'000, '[');
    const auto catalogue = [](const std::string& more) { return "<< /Type /Catalog " + more + " >>"; };
    const std::string info = "<< /Producer (kerfpacket " KERFPACKET_VERSION ") >>";
    expect_refused("a million brackets", pdf_of({catalogue("/AF " + deep), info}, "/Info 2 0 R"), "is ");
    expect_refused("files that are themselves",
                   pdf_of({catalogue("/AF 3 0 R"), info, "[3 0 R 3 0 R 1 0 R]"}, "/Info 2 0 R"), "is no packet");
    expect_refused(
        "pages in a circle",
        pdf_of({catalogue("/Pages 3 0 R"), info, "<< /Type /Pages /Kids [3 0 R] /Count 9 >>"}, "/Info 2 0 R"),
        "is no packet");
    // A million levels of pages, each below the one before.
    std::vector<std::string> tree = {catalogue("/Pages 3 0 R"), info};
    for (int i = 3; i < 300'000; ++i) tree.push_back(fmt::format("<< /Type /Pages /Kids [{} 0 R] /Count 1 >>", i + 1));
    expect_refused("deep pages", pdf_of(tree, "/Info 2 0 R"), "is no packet");
    // Every length is told by another stream's object, and so on.
    std::vector<std::string> lengths = {catalogue("/AF [3 0 R]"), info, "<< /F (job.toml) /EF << /F 4 0 R >> >>"};
    for (int i = 4; i < 100'000; ++i)
        lengths.push_back(fmt::format("<< /Length {} 0 R >>\nstream\nx\nendstream", i + 1));
    expect_refused("lengths without end", pdf_of(lengths, "/Info 2 0 R"), "is ");
    std::string circle = pdf_of({catalogue("/AF [2 0 R]")}, "/Prev 00000");
    const std::string at = fmt::format("{:05}", circle.find("xref\n"));
    expect_refused("tables in a circle", replaced(circle, "/Prev 00000", "/Prev " + at), "is ");
}

TEST(Hostile, FilesThatWouldBeWrittenElsewhere) {
    const std::string good = good_packet();
    for (const char* name :
         {"../../evil.toml", "/etc/evil.toml", "..", "words.en.../../evil.toml", "printers.../x.toml",
          "printers.a/b.toml", "previous.previous.job.toml", "\x1b[2Jjob.toml", "C:\\\\evil.toml"})
        expect_refused(name, with_name(good, "words.en.shop.toml", name),
                       "is no packet: it holds a file that has no place");
    const Ending run = run_on(with_name(good, "words.en.shop.toml", "\x1b[2J"));
    EXPECT_EQ(run.err.find('\x1b'), std::string::npos);
    expect_refused("one name twice", with_name(good, "words.en.shop.toml", "shop.toml"), "is no packet: two files");
    // The shop file may name any folder: none is looked at.
    const Ending folder =
        run_on(with_embedded(good, "shop.toml", replaced(embedded(good, "shop.toml"), "ours", "../../../etc")));
    EXPECT_EQ(folder.status, 2);
    EXPECT_TRUE(holds(folder.out, "CHANGED")) << folder.err;
}

TEST(Hostile, StatementsThatAreNone) {
    const std::string good = good_packet(), text = embedded(good_packet(), "packet.json");
    const std::string unreadable = "is no packet: packet.json cannot be read";
    for (const std::string& bad : {std::string(), std::string("{}"), std::string("[]"), std::string(900'000, '['),
                                   text.substr(0, text.size() / 2), replaced(text, "\"B\"", "7"),
                                   replaced(text, "\"pages\": ", "\"pages\": \"x\", \"x\": "),
                                   replaced(text, "\"half\": false", "\"half\": 3"), replaced(text, "Mill", "\xFF")})
        expect_refused("bad statement", with_embedded(good, "packet.json", bad), unreadable);
    expect_refused("control characters", with_embedded(good, "packet.json", replaced(text, "Mill", "\\u001b[2J")),
                   "is no packet: title of packet.json is no line of text");
    expect_refused("another schema",
                   with_embedded(good, "packet.json", replaced(text, "\"schema\": 1", "\"schema\": 2")),
                   "was written by a later version");
    expect_refused("an unknown language",
                   with_embedded(good, "packet.json", replaced(text, "\"language\": \"\"", "\"language\": \"../x\"")),
                   "is no packet: the language");
    for (const std::string& bad : {std::string(), std::string("\xFF\xFE"), std::string(3, '\0')})
        expect_refused("bad job file", with_embedded(good, "job.toml", bad), "is no packet: its file job.toml: ");
}

TEST(Hostile, WhatIsTooLargeIsNotEvenRead) {
    const Folder folder;
    const std::string file = (folder / "large.pdf").string();
    spill(file, "%PDF-1.7\n");
    fs::resize_file(file, std::uintmax_t{40} << 30U);
    const Outcome outcome = run_program({KERFPACKET_PROGRAM, "verify", file});
    EXPECT_EQ(outcome.status, 2);
    EXPECT_TRUE(holds(outcome.err, "large.pdf is over 64 MB; no packet is\n")) << outcome.err;
    for (const char* other : {"/dev/zero", "/nonexistent.pdf", "/tmp"}) {
        const Outcome none = run_program({KERFPACKET_PROGRAM, "verify", other});
        EXPECT_EQ(none.status, 2);
        EXPECT_TRUE(holds(none.err, other)) << none.err;
    }
}

// build looks at what stands where it would write.
TEST(Hostile, WhatStandsWhereAPacketGoes) {
    const std::string zeros = deflated_zeros(1'000U << 20U);
    const Folder folder;
    spill(folder / "job.toml", good_job);
    for (const std::string& bytes : {packet_of({{"job.toml", stream("/Filter /FlateDecode", zeros)}}),
                                     with_object_stream("/Filter /FlateDecode", zeros)}) {
        const Ending run = run_on(bytes, {"build", (folder / "job.toml").string(), "--out"});
        EXPECT_EQ(run.status, 2) << run.out << run.err;
        EXPECT_TRUE(holds(run.err, "file.pdf is there already and is not a packet that kerfpacket wrote") ||
                    holds(run.err, "file.pdf is no packet: reading it takes more memory or time than any packet"))
            << run.err;
        EXPECT_LT(run.megabytes, most_megabytes);
        EXPECT_LT(run.seconds, most_seconds);
    }
}

// A small file whose making again would take all memory: refused, and within its bounds.
TEST(Hostile, AJobOfMoreThanAnyHouse) {
    if (address_sanitizer) GTEST_SKIP() << "the sanitizer's memory is counted too";
    const std::string good = good_packet();
    std::string many = embedded(good, "job.toml");
    const std::string opening = many.substr(many.find("[[opening]]"));
    for (int i = 0; i < 2600; ++i)
        many +=
            replaced(opening, "id = \"A\"", fmt::format("id = \"{}{:02}\"", static_cast<char>('A' + i / 100), i % 100));
    many.resize(std::min<std::size_t>(many.size(), 990'000));
    many.resize(many.rfind("[[opening]]"));
    const Ending run = run_on(with_embedded(good, "job.toml", many));
    EXPECT_EQ(run.status, 2) << run.out << run.err;
    EXPECT_EQ(run.out.find("intact"), std::string::npos);
    EXPECT_LT(run.megabytes, 1024 + 200);
    EXPECT_LT(run.seconds, 70);
    std::cout << fmt::format("a job of 990 kB: {:.0f} MB, {:.1f} s\n", run.megabytes, run.seconds);
}

}  // namespace
}  // namespace kerfpacket::tests
