#include "output/deflate.h"

#include <memory>
#include <new>

#include <libdeflate.h>

#include "measure/require.h"

namespace kerfpacket::output {
namespace {

class Compressor {
public:
    explicit Compressor(int level) : one_(libdeflate_alloc_compressor(level)) {
        if (!one_) throw std::bad_alloc();
    }
    libdeflate_compressor* get() const { return one_.get(); }

private:
    struct Free {
        void operator()(libdeflate_compressor* one) const { libdeflate_free_compressor(one); }
    };
    std::unique_ptr<libdeflate_compressor, Free> one_;
};

/// This thread's.
libdeflate_compressor* compressor(Packing packing) {
    if (packing == Packing::quick) {
        thread_local const Compressor quick(1);
        return quick.get();
    }
    // Beyond this level it takes much longer for little less.
    thread_local const Compressor small(6);
    return small.get();
}

}  // namespace

std::string deflated(std::string_view bytes, Packing packing) {
    libdeflate_compressor* const by = compressor(packing);
    // Of the room for the worst case little is written to, and what is not written to costs nothing.
    const std::size_t room = libdeflate_zlib_compress_bound(by, bytes.size());
    const auto packed = std::make_unique_for_overwrite<char[]>(room);  // NOLINT(*-avoid-c-arrays)
    const std::size_t size = libdeflate_zlib_compress(by, bytes.data(), bytes.size(), packed.get(), room);
    measure::require(size > 0, "packed bytes find room");
    return {packed.get(), size};
}

}  // namespace kerfpacket::output
