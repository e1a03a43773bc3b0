#include "output/dash.h"

#include "measure/require.h"

namespace kerfpacket::output {

std::vector<int> dash_pattern(page::Dash dash) {
    switch (dash) {
        case page::Dash::solid: return {};
        case page::Dash::dashed: return {4, 3};
        case page::Dash::dotted: return {1, 3};
        case page::Dash::dash_dot: return {9, 3, 1, 3};
    }
    throw measure::Bug("a dash without a pattern");
}

}  // namespace kerfpacket::output
