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
    std::string packed(libdeflate_zlib_compress_bound(compressor.get(), bytes.size()), '\0');
    const std::size_t size =
        libdeflate_zlib_compress(compressor.get(), bytes.data(), bytes.size(), packed.data(), packed.size());
    measure::require(size > 0, "packed bytes find room");
    packed.resize(size);
    return packed;
}

}  // namespace kerfpacket::output
