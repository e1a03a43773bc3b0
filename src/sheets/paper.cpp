#include "sheets/paper.h"

namespace kerfpacket::sheets {

Paper paper_for(const plan::Plan& plan, Use use) {
    const job::Printer& printer = plan.printer;
    const job::Media& media = use == Use::strips      ? printer.strip_media()
                              : use == Use::templates ? printer.template_media()
                                                      : printer.media;
    return {media.width, media.height, media.roll};
}

}  // namespace kerfpacket::sheets
