// A number within an absolute distance of another.
#pragma once

#include <doctest/doctest.h>

namespace spurwright::test {

inline doctest::Approx near(double value, double by) { return doctest::Approx(value).scale(0).epsilon(by / value); }

} // namespace spurwright::test
