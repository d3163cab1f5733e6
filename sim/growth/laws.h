// The laws of the growth model as plain functions of numbers (steps G3 to G16). No vine, no draws. Lengths
// in cm, diameters in mm, mass in g, unless the name says otherwise. How each was set: DEVELOPERS.md.
#pragma once

#include "sim/growth/growth_constants.h"

namespace spurwright::growth {

// How strongly a node load holds back the buds near the base (b of G3).
double inhibition(const Constants& c, double count_nodes, double capacity);

// Chance that the bud at position i (1 at the basal count node) of a cane with `nodes` live count nodes bursts; the two
// next to the cut feel no inhibitor [antcliff-1955]. Handling loss apart.
double budburst_p(const Constants& c, double inhibition, int i, int nodes);

double non_count_shoots(const Constants& c, double count_nodes, double capacity);
double mean_length(const Constants& c, double length_ref, double capacity, double shoots);
double mean_joint(const Constants& c, double length, double joint_factor, double scatter); // l_mean, clamped

// Share of its length that joint i (from 0) of n takes before scatter: short at the base and towards the tip.
// `reach` is exp(-(i + 0.5) / base rate).
double joint_weight(const Constants& c, int i, int n, double reach);

double shoot_mass(const Constants& c, double length, double scale);
double base_diameter(const Constants& c, double length, double mass);            // d_b
double diameter_at(const Constants& c, double base, double share_of_length);     // d(s)
double inflorescences(const Constants& c, double parent_area_mm2);               // y(A)
double bunch_mass(const Constants& c, double capacity, double shoots, double reserves); // M_b, g
// R of the next season, after one of `fruiting` shoots (S_f); 1 is full (G13).
double next_reserves(const Constants& c, double reserves, double fruiting, double capacity);
// C of the next season; `site` the capacity the site gives, `crop_to_prunings` RI (G14). Needs both above 0.
double next_capacity(const Constants& c, double capacity, double site, double crop_to_prunings);
double laid_diameter(const Constants& c, double one_year, double one_year_base); // G15
double ring_width(const Constants& c, int ring);                                 // G16, mm, ring from 1

} // namespace spurwright::growth
