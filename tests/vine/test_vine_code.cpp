// The code of a vine: printed, read back, and every slip of a hand caught with its group.
#include <doctest/doctest.h>

#include <algorithm>
#include <rapidcheck.h>

#include "sim/vine/vine_code.h"

using namespace spurwright;

namespace {

CodedSite any_site() {
    CodedSite s;
    s.system = *rc::gen::element(System::two_cane, System::one_cane, System::cordon, System::head_canes, System::head_spurs);
    s.age = *rc::gen::inRange(3, 41);
    s.vigour = *rc::gen::element(Vigour::low, Vigour::moderate, Vigour::high);
    s.frost = *rc::gen::arbitrary<bool>();
    s.spacing_step = *rc::gen::inRange(0, 64);
    s.rows_step = *rc::gen::inRange(0, 32);
    s.wire_step = *rc::gen::inRange(0, 8);
    s.pruner = static_cast<Pruner>(*rc::gen::inRange(0, 8));
    s.two_trunks = *rc::gen::arbitrary<bool>();
    s.missing_left = *rc::gen::arbitrary<bool>();
    s.missing_right = *rc::gen::arbitrary<bool>();
    s.seed = *rc::gen::inRange<std::uint64_t>(0, std::uint64_t{1} << 40);
    return s;
}

constexpr std::string_view alphabet = "0123456789ABCDEFGHJKMNPQRSTVWXYZ";

}  // namespace

TEST_SUITE("vine/vine-code") {
    TEST_CASE("two codes worked by hand") {
        CodedSite s;
        s.seed = 1;
        CHECK(print_code(s) == "00RM-K1SX-G00Q-0004-0005-046T");
        s.age = 30;
        s.spacing_step = 18;
        s.pruner = Pruner::far_canes;
        s.seed = 78'187'493'530;
        CHECK(print_code(s) == "01WR-J9SG-G20Z-938T-NKRF-KAZW");
    }
    TEST_CASE("a code read back is the site, in any case and spacing") {
        CHECK(rc::check([] {
            const CodedSite s = any_site();
            std::string code = print_code(s);
            RC_ASSERT(read_code(code).value() == s);
            std::transform(code.begin(), code.end(), code.begin(), [](char c) { return c == '-' ? ' ' : c == '0' ? 'o' : c == '1' ? 'l' : static_cast<char>(std::tolower(c)); });
            RC_ASSERT(read_code(code).value() == s);
        }));
    }
    TEST_CASE("each of 744 substitutions and each swap of two characters is refused, and the group named") {
        const std::string code = "01WR-J9SG-G20Z-938T-NKRF-KAZW";
        int substitutions = 0, swaps = 0;
        for (std::size_t i = 0; i < code.size(); ++i) {
            if (code[i] == '-') continue;
            for (const char c : alphabet) {
                if (c == code[i]) continue;
                std::string wrong = code;
                wrong[i] = c;
                const auto read = read_code(wrong);
                REQUIRE_FALSE(read);
                CHECK(read.error().key.name == "error.code.group");
                CHECK(std::get<Count>(read.error().arguments[0].value).value == static_cast<std::int64_t>(i / 5 + 1));
                ++substitutions;
            }
            for (std::size_t j = i + 1; j < code.size(); ++j) {
                if (code[j] == '-' || code[j] == code[i]) continue;
                std::string wrong = code;
                std::swap(wrong[i], wrong[j]);
                CHECK_FALSE(read_code(wrong));
                ++swaps;
            }
        }
        CHECK(substitutions == 744);
        CHECK(swaps == 269);
    }
    TEST_CASE("two groups swapped are refused") {
        const std::string code = "01WR-J9SG-G20Z-938T-NKRF-KAZW";
        for (std::size_t a = 0; a < 6; ++a)
            for (std::size_t b = a + 1; b < 6; ++b) {
                std::string wrong = code;
                std::swap_ranges(wrong.begin() + static_cast<long>(5 * a), wrong.begin() + static_cast<long>(5 * a + 4), wrong.begin() + static_cast<long>(5 * b));
                CHECK_FALSE(read_code(wrong));
            }
    }
    TEST_CASE("refusals come in their order: length, group, whole, recipe, field") {
        CHECK(read_code("01WR").error().key.name == "error.code.length");
        CHECK(read_code("U1WR-J9SG-G20Z-938T-NKRF-KAZW").error().key.name == "error.code.group");
        CodedSite s;
        s.recipe = 7;
        CHECK(read_code(print_code(s)).error().fault == Fault::newer);
        s.recipe = 0;
        s.age = 2;
        CHECK(read_code(print_code(s)).error().key.name == "error.code.field");
        const std::string a = print_code(CodedSite{}), b = [] { CodedSite other; other.seed = 9'999; return print_code(other); }();
        CHECK(read_code(a.substr(0, 25) + b.substr(25)).error().key.name == "error.code.whole");
    }
}
