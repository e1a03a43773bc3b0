#include "disk/calls.h"

#include <system_error>
#include <utility>

#include <unistd.h>

namespace kerfpacket::disk {
namespace {

Gate& gate() {
    static Gate put;
    return put;
}

}  // namespace

Gated::Gated(Gate put) { gate() = std::move(put); }

Gated::~Gated() { gate() = nullptr; }

bool passes(Operation operation, const fs::path& what) {
    const int error = gate() ? gate()(operation, what) : 0;
    if (error != 0) errno = error;
    return error == 0;
}

std::string why(int error) {
    switch (error) {
        case ENOSPC:
        case EDQUOT: return "the disk is full";
        case EFBIG: return "the file is larger than is allowed here";
        case EACCES:
        case EPERM: return "no permission";
        case EROFS: return "the disk is read-only";
        case EISDIR: return "a folder has that name";
        case ENOENT: return "it is not there";
        case ENOTDIR: return "what should be its folder is none";
        case EMFILE:
        case ENFILE: return "too many files are open on this computer";
        case EAGAIN: return "this computer runs too many programs at once";
        case ENOMEM: return "this computer has no memory left";
        case EIO: return "the disk failed";
        case ELOOP: return "links there lead in a circle";
        case ENAMETOOLONG: return "the name is too long";
        case ENOLCK:
        case ENOSYS:
        case ENOTSUP: return "the disk there cannot do that";
        default: return std::generic_category().message(error);
    }
}

Descriptor& Descriptor::operator=(Descriptor&& other) noexcept {
    if (open()) ::close(number_);
    number_ = other.release();
    return *this;
}

Descriptor::~Descriptor() {
    if (open()) ::close(number_);
}

int Descriptor::release() { return std::exchange(number_, -1); }

}  // namespace kerfpacket::disk
