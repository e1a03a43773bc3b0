#include "cli/made_again.h"

#include <functional>
#include <sstream>
#include <stdexcept>

#include "disk/child.h"
#include "disk/process.h"

namespace kerfpacket::cli {
namespace {

namespace fs = std::filesystem;

constexpr disk::Limits limits{disk::most_memory, 60, 16U << 20U};

std::string in_limits(const std::function<std::string()>& work, const std::string& packet) {
    return disk::in_child(work, limits, packet,
                          packet +
                              ": to make it again takes more memory or time than is given to it; whether it is as "
                              "it was written cannot be told");
}

/// In this process; what is wrong on the way is only kept.
Again made_here(const std::string& bytes, const Record& record, const fs::path& home, bool digest_sheets) {
    std::ostringstream out, err;
    Console quiet(out, err, false);
    Again again;
    try {
        const std::optional<Planned> plan = planned(record.inputs, quiet);
        again.planned = plan.has_value();
        const std::optional<Packet> packet =
            plan ? make_packet(record, *plan, quiet, home, digest_sheets) : std::nullopt;
        again.made = packet.has_value();
        if (packet) {
            again.same = packet->bytes == bytes;
            again.statement = statement_of(plan->plan, packet->pages);
            again.sheets = packet->sheets;
        }
    } catch (const disk::Failure&) {
        // Of this kerfpacket's own files, or of the system: it says nothing of the packet.
        throw;
    } catch (const std::runtime_error& told) { err << told.what() << "\n"; }
    again.said = err.str();
    return again;
}

std::string packed(const Again& again) {
    std::string text{again.planned ? 'p' : '-', again.made ? 'm' : '-', again.same ? 's' : '-'};
    for (const std::string& one : {again.statement.number, again.statement.revision, again.statement.fingerprint,
                                   std::to_string(again.statement.pages), again.sheets, again.said})
        text += disk::packed(one);
    return text;
}

Again unpacked(std::string_view text) {
    Again again;
    again.planned = text.at(0) == 'p';
    again.made = text.at(1) == 'm';
    again.same = text.at(2) == 's';
    text.remove_prefix(3);
    again.statement.number = disk::unpacked(text);
    again.statement.revision = disk::unpacked(text);
    again.statement.fingerprint = disk::unpacked(text);
    again.statement.pages = std::stoul(disk::unpacked(text));
    again.sheets = disk::unpacked(text);
    again.said = disk::unpacked(text);
    return again;
}

}  // namespace

Again made_again(const std::string& packet, const std::string& bytes, const Record& record, const fs::path& home,
                 bool digest_sheets) {
    return unpacked(in_limits([&] { return packed(made_here(bytes, record, home, digest_sheets)); }, packet));
}

std::vector<std::string> differences(const std::string& packet, const Inputs& carried, const Planned& now,
                                     const fs::path& home) {
    const auto work = [&] {
        std::string answer;
        const std::optional<Planned> before = planned_quietly(carried);
        if (before)
            for (const std::string& sentence : differences(*before, now, home)) answer += disk::packed(sentence);
        return answer;
    };
    const std::string answer = in_limits(work, packet);
    std::vector<std::string> sentences;
    for (std::string_view rest = answer; !rest.empty();) sentences.push_back(disk::unpacked(rest));
    return sentences;
}

}  // namespace kerfpacket::cli
