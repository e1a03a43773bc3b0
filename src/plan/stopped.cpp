#include "plan/stopped.h"

namespace kerfpacket::plan {

Stopped stopped(const Piece& piece) {
    if (piece.bend.verdict == bend::Verdict::break_likely) return Stopped::breaks;
    return piece.weak_links.empty() ? Stopped::no : Stopped::weak_link;
}

std::string name_in_house(const Plan& job, const std::string& id, bool several) {
    return several ? job.header.number + " " + id : id;
}

std::vector<std::string> stopped_boards(const std::vector<const Plan*>& jobs) {
    std::vector<std::string> names;
    for (const Plan* job : jobs)
        for (const Piece& piece : job->pieces)
            if (stopped(piece) != Stopped::no) names.push_back(name_in_house(*job, piece.id, jobs.size() > 1));
    return names;
}

std::vector<std::string> not_made(const std::vector<const Plan*>& jobs) {
    std::vector<std::string> names;
    for (const Plan* job : jobs)
        for (const Refused& one : job->refused) names.push_back(name_in_house(*job, one.id, jobs.size() > 1));
    return names;
}

}  // namespace kerfpacket::plan
