// Runs repeat: a fixed seed, unless RC_PARAMS asks for another.

#include <cstdlib>

namespace {
[[maybe_unused]] const int seeded = setenv("RC_PARAMS", "seed=20260402 max_success=300", 0);
}
