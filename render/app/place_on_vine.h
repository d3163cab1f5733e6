// From a spot of the vine to its place in the picture's space, and from there onto the window. Must not know: what is
// drawn there, OpenGL.
#pragma once

#include <optional>

#include "render/scene/draw_list.h"
#include "render/ui/marks.h"
#include "scenarios/practice/hand.h"
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

// Metres, in the picture's kind of number.
inline glm::vec3 of(shape::Vec3 v) { return {v.x, v.y, v.z}; }
inline glm::vec3 of(const Place& p) { return {in_m(p.x), in_m(p.y), in_m(p.z)}; }

// A node where it is drawn; none where it does not stand.
const shape::StemNode* stem_node(const shape::VineShape& shape, NodeId id);

// Where a spot of the vine lies: a node, or so far past it. Nothing where it does not stand.
std::optional<glm::vec3> place_of(const shape::VineShape& shape, const Vine& vine, const practice::Spot& spot);

}  // namespace spurwright::app
