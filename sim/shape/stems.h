// The centre lines of what stands. Inner to sim/shape.
#pragma once

#include "sim/shape/vine_shape.h"
#include "sim/vine/vine.h"

namespace spurwright::shape {

Vec3 point_of(const Place& place);

// Numbers of the draws that only a picture uses; append only.
enum class Look : std::uint32_t { kink = 9001, twist, wound_way, bud_size, hang_way, clip, crown };
double share_of(std::uint64_t seed, Look look, std::uint32_t part, std::uint32_t nth = 0); // in (0, 1)

// Fills `stems`; rows of `vine.axes` that do not stand are left out. `stem_of_row`: index of each axis row, or -1.
void add_stems(VineShape& shape, const Vine& vine, std::vector<int>& stem_of_row);

// Buds, tendrils and bunch stems of every stem; sets the planes of its nodes first.
void add_organs(VineShape& shape, const Vine& vine, const std::vector<int>& stem_of_row);

void add_wounds(VineShape& shape, const Vine& vine, const std::vector<int>& stem_of_row);

void add_dead_strips(VineShape& shape, const Vine& vine); // needs the wounds

void add_trellis(VineShape& shape, const Vine& vine);
void add_ties(VineShape& shape, const Vine& vine, const std::vector<int>& stem_of_row);

// Nearest place on any wire that is up, and its square distance.
Vec3 nearest_on_wire(const TrellisShape& trellis, Vec3 place);

} // namespace spurwright::shape
