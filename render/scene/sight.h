// A picture as other eyes see it: without colour, or without one of the three kinds of cone. For checking that nothing is
// told by colour alone, and for showing it. Must not know: OpenGL, files.
#pragma once

#include <array>
#include <cstdint>
#include <string_view>
#include <vector>

namespace spurwright::scene {

enum class Sight : unsigned char { full, grey, protanopia, deuteranopia, tritanopia };
constexpr auto words_of(Sight) { return std::to_array<std::string_view>({"full", "grey", "protanopia", "deuteranopia", "tritanopia"}); }

// Every pixel anew, in place; RGBA, alpha stays. Matrices on linear light: G. Machado, M. Oliveira, L. Fernandes, "A
// Physiologically-based Model for Simulation of Color Vision Deficiency", IEEE TVCG 15(6), 2009, at full severity, from
// memory; grey: the luminance of sRGB.
void see_as(std::vector<std::uint8_t>& rgba, Sight sight);

} // namespace spurwright::scene
