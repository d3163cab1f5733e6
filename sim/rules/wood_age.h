// Nearly all the fruit grows from last summer's wood, so only one-year canes are laid. The age is the cane's own: a
// short piece of two-year wood under it is an arm, judged by its distance.
#pragma once

#include "sim/core/source_list.h"
#include "sim/rules/say.h"

namespace spurwright::rules {

inline constexpr std::array wood_age_claims{
    says(sources::hellman_tamu, "pruning page: older wood is not laid"),
    says(sources::hickey_psu, "recorded lesson: one-year wood light tan or cinnamon, older wood darker"),
    says(sources::wvda_grapes, "p 14: one-year bark tight, brown, red-brown or grey by variety"),
};

// Of a cane laid; whoever lays older wood gets none for every rule about that cane, and a cap.
PerMille mark_wood_age(const CaneFacts& cane);
Said say_wood_age(const CaneFacts& cane);
Said say_old_wood_laid(AxisId axis, int age, Side side);
extern const Rule wood_age;

}  // namespace spurwright::rules
