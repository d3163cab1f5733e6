// How large a property test runs: as usual, or at full size where SPURWRIGHT_FULL is set (.ci/full).
#pragma once

#include <cstdlib>

namespace spurwright::test {

template <class Count>
Count sized(Count usual, Count full) {
    return std::getenv("SPURWRIGHT_FULL") ? full : usual;
}

}  // namespace spurwright::test
