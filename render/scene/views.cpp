#include "render/scene/views.h"

#include <algorithm>
#include <cmath>

namespace spurwright::scene {
namespace {

glm::vec3 of(shape::Vec3 v) { return {v.x, v.y, v.z}; }

const shape::Stem* cane_to_show(const shape::VineShape& vine, AxisId chosen) {
    if (const auto* stem = chosen ? vine.find(chosen) : nullptr) return stem;
    const shape::Stem* best = nullptr;
    double least = 1e9;
    for (const auto& stem : vine.stems) {
        if (stem.wood != shape::Wood::one_year || stem.lateral || stem.nodes.size() < 5) continue;
        const double miss = std::fabs(2 * stem.nodes[2].radius - 0.008) * 20 +
                            std::fabs(stem.nodes[2].place.z - 0.03) * 0.5 +
                            shape::length(stem.nodes[0].place - vine.head) * 0.2;
        if (miss < least) least = miss, best = &stem;
    }
    return best;
}

// Pitch of somebody with eyes at `eye`, `off` from the row, who looks at a height on it.
float pitch_to(double height, float eye, float off) {
    return glm::degrees(std::atan2(static_cast<float>(height) - eye, off));
}

} // namespace

std::optional<View> read_view(std::string_view word) {
    const auto words = words_of(View{});
    for (std::size_t i = 0; i < words.size(); ++i)
        if (words[i] == word) return static_cast<View>(i);
    return std::nullopt;
}

RowStance stance_of(View view, const shape::VineShape& vine) {
    RowStance s;
    s.along = static_cast<float>(vine.head.x);
    // The head a little below the middle: heads stand higher and lower.
    const double middle = vine.trellis.fruiting_height + 0.22;
    s.pitch_deg = pitch_to(middle, s.eye_height, s.off);
    if (view == View::step_back) {
        s.off = 1.3f;
        s.pitch_deg = pitch_to(vine.trellis.fruiting_height + 0.33, s.eye_height, s.off);
    } else if (view == View::other_side) {
        s.other_side = true;
    } else if (view == View::head) {
        s.lean_in = 0.22f;
        s.lean_down = 0.33f;
        s.pitch_deg = pitch_to(vine.head.y + 0.05, s.eye_height - s.lean_down, s.off - s.lean_in);
    }
    return s;
}

Camera camera_of(View view, const shape::VineShape& vine, AxisId chosen) {
    switch (view) {
    case View::row:
    case View::step_back:
    case View::other_side:
    case View::head: return camera_of(stance_of(view, vine));
    case View::along: {
        Camera c;
        c.eye = {static_cast<float>(vine.head.x - 1.35 * vine.spacing), 1.5f, 0.55f};
        c.target = {static_cast<float>(vine.head.x), static_cast<float>(vine.trellis.fruiting_height + 0.25), 0};
        return c;
    }
    case View::cane: {
        const auto* stem = cane_to_show(vine, chosen);
        if (!stem) return camera_of(stance_of(View::head, vine));
        const auto& node = stem->nodes[std::min<std::size_t>(4, stem->nodes.size() - 1)];
        Camera c;
        c.fov_deg = 30;
        c.target = of(node.place);
        c.eye = c.target + glm::vec3(0.08f, 0.10f, 0.36f);
        return c;
    }
    case View::whole: {
        Camera c;
        c.fov_deg = 41;
        c.eye = {static_cast<float>(vine.head.x), 1.45f, 2.05f};
        c.target = {static_cast<float>(vine.head.x), static_cast<float>(vine.trellis.fruiting_height + 0.34), 0};
        return c;
    }
    case View::above: {
        Camera c;
        c.fov_deg = 34;
        c.target = {static_cast<float>(vine.head.x), 0.9f, 0};
        c.eye = c.target + glm::vec3(0.0f, 3.2f, 1.1f);
        return c;
    }
    }
    return {};
}

} // namespace spurwright::scene
