#include "job/read.h"

#include <array>

#include <nettle/sha2.h>

namespace kerfpacket::job {

std::string fingerprint(const Job& job) {
    const std::string text = normalised(job);
    std::array<unsigned char, SHA256_DIGEST_SIZE> digest{};
    sha256_ctx context{};
    sha256_init(&context);
    // Nettle takes bytes; a char is one.
    sha256_update(&context, text.size(), reinterpret_cast<const unsigned char*>(text.data()));
    sha256_digest(&context, digest.size(), digest.data());
    constexpr std::string_view digits = "0123456789abcdef";
    std::string hex;
    for (std::size_t i = 0; i < 4; ++i) {
        hex += digits[digest[i] >> 4U];
        hex += digits[digest[i] & 15U];
    }
    return hex;
}

}  // namespace kerfpacket::job
