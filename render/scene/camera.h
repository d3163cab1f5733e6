// Where the eye is. Standing in the row is the first view and the examined one; free orbit is an aid. Plain data: the
// screens change it, the renderer obeys it. Transforms say both spaces. Must not know: OpenGL, screens.
#pragma once

#include <glm/glm.hpp>

namespace spurwright::scene {

struct Camera {
    glm::vec3 eye{0, 1.6f, 0.75f}, target{0, 1.15f, 0};
    float fov_deg = 42; // upright
    float near = 0.05f, far = 90;
    // What the eye sees is drawn this large (1: over the whole picture), its middle moved by this much of clip space:
    // panels may lie over the rest.
    float shown = 1;
    glm::vec2 shift{0, 0};
    bool operator==(const Camera&) const = default;
};

glm::mat4 clip_from_world(const Camera& camera, float aspect);

// Feet in the alley, in metres and degrees. One can turn the head, lean, step; one cannot fly.
struct RowStance {
    float along = 0;   // place along the row
    float off = 0.75f; // from the row, 0.6 to `most_off`
    float most_off = 1.3f; // as far as the alley lets one step back
    float eye_height = 1.6f;
    float yaw_deg = 0;     // towards the far post above 0, -70 to 70
    float pitch_deg = -31; // -75 to 30
    float lean_in = 0;     // 0 to 0.25
    float lean_down = 0;   // 0 to 0.35
    float lean_along = 0;  // -0.3 to 0.3
    bool other_side = false;
};

// Holds every field to its limits.
RowStance held(RowStance stance);
Camera camera_of(const RowStance& stance);

// The aid: about a pivot, up stays up, never below ground.
struct Orbit {
    glm::vec3 pivot{0, 1.2f, 0};
    float yaw_deg = 0, pitch_deg = 10, distance = 3;
    float fov_deg = 34;
};
Camera camera_of(const Orbit& orbit);

struct Ray {
    glm::vec3 from, way;
}; // way: unit

// Through a place of the picture: x and y from 0 (upper corner towards the near post, seen from +Z) to 1.
Ray ray_through(const Camera& camera, float x, float y, float aspect);

// Of a length at this distance, on a picture this many pixels high.
float pixels_a_metre(const Camera& camera, float distance, int height);

} // namespace spurwright::scene
