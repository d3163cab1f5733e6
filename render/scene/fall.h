// How a piece that was cut off comes down: gravity and the air's drag, a topple about its balance point, and how it lies on
// the soil. A picture, never a measure: all numbers are our choice. Must not know: OpenGL, plans.
#pragma once

#include "render/mesh/pose.h"
#include "sim/shape/fallen.h"

namespace spurwright::scene {

struct Fall {
    mesh::Vec3 balance, rest;        // the balance point where it hung, and where it comes to lie
    mesh::Vec3 axis{0, 0, 1};        // unit: it turns about this
    double turn = 0;                 // radians, all the way
    double seconds = 0;              // until it lies
};

// On the alley's side (+Z). The same piece always falls the same way.
Fall fall_of(const shape::FallenPiece& piece);

// From 0, as it hung, to Fall::seconds and beyond, as it lies.
mesh::Pose pose_at(const Fall& fall, double seconds);

} // namespace spurwright::scene
