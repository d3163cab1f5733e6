// Our own functions against the C library's long double ones, and golden bits.
#include <doctest/doctest.h>

#include <cmath>
#include <cstring>

#include "sim/core/numeric.h"
#include "sim/core/random.h"

using namespace spurwright;

namespace {

double relative(double mine, long double truth) {
    if (truth == 0.0L) return std::fabs(mine);
    return static_cast<double>(std::fabs((static_cast<long double>(mine) - truth) / truth));
}

double at(int i, double low, double high) { return uniform(draw(11, 1, static_cast<std::uint32_t>(i)), low, high); }

std::uint64_t bits_of(double x) {
    std::uint64_t b;
    std::memcpy(&b, &x, sizeof b);
    return b;
}

}  // namespace

TEST_SUITE("core/numeric") {
    TEST_CASE("exp, exp2, log, log2 within 1e-15 of long double") {
        for (int i = 0; i < 20'000; ++i) {
            const double x = at(i, -300, 300), y = numeric::exp(at(i, -200, 200));
            CHECK(relative(numeric::exp(x), std::exp(static_cast<long double>(x))) < 1e-15);
            CHECK(relative(numeric::exp2(x), std::exp2(static_cast<long double>(x))) < 1e-15);
            CHECK(relative(numeric::log(y), std::log(static_cast<long double>(y))) < 1e-15);
            CHECK(relative(numeric::log2(y), std::log2(static_cast<long double>(y))) < 1e-15);
        }
    }
    TEST_CASE("pow within 1e-13 where the model uses it") {
        for (int i = 0; i < 20'000; ++i) {
            const double x = at(i, 0.001, 1000), y = at(i + 100'000, -3, 3);
            CHECK(relative(numeric::pow(x, y), std::pow(static_cast<long double>(x), static_cast<long double>(y))) < 1e-14);
        }
        CHECK(numeric::pow(0, 2) == 0.0);
        CHECK(numeric::pow(5, 0) == 1.0);
    }
    TEST_CASE("sine, cosine and the angles within 1e-15") {
        for (int i = 0; i < 20'000; ++i) {
            const double a = at(i, -40, 40);
            const auto [s, c] = numeric::sincos(a);
            CHECK(std::fabs(s - static_cast<double>(std::sin(static_cast<long double>(a)))) < 1e-15);
            CHECK(std::fabs(c - static_cast<double>(std::cos(static_cast<long double>(a)))) < 1e-15);
            const double y = at(i, -5, 5), x = at(i + 50'000, -5, 5);
            CHECK(relative(numeric::atan2(y, x), std::atan2(static_cast<long double>(y), static_cast<long double>(x))) < 1e-15);
            const double cosine = at(i, -1, 1);
            CHECK(std::fabs(numeric::acos(cosine) - static_cast<double>(std::acos(static_cast<long double>(cosine)))) < 4e-15);
        }
        CHECK(numeric::atan2(0, -1) == doctest::Approx(numeric::pi));
        CHECK(numeric::atan2(0, 0) == 0.0);
    }
    TEST_CASE("erf within 1e-14, the normal quantile undoes the normal distribution") {
        for (int i = 0; i < 20'000; ++i) {
            const double x = at(i, -5.5, 5.5);
            CHECK(relative(numeric::erf(x), std::erf(static_cast<long double>(x))) < 1e-14);
            const double p = at(i, 1e-9, 1 - 1e-9);
            const long double z = static_cast<long double>(numeric::normal_quantile(p));
            const long double back = p < 0.5 ? std::erfc(-z / std::sqrt(2.0L)) / 2 : 1 - std::erfc(z / std::sqrt(2.0L)) / 2;
            CHECK(relative(p, back) < 1e-13);
        }
        CHECK(numeric::normal_quantile(0.5) == 0.0);
        CHECK(numeric::normal_quantile(0.975) == doctest::Approx(1.959963984540054).epsilon(1e-14));  // any table of the normal distribution
    }
    TEST_CASE("golden bits: another value here is another vine") {
        std::uint64_t all = 0;
        for (int i = 0; i < 1000; ++i) {
            all = mix(all ^ bits_of(numeric::exp(at(i, -5, 5))));
            all = mix(all ^ bits_of(numeric::pow(at(i, 0.1, 9), 1.48)));
            all = mix(all ^ bits_of(numeric::sincos(at(i, -7, 7)).sine));
            all = mix(all ^ bits_of(numeric::atan2(at(i, -1, 1), at(i + 1, -1, 1))));
            all = mix(all ^ bits_of(numeric::normal_quantile(at(i, 0, 1))));
        }
        CHECK(all == 1231960989313976295u);
    }
}
