#pragma once
// The languages that the sheets are printed in: a new one is in every test of words from its first day.

#include <string>
#include <vector>

#include "job/job.h"

namespace kerfpacket::tests {

inline const std::vector<std::string>& languages() {
    static const std::vector<std::string> all(job::languages.begin(), job::languages.end());
    return all;
}

}  // namespace kerfpacket::tests
