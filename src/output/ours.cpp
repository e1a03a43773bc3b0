#include "output/ours.h"

#include <cstdint>
#include <exception>
#include <system_error>

#include "output/qpdf.h"

namespace kerfpacket::output {
namespace {

/// No packet comes near this; a larger file is not worth reading to find out.
constexpr std::uintmax_t largest_packet = 256U << 20U;

}  // namespace

bool made_by_us(const std::filesystem::path& file) {
    std::error_code failed;
    const std::uintmax_t size = std::filesystem::file_size(file, failed);
    if (failed || size > largest_packet) return false;
    try {
        QPDF pdf;
        pdf.setSuppressWarnings(true);
        pdf.setAttemptRecovery(false);
        pdf.processFile(file.c_str());
        QPDFObjectHandle info = pdf.getTrailer().getKey("/Info");
        if (!info.isDictionary()) return false;
        QPDFObjectHandle producer = info.getKey("/Producer");
        return producer.isString() && producer.getUTF8Value().starts_with("kerfpacket");
    } catch (const std::exception&) { return false; }
}

}  // namespace kerfpacket::output
