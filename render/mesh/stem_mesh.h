// One stem as a closed tube: swellings at its nodes, a collar where it leaves its parent, its end closed by a tip, a
// crown or a face. Must not know: the tables, OpenGL.
#pragma once

#include "render/mesh/detail.h"
#include "render/mesh/tube.h"
#include "sim/shape/vine_shape.h"

namespace spurwright::mesh {

Material material_of(const shape::Stem& stem);
std::uint8_t flags_of(const shape::Stem& stem);
std::uint8_t age_byte(double years);

// `vine` gives the parent's thickness.
void add_stem(Writer& writer, const shape::VineShape& vine, std::size_t stem, const Detail& detail);

// Share by which the wood swells at distance `d` from a node, d above 0 towards the tip, `r` its radius there.
double swelling(double d, double r);

} // namespace spurwright::mesh
