// The picture under the screens: the vine's shape, meshes and capsules, rebuilt when the vine changes, drawn into a
// texture of its own when anything of it changed. On a slow machine a plainer picture while the eye moves.
// Must not know: screens, rules.
#pragma once

#include <memory>
#include <string>

#include "render/app/glass.h"
#include "render/app/two_panes.h"
#include "render/gl/renderer.h"
#include "render/mesh/occlusion.h"
#include "render/scene/fallen_brush.h"
#include "render/scene/picking.h"
#include "sim/vine/vine.h"

namespace spurwright::app {

class Stage {
public:
    // Needs a current context of OpenGL 3.3. Shaders are made for the first vine: the screens before it need none.
    explicit Stage(std::string shader_folder);

    // Fault::missing without shader files, or where they cannot be compiled: nothing is drawn then.
    // new_vine: surroundings too. What the vine lost since the last one falls, or lies on the soil at once.
    [[nodiscard]] Result<void> show(const Vine& vine, bool new_vine, bool at_once);
    void advance(float seconds) { brush_.advance(static_cast<double>(seconds)); }  // what was cut off falls on
    bool falls() const { return brush_.falls(); }
    const shape::VineShape& shape() const { return shape_; }
    const scene::Capsules& capsules() const { return capsules_; }
    bool empty() const { return empty_; }

    // Draws where anything differs from what the texture holds: over the picture kept where only passing looks and what
    // falls differ. `moving`: the plainer picture may do. False where the texture holds all this already.
    bool draw(const scene::Camera& camera, const std::vector<scene::Emphasis>& emphases, int width, int height, bool moving);
    // The piece of that picture about a place under the glass, its texture; 0: nothing to see. Once draw() was asked for it.
    GLuint draw_glass(const scene::Camera& camera, const std::vector<scene::Emphasis>& emphases, int width, int height, float x, float y);
    // Two vines in its place, each in half the width, until end_two(). One renderer and one mesh in the driver draw both.
    [[nodiscard]] Result<void> show_two(const std::array<const Vine*, 2>& vines);
    void end_two();
    bool shows_two() const { return panes_ != nullptr; }
    const TwoPanes& panes() const { return *panes_; }
    bool draw_two(const scene::Camera& camera, int width, int height, bool moving);

    GLuint texture() const { return shows_over_ ? over_->texture() : canvas_ ? canvas_->texture() : 0; }
    bool plain() const { return panes_ ? panes_->drawn_plain() : drawn_plain_; }  // the texture holds the plainer picture: draw again at rest
    const std::string& machine() const { return machine_; }  // what the driver calls itself
    bool slow() const { return slow_; }

private:
    std::string shaders_;
    std::string machine_;
    std::unique_ptr<gl::Renderer> renderer_;
    std::unique_ptr<gl::Canvas> canvas_, over_;  // the picture; a copy of it with what passes over it
    shape::VineShape shape_;
    scene::Capsules capsules_;
    scene::FallenBrush brush_;
    Glass glass_;
    std::unique_ptr<TwoPanes> panes_;
    bool slow_ = false, empty_ = true, gave_back_ = false;

    // The meshes, and how far they are up to date.
    struct Built {
        mesh::Mesh vine, surroundings, lying, falling;
        shape::VineShape shape;  // that `vine` shows
        mesh::KeptOcclusion kept;  // all of `vine` that the next one asks for: what is drawn lies with the driver
        bool stale = true, around_stale = true;
        std::uint64_t lying_change = ~std::uint64_t{0}, falling_change = ~std::uint64_t{0};
    };
    Built built_;

    // What the texture holds.
    scene::Camera camera_;
    std::vector<scene::Emphasis> standing_, passing_;
    std::uint64_t change_ = 0, drawn_change_ = ~std::uint64_t{0}, drawn_lying_ = ~std::uint64_t{0}, drawn_falling_ = ~std::uint64_t{0};
    std::uint64_t drawings_ = 0;  // of the picture itself
    bool drawn_plain_ = false, shows_over_ = false;

    const mesh::Detail& detail() const { return slow_ ? mesh::slow_detail : mesh::fine_detail; }
    [[nodiscard]] Result<void> make_renderer();
    void prepare();
    scene::DrawList list_of(const scene::Camera& camera, const std::vector<scene::Emphasis>& emphases) const;
    void draw_over(scene::DrawList& list);
};

}  // namespace spurwright::app
