// Two vines beside each other, each in half the picture, seen by the same eye: drawn one after the other by the one
// renderer, each into its own texture. Their meshes are held only while both are shown. Must not know: screens, rules,
// why there are two.
#pragma once

#include <array>
#include <memory>

#include "render/gl/renderer.h"
#include "render/mesh/detail.h"
#include "sim/shape/vine_shape.h"
#include "sim/vine/vine.h"

namespace spurwright::app {

class TwoPanes {
public:
    TwoPanes(const std::array<const Vine*, 2>& vines, const mesh::Detail& detail);

    const shape::VineShape& shape() const { return shapes_[0]; } // that views are set up by

    // For panes of this size, in pixels. False where the textures hold that already, or nothing can be drawn. `scale`
    // below 1: the quicker, smaller picture does.
    bool draw(gl::Renderer& renderer, const scene::Camera& camera, int width, int height, float scale);
    GLuint texture(std::size_t which) const { return canvases_[which] ? canvases_[which]->texture() : 0; }
    bool drawn_plain() const { return drawn_plain_; }

private:
    std::array<shape::VineShape, 2> shapes_;
    std::array<mesh::Mesh, 2> meshes_;
    mesh::Mesh surroundings_;
    bool surroundings_up_ = false;
    std::array<std::unique_ptr<gl::Canvas>, 2> canvases_;
    scene::Camera camera_;
    int width_ = 0, height_ = 0; // of the panes that the textures are for; 0: not drawn yet
    bool drawn_plain_ = false;
};

} // namespace spurwright::app
