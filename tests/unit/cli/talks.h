#pragma once
// Talks of "start" from given lines. All figures invented.

#include <string>
#include <vector>

#include "cli/start/talk.h"
#include "support/kit.h"

namespace kerfpacket::tests {

struct Told {
    std::string said;  ///< all that was asked and said, without the lines that were heard
    cli::Talk::State state = cli::Talk::State::asking;
    std::string job;  ///< as far as it goes
    std::size_t heard = 0;
};

inline Told talk_of(const std::vector<std::string>& lines, const std::string& language = "en",
                    const job::Shop& shop = {}) {
    cli::Talk talk(kit(language), shop, language);
    Told told;
    for (const std::string& line : lines) {
        if (talk.state() != cli::Talk::State::asking) break;
        told.said += talk.asking() + talk.prompt() + "\n";
        told.said += talk.hear(line);
        ++told.heard;
    }
    told.state = talk.state();
    told.job = talk.job_text();
    return told;
}

/// Number, title, revision, date, units.
inline std::vector<std::string> talk_head() { return {"T-4", "Fern Row", "", "2026-09-14", "in"}; }

inline std::vector<std::string> operator+(std::vector<std::string> all, const std::vector<std::string>& more) {
    all.insert(all.end(), more.begin(), more.end());
    return all;
}

/// Measured to, legs, depth, whether it splays, quantity, of an opening.
inline std::vector<std::string> talk_jamb() { return {"", "", "4 5/8 in", "", ""}; }
/// Material, thickness, depth of kerfs, spacing, trim, casing.
inline std::vector<std::string> talk_liner() { return {"mdf", "3/8 in", "", "", "", ""}; }
/// Blade, kerf, travel, rear limit, paper.
inline std::vector<std::string> talk_saw() { return {"10 in", "0.118", "", "", ""}; }

inline std::vector<std::string> whole_talk(const std::vector<std::string>& curve) {
    return talk_head() + curve + talk_jamb() + talk_liner() + talk_saw() + std::vector<std::string>{"done"};
}

}  // namespace kerfpacket::tests
