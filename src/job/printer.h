#pragma once
// The printer a packet is printed on: its papers, and what is known of how it errs.

#include <optional>
#include <string>

#include "job/diagnostics.h"
#include "job/media.h"

namespace kerfpacket::job {

using measure::Length;

/// The most that a printer may leave free at an edge: on the smallest sheet the cards find room inside that.
inline constexpr Length most_margin = Length::inches(0.5);

/// Which edge of a cut sheet enters the printer first.
enum class Feed { short_edge, long_edge };

/// What the printer cannot reach, from each edge of the sheet as it is fed.
struct Margins {
    Length left;
    Length right;
    Length leading;
    Length trailing;
};

/// A printer as it was measured with the page of `printer-check`.
struct Profile {
    std::string name;
    double across = 1;  ///< printed length over true length, across the feed
    double along = 1;   ///< the same along the feed
    Feed feed = Feed::short_edge;
    Margins margins;
};

/// A profile that the job or the shop names, and what was measured, once that was read.
struct NamedProfile {
    Sourced<std::string> name;
    std::optional<Profile> measured;
};

struct Printer {
    Media media;                     ///< cut sheets, for cards and for all that has no paper of its own
    std::optional<Media> strips;     ///< paper of the mark strips
    std::optional<Media> templates;  ///< paper of the full-size drawings
    bool adhesive = false;           ///< the strips' paper sticks by itself
    Length margin;                   ///< what the printer cannot reach at any edge
    std::optional<NamedProfile> profile;
    /// Of another printer that prints the strips, or the templates.
    std::optional<NamedProfile> strip_profile;
    std::optional<NamedProfile> template_profile;

    const Media& strip_media() const { return strips ? *strips : media; }
    const Media& template_media() const { return templates ? *templates : media; }
};

}  // namespace kerfpacket::job
