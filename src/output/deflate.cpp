#include "output/deflate.h"

#include <memory>
#include <new>

#include <libdeflate.h>

#include "measure/require.h"

namespace kerfpacket::output {

std::string deflated(std::string_view bytes) {
    struct Free {
        void operator()(libdeflate_compressor* one) const { libdeflate_free_compressor(one); }
    };
    // Beyond this level it takes much longer for little less.
    constexpr int level = 6;
    thread_local const std::unique_ptr<libdeflate_compressor, Free> compressor(libdeflate_alloc_compressor(level));
    if (!compressor) throw std::bad_alloc();
    // Of the room for the worst case little is written to, and what is not written to costs nothing.
    const std::size_t room = libdeflate_zlib_compress_bound(compressor.get(), bytes.size());
    const auto packed = std::make_unique_for_overwrite<char[]>(room);  // NOLINT(*-avoid-c-arrays)
    const std::size_t size = libdeflate_zlib_compress(compressor.get(), bytes.data(), bytes.size(), packed.get(), room);
    measure::require(size > 0, "packed bytes find room");
    return {packed.get(), size};
}

}  // namespace kerfpacket::output
