#include "print/cups.h"

#include <cups/raster.h>
#include <fcntl.h>
#include <unistd.h>

#include <memory>
#include <stdexcept>

#include "support/program.h"

namespace kerfpacket::tests {
namespace {

constexpr const char* filters = "/usr/lib/cups/filter/";
/// What the scheduler sets for a filter (cups filter(7)).
constexpr const char* environment =
    "CONTENT_TYPE=application/pdf FINAL_CONTENT_TYPE=image/pwg-raster PRINTER=tests CHARSET=utf-8";
/// A printer that takes paper of any size, which the filters learn from its description alone.
constexpr const char* roll_printer = " PPD=" KERFPACKET_SOURCE_DIR "/tests/print/roll.ppd";

void run_filter(const std::string& filter, const fs::path& in, const fs::path& out, const std::string& options,
                const std::string& printer) {
    const Outcome ran = run_program(
        {"sh", "-c", R"("$0" 1 tests tests 1 "$1" "$2" > "$3")", filters + filter, options, in.string(), out.string()},
        environment + printer);
    if (ran.status != 0 || fs::file_size(out) == 0) throw std::runtime_error(filter + " failed: " + ran.err);
}

class Reader {
public:
    explicit Reader(const fs::path& file) : file_(open(file.c_str(), O_RDONLY)) {
        if (file_ < 0) throw std::runtime_error("cannot read " + file.string());
        raster_.reset(cupsRasterOpen(file_, CUPS_RASTER_READ));
        if (!raster_) throw std::runtime_error(file.string() + " is no raster");
    }
    ~Reader() { close(file_); }
    Reader(const Reader&) = delete;
    Reader& operator=(const Reader&) = delete;

    bool next(Raster& page) {
        cups_page_header2_t header{};
        if (cupsRasterReadHeader2(raster_.get(), &header) == 0) return false;
        if (header.cupsBitsPerPixel != 8 || header.HWResolution[0] != header.HWResolution[1] ||
            header.cupsBytesPerLine != header.cupsWidth)
            throw std::runtime_error("the raster is not one byte a pixel, square");
        page = {static_cast<int>(header.cupsWidth), static_cast<int>(header.cupsHeight),
                static_cast<double>(header.HWResolution[0]),
                std::vector<std::uint8_t>(std::size_t{header.cupsWidth} * header.cupsHeight)};
        for (unsigned y = 0; y < header.cupsHeight; ++y)
            if (cupsRasterReadPixels(raster_.get(), &page.grey[std::size_t{y} * header.cupsWidth],
                                     header.cupsBytesPerLine) != header.cupsBytesPerLine)
                throw std::runtime_error("the raster ends early");
        // CUPS_CSPACE_K counts ink, all other grey spaces light.
        if (header.cupsColorSpace == CUPS_CSPACE_K)
            for (std::uint8_t& grey : page.grey) grey = static_cast<std::uint8_t>(255 - grey);
        return true;
    }

private:
    int file_;
    std::unique_ptr<cups_raster_t, decltype(&cupsRasterClose)> raster_{nullptr, cupsRasterClose};
};

}  // namespace

const char* name_of(CupsFilter filter) {
    if (filter == CupsFilter::gstoraster) return "gstoraster";
    return filter == CupsFilter::pdftoraster ? "pdftoraster" : "mupdftoraster";
}

std::vector<Raster> through_cups(CupsFilter filter, const fs::path& pdf, const std::string& media) {
    const Folder folder;
    const std::string options = "media=" + media + " print-scaling=none Resolution=600dpi ColorModel=Gray";
    const std::string printer = media.starts_with("Custom.") ? roll_printer : "";
    run_filter("pdftopdf", pdf, folder / "paper.pdf", options, printer);
    run_filter(name_of(filter), folder / "paper.pdf", folder / "paper.ras", options, printer);
    Reader reader(folder / "paper.ras");
    std::vector<Raster> pages;
    for (Raster page; reader.next(page);) pages.push_back(std::move(page));
    return pages;
}

}  // namespace kerfpacket::tests
