// The picture under the screens: the vine's shape, meshes and capsules, rebuilt when the vine changes, drawn into a
// texture of its own when anything of it changed. On a slow machine a plainer picture while the eye moves.
// Must not know: screens, rules.
#pragma once

#include <memory>
#include <string>

#include "render/gl/renderer.h"
#include "render/scene/picking.h"
#include "sim/vine/vine.h"

namespace spurwright::app {

class Stage {
public:
    // Needs a current context. Fault::missing without OpenGL 3.3 or shader files.
    [[nodiscard]] static Result<std::unique_ptr<Stage>> make(const std::string& shader_folder);

    void show(const Vine& vine, bool new_vine);  // new_vine: surroundings too
    const shape::VineShape& shape() const { return shape_; }
    const scene::Capsules& capsules() const { return capsules_; }
    bool empty() const { return empty_; }

    // Draws where anything differs from what the texture holds. `moving`: the plainer picture may do.
    // False where the texture holds all this already.
    bool draw(const scene::Camera& camera, const std::vector<scene::Emphasis>& emphases, int width, int height, bool moving);
    GLuint texture() const { return canvas_ ? canvas_->texture() : 0; }
    bool plain() const { return drawn_plain_; }  // the texture holds the plainer picture: draw again at rest
    std::string machine() const { return still_ ? still_->machine() : quick_->machine(); }
    bool slow() const { return slow_; }

private:
    std::string shaders_;
    std::unique_ptr<gl::Renderer> quick_, still_;  // either may be made late
    std::unique_ptr<gl::Canvas> canvas_;
    shape::VineShape shape_;
    scene::Capsules capsules_;
    mesh::Mesh vine_, surroundings_, moving_vine_, moving_surroundings_;
    bool slow_ = false, empty_ = true;
    bool quick_stale_ = true, still_stale_ = true, quick_around_stale_ = true, still_around_stale_ = true;

    // What the texture holds.
    scene::Camera camera_;
    std::vector<scene::Emphasis> emphases_;
    std::uint64_t change_ = 0, drawn_change_ = ~std::uint64_t{0};
    bool drawn_plain_ = false;

    bool prepare(bool quick);
};

}  // namespace spurwright::app
