// One picture of a vine, offscreen: shape, meshes, occlusion, a frame, a file. Shared by the verb and by the pages that
// hold pictures.
#pragma once

#include <memory>
#include <optional>
#include <string>

#include "render/gl/offscreen_context.h"
#include "render/gl/renderer.h"
#include "render/mesh/detail.h"
#include "render/scene/sight.h"
#include "render/scene/views.h"
#include "sim/vine/vine.h"

namespace spurwright::app {

struct PictureWish {
    int width = 1280, height = 720;
    scene::View view{};
    scene::Sky sky{};
    scene::Sight sight{};
    AxisId chosen;      // for the view `cane`
    bool plain = false; // without neighbours and rows
    std::vector<scene::Emphasis> emphases;
    std::optional<scene::Camera> camera; // in place of the view's own
    int tile = 2048; // pixels a side: drawn one after the other where the picture is larger, so that any card can (our choice)
};

inline constexpr int least_pixels = 16, most_pixels = 8192;

// Owns a context and a renderer; draws any number of pictures.
class Studio {
public:
    // Fails (Fault::missing) without EGL, OpenGL 3.3 or the shader files.
    [[nodiscard]] static Result<std::unique_ptr<Studio>> make(const std::string& assets);

    // RGBA, lowest row first. Needs a size within least_pixels and most_pixels. The meshes of the vine drawn last are kept:
    // the same vine from elsewhere costs the drawing alone.
    [[nodiscard]] Result<std::vector<std::uint8_t>> draw(const Vine& vine, const PictureWish& wish);
    std::string machine() const { return gl::machine(); }

private:
    std::unique_ptr<gl::OffscreenContext> context_; // outlives the renderer
    std::unique_ptr<gl::Renderer> renderer_;
    mesh::Mesh vine_, surroundings_;
    shape::VineShape shape_;
    std::optional<std::uint64_t> drawn_;  // hash of the vine whose meshes these are

    void show(const Vine& vine);
};

// Refuses a size outside the limits (Fault::out_of_range).
[[nodiscard]] Result<void> check_size(int width, int height);

} // namespace spurwright::app
