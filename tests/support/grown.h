// A vine grown for a test, which fails where none grows.
#pragma once

#include <doctest/doctest.h>

#include "sim/growth/history.h"

namespace spurwright::test {

inline Vine grown(const growth::Site& site) {
    auto vine = growth::grow_vine(site);
    REQUIRE(vine.has_value());
    return *std::move(vine);
}

}  // namespace spurwright::test
