// Closed tubes from rings: stems, buds, blobs, wires, ties. Everything round in the picture is made here, so that one
// test of closedness covers it.
#pragma once

#include <span>

#include "render/mesh/mesh.h"
#include "sim/shape/frames.h"

namespace spurwright::mesh {

struct Ring {
    Vec3 centre, along, out;       // unit, square to each other
    double across_out = 0;         // radius along `out`
    double across_side = 0;        // radius square to it
    double v = 0;                  // texture place along
    double slope = 0;              // change of radius a metre along
    Vec3 cut{};                    // normal of the plane the ring lies in, where it is not square to the wood
    double blend = 0;              // share by which normals lean to those of the wood that bears it
    Vec3 bearer{}, bearer_along{}; // a place on its middle, its direction
    double lobe = 0;               // share by which old wood is lobed
    double lobe_at = 0;            // where along the lobes
    std::uint8_t node = 0, age = 0, flags = 0; // flags: added to the writer's
};

enum class Close { flat, pole }; // a flat disc of the tube's own material; or one point beyond the ring

struct TubeStyle {
    int sides = 8;
    double u_tiles = 1, u_from = 0;
    bool area_true = true; // rings hold the area of their circle, so that thickness on screen is honest
    bool thin = false;     // u carries the radius: widened when drawn
    Close start = Close::flat, finish = Close::flat;
    bool leave_finish_open = false; // a face of another material closes it, see add_face
};

// Radius of a polygon ring that holds the area of a circle of radius 1.
double area_true_radius(int sides);

// Needs two rings at least. Writes into the part begun.
void add_tube(Writer& writer, std::span<const Ring> rings, const TubeStyle& style);

// Places of the last ring of a tube, in the order that add_face wants: the same numbers, so the seam is closed.
std::vector<Vec3> ring_places(const Ring& ring, const TubeStyle& style);

struct Face {
    Vec3 normal;
    double sunk = 0;   // of the radius, middle below the rim
    double rim = 0;    // of the radius, callus lip above the rim
    double jagged = 0; // of the radius, for broken wood
    std::uint32_t seed = 0;
};

// Closes a tube left open with a face of the part begun: u, v run over the face from 0 to 1.
void add_face(Writer& writer, const Ring& last, const TubeStyle& style, const Face& face);

// A closed tube along a polyline of constant or tapering radius, frames by double reflection.
void add_line(Writer& writer, std::span<const Vec3> points, double radius_from, double radius_to,
              const TubeStyle& style, double v_scale = 1.0);

// A squashed, lobed ball: `radii` along out, side and along.
void add_blob(Writer& writer, Vec3 centre, Vec3 along, Vec3 out, Vec3 radii, int rings, int sides, double lobe,
              double seed);

} // namespace spurwright::mesh
