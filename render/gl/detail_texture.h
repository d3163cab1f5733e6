// The one texture of the program, made from a fixed seed: bark, ribs, peel and broad variation in four channels. Tiles
// in both directions. Pixels apart from OpenGL, so that a test can hash them.
#pragma once

#include <cstdint>
#include <vector>

#include "render/gl/gl_objects.h"

namespace spurwright::gl {

inline constexpr int detail_width = 256, detail_height = 512;

// RGBA, row by row: old bark, one-year ribs, two-year peel, broad variation.
std::vector<std::uint8_t> detail_pixels();
Texture detail_texture();

} // namespace spurwright::gl
