// The numbers of one shoot of this season before it stands anywhere: length, class, joints, thickness, ripe length
// (steps G6 to G8). No places.
#pragma once

#include <vector>

#include "sim/growth/budburst.h"

namespace spurwright::growth {

struct Shoot {
    double length_mm = 0; // as grown, before hedging
    CaneClass grew{};
    std::vector<double> joints_mm; // from the base; the first is joint 1
    double base_mm = 0;            // d_b, of a round section
    double flattening = 1;         // major / minor
    double ripe_mm = 0;            // of the grown length
    bool poorly_ripe = false;
    double mass_g = 0;
};

// What all shoots of one vine and season share.
struct ShootLaw {
    ShootLaw(const Vine& vine, const SeasonSettings& settings, double capacity, double shoots);
    double mean_length_cm, mass_scale, bull_share;
    std::vector<double> reach; // exp(-(i + 0.5) / base rate), by joint
    std::vector<double> taper; // diameter against the base by share of length, in even steps

    double taper_at(double share) const; // between the steps by a straight line; its error is below 1e-5
};

// Every draw by the name of the axis; fills `shoot`, whose memory is used again.
void grow_shoot(Shoot& shoot, AxisId id, const Push& push, const ShootLaw& law, const SeasonSettings& settings,
                const Draws& draws);

} // namespace spurwright::growth
