#include "tests/render/drawing.h"

#include <algorithm>
#include <cmath>

#include "render/mesh/occlusion.h"
#include "render/mesh/vine_mesh.h"
#include "render/scene/draw_list.h"

namespace spurwright::test {

namespace {

double linear(std::uint8_t byte) {
    const double c = byte / 255.0;
    return c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
}

} // namespace

Lab lab_of(const std::uint8_t* rgb) {
    const double r = linear(rgb[0]), g = linear(rgb[1]), b = linear(rgb[2]);
    const double x = (0.4124 * r + 0.3576 * g + 0.1805 * b) / 0.9505, y = luminance(rgb),
                 z = (0.0193 * r + 0.1192 * g + 0.9505 * b) / 1.089;
    const auto f = [](double t) { return t > 0.008856 ? std::cbrt(t) : 7.787 * t + 16.0 / 116; };
    return {116 * f(y) - 16, 500 * (f(x) - f(y)), 200 * (f(y) - f(z))};
}

double apart(const Lab& one, const Lab& other) {
    return std::sqrt(std::pow(one.l - other.l, 2) + std::pow(one.a - other.a, 2) + std::pow(one.b - other.b, 2));
}

double luminance(const std::uint8_t* rgb) { return 0.2126 * linear(rgb[0]) + 0.7152 * linear(rgb[1]) + 0.0722 * linear(rgb[2]); }

double median(std::vector<double> v) {
    std::nth_element(v.begin(), v.begin() + static_cast<std::ptrdiff_t>(v.size() / 2), v.end());
    return v[v.size() / 2];
}

glm::vec2 Drawing::place(const shape::Vec3& p) const {
    const glm::mat4 clip = scene::clip_from_world(camera, static_cast<float>(width) / static_cast<float>(height));
    const glm::vec4 c = clip * glm::vec4(static_cast<float>(p.x), static_cast<float>(p.y), static_cast<float>(p.z), 1);
    return {(c.x / c.w * 0.5f + 0.5f) * static_cast<float>(width), (c.y / c.w * 0.5f + 0.5f) * static_cast<float>(height)};
}

double Drawing::distance(const shape::Vec3& p) const {
    return shape::length(p - shape::Vec3{static_cast<double>(camera.eye.x), static_cast<double>(camera.eye.y), static_cast<double>(camera.eye.z)});
}

Bench* bench() {
    static Bench made = [] {
        Bench b;
        auto context = gl::OffscreenContext::make();
        if (!context) return b;
        b.context = std::move(*context);
        auto renderer = gl::Renderer::make(assets + "/shaders");
        if (renderer) b.renderer = std::move(*renderer);
        return b;
    }();
    return made.renderer ? &made : nullptr;
}

Drawing drawn(Bench& b, const Vine& vine, scene::View view, scene::Sky sky, int width, int height, bool seen) {
    Drawing d;
    d.width = width;
    d.height = height;
    d.shape = shape::vine_shape(vine);
    d.camera = scene::camera_of(view, d.shape);
    mesh::build_vine(d.vine, d.shape, mesh::fine_detail);
    mesh::bake_occlusion(d.vine, d.shape);
    mesh::build_surroundings(d.around, d.shape, mesh::slow_detail);
    b.renderer->upload(scene::Of::vine, d.vine);
    b.renderer->upload(scene::Of::surroundings, d.around);
    gl::Canvas canvas(width, height);
    const auto list = scene::draw_list(d.vine, d.around, {}, d.camera, scene::light_of(sky));
    if (seen) {
        b.renderer->draw(list, canvas.target());
        d.seen = canvas.pixels();
    }
    b.renderer->draw_parts(list, canvas.target());
    d.numbers = canvas.pixels();
    return d;
}

void look_from(Bench& b, Drawing& d, const scene::Camera& camera) {
    d.camera = camera;
    d.seen.clear();
    gl::Canvas canvas(d.width, d.height);
    b.renderer->draw_parts(scene::draw_list(d.vine, d.around, {}, camera, scene::light_of(scene::Sky::sun)), canvas.target());
    d.numbers = canvas.pixels();
}

std::vector<std::size_t> covered_alone(Bench& b, const Drawing& d, const mesh::Part& part) {
    gl::Canvas canvas(d.width, d.height);
    scene::DrawList alone = scene::draw_list(d.vine, d.around, {}, d.camera, scene::light_of(scene::Sky::sun));
    alone.items = {{scene::Of::vine, part.material, part.first, part.count, {}}};
    b.renderer->draw_parts(alone, canvas.target());
    const auto pixels = canvas.pixels();
    std::vector<std::size_t> covered;
    for (std::size_t i = 0; i < d.count(); ++i)
        if (pixels[4 * i] + pixels[4 * i + 1] > 0) covered.push_back(i);
    return covered;
}

} // namespace spurwright::test
