#include "output/seal.h"

#include <gtest/gtest.h>

namespace kerfpacket::tests {
namespace {

const std::string pdf = "%PDF-1.7\n1 0 obj\nnull\nendobj\nxref\ntrailer\n<< >>\nstartxref\n30\n%%EOF\n";

TEST(Seal, IsALineBeforeTheLastStartxref) {
    const std::string sealed = output::sealed(pdf);
    // Of sha256sum on the text above.
    EXPECT_EQ(sealed.substr(0, sealed.rfind("startxref")),
              pdf.substr(0, pdf.rfind("startxref")) +
                  "%kerfpacket seal 00f17ac73ef67eb214552c339cb510b9132049ab6e2fdb025ad67417c5fc48c6\n");
    EXPECT_TRUE(sealed.ends_with("\nstartxref\n30\n%%EOF\n"));
    EXPECT_TRUE(output::seal_holds(sealed));
}

TEST(Seal, EveryByteCounts) {
    const std::string sealed = output::sealed(pdf);
    for (std::size_t i = 0; i < sealed.size(); ++i) {
        std::string changed = sealed;
        changed[i] = static_cast<char>(changed[i] ^ 1);
        EXPECT_FALSE(output::seal_holds(changed)) << i;
        EXPECT_FALSE(output::seal_holds(sealed.substr(0, i))) << i;
        EXPECT_FALSE(output::seal_holds(sealed.substr(i + 1))) << i;
    }
    EXPECT_FALSE(output::seal_holds(sealed + "\n"));
    EXPECT_FALSE(output::seal_holds(pdf));
    EXPECT_FALSE(output::seal_holds(""));
}

}  // namespace
}  // namespace kerfpacket::tests
