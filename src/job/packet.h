#pragma once
// [packet]: what of the packet is wanted. The kinds of sheets have their names here, for the job file, the command
// line, the index of pages and the order in templates/layout.toml.

#include <array>
#include <string_view>
#include <vector>

namespace kerfpacket::job {

struct SheetKind {
    std::string_view name;
    /// What keeps hands and boards whole, and what says where everything else is, stays in every packet.
    bool can_be_left_out = false;
};

/// In the order of the packet as it is delivered.
inline constexpr std::array<SheetKind, 18> sheet_kinds{{{"cover"},
                                                        {"changes"},
                                                        {"refused"},
                                                        {"safety"},
                                                        {"stock", true},
                                                        {"work-order", true},
                                                        {"climb"},
                                                        {"survey", true},
                                                        {"coupon"},
                                                        {"setup"},
                                                        {"strain", true},
                                                        {"strips"},
                                                        {"flat-blank"},
                                                        {"checklist", true},
                                                        {"template", true},
                                                        {"casing", true},
                                                        {"form", true},
                                                        {"install", true}}};

struct PacketWish {
    bool one_set = false;  ///< strips and checklists once for boards that are alike, not a set for each
    std::vector<std::string_view> leave_out;  ///< kinds of sheets, of `sheet_kinds` and in its order, each once

    bool leaves_out(std::string_view kind) const;
};

}  // namespace kerfpacket::job
