#pragma once
// A packet's seal: one line near its end that tells whether any byte of it was changed.

#include <string>
#include <string_view>

namespace kerfpacket::output {

/// The PDF with a comment before its last "startxref" (ISO 32000-1, 7.2.3 and 7.5.5): the SHA-256 of all bytes but that
/// line. It is no signature: who changes a packet can seal it again.
std::string sealed(std::string pdf);

/// The SHA-256 of a text, in hexadecimal.
std::string digest(std::string_view text);
/// The MD5 of bytes, in hexadecimal: where a PDF asks for it, and for nothing that must hold.
std::string md5_of(std::string_view bytes);

/// True when the seal is there and is that of the other bytes.
bool seal_holds(std::string_view pdf);

}  // namespace kerfpacket::output
