#include "sheets/layout/finish.h"

#include <utility>

#include "sheets/layout/furniture.h"
#include "sheets/layout/paper.h"

namespace kerfpacket::sheets {

void finish_page(Draft& draft, const plan::Plan& plan, const Kit& kit, std::size_t number, std::size_t count) {
    draft.page.number = number;
    add_furniture(draft, plan, draft.second_language ? kit.second() : kit, number, count);
    if (draft.second_language) draft.page.language = kit.second().words("page.language");
    put_on_paper(draft.page, plan, draft.use);
}

void take_page(page::Document& document, Draft&& draft) {
    if (!draft.outline.empty()) document.outline.push_back({draft.outline, document.pages.size(), 0});
    document.pages.push_back(std::move(draft.page));
}

}  // namespace kerfpacket::sheets
