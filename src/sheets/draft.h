#pragma once
// A page on its way: its content and what its header will say once the number of pages is known.

#include <string>
#include <vector>

#include "page/document.h"
#include "plan/plan.h"
#include "sheets/kit.h"

namespace kerfpacket::sheets {

/// Whether a page is to scale: then check bars stand on both axes.
enum class Scale { none, full };
enum class Orientation { portrait, landscape };

struct Draft {
    page::Page page;
    std::string tag;  ///< piece id in the black square; empty for none
    std::string title;
    std::string subtitle;
    std::string outline;  ///< bookmark of the page; empty for a page that follows its first
    Scale scale = Scale::none;
};

using Drafts = std::vector<Draft>;

/// An empty page of the job's media.
inline Draft new_draft(const plan::Plan& plan, std::string sheet, Orientation orientation) {
    Draft draft;
    const job::Media& media = plan.printer.media;
    draft.page.sheet = std::move(sheet);
    draft.page.width = orientation == Orientation::portrait ? media.width : media.height;
    draft.page.height = orientation == Orientation::portrait ? media.height : media.width;
    return draft;
}

}  // namespace kerfpacket::sheets
