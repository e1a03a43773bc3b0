// What nobody measured or told, and was taken as it usually is: the reader of the job noted it.
#include <algorithm>
#include <iterator>
#include <map>
#include <vector>

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "sheets/cover/cover_parts.h"

namespace kerfpacket::sheets {
namespace {

/// "3 in of trim at each end".
std::string taken_words(const Cover& cover, const job::Taken& taken) {
    const auto& elements = taken.value.elements;
    const auto* length = elements.empty() ? nullptr : std::get_if<Length>(&elements.front().front());
    const std::string value =
        cover.words("cover.taken_" + taken.value.key, {{"value", length == nullptr ? "" : cover.tape.exact(*length)}});
    return taken.of_shop ? cover.words("cover.taken_of_shop", {{"value", value}}) : value;
}

}  // namespace

void cover_taken(Cover& cover) {
    std::vector<std::string> order;  // of the pieces; what is of the whole job has no name
    std::map<std::string, std::string> said;
    for (const job::Taken& taken : cover.plan.taken) {
        std::string& all = said[taken.value.piece];
        if (all.empty()) order.push_back(taken.value.piece);
        all += (all.empty() ? "" : "; ") + taken_words(cover, taken);
    }
    if (order.empty()) return;
    std::string line;
    for (auto first = order.begin(); first != order.end(); ++first) {
        const std::string values = said[*first];
        std::vector<std::string> who;
        std::copy_if(first, order.end(), std::back_inserter(who),
                     [&](const std::string& piece) { return said[piece] == values; });
        if (std::any_of(order.begin(), first, [&](const std::string& piece) { return said[piece] == values; }))
            continue;
        for (std::string& one : who)
            if (one.empty()) one = cover.words("changes.whole_job");
        line += (line.empty() ? "" : ".  ") + fmt::format("{}: {}", fmt::join(who, ", "), values);
    }
    cover.flow.listed(Role::caution, {}, cover.words("cover.taken", {{"values", line}}),
                      Cover::regular(cover.style().small));
}

}  // namespace kerfpacket::sheets
