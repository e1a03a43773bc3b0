#include "sheets/layout/paper.h"

#include <algorithm>
#include <cmath>

#include "page/placing.h"

namespace kerfpacket::sheets {
namespace {

using namespace measure::literals;

/// What every sheet keeps free at the edges of its paper.
constexpr Length kept_free = Length::inches(0.25);

/// What the printer needs more at an edge, the same all round, for a page may be fed either way.
Length needed_more(const plan::Plan& plan, Use use) {
    Length most = plan.printer.margin;
    if (const job::Profile* profile = profile_for(plan, use))
        for (const Length margin :
             {profile->margins.left, profile->margins.right, profile->margins.leading, profile->margins.trailing})
            most = std::max(most, margin);
    return std::max(most - kept_free, 0_mm);
}

/// Factors for a page as it lies on its paper: what prints too short is written longer.
page::Correction correction(const page::Page& page, const job::Profile& profile, bool roll) {
    const bool upright = page.width <= page.height;
    const bool x_across = roll || upright == (profile.feed == job::Feed::short_edge);
    return {1 / (x_across ? profile.across : profile.along), 1 / (x_across ? profile.along : profile.across)};
}

}  // namespace

Length roll_page_end(Length length) { return 6_pt * std::ceil(length / 6_pt - 1e-9); }

const job::Media& media_for(const plan::Plan& plan, Use use) {
    if (use == Use::strips) return plan.printer.strip_media();
    return use == Use::templates ? plan.printer.template_media() : plan.printer.media;
}

const job::Profile* profile_for(const plan::Plan& plan, Use use) {
    const job::Printer& printer = plan.printer;
    const std::optional<job::NamedProfile>* named = &printer.profile;
    if (use == Use::strips && (printer.strip_profile || printer.strip_media().roll)) named = &printer.strip_profile;
    if (use == Use::templates && (printer.template_profile || printer.template_media().roll))
        named = &printer.template_profile;
    return *named && (*named)->measured ? &*(*named)->measured : nullptr;
}

Paper paper_for(const plan::Plan& plan, Use use) {
    const job::Media& media = media_for(plan, use);
    const Length less = media.roll ? 0_mm : needed_more(plan, use) * 2;
    return {media.width - less, media.height - less, media.roll};
}

void put_on_paper(page::Page& page, const plan::Plan& plan, Use use) {
    const bool roll = media_for(plan, use).roll;
    if (roll) {
        page.width = roll_page_end(page.width);
        page::turn_left(page);
    } else if (const Length more = needed_more(plan, use); more > 0_mm) {
        page::move(page, {more, more});
        page.width += more * 2;
        page.height += more * 2;
    }
    if (const job::Profile* profile = profile_for(plan, use)) page.correction = correction(page, *profile, roll);
}

}  // namespace kerfpacket::sheets
