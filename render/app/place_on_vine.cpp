#include "render/app/place_on_vine.h"

#include <algorithm>

#include "sim/vine/vine_query.h"

namespace spurwright::app {

const shape::StemNode* stem_node(const shape::VineShape& shape, NodeId id) {
    const shape::Stem* stem = shape.find(axis_of(id));
    if (!stem) return nullptr;
    for (const auto& node : stem->nodes)
        if (node.node == id) return &node;
    return nullptr;
}

Projection::Projection(const scene::Camera& camera, float w, float h) : clip_from_world(scene::clip_from_world(camera, w / std::max(h, 1.0f))), eye(camera.eye), width(w), height(h) {}

std::optional<ui::At> Projection::operator()(glm::vec3 place) const {
    const glm::vec4 clip = clip_from_world * glm::vec4(place, 1);
    if (clip.w <= 0.02f) return std::nullopt;
    return ui::At{(clip.x / clip.w * 0.5f + 0.5f) * width, (0.5f - clip.y / clip.w * 0.5f) * height};
}

std::optional<glm::vec3> place_of(const shape::VineShape& shape, const Vine& vine, const practice::Spot& spot) {
    const shape::Stem* stem = shape.find(spot.axis);
    if (!stem || stem->nodes.empty()) return std::nullopt;
    const NodeId id = spot.node ? spot.node : stem->nodes[std::min<std::size_t>(2, stem->nodes.size() - 1)].node;
    const auto* node = stem_node(shape, id);
    if (!node) return std::nullopt;
    const float past = static_cast<float>(std::max(0.0, in_m(spot.beyond)));
    const Node* next = vine.find(node_id(spot.axis, index_of(id) + 1));
    const auto* after = next ? stem_node(shape, next->id) : nullptr;
    if (past <= 0) return of(node->place);
    if (!after) return of(node->place) + past * of(node->along);
    const float joint = std::max(glm::distance(of(node->place), of(after->place)), 1e-4f);
    const float share = std::min(past / joint, 1.0f);
    // On the wood as it is drawn: a joint bends between its nodes.
    const auto& points = stem->line.points();
    for (std::size_t i = 0; i + 1 < points.size(); ++i)
        if (points[i].node == static_cast<int>(index_of(id)) && points[i + 1].node == points[i].node + 1) return of(stem->line.at(i, static_cast<double>(share)).place);
    return glm::mix(of(node->place), of(after->place), share);
}

}  // namespace spurwright::app
