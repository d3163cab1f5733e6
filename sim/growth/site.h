// The site of one vine: every option of growth, with the defaults of the practice vineyard. What the code of a vine
// can say of it, and what gives a vine file instead. Must not know: rules, marks, files, words.
#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "sim/core/error.h"
#include "sim/vine/vine_code.h"

namespace spurwright::growth {

struct Variety;

enum class Harvest : unsigned char { hand, machine };
enum class Neighbours : unsigned char { both, near, far, none }; // near: only the one towards the near post stands
enum class WiresInWinter : unsigned char { up, dropped };

constexpr auto words_of(Harvest) { return std::to_array<std::string_view>({"hand", "machine"}); }
constexpr auto words_of(Neighbours) { return std::to_array<std::string_view>({"both", "near", "far", "none"}); }
constexpr auto words_of(WiresInWinter) { return std::to_array<std::string_view>({"up", "dropped"}); }

// Plain numbers as people give them; check() refuses what cannot be grown. Defaults: our choice (DEVELOPERS.md).
struct Site {
    int age = 12; // winters since planting, 3 to 40
    Vigour vigour = Vigour::moderate;
    double spacing_m = 1.8;                        // to the next trunk, 0.9 to 3.0
    double rows_m = 2.4;                           // to the next row, 1.5 to 4.0
    double wire_m = 0.90;                          // height of the fruiting wire, 0.6 to 1.4
    std::vector<double> catch_m{0.30, 0.60, 0.90}; // pairs above the fruiting wire, at most 4, rising, up to 1.5
    double head_below_mm = 130;                    // of the fruiting wire, 50 to 300: the mean a head is trained to
    std::optional<double> hedge_m = 1.00;          // top of the hedge above the wire, 0.6 to 1.4; none: not hedged
    bool thinning = true;
    Harvest harvest = Harvest::hand;
    bool frost = false;
    std::string variety = "plain";
    std::shared_ptr<const Variety> own_variety; // one that no table holds, of that name; none: the table's
    Pruner pruner = Pruner::good;
    System system = System::two_cane;
    int trunks = 1;
    bool graft = true;
    Neighbours neighbours = Neighbours::both;
    WiresInWinter wires_in_winter = WiresInWinter::up;
    bool drip = true;
    double capacity_share = 1.0; // of the capacity such a site gives: a strong or weak place in the row, 0.2 to 5
    std::uint64_t seed = 0; // 40 bit
};

// Refuses what the model does not grow: Fault::out_of_range, key "error.grow.<field>" with value, low and high (a
// range) or value (a word), where "--<option>". NaN and infinity lie in no range.
[[nodiscard]] Result<void> check(const Site& site);

// What the vine's variety says. Needs a site that check() passes.
const Variety& variety_of(const Site& site);

// The same site in the steps of the vine code; nothing where the code cannot say it (an option without a field, a
// value between or beyond its steps, a variety of one's own). Needs a site that check() passes.
std::optional<CodedSite> coded(const Site& site);

// The site a code names; refused like check().
[[nodiscard]] Result<Site> site_of(const CodedSite& code);

} // namespace spurwright::growth
