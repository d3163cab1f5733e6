#include "render/app/stage.h"

#include <algorithm>

#include "render/mesh/occlusion.h"
#include "render/mesh/vine_mesh.h"

namespace spurwright::app {
namespace {

constexpr float moving_scale = 0.75f;  // of the window, on a slow machine while the eye moves

bool same(const scene::Camera& a, const scene::Camera& b) { return a.eye == b.eye && a.target == b.target && a.fov_deg == b.fov_deg; }

bool same(const scene::Emphasis& a, const scene::Emphasis& b) { return a.axis == b.axis && a.kind == b.kind && a.id == b.id && a.look == b.look; }

bool draws_in_software(const std::string& machine) {
    for (const char* name : {"llvmpipe", "softpipe", "SwiftShader"})
        if (machine.find(name) != std::string::npos) return true;
    return false;
}

}  // namespace

Result<std::unique_ptr<Stage>> Stage::make(const std::string& shader_folder) {
    auto quick = gl::Renderer::make(shader_folder, gl::low_quality);
    if (!quick) return failure(std::move(quick.error()));
    auto stage = std::make_unique<Stage>();
    stage->shaders_ = shader_folder;
    stage->quick_ = std::move(*quick);
    stage->slow_ = draws_in_software(stage->quick_->machine());
    return stage;
}

void Stage::show(const Vine& vine, bool new_vine) {
    shape_ = shape::vine_shape(vine);
    capsules_ = scene::Capsules(shape_);
    quick_stale_ = still_stale_ = true;
    if (new_vine) quick_around_stale_ = still_around_stale_ = true;
    empty_ = false;
    ++change_;
}

// Meshes of one of the two pictures, built when they are first needed.
bool Stage::prepare(bool quick) {
    if (!quick && !still_) {
        auto made = gl::Renderer::make(shaders_, gl::still_quality);
        if (!made) return false;
        still_ = std::move(*made);
    }
    gl::Renderer& renderer = quick ? *quick_ : *still_;
    bool& stale = quick ? quick_stale_ : still_stale_;
    bool& around_stale = quick ? quick_around_stale_ : still_around_stale_;
    const mesh::Detail& detail = quick ? mesh::moving_detail : slow_ ? mesh::resting_detail : mesh::fine_detail;
    mesh::Mesh& vine = quick ? moving_vine_ : vine_;
    mesh::Mesh& around = quick ? moving_surroundings_ : surroundings_;
    if (stale) {
        mesh::build_vine(vine, shape_, detail);
        mesh::bake_occlusion(vine, shape_);
        renderer.upload(scene::Of::vine, vine);
        stale = false;
    }
    if (around_stale) {
        mesh::build_surroundings(around, shape_, detail);
        renderer.upload(scene::Of::surroundings, around);
        around_stale = false;
    }
    return true;
}

bool Stage::draw(const scene::Camera& camera, const std::vector<scene::Emphasis>& emphases, int width, int height, bool moving) {
    if (empty_ || width < 1 || height < 1) return false;
    const bool quick = moving && slow_;
    const int w = std::max(1, quick ? static_cast<int>(static_cast<float>(width) * moving_scale) : width);
    const int h = std::max(1, quick ? static_cast<int>(static_cast<float>(height) * moving_scale) : height);
    const bool fits = canvas_ && canvas_->width() == w && canvas_->height() == h;
    const bool looks_same = same(camera, camera_) && emphases.size() == emphases_.size() &&
                            std::equal(emphases.begin(), emphases.end(), emphases_.begin(), [](const auto& a, const auto& b) { return same(a, b); });
    if (drawn_change_ == change_ && looks_same && (moving || (fits && !drawn_plain_))) return false;
    const bool drawn_quick = quick || !prepare(false);
    if (drawn_quick && !prepare(true)) return false;
    if (!fits) canvas_ = std::make_unique<gl::Canvas>(w, h);
    if (!canvas_->complete()) {
        canvas_.reset();
        return false;
    }
    const mesh::Mesh& vine = drawn_quick ? moving_vine_ : vine_;
    const mesh::Mesh& around = drawn_quick ? moving_surroundings_ : surroundings_;
    const auto list = scene::draw_list(vine, around, emphases, camera, scene::light_of(scene::Sky::sun));
    (drawn_quick ? *quick_ : *still_).draw(list, canvas_->target());
    camera_ = camera;
    emphases_ = emphases;
    drawn_change_ = change_;
    drawn_plain_ = drawn_quick;
    return true;
}

}  // namespace spurwright::app
