#include "output/seal.h"

#include <array>

#include <nettle/base16.h>
#include <nettle/md5.h>
#include <nettle/sha2.h>

#include "measure/require.h"

namespace kerfpacket::output {
namespace {

constexpr std::string_view before_the_end = "\nstartxref\n";
constexpr std::string_view mark = "%kerfpacket seal ";
constexpr std::size_t digits = BASE16_ENCODE_LENGTH(SHA256_DIGEST_SIZE);
constexpr std::size_t line = mark.size() + digits + 1;

// Nettle takes bytes; a char is one.
const unsigned char* as_bytes(std::string_view text) { return reinterpret_cast<const unsigned char*>(text.data()); }

template <std::size_t size>
std::string in_hexadecimal(const std::array<unsigned char, size>& digest) {
    std::string hex(BASE16_ENCODE_LENGTH(size), '0');
    base16_encode_update(hex.data(), size, digest.data());
    return hex;
}

/// Of a text in two parts.
std::string sha256(std::string_view head, std::string_view tail) {
    sha256_ctx context{};
    sha256_init(&context);
    for (const std::string_view part : {head, tail}) sha256_update(&context, part.size(), as_bytes(part));
    std::array<unsigned char, SHA256_DIGEST_SIZE> digest{};
    sha256_digest(&context, digest.size(), digest.data());
    return in_hexadecimal(digest);
}

/// Where the last "startxref" begins; npos where there is none.
std::size_t end_of_objects(std::string_view pdf) {
    const std::size_t newline = pdf.rfind(before_the_end);
    return newline == std::string_view::npos ? newline : newline + 1;
}

}  // namespace

std::string digest(std::string_view text) { return sha256(text, {}); }

std::string md5_of(std::string_view bytes) {
    md5_ctx context{};
    md5_init(&context);
    md5_update(&context, bytes.size(), as_bytes(bytes));
    std::array<unsigned char, MD5_DIGEST_SIZE> digest{};
    md5_digest(&context, digest.size(), digest.data());
    return in_hexadecimal(digest);
}

std::string sealed(std::string pdf) {
    const std::size_t at = end_of_objects(pdf);
    measure::require(at != std::string::npos, "a PDF ends with startxref");
    const std::string_view bytes = pdf;
    const std::string hex = sha256(bytes.substr(0, at), bytes.substr(at));
    pdf.insert(at, std::string(mark) + hex + "\n");
    return pdf;
}

bool seal_holds(std::string_view pdf) {
    const std::size_t at = end_of_objects(pdf);
    if (at == std::string_view::npos || at < line) return false;
    const std::string_view head = pdf.substr(0, at - line);
    const std::string_view seal = pdf.substr(at - line, line);
    return seal == std::string(mark) + sha256(head, pdf.substr(at)) + "\n";
}

}  // namespace kerfpacket::output
