// A vine grown for a test, which fails where none grows.
#pragma once

#include <doctest/doctest.h>

#include "sim/growth/history.h"
#include "sim/vine/vine_check.h"

namespace spurwright::test {

inline Vine grown(const growth::Site& site) {
    auto vine = growth::grow_vine(site);
    REQUIRE(vine.has_value());
    return *std::move(vine);
}

inline Vine grown(System system, std::uint32_t seed, int age, double spacing_m) {
    growth::Site site;
    site.system = system;
    site.seed = seed;
    site.age = age;
    site.spacing_m = spacing_m;
    return grown(site);
}

// The invariant that a vine breaks, and where; empty where none.
inline std::string broken(const Vine& vine) {
    const auto error = check_vine(vine);
    return error ? std::string(error->key.name) + " " + std::get<std::string>(error->arguments[0].value) : "";
}

}  // namespace spurwright::test
