// The published checks of the model: what an outside source says, what the model gives, and how far apart they may be.
// Computed here and nowhere else; the program prints them and the tests hold them. Must not know: words, files.
#pragma once

#include <array>
#include <limits>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "sim/growth/growth_constants.h"

namespace spurwright::checks {

// What a pass means (DEVELOPERS.md). A fitted check's pass only shows that the fit was coded right.
enum class Group : unsigned char { independent, parameters, own_table, fitted, fitted_one, weak, own };
constexpr auto words_of(Group) {
    return std::to_array<std::string_view>(
        {"independent", "parameters", "own-table", "fitted", "fitted-one", "weak", "own"});
}

// One number held against its band. `low` and `high` are what the tolerance allows; open ends are +-infinity.
struct Compared {
    std::string name;    // "concord", "C 2011-12"; empty where the check has one number
    double expected = 0; // NaN: only a range is asked for
    double low = 0, high = 0;
    double got = 0;
    bool passes() const { return got >= low && got <= high; }
};

struct Check {
    int id = 0; // never changes
    std::string_view source = "-";
    growth::ValueStatus status{}; // of what is expected
    Group group{};
    std::string_view tolerance; // as the source or we state it: "0.3 C", "20 %", "in range"
    std::vector<Compared> (*compare)() = nullptr;
    bool known = false; // it is known to fail: recorded with its figures, in the words and in DEVELOPERS.md
};

// By id, ascending. Not here: 34, learning numbers, which is no part of the simulator.
std::span<const Check> all_checks();
const Check& check_of(int id); // a bug where there is none

bool passes(const std::vector<Compared>& numbers);

// Helpers of the files that compute.
inline constexpr double no_limit = std::numeric_limits<double>::infinity();
Compared near(std::string name, double expected, double tolerance, double got);
Compared within(std::string name, double low, double high, double got);
Compared share_near(std::string name, double expected, double share, double got); // tolerance a share of `expected`
Compared none(std::string name, double violations);                               // exactly 0

} // namespace spurwright::checks
