// One vertex as the graphics card reads it: 40 bytes, the layout whose building speed is known. No OpenGL here.
#pragma once

#include <cstdint>

namespace spurwright::mesh {

// Bits of Vertex::flags.
inline constexpr std::uint8_t cut_face = 1, fresh = 2, dead = 4, ribbon = 8, shaded = 16, bud_behind = 32,
                              rootstock = 64, unripe = 128;

// What marks a joint of a one-year cane, in the two bits that only faces use besides.
inline constexpr std::uint8_t harm_bits = 3, spotted = 1, scarred = 2, cracked = 3;

struct Vertex {
    float position[3];
    float normal[3];
    float u, v;             // round the girth, along, in tiles; thin things: radius in metres, along
    std::uint16_t part;     // index into Mesh::parts
    std::int8_t axis[2];    // direction along the wood, octahedral
    std::uint8_t age;       // sixteenths of a year, saturating; faces: winters since the cut
    std::uint8_t occlusion; // 255: open to the whole sky
    std::uint8_t node;      // 255 at a node's leaf scar, fading to 0 within three radii
    std::uint8_t flags;
};
static_assert(sizeof(Vertex) == 40);

} // namespace spurwright::mesh
