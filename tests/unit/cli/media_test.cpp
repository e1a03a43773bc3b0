// Every sheet that is listed, and the smallest of another size, takes a packet; and what --media replaces.
#include <gtest/gtest.h>

#include "cli/trouble.h"
#include "job/read.h"
#include "sheets/packet.h"
#include "support/boxes.h"

namespace kerfpacket::tests {
namespace {

int faults_on(const std::string& media) {
    int faults = 0;
    for (const job::Job& job : {job_of(lantern_court()), job_of(harbor_stair())}) {
        const plan::Plan plan = planned(job, media.c_str());
        const page::Document packet = sheets::make_packet(plan, kit());
        EXPECT_GE(packet.pages.size(), 7U) << media;
        for (const page::Page& page : packet.pages)
            for (const std::string& fault : text_faults(page)) {
                ADD_FAILURE() << media << ", " << page.sheet << ": " << fault;
                ++faults;
            }
    }
    return faults;
}

TEST(AllMedia, TakeAPacketWithoutWordsThatLeaveThePage) {
    for (const job::Media& media : job::all_media()) EXPECT_EQ(faults_on(media.name), 0) << media.name;
    EXPECT_EQ(faults_on("custom_least_8.25x10.75in"), 0);
}

job::Job on_three_papers() {
    job::Job job = job_of(lantern_court());
    job.printer.media = job::all_media().front();
    job.printer.strips = job::find_media("custom_roll_62mm");
    job.printer.templates = job::find_media("custom_roll_36in");
    return job;
}

TEST(UseMedia, ASheetReplacesAllPapers) {
    job::Job job = on_three_papers();
    job.fingerprint = job::fingerprint(job);
    const std::string before = job.fingerprint;
    cli::use_media(job, "iso_a4_210x297mm");
    EXPECT_EQ(job.printer.media.name, "iso_a4_210x297mm");
    EXPECT_FALSE(job.printer.strips);
    EXPECT_FALSE(job.printer.templates);
    EXPECT_NE(job.fingerprint, before);
}

TEST(UseMedia, ARollReplacesTheStripsAndWhereItIsWideTheTemplates) {
    job::Job job = on_three_papers();
    cli::use_media(job, "custom_roll_100mm");
    EXPECT_EQ(job.printer.media.name, "na_letter_8.5x11in");
    EXPECT_EQ(job.printer.strips->name, "custom_roll_100mm");
    EXPECT_EQ(job.printer.templates->name, "custom_roll_36in");
    cli::use_media(job, "custom_roll_8.5in");
    EXPECT_EQ(job.printer.strips->name, "custom_roll_8.5in");
    EXPECT_EQ(job.printer.templates->name, "custom_roll_8.5in");
}

TEST(UseMedia, UnknownPaperIsToldWithHowRollsAreNamed) {
    job::Job job = on_three_papers();
    EXPECT_THROW(
        try { cli::use_media(job, "custom_roll_50in"); } catch (const std::runtime_error& told) {
            EXPECT_NE(std::string(told.what()).find("a roll is named by its width"), std::string::npos) << told.what();
            throw;
        },
        std::runtime_error);
}

}  // namespace
}  // namespace kerfpacket::tests
