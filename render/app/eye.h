// The eye of the person: standing in the row, or the aid that goes about the vine. Turning, leaning, stepping, views by
// name, looking at a part; an ease of a quarter of a second unless motion is reduced. Must not know: screens, OpenGL.
#pragma once

#include <string>

#include "render/scene/views.h"

namespace spurwright::app {

class Eye {
public:
    // To the first view of a vine, at once.
    void begin(const shape::VineShape& vine);
    void look_from(scene::View view, const shape::VineShape& vine, AxisId chosen);
    // Towards a place, near enough to count buds where `close`; it stands so many degrees above the picture's middle.
    void look_at(glm::vec3 place, bool close, float raised_deg = 0);
    // Both places in the picture, from as near in the row as holds them.
    void look_over(glm::vec3 one, glm::vec3 other);
    void set_orbit(bool on, const shape::VineShape& vine);

    void turn(float right_deg, float up_deg);
    void step(float right_m, float up_m);  // along the row and down; the aid: pans
    void nearer(float steps, glm::vec3 towards);  // steps of the wheel; the aid goes towards the place

    bool orbits() const { return orbits_; }
    const std::string& view() const { return view_; }  // word of the view, empty once moved
    scene::Camera camera() const;
    // Moves the ease on; true while it goes on.
    bool advance(float seconds);
    bool reduced_motion = false;

private:
    scene::RowStance stance_;
    scene::Orbit orbit_;
    bool orbits_ = false;
    std::string view_ = "row";
    scene::Camera from_;
    float left_ = 0;  // of the ease, 1 to 0

    scene::Camera aim() const { return orbits_ ? scene::camera_of(orbit_) : scene::camera_of(stance_); }
    void ease_from(const scene::Camera& camera);
    void orbit_as(const scene::Camera& camera);
};

}  // namespace spurwright::app
