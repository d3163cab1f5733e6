// A mesh of one body turned and moved as a whole. No OpenGL here.
#pragma once

#include "render/mesh/mesh.h"

namespace spurwright::mesh {

// A place p of the body comes to x * p.x + y * p.y + z * p.z + move. x, y, z: unit, square to each other.
struct Pose {
    Vec3 x{1, 0, 0}, y{0, 1, 0}, z{0, 0, 1}, move{};
    Vec3 turned(Vec3 d) const { return d.x * x + d.y * y + d.z * z; }
    Vec3 of(Vec3 p) const { return turned(p) + move; }
};

// Adds all parts of a body to a mesh, each as a part of its own.
void add_posed(Mesh& to, const Mesh& body, const Pose& pose);

} // namespace spurwright::mesh
