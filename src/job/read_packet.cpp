// [packet]: what of the packet is wanted.
#include <algorithm>
#include <string>

#include "job/packet.h"
#include "job/tables.h"
#include "job/text.h"

namespace kerfpacket::job {
namespace {

constexpr std::string_view leave_out_example = R"(["template", "casing"])";

std::vector<std::string_view> kinds_to_leave_out() {
    std::vector<std::string_view> names;
    for (const SheetKind& kind : sheet_kinds)
        if (kind.can_be_left_out) names.push_back(kind.name);
    return names;
}

/// The kind that is meant; none, and told, where it is none or is never left out.
const SheetKind* kind_to_leave_out(Context& context, const toml::node& node) {
    if (context.pass_over(node)) return nullptr;
    const auto* word = node.as_string();
    if (word == nullptr) {
        context.error(position(node), "leave_out takes kinds of sheets in quotes",
                      for_example("leave_out", leave_out_example));
        return nullptr;
    }
    const auto* kind = std::find_if(sheet_kinds.begin(), sheet_kinds.end(),
                                    [&](const SheetKind& one) { return one.name == word->get(); });
    if (kind == sheet_kinds.end()) {
        context.error(position(node), "unknown kind of sheet " + in_quotes(word->get()),
                      expected_one_of(word->get(), kinds_to_leave_out()));
        return nullptr;
    }
    if (kind->can_be_left_out) return kind;
    context.error(position(node),
                  in_quotes(word->get()) + " is never left out: the packet cannot be trusted without it",
                  "can be left out: " + listed(kinds_to_leave_out()));
    return nullptr;
}

std::vector<std::string_view> read_leave_out(Context& context, TableReader& reader) {
    const auto* node =
        reader.find("leave_out", Need::optional, leave_out_example, {Takes::Kind::list, 0, 0, kinds_to_leave_out()});
    if (node == nullptr) return {};
    const auto* list = node->as_array();
    if (list == nullptr) {
        context.error(position(*node), "leave_out must be a list in square brackets",
                      for_example("leave_out", leave_out_example));
        return {};
    }
    std::array<bool, sheet_kinds.size()> left_out{};
    for (const auto& element : *list)
        if (const SheetKind* kind = kind_to_leave_out(context, element))
            left_out.at(static_cast<std::size_t>(kind - sheet_kinds.data())) = true;
    std::vector<std::string_view> kinds;
    for (std::size_t i = 0; i < sheet_kinds.size(); ++i)
        if (left_out.at(i)) kinds.push_back(sheet_kinds.at(i).name);
    return kinds;
}

/// More than one is what is printed anyway: a set for each board.
bool read_one_set(Context& context, TableReader& reader) {
    const auto* node = reader.find("copies", Need::optional, "1", {Takes::Kind::whole, 1, 1});
    if (node == nullptr) return false;
    const auto* number = node->as_integer();
    if (number != nullptr && number->get() == 1) return true;
    context.error(position(*node), "copies can only be 1: one set of strips and checklists for all boards alike",
                  "leave the line out for a set for each board; quantity of the piece says how many there are");
    return false;
}

}  // namespace

bool PacketWish::leaves_out(std::string_view kind) const {
    return std::find(leave_out.begin(), leave_out.end(), kind) != leave_out.end();
}

PacketWish read_packet(Context& context, const toml::table& table) {
    TableReader reader(context, table, "[packet]");
    PacketWish wish;
    wish.one_set = read_one_set(context, reader);
    wish.leave_out = read_leave_out(context, reader);
    reader.finish();
    return wish;
}

}  // namespace kerfpacket::job
