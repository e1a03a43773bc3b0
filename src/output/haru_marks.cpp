#include "output/haru_marks.h"

// libharu's inner headers, which cannot be included beside hpdf.h: they name the same types otherwise.
#include <hpdf_conf.h>
#include <hpdf_consts.h>
#include <hpdf_objects.h>
#include <hpdf_pages.h>

#include "measure/require.h"

namespace kerfpacket::output {

void write_operators(void* page, const std::string& operators) {
    const auto* inner = static_cast<HPDF_PageAttr>(static_cast<HPDF_Dict>(page)->attr);
    measure::require(inner != nullptr && inner->stream != nullptr, "a libharu page has a content stream");
    // An error goes to libharu's handler, as everywhere: HaruDocument::check tells it.
    HPDF_Stream_WriteStr(inner->stream, operators.c_str());
}

}  // namespace kerfpacket::output
