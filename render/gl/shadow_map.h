// The depth of the wood as the sun sees it. Kept until the vine or the sun changes.
#pragma once

#include <span>

#include "render/gl/gpu_mesh.h"

namespace spurwright::gl {

class ShadowMap {
public:
    ShadowMap();
    GLuint texture() const { return texture_.get(); }

    void forget() { stale_ = true; } // a mesh changed
    bool needs_drawing(const scene::Light& light) const {
        return light.sky == scene::Sky::sun && (stale_ || drawn_for_ != light.to_sun);
    }
    // Draws what casts a shadow with the program given, bound with the frame that holds view().
    void draw(const scene::DrawList& list, GLuint program, std::span<const GpuMesh, scene::of_count> meshes);

    // Shadow place from world: fitted to the vine and its nearest neighbours, snapped to whole texels.
    glm::mat4 view(const scene::Light& light) const;

private:
    static constexpr int width_ = 1536, height_ = 2048; // texels, our choice: 1.6 mm a side on the vine
    Texture texture_ = new_texture();
    Framebuffer framebuffer_ = new_framebuffer();
    bool stale_ = true;
    glm::vec3 drawn_for_{0};
};

} // namespace spurwright::gl
