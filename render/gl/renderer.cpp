#include "render/gl/renderer.h"

#include <algorithm>
#include <array>
#include <cmath>

#include <glm/gtc/matrix_transform.hpp>
#include <glm/gtc/type_ptr.hpp>

#include "render/gl/detail_texture.h"
#include "render/gl/samples.h"
#include "render/gl/shaders.h"
#include "render/gl/shadow_map.h"

namespace spurwright::gl {
namespace {

using mesh::Material;
using scene::Of;

bool two_sided(Material m) {
    return m == Material::card || m == Material::leaf || m == Material::old || m == Material::backdrop;
}

// With many samples a software driver draws a picture strip by strip (our choice: few enough that shaping the vine again
// for each does not show, enough that the samples take little memory). A card draws it at once.
constexpr int software_strips = 13, strip_pixels = 1280 * 720 / software_strips;

// Solid things, the nearest in front, over the whole of the target; into a framebuffer that holds the target's rows from
// `from` on.
void draw_on(GLuint framebuffer, const Target& target, int from = 0) {
    glBindFramebuffer(GL_FRAMEBUFFER, framebuffer);
    glViewport(-target.left, -target.low - from, target.whole_width, target.whole_height);
    glDisable(GL_BLEND);
    glEnable(GL_DEPTH_TEST);
    glDepthFunc(GL_LESS);
    glDepthMask(GL_TRUE);
}

} // namespace

// As frame.glsl reads it (std140).
struct Renderer::FrameBlock {
    glm::mat4 clip_from_world, shadow_from_world;
    glm::vec4 eye, to_sun, sun, sky_up, sky_horizon, bounce, picture;
};

struct Renderer::Inner {
    explicit Inner(Paints with) : strips(in_software(machine()) ? software_strips : 1), paints(std::move(with)), sky_world_from_clip(glGetUniformLocation(paints.sky(), "world_from_clip")) {
        glBindBuffer(GL_UNIFORM_BUFFER, frame.get());
        glBufferData(GL_UNIFORM_BUFFER, sizeof(FrameBlock), nullptr, GL_DYNAMIC_DRAW);
    }

    int strips;
    Paints paints;
    GLint sky_world_from_clip;
    Texture detail = detail_texture();
    ShadowMap shadow;
    Buffer frame = new_buffer();
    VertexArray nothing = new_array();
    std::array<GpuMesh, scene::of_count> meshes;
    Samples samples;
    FrameBlock block{};

    void set_frame(const scene::DrawList& list, const Target& target) {
        const auto& light = list.light;
        const float aspect = static_cast<float>(target.whole_width) / static_cast<float>(target.whole_height);
        block.clip_from_world = scene::clip_from_world(list.camera, aspect);
        block.shadow_from_world = shadow.view(light);
        block.eye = glm::vec4(list.camera.eye, list.spacing);
        block.to_sun = glm::vec4(light.to_sun, light.sky == scene::Sky::overcast ? 1 : 0);
        block.sun = glm::vec4(light.sun, light.exposure);
        block.sky_up = glm::vec4(light.up, light.ambient);
        block.sky_horizon = glm::vec4(light.horizon, light.fog);
        block.bounce = glm::vec4(light.bounce,
                                 std::tan(glm::radians(list.camera.fov_deg) / 2) / (list.camera.shown * static_cast<float>(target.whole_height)));
        block.picture =
            glm::vec4(target.whole_width, target.whole_height, 0, list.row_spacing);
        glBindBuffer(GL_UNIFORM_BUFFER, frame.get());
        glBufferSubData(GL_UNIFORM_BUFFER, 0, sizeof block, &block);
        glBindBufferBase(GL_UNIFORM_BUFFER, 0, frame.get());
    }

    const GpuMesh& mesh_of(const scene::Drawn& item) const { return meshes[static_cast<std::size_t>(item.of)]; }

    void draw_items(const std::vector<scene::Drawn>& items, bool thin, bool falling = false) {
        for (const auto& item : items) {
            if ((item.material == Material::thin) != thin || (item.of == Of::falling) != falling) continue;
            const auto& colour = item.look.colour;
            paints.use(item.material, {colour.r, colour.g, colour.b, item.look.tint, item.look.dim});
            if (two_sided(item.material))
                glDisable(GL_CULL_FACE);
            else
                glEnable(GL_CULL_FACE);
            mesh_of(item).draw(item);
        }
    }

    void draw_sky() {
        glDepthFunc(GL_LEQUAL);
        glUseProgram(paints.sky());
        const glm::mat4 world_from_clip = glm::inverse(block.clip_from_world);
        glUniformMatrix4fv(sky_world_from_clip, 1, GL_FALSE, glm::value_ptr(world_from_clip));
        glBindVertexArray(nothing.get());
        glDisable(GL_CULL_FACE);
        glDrawArrays(GL_TRIANGLES, 0, 3);
        glDepthFunc(GL_LESS);
    }

    // Thin things are drawn late, since they let through what is behind them.
    void draw_thin(const std::vector<scene::Drawn>& items, bool many, bool falling = false) {
        if (many)
            glEnable(GL_SAMPLE_ALPHA_TO_COVERAGE);
        else {
            glEnable(GL_BLEND);
            glBlendFuncSeparate(GL_SRC_ALPHA, GL_ONE_MINUS_SRC_ALPHA, GL_ZERO, GL_ONE);
        }
        draw_items(items, true, falling);
        glDisable(GL_SAMPLE_ALPHA_TO_COVERAGE);
        glDisable(GL_BLEND);
    }

    // What is chosen gets a line around it: its shape marks the stencil, then, pushed out, paints where it is not.
    void draw_outlines(const std::vector<scene::Drawn>& items) {
        bool any = false;
        for (const auto& item : items) any = any || item.look.outline_px > 0;
        if (!any) return;
        glEnable(GL_STENCIL_TEST);
        const auto pass = [&](float extra, bool mark, bool edge) {
            for (const auto& item : items) {
                if (item.look.outline_px <= 0) continue;
                const GLuint program = paints.flat();
                glUseProgram(program);
                glUniform1i(glGetUniformLocation(program, "thin"), item.material == Material::thin);
                const glm::vec3 c = edge ? glm::vec3(0.05f) : item.look.colour;
                glUniform4f(glGetUniformLocation(program, "paint"), c.r, c.g, c.b, 1);
                glUniform1f(glGetUniformLocation(program, "grow_px"), mark ? 0 : item.look.outline_px + extra);
                mesh_of(item).draw(item);
            }
        };
        glDisable(GL_CULL_FACE);
        glDepthFunc(GL_LEQUAL);
        glColorMask(GL_FALSE, GL_FALSE, GL_FALSE, GL_FALSE);
        glStencilFunc(GL_ALWAYS, 1, 255);
        glStencilOp(GL_KEEP, GL_KEEP, GL_REPLACE);
        glDepthMask(GL_FALSE);
        pass(0, true, false);
        glColorMask(GL_TRUE, GL_TRUE, GL_TRUE, GL_TRUE);
        glStencilFunc(GL_EQUAL, 0, 255);
        glStencilOp(GL_KEEP, GL_KEEP, GL_KEEP);
        pass(1, false, true);
        pass(0, false, false);
        glDisable(GL_STENCIL_TEST);
        glDepthMask(GL_TRUE);
        glDepthFunc(GL_LESS);
    }

    // Where wood passes in front of other wood, the farther one is darker along the edge of the nearer: in low sun and under
    // cloud alike neither shadow nor bark would tell which is which. On a finished picture: all wood marks the stencil, then,
    // a little wider and put behind itself, darkens marked pixels that lie farther still, each once.
    void draw_crossings(const std::vector<scene::Drawn>& items) {
        constexpr float wider_px = 1.3f, behind_m = 0.005f, left = 0.65f; // our choice, looked at
        const GLuint program = paints.flat();
        glUseProgram(program);
        const GLint grow = glGetUniformLocation(program, "grow_px"), back = glGetUniformLocation(program, "back");
        glUniform1i(glGetUniformLocation(program, "thin"), 0);
        glUniform4f(glGetUniformLocation(program, "paint"), left, left, left, 1);
        const auto wood = [&](bool old) {
            for (const auto& item : items)
                if (item.of == Of::vine && (item.material == Material::cane || item.material == Material::two_year || (old && item.material == Material::old))) mesh_of(item).draw(item);
        };
        glEnable(GL_STENCIL_TEST);
        glDepthMask(GL_FALSE);
        glDisable(GL_CULL_FACE);
        glColorMask(GL_FALSE, GL_FALSE, GL_FALSE, GL_FALSE);
        glDepthFunc(GL_GEQUAL); // the depth kept is that of one sample of many: where that one lies beyond, the pixel is an edge
        glEnable(GL_POLYGON_OFFSET_FILL);
        glPolygonOffset(0, 16);
        glStencilFunc(GL_ALWAYS, 1, 255);
        glStencilOp(GL_KEEP, GL_KEEP, GL_REPLACE);
        wood(true);
        glDisable(GL_POLYGON_OFFSET_FILL);
        glColorMask(GL_TRUE, GL_TRUE, GL_TRUE, GL_TRUE);
        glDepthFunc(GL_LESS);
        glStencilFunc(GL_EQUAL, 1, 255);
        glStencilOp(GL_KEEP, GL_KEEP, GL_INCR);
        glEnable(GL_BLEND);
        glBlendFuncSeparate(GL_ZERO, GL_SRC_COLOR, GL_ZERO, GL_ONE);
        glUniform1f(grow, wider_px);
        glUniform1f(back, behind_m);
        wood(false);
        glUniform1f(grow, 0);
        glUniform1f(back, 0);
        glDisable(GL_BLEND);
        glDisable(GL_STENCIL_TEST);
        glDepthMask(GL_TRUE);
    }

    void bind_textures() {
        glActiveTexture(GL_TEXTURE1);
        glBindTexture(GL_TEXTURE_2D, shadow.texture());
        glActiveTexture(GL_TEXTURE0);
        glBindTexture(GL_TEXTURE_2D, detail.get());
    }
};

Renderer::Renderer(std::unique_ptr<Inner> inner) : inner_(std::move(inner)) {}
Renderer::~Renderer() = default;

Result<std::unique_ptr<Renderer>> Renderer::make(const std::string& shader_folder, const Finish& finish) {
    auto paints = Paints::make(Shaders(shader_folder), finish);
    if (!paints) return failure(paints.error());
    if (GLAD_GL_ARB_ES2_compatibility) glReleaseShaderCompiler(); // nothing more is compiled
    return std::unique_ptr<Renderer>(new Renderer(std::make_unique<Inner>(std::move(*paints))));
}

void Renderer::upload(Of of, const mesh::Mesh& mesh) {
    inner_->meshes[static_cast<std::size_t>(of)].fill(mesh);
    if (of != Of::falling) inner_->shadow.forget();
}

void Renderer::forget_shadow() { inner_->shadow.forget(); }

void Renderer::draw(const scene::DrawList& list, const Target& target, int samples) {
    Inner& r = *inner_;
    r.set_frame(list, target);
    if (r.shadow.needs_drawing(list.light)) r.shadow.draw(list, r.paints.depth(), r.meshes);
    // A small picture needs no more strips than hold the samples of a strip of a large one.
    const int strip = std::max((target.height + r.strips - 1) / r.strips, std::min(target.height, strip_pixels / target.width));
    const bool many = samples > 0 && r.samples.fit(target.width, strip, samples);
    r.bind_textures();
    for (int from = 0; from < target.height; from += many ? strip : target.height) {
        draw_on(many ? r.samples.framebuffer() : target.framebuffer, target, many ? from : 0);
        glClearColor(0, 0, 0, 1);
        glClearStencil(0);
        glClear(GL_COLOR_BUFFER_BIT | GL_DEPTH_BUFFER_BIT | GL_STENCIL_BUFFER_BIT);
        r.draw_items(list.items, false);
        r.draw_sky();
        r.draw_thin(list.items, many);
        r.draw_outlines(list.items);
        if (!many) continue;
        const int to = std::min(from + strip, target.height);
        glBindFramebuffer(GL_READ_FRAMEBUFFER, r.samples.framebuffer());
        glBindFramebuffer(GL_DRAW_FRAMEBUFFER, target.framebuffer);
        glBlitFramebuffer(0, 0, target.width, to - from, 0, from, target.width, to, GL_COLOR_BUFFER_BIT | GL_DEPTH_BUFFER_BIT, GL_NEAREST);
        if (r.strips > 1) glFinish(); // else the driver keeps the triangles of every strip that waits
    }
    if (many) {
        draw_on(target.framebuffer, target);
        glClear(GL_STENCIL_BUFFER_BIT);
        r.draw_crossings(list.items);
    }
    glBindFramebuffer(GL_FRAMEBUFFER, target.framebuffer);
    glDisable(GL_DEPTH_TEST);
    glDisable(GL_CULL_FACE);
}

void Renderer::draw_over(const scene::DrawList& list, const Target& target) {
    Inner& r = *inner_;
    if (list.over.empty()) return;
    r.set_frame(list, target);
    draw_on(target.framebuffer, target);
    glClearStencil(0);
    glClear(GL_STENCIL_BUFFER_BIT);
    r.bind_textures();
    r.draw_items(list.over, false, true);
    r.draw_thin(list.over, false, true);
    // The same triangles again, in their new look: a little nearer, since the depth kept is that of one sample of many.
    glDepthFunc(GL_LEQUAL);
    glDepthMask(GL_FALSE);
    glEnable(GL_POLYGON_OFFSET_FILL);
    glPolygonOffset(-1, -2);
    r.draw_items(list.over, false);
    r.draw_thin(list.over, false);
    r.draw_outlines(list.over);
    glDisable(GL_POLYGON_OFFSET_FILL);
    glDepthMask(GL_TRUE);
    glDepthFunc(GL_LESS);
    glDisable(GL_DEPTH_TEST);
    glDisable(GL_CULL_FACE);
}

void Renderer::draw_parts(const scene::DrawList& list, const Target& target) {
    Inner& r = *inner_;
    r.set_frame(list, target);
    draw_on(target.framebuffer, target);
    glClearColor(0, 0, 0, 0);
    glClear(GL_COLOR_BUFFER_BIT | GL_DEPTH_BUFFER_BIT);
    glDisable(GL_CULL_FACE);
    for (const auto& item : list.items) {
        const GLuint program = r.paints.flat();
        glUseProgram(program);
        glUniform1i(glGetUniformLocation(program, "thin"), item.material == Material::thin);
        glUniform4f(glGetUniformLocation(program, "paint"), 0, 0, 0, 0);
        glUniform1f(glGetUniformLocation(program, "grow_px"), 0);
        glUniform1f(glGetUniformLocation(program, "set"), item.of == Of::vine ? 0.0f : 1.0f);
        r.mesh_of(item).draw(item);
    }
    glDisable(GL_DEPTH_TEST);
}

std::string machine() {
    const auto* name = reinterpret_cast<const char*>(glGetString(GL_RENDERER));
    return name ? name : "";
}

bool in_software(const std::string& machine) {
    for (const char* name : {"llvmpipe", "softpipe", "SwiftShader"})
        if (machine.find(name) != std::string::npos) return true;
    return false;
}

} // namespace spurwright::gl
