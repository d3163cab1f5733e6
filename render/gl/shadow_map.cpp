#include "render/gl/shadow_map.h"

#include <cmath>

#include <glm/gtc/matrix_transform.hpp>

namespace spurwright::gl {
namespace {

using mesh::Material;

bool casts_shadow(Material m) {
    return m != Material::ground && m != Material::backdrop && m != Material::thin && m != Material::card &&
           m != Material::face;
}

} // namespace

ShadowMap::ShadowMap() {
    glBindTexture(GL_TEXTURE_2D, texture_.get());
    glTexImage2D(GL_TEXTURE_2D, 0, GL_DEPTH_COMPONENT16, width_, height_, 0, GL_DEPTH_COMPONENT, GL_UNSIGNED_SHORT,
                 nullptr); // a fifth of a millimetre over the eleven metres seen: finer would only take memory
    glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MIN_FILTER, GL_LINEAR);
    glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MAG_FILTER, GL_LINEAR);
    glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_WRAP_S, GL_CLAMP_TO_EDGE);
    glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_WRAP_T, GL_CLAMP_TO_EDGE);
    glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_COMPARE_MODE, GL_COMPARE_REF_TO_TEXTURE);
    glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_COMPARE_FUNC, GL_LEQUAL);
    glBindFramebuffer(GL_FRAMEBUFFER, framebuffer_.get());
    glFramebufferTexture2D(GL_FRAMEBUFFER, GL_DEPTH_ATTACHMENT, GL_TEXTURE_2D, texture_.get(), 0);
    glDrawBuffer(GL_NONE);
    glReadBuffer(GL_NONE);
}

void ShadowMap::draw(const scene::DrawList& list, GLuint program, std::span<const GpuMesh, scene::of_count> meshes) {
    glBindFramebuffer(GL_FRAMEBUFFER, framebuffer_.get());
    glViewport(0, 0, width_, height_);
    glEnable(GL_DEPTH_TEST);
    glDepthFunc(GL_LESS);
    glDepthMask(GL_TRUE);
    glClear(GL_DEPTH_BUFFER_BIT);
    glEnable(GL_POLYGON_OFFSET_FILL);
    glPolygonOffset(1.5f, 2);
    glUseProgram(program);
    glEnable(GL_CULL_FACE);
    for (const auto& item : list.items) {
        if (!casts_shadow(item.material)) continue;
        meshes[static_cast<std::size_t>(item.of)].draw(item);
    }
    glDisable(GL_POLYGON_OFFSET_FILL);
    stale_ = false;
    drawn_for_ = list.light.to_sun;
}

glm::mat4 ShadowMap::view(const scene::Light& light) const {
    const glm::vec3 low{-1.7f, -0.1f, -0.45f}, high{1.7f, 2.2f, 0.45f};
    const glm::mat4 turn = glm::lookAt(glm::vec3(0), -light.to_sun, glm::vec3(0, 1, 0));
    glm::vec3 from(1e9f), to(-1e9f);
    for (int k = 0; k < 8; ++k) {
        const glm::vec3 corner{k & 1 ? high.x : low.x, k & 2 ? high.y : low.y, k & 4 ? high.z : low.z};
        const glm::vec3 p = glm::vec3(turn * glm::vec4(corner, 1));
        from = glm::min(from, p);
        to = glm::max(to, p);
    }
    const glm::vec2 texel = glm::vec2(to - from) / glm::vec2(width_, height_);
    from.x = std::floor(from.x / texel.x) * texel.x;
    from.y = std::floor(from.y / texel.y) * texel.y;
    return glm::ortho(from.x, to.x, from.y, to.y, -to.z - 1.0f, -from.z + 7.0f) * turn;
}

} // namespace spurwright::gl
