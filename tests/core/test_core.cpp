// Draws, hashes, names and measures.
#include <doctest/doctest.h>

#include <rapidcheck.h>

#include "sim/core/hash.h"
#include "sim/core/ids.h"
#include "sim/core/random.h"
#include "sim/core/units.h"

using namespace spurwright;
using namespace spurwright::literals;

TEST_SUITE("core") {
    TEST_CASE("golden draws: a change here changes every saved vine") {
        CHECK(draw(7, 1, 12) == 7031715521000261214u);
        CHECK(draw(0, 0, 0) != draw(0, 0, 0, 1));
        CHECK(draw(0, 0, 1) != draw(0, 1, 0));
    }
    TEST_CASE("whole numbers are even over their range, normals have mean 0 and spread 1") {
        int counts[6] = {};
        double sum = 0, squares = 0;
        constexpr int n = 60'000;
        for (std::uint32_t i = 0; i < n; ++i) {
            ++counts[between(draw(1, 2, i), 0, 5)];
            const double z = normal(draw(1, 3, i));
            sum += z;
            squares += z * z;
        }
        for (const int count : counts) CHECK(count == doctest::Approx(n / 6.0).epsilon(0.03));
        CHECK(sum / n == doctest::Approx(0.0).epsilon(0.02));
        CHECK(squares / n == doctest::Approx(1.0).epsilon(0.02));
        CHECK(between(~std::uint64_t{0}, -3, 3) == 3);
        CHECK(between(0, -3, 3) == -3);
    }
    TEST_CASE("FNV-1a gives its published vectors") {
        CHECK(hash_text(hash_of("")) == "cbf29ce484222325");
        CHECK(hash_text(hash_of("a")) == "af63dc4c8601ec8c");
        CHECK(hash_text(hash_of("foobar")) == "85944171f73967e8");
    }
    TEST_CASE("a name read back is the id") {
        CHECK(rc::check([](std::uint16_t axis, std::uint8_t index) {
            const AxisId id{static_cast<std::uint32_t>(axis) + 1};
            RC_ASSERT(read_axis(name_of(id)) == id);
            RC_ASSERT(read_node(name_of(node_id(id, index))) == node_id(id, index));
            RC_ASSERT(axis_of(node_id(id, index)) == id);
            RC_ASSERT(index_of(node_id(id, index)) == index);
        }));
        for (const char* bad : {"", "a", "a0", "a01", "b3", "a-1", "a1048576", "a3 ", "12"}) CHECK_FALSE(read_axis(bad));
        for (const char* bad : {"a1", "a1.", "a1.256", "a1.03", ".3", "a1.2.3"}) CHECK_FALSE(read_node(bad));
    }
    TEST_CASE("measures round to the nearest whole unit") {
        CHECK((1.5_mm).count == 1500);
        CHECK((0.25_inch).count == 6350);
        CHECK(from_mm(-0.0006).count == -1);
        CHECK(from_mm(1.2344).count == 1234);
        CHECK(in_mm(8.45_mm) == doctest::Approx(8.45));
    }
}
