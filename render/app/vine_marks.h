// What is drawn on the vine besides its wood: tapes, ticks, cut places, twin lines, labels, and which parts are set off.
// Puts places of the vine onto the window; the screens draw. Must not know: OpenGL, ImGui's calls.
#pragma once

#include <optional>
#include <vector>

#include "render/scene/draw_list.h"
#include "render/ui/marks.h"
#include "scenarios/practice/practice.h"
#include "scenarios/practice/shell.h"
#include "sim/shape/vine_shape.h"

namespace spurwright::app {

struct Projection {
    glm::mat4 clip_from_world{1};
    glm::vec3 eye{0};
    float width = 1, height = 1;  // pixels of the window

    Projection(const scene::Camera& camera, float width, float height);
    // Nothing behind the eye.
    std::optional<ui::At> operator()(glm::vec3 place) const;
};

struct Overlay {
    ui::Marks marks;
    std::vector<scene::Emphasis> emphases;
};

// Where a spot of the vine lies: a node, or so far past it. Nothing where it does not stand.
std::optional<glm::vec3> place_of(const shape::VineShape& shape, const Vine& vine, const practice::Spot& spot);

// `would_cut`: what the hand would cut now, worked out once a frame. `pointer`: where labels of what is pointed at stand.
Overlay overlay_of(const practice::Practice& practice, const practice::Shell& shell, const shape::VineShape& shape, const scene::Camera& camera,
                   const std::optional<practice::CutPreview>& would_cut, std::optional<ui::At> pointer, const ui::Ui& ui, float width, float height);

}  // namespace spurwright::app
