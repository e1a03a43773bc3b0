#include "output/foreign_pdf.h"

#include <fmt/format.h>

#include "disk/child.h"
#include "disk/near_name.h"
#include "disk/read.h"

namespace kerfpacket::output {

namespace fs = std::filesystem;

std::string load_foreign(const fs::path& file, const ForeignKind& kind) {
    auto bytes = disk::read(file, kind.most);
    if (bytes) return *std::move(bytes);
    using Kind = disk::Unread::Kind;
    const std::string name = file.string();
    switch (bytes.error().kind) {
        case Kind::absent: {
            const std::string near = disk::near_name(file, ".pdf");
            throw disk::Failure(name + ": there is no such file" +
                                (near.empty() ? "" : fmt::format("; did you mean {}?", near)));
        }
        case Kind::folder:
        case Kind::special: throw disk::Failure(fmt::format("{} is not a file; expected {}", name, kind.expected));
        case Kind::too_large:
            throw TooLarge(fmt::format("{} is over {} MB; no {} is", name, kind.most >> 20U, kind.name));
        case Kind::failed: break;
    }
    throw disk::Failure(fmt::format("cannot read {}: {}", name, bytes.error().why));
}

std::string read_in_bounds(const std::function<std::string()>& work, const ForeignKind& kind, const fs::path& file,
                           const std::string& beyond) {
    // One letter tells an answer from a refusal: an exception does not come out of a child.
    const auto answer_or_refusal = [&] {
        try {
            return "a" + work();
        } catch (const Refusal& refused) { return "r" + std::string(refused.what()); }
    };
    const disk::Limits limits{512U << 20U, 10, kind.most};
    const std::string answer = disk::in_child(answer_or_refusal, limits, file.string(), file.string() + " " + beyond);
    if (answer.at(0) == 'r') throw Refusal(answer.substr(1));
    return answer.substr(1);
}

}  // namespace kerfpacket::output
