// What the draws of growth are for. Append only: a number, once used, keeps its meaning, since every vine depends on
// it. Addresses: a shoot before thinning by its bearing node and the winter, an axis by its id, a joint by its node id.
#pragma once

#include "sim/core/numeric.h"
#include "sim/core/random.h"

namespace spurwright::growth {

enum class Trait : std::uint32_t {
    own_capacity = 1, // the vine's own share of its site's capacity
    head_below = 2,   // height of the head under the wire
    trunk_form = 3,   // lean, kinks, joints of the stem
    spell = 4,        // flawed winters, neglected winters
    pruner_whim = 5,  // 0 to 15 points of the history pruner's taste
    stub = 6,         // length of old wood's stubs
    bud_lost = 10,    // knocked off in pulling and tying
    burst = 11,
    doubled = 12,
    non_count_round = 13, // the broken shoot of a whole number
    non_count_place = 14,
    sucker = 15,
    thinned = 16,
    azimuth = 17,
    length = 20,
    internode = 21, // of the whole cane
    joint = 22,     // of one joint
    mass = 23,
    cane_class = 24,
    flattening = 25,
    ripe = 26,
    harm = 27,
    collar = 28,
    tendril_start = 30,
    tendril_state = 31,
    bunches = 32,
    bunch_state = 33,
    lateral = 34,
    lateral_size = 35,
    hedge = 36,
    elbow = 40,
    lean = 41,
    upright = 42,
    sway = 43, // direction and place across the row on the way up
    zigzag = 44,
    rank_plane = 45,
    hang = 46,
    weather = 50,     // by year and day
    winter_kill = 51, // by bud and winter
    frost_kill = 52,
    patch = 53,       // a row's slow change of vigour, by place
    second_trunk = 54,
    row_place = 55,   // missing, replanted, dead: by place
    cane_side = 56,   // which way a single cane went first
    place_share = 57, // of a place in a row, apart from the slow change: by place
    dry_back = 58,    // by wound: how deep; by axis and winter: whether it dies
    dead_left = 59,   // whether dead wood was left standing, by axis
    crop = 60,        // of one vine and season, besides its shoots
};

// The draws of one vine. With scatter off every normal is 0 and every even spread its middle; chances stay.
class Draws {
public:
    explicit Draws(std::uint64_t seed, bool scatter = true) : seed_(seed), scatter_(scatter) {}
    std::uint64_t bits(Trait trait, std::uint32_t part, std::uint32_t nth = 0) const {
        return draw(seed_, static_cast<std::uint32_t>(trait), part, nth);
    }
    double normal(Trait trait, std::uint32_t part, std::uint32_t nth = 0) const {
        return scatter_ ? spurwright::normal(bits(trait, part, nth)) : 0.0;
    }
    double uniform(Trait trait, std::uint32_t part, std::uint32_t nth, double low, double high) const {
        return scatter_ ? spurwright::uniform(bits(trait, part, nth), low, high) : 0.5 * (low + high);
    }
    double share(Trait trait, std::uint32_t part, std::uint32_t nth = 0) const { return unit(bits(trait, part, nth)); }
    bool chance(Trait trait, std::uint32_t part, std::uint32_t nth, double p) const {
        return share(trait, part, nth) < p;
    }
    int between(Trait trait, std::uint32_t part, std::uint32_t nth, int low, int high) const {
        return spurwright::between(bits(trait, part, nth), low, high);
    }
    bool scatter() const { return scatter_; }

private:
    std::uint64_t seed_;
    bool scatter_;
};

} // namespace spurwright::growth
