#include "output/ours.h"

#include <stdexcept>

#include "output/packet_reader.h"

namespace kerfpacket::output {

bool made_by_us(const std::filesystem::path& file) {
    try {
        return read_packet(load_packet(file)).ours;
    } catch (const std::runtime_error&) { return false; }
}

}  // namespace kerfpacket::output
