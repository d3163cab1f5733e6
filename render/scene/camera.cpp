#include "render/scene/camera.h"

#include <algorithm>
#include <cmath>

#include <glm/gtc/matrix_transform.hpp>

namespace spurwright::scene {
namespace {

glm::vec3 up_for(glm::vec3 way) { return std::fabs(way.y) > 0.999f ? glm::vec3(0, 0, -1) : glm::vec3(0, 1, 0); }

constexpr float wider_back = 7.5f; // degrees: from the next row the whole plant is taken in, head and hedge cut (our choice)

glm::vec3 heading(float yaw_deg, float pitch_deg) {
    const float yaw = glm::radians(yaw_deg), pitch = glm::radians(pitch_deg);
    return {std::sin(yaw) * std::cos(pitch), std::sin(pitch), -std::cos(yaw) * std::cos(pitch)};
}

} // namespace

glm::mat4 clip_from_world(const Camera& c, float aspect) {
    const glm::mat4 view_from_world = glm::lookAt(c.eye, c.target, up_for(glm::normalize(c.target - c.eye)));
    glm::mat4 placed(1);  // in clip space a shift goes with w
    placed[0][0] = placed[1][1] = c.shown;
    placed[3][0] = c.shift.x;
    placed[3][1] = c.shift.y;
    return placed * glm::perspective(glm::radians(c.fov_deg), aspect, c.near, c.far) * view_from_world;
}

RowStance held(RowStance s) {
    s.off = std::clamp(s.off, 0.6f, std::max(s.most_off, 0.6f));
    s.eye_height = std::clamp(s.eye_height, 1.0f, 2.0f);
    s.yaw_deg = std::clamp(s.yaw_deg, -70.0f, 70.0f);
    s.pitch_deg = std::clamp(s.pitch_deg, -75.0f, 30.0f);
    s.lean_in = std::clamp(s.lean_in, 0.0f, 0.25f);
    s.lean_down = std::clamp(s.lean_down, 0.0f, 0.35f);
    s.lean_along = std::clamp(s.lean_along, -0.3f, 0.3f);
    return s;
}

Camera camera_of(const RowStance& stance) {
    const RowStance s = held(stance);
    Camera camera;
    camera.fov_deg += wider_back * std::clamp((s.off - 1.3f) / 0.8f, 0.0f, 1.0f);
    camera.eye = {s.along + s.lean_along, s.eye_height - s.lean_down, s.off - s.lean_in};
    glm::vec3 way = heading(s.yaw_deg, s.pitch_deg);
    if (s.other_side) {
        camera.eye.z = -camera.eye.z;
        way.z = -way.z;
    }
    camera.target = camera.eye + way;
    return camera;
}

Camera camera_of(const Orbit& o) {
    Camera camera;
    camera.fov_deg = std::clamp(o.fov_deg, 20.0f, 60.0f);
    camera.target = o.pivot;
    const glm::vec3 way = heading(o.yaw_deg, -std::clamp(o.pitch_deg, -89.0f, 89.0f));
    camera.eye = o.pivot - std::max(o.distance, 0.06f) * way;
    camera.eye.y = std::max(camera.eye.y, 0.05f);
    return camera;
}

Ray ray_through(const Camera& c, float x, float y, float aspect) {
    const glm::mat4 world_from_clip = glm::inverse(clip_from_world(c, aspect));
    const glm::vec4 far = world_from_clip * glm::vec4(2 * x - 1, 1 - 2 * y, 1, 1);
    return {c.eye, glm::normalize(glm::vec3(far) / far.w - c.eye)};
}

float pixels_a_metre(const Camera& c, float distance, int height) {
    return c.shown * static_cast<float>(height) / (2 * distance * std::tan(glm::radians(c.fov_deg) / 2));
}

} // namespace spurwright::scene
