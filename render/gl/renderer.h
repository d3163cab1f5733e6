// Draws one frame of a draw list into whatever framebuffer it is given. Knows ranges, materials and light; never a
// vine, a rule or a screen. One instance a context; all calls from the thread that owns it.
#pragma once

#include <memory>
#include <string>

#include "render/gl/canvas.h"
#include "render/gl/paints.h"
#include "render/scene/draw_list.h"
#include "sim/core/error.h"

namespace spurwright::gl {

// Samples a pixel of a picture at rest, and while the eye moves on a slow machine: there thin things are blended.
inline constexpr int fine_samples = 4, quick_samples = 0;

class Renderer {
public:
    // `shader_folder` is assets/shaders. Needs a current context of OpenGL 3.3.
    [[nodiscard]] static Result<std::unique_ptr<Renderer>> make(const std::string& shader_folder, const Finish& finish = {});
    ~Renderer();

    // Hands a mesh over; until the next upload its ranges may be drawn. All but what falls makes the shadows stale: a
    // piece throws its shadow when it lies.
    void upload(scene::Of of, const mesh::Mesh& mesh);

    void forget_shadow(); // drawn again with the next frame

    // One frame of `list.items`: shadow map where stale, surroundings, vine, thin things, outlines. Leaves the target
    // bound, blending and depth test off.
    void draw(const scene::DrawList& list, const Target& target, int samples = fine_samples);

    // `list.over`, over a finished picture of the same camera that the target holds, depth and all. One sample a pixel.
    void draw_over(const scene::DrawList& list, const Target& target);

    // The same ranges flat, without blending: part number + 1 in red and green, blue 255 for surroundings.
    void draw_parts(const scene::DrawList& list, const Target& target);

private:
    struct FrameBlock;
    struct Inner;
    explicit Renderer(std::unique_ptr<Inner> inner);
    std::unique_ptr<Inner> inner_;
};

// What the driver of the current context calls itself.
std::string machine();
// Whether a driver of that name draws without a card.
bool in_software(const std::string& machine);

} // namespace spurwright::gl
