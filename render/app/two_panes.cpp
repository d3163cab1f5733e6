#include "render/app/two_panes.h"

#include "render/mesh/vine_mesh.h"

namespace spurwright::app {

TwoPanes::TwoPanes(const std::array<const Vine*, 2>& vines, const mesh::Detail& detail) {
    for (std::size_t i = 0; i < 2; ++i) {
        shapes_[i] = shape::vine_shape(*vines[i]);
        mesh::rebuild_vine(meshes_[i], {}, {}, shapes_[i], detail);
    }
    mesh::build_surroundings(surroundings_, shapes_[0], detail); // both stand at one place in the row
}

bool TwoPanes::draw(gl::Renderer& renderer, const scene::Camera& camera, int width, int height, float scale) {
    const bool plain = scale < 1;
    const int w = static_cast<int>(static_cast<float>(width) * scale), h = static_cast<int>(static_cast<float>(height) * scale);
    if (w < 1 || h < 1) return false;
    if (width_ == width && height_ == height && camera == camera_ && (plain || !drawn_plain_)) return false;
    const bool fits = canvases_[0] && canvases_[0]->width() == w && canvases_[0]->height() == h;
    if (!surroundings_up_) {
        renderer.upload(scene::Of::surroundings, surroundings_);
        surroundings_.keep_parts();
        surroundings_up_ = true;
    }
    for (std::size_t i = 0; i < 2; ++i) {
        if (!fits) canvases_[i] = std::make_unique<gl::Canvas>(w, h);
        if (!canvases_[i]->complete()) {
            canvases_ = {};
            width_ = height_ = 0;
            return false;
        }
        renderer.upload(scene::Of::vine, meshes_[i]); // the shadow is this vine's then
        auto list = scene::draw_list(meshes_[i], surroundings_, {}, camera, scene::light_of(scene::Sky::sun));
        list.spacing = static_cast<float>(shapes_[i].spacing);
        list.row_spacing = static_cast<float>(shapes_[i].row_spacing);
        renderer.draw(list, canvases_[i]->target(), plain ? gl::quick_samples : gl::fine_samples);
        if (!plain) glFinish(); // a software driver keeps megabytes for every picture that waits to be drawn
    }
    camera_ = camera;
    width_ = width;
    height_ = height;
    drawn_plain_ = plain;
    return true;
}

} // namespace spurwright::app
