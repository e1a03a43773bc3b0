#pragma once
// What a shop keeps in one file for all its jobs: its saw, its printer, its stock, its materials.

#include <optional>
#include <vector>

#include "job/beside.h"
#include "job/job.h"

namespace kerfpacket::job {

/// Values of the shop file. They have no place (line 0), since they stand in no job file.
struct Shop {
    Saw saw;  ///< lengths of 0 where the shop does not say
    std::optional<Printer> printer;
    Stock stock;
    Beside beside;
    Length tape;  ///< 0 where the shop does not say
    std::vector<Material> materials;
    std::vector<Trial> trials;
    std::string words;    ///< the folder of the shop's own words, beside the shop file; empty for none
    bool faulty = false;  ///< something could not be read: what a job misses is perhaps just that
};

struct ShopReading {
    Shop shop;
    Diagnostics diagnostics;  ///< they point into the shop file
};

/// Reads the text of a shop file: [saw], [printer], [stock], [rates], [[material]] and [[trial]] with the keys that
/// they have in a job file, none of them needed, and at the top `units` for bare numbers and `tape`.
ShopReading read_shop(const Source& source);

}  // namespace kerfpacket::job
