#pragma once
// PDFs written by hand, as nobody's program would write them.

#include <string>
#include <utility>
#include <vector>

namespace kerfpacket::tests {

/// A PDF of these objects, the first of which is the catalogue (ISO 32000-1, 7.5); more keys for its trailer.
std::string pdf_of(const std::vector<std::string>& objects, const std::string& trailer = "");

/// A stream object; its length is added to the keys.
std::string stream(const std::string& keys, const std::string& bytes);

/// A sealed packet of ours to look at, with these files in it: name and stream.
std::string packet_of(const std::vector<std::pair<std::string, std::string>>& files);

/// A PDF whose catalogue stands in a stream that unpacks to this (7.5.7), found through a cross-reference stream
/// (7.5.8).
std::string with_object_stream(const std::string& keys, const std::string& packed);

}  // namespace kerfpacket::tests
