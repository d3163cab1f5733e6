// The depth of the wood as the sun sees it. Kept until the vine or the sun changes.
#pragma once

#include <span>

#include "render/gl/gpu_mesh.h"

namespace spurwright::gl {

class ShadowMap {
public:
    explicit ShadowMap(int size);
    GLuint texture() const { return texture_.get(); }
    int size() const { return size_; }

    void forget() { stale_ = true; } // a mesh changed
    // `painter`: who wants it of its own meshes; none: whoever drew it last.
    bool needs_drawing(const scene::Light& light, const void* painter) const {
        return light.sky == scene::Sky::sun && (stale_ || drawn_for_ != light.to_sun || (painter && painter != painter_));
    }
    // Draws what casts a shadow with the program given, bound with the frame that holds view().
    void draw(const scene::DrawList& list, GLuint program, std::span<const GpuMesh, scene::of_count> meshes,
              const void* painter);

    // Shadow place from world: fitted to the vine and its nearest neighbours, snapped to whole texels.
    glm::mat4 view(const scene::Light& light) const;

private:
    int size_;
    Texture texture_ = new_texture();
    Framebuffer framebuffer_ = new_framebuffer();
    bool stale_ = true;
    const void* painter_ = nullptr;
    glm::vec3 drawn_for_{0};
};

} // namespace spurwright::gl
