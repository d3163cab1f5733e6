// A vine drawn twice, as seen and by part numbers, so that tests can ask of each pixel what it shows. Skipped, with the
// reason printed, where this machine has no EGL or no OpenGL 3.3.
#pragma once

#include <doctest/doctest.h>

#include <cstdint>
#include <memory>
#include <string>
#include <vector>

#include <glm/glm.hpp>

#include "render/gl/offscreen_context.h"
#include "render/gl/renderer.h"
#include "render/mesh/mesh.h"
#include "render/scene/light.h"
#include "render/scene/views.h"
#include "sim/shape/vine_shape.h"
#include "sim/vine/vine.h"

namespace spurwright::test {

inline const std::string assets = std::string(SPURWRIGHT_SOURCE) + "/assets";

struct Lab {
    double l = 0, a = 0, b = 0;
};

Lab lab_of(const std::uint8_t* rgb);  // CIE 1976 under D65, of sRGB
double apart(const Lab& one, const Lab& other);
double luminance(const std::uint8_t* rgb);  // 0 to 1, linear
double median(std::vector<double> values);

struct Drawing {
    mesh::Mesh vine, around;
    shape::VineShape shape;
    scene::Camera camera;
    std::vector<std::uint8_t> seen, numbers;  // RGBA, lowest row first; `seen` is empty unless asked for
    int width = 0, height = 0;

    std::size_t count() const { return static_cast<std::size_t>(width) * static_cast<std::size_t>(height); }
    std::size_t pixel(int x, int y) const { return static_cast<std::size_t>(y) * static_cast<std::size_t>(width) + static_cast<std::size_t>(x); }
    bool inside(glm::vec2 at, float margin = 0) const {
        return at.x >= margin && at.y >= margin && at.x < static_cast<float>(width) - margin && at.y < static_cast<float>(height) - margin;
    }
    // Part at a pixel: index + 1, 0 for none or the surroundings.
    std::uint32_t part(std::size_t i) const { return numbers[4 * i + 2] ? 0u : numbers[4 * i] + 256u * numbers[4 * i + 1]; }
    std::uint32_t part(glm::vec2 at) const { return part(pixel(static_cast<int>(at.x), static_cast<int>(at.y))); }
    // Where a place lies in the picture, in pixels from its lower corner.
    glm::vec2 place(const shape::Vec3& p) const;
    double distance(const shape::Vec3& p) const;  // metres, from the eye
};

struct Bench {
    std::unique_ptr<gl::OffscreenContext> context;
    std::unique_ptr<gl::Renderer> renderer;
};

// One for all tests of this program that draw without a studio; null where nothing can be drawn. A studio takes the
// display with it when it goes, so tests that make one stand before the first of these or after the last.
Bench* bench();

Drawing drawn(Bench& b, const Vine& vine, scene::View view, scene::Sky sky, int width, int height, bool seen = true);

// The part numbers of the same vine, drawn last by this bench, from elsewhere.
void look_from(Bench& b, Drawing& d, const scene::Camera& camera);

// Pixels that this part alone would cover, with nothing before it; places are those of `Drawing::pixel`.
std::vector<std::size_t> covered_alone(Bench& b, const Drawing& d, const mesh::Part& part);

} // namespace spurwright::test

#define NEED_A_PICTURE                                                                                                 \
    test::Bench* const b = test::bench();                                                                              \
    if (!b) {                                                                                                          \
        MESSAGE("skipped: no EGL or no OpenGL 3.3 on this machine, or a shader does not compile");                     \
        return;                                                                                                        \
    }
