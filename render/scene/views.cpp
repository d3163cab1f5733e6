#include "render/scene/views.h"

#include <algorithm>
#include <cmath>
#include <vector>

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

// Standing back: feet stay this clear of the next row; the whole plant comes between these heights of a picture (from -1 at
// its lower edge to 1), where neither the step band nor the tools lie over it, and as wide as 16 : 9 shows it. Our choice.
constexpr float clear_of_next_row = 0.30f, highest = 0.73f, lowest = -0.62f, widest = 0.97f, wide_aspect = 16.0f / 9;

// What of the plant the first view must hold: its head and all wood above.
std::vector<glm::vec3> framed(const shape::VineShape& vine) {
    std::vector<glm::vec3> places{of(vine.head)};
    for (const auto& stem : vine.stems)
        if (!stem.trunk)
            for (const auto& point : stem.line.points())
                if (point.place.y > vine.head.y - 0.05) places.push_back(of(point.place));
    return places;
}

// Turns the head so that what is highest stands at `highest`; whether all of it is in the frame then.
bool frames(RowStance& s, const std::vector<glm::vec3>& places) {
    float low = -60, high = 30;
    const auto extent = [&](float pitch, float& top, float& bottom, float& side) {
        s.pitch_deg = pitch;
        const glm::mat4 clip_from = clip_from_world(camera_of(s), wide_aspect);
        top = -10, bottom = 10, side = 0;
        for (const glm::vec3& place : places) {
            const glm::vec4 c = clip_from * glm::vec4(place, 1);
            if (c.w <= 0.05f) continue;
            top = std::max(top, c.y / c.w);
            bottom = std::min(bottom, c.y / c.w);
            side = std::max(side, std::fabs(c.x / c.w));
        }
    };
    float top = 0, bottom = 0, side = 0;
    for (int i = 0; i < 24; ++i) {
        const float pitch = (low + high) / 2;
        extent(pitch, top, bottom, side);
        (top > highest ? low : high) = pitch;
    }
    return bottom >= lowest && side <= widest;
}

RowStance stood_back(const shape::VineShape& vine, RowStance s) {
    const auto places = framed(vine);
    for (s.off = 0.75f; s.off < s.most_off; s.off += 0.05f)
        if (frames(s, places)) return s;
    s.off = s.most_off;
    frames(s, places);
    return s;
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
    s.most_off = std::max(1.3f, static_cast<float>(vine.row_spacing) - clear_of_next_row);
    if (view == View::head) {
        s.lean_in = 0.22f;
        s.lean_down = 0.33f;
        s.pitch_deg = pitch_to(vine.head.y + 0.05, s.eye_height - s.lean_down, s.off - s.lean_in);
        return s;
    }
    s.other_side = view == View::other_side;
    s = stood_back(vine, s);
    if (view != View::step_back) return s;
    s.off = s.most_off;
    frames(s, framed(vine));
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
