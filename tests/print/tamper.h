#pragma once
// Packets changed on purpose.

#include <functional>
#include <string>

#include "output/qpdf.h"

namespace kerfpacket::tests {

/// Without its seal.
std::string unsealed(const std::string& packet);

/// Sealed again, as somebody would who knows how.
std::string resealed(const std::string& packet);

/// Read by libqpdf, changed, and written again; the seal is gone.
std::string rewritten(const std::string& packet, const std::function<void(QPDF&)>& change);

/// A file that travels in the packet, by its name.
std::string embedded(const std::string& packet, const std::string& name);

/// The packet with another text in place of one of its files, sealed again.
std::string with_embedded(const std::string& packet, const std::string& name, const std::string& text);

/// The packet with one of its files under another name, sealed again.
std::string with_name(const std::string& packet, const std::string& name, const std::string& other);

/// Replaces the first occurrence; throws when there is none.
std::string replaced(std::string text, const std::string& what, const std::string& by);

/// Packed as PDF's streams are.
std::string deflated(const std::string& bytes);
/// Zeros, packed a piece at a time.
std::string deflated_zeros(std::size_t count);

}  // namespace kerfpacket::tests
