#include "render/app/eye.h"

#include <algorithm>
#include <cmath>

namespace spurwright::app {
namespace {

constexpr float ease_seconds = 0.25f;
constexpr float closest = 0.35f;      // metres that one bends to a part in the row (our choice)
constexpr float row_step = 0.88f;     // of the way to the row that is left, a step of the wheel
constexpr float nearest_lean = 0.35f, feet_nearest = 0.6f, leans_from = 1.0f;  // metres off the row: of the eye, of the feet, where one begins to bend
constexpr float held_within = 0.8f, held_aspect = 16.0f / 9;  // of the picture's half: what is looked over
constexpr float orbit_nearest = 0.15f, orbit_farthest = 8;

bool is_aid(scene::View view) { return view == scene::View::along || view == scene::View::cane || view == scene::View::above || view == scene::View::whole; }

}  // namespace

void Eye::begin(const shape::VineShape& vine) {
    stance_ = scene::stance_of(scene::View::row, vine);
    orbits_ = false;
    view_ = "row";
    left_ = 0;
}

void Eye::ease_from(const scene::Camera& camera) {
    from_ = camera;
    left_ = reduced_motion ? 0.0f : 1.0f;
}

void Eye::orbit_as(const scene::Camera& c) {
    const glm::vec3 way = c.target - c.eye;
    orbit_.pivot = c.target;
    orbit_.distance = glm::length(way);
    orbit_.fov_deg = c.fov_deg;
    orbit_.yaw_deg = glm::degrees(std::atan2(way.x, -way.z));
    orbit_.pitch_deg = -glm::degrees(std::asin(std::clamp(way.y / std::max(orbit_.distance, 1e-4f), -1.0f, 1.0f)));
    orbits_ = true;
}

void Eye::look_from(scene::View view, const shape::VineShape& vine, AxisId chosen) {
    const scene::Camera before = camera();
    if (is_aid(view)) orbit_as(scene::camera_of(view, vine, chosen));
    else {
        stance_ = scene::stance_of(view, vine);
        orbits_ = false;
    }
    view_ = scene::words_of(view)[static_cast<std::size_t>(view)];
    ease_from(before);
}

void Eye::look_at(glm::vec3 place, bool close, float raised_deg) {
    const scene::Camera before = camera();
    if (orbits_) {
        orbit_.pivot = place;
        if (close) orbit_.distance = std::clamp(orbit_.distance, 0.3f, 0.6f);
        orbit_.pivot.y -= orbit_.distance * std::tan(glm::radians(raised_deg));
    } else {
        stance_.along = place.x;
        stance_.lean_along = 0;
        stance_.off = close ? 0.6f : stance_.off;
        stance_.lean_in = close ? 0.25f : 0.0f;
        stance_.lean_down = close ? std::clamp(stance_.eye_height - (place.y + closest), 0.0f, 0.35f) : 0.0f;
        stance_.yaw_deg = 0;
        const float high = place.y - (stance_.eye_height - stance_.lean_down);
        const float depth = std::max(0.2f, stance_.off - stance_.lean_in - (stance_.other_side ? -place.z : place.z));
        stance_.pitch_deg = glm::degrees(std::atan2(high, depth)) - raised_deg;
    }
    view_.clear();
    ease_from(before);
}

void Eye::look_over(glm::vec3 one, glm::vec3 other) {
    const scene::Camera before = camera();
    orbits_ = false;
    stance_.along = (one.x + other.x) / 2;
    stance_.lean_along = stance_.lean_in = stance_.lean_down = stance_.yaw_deg = 0;
    const auto held = [&](glm::vec3 place) {
        const glm::vec4 c = scene::clip_from_world(aim(), held_aspect) * glm::vec4(place, 1);
        return c.w > 0.05f && std::max(std::fabs(c.x), std::fabs(c.y)) <= held_within * c.w;
    };
    for (stance_.off = feet_nearest; stance_.off < stance_.most_off; stance_.off += 0.05f) {
        stance_.pitch_deg = glm::degrees(std::atan2((one.y + other.y) / 2 - stance_.eye_height, stance_.off));
        if (held(one) && held(other)) break;
    }
    view_.clear();
    ease_from(before);
}

void Eye::set_orbit(bool on, const shape::VineShape& vine) {
    if (on == orbits_) return;
    const scene::Camera before = camera();
    if (on) {
        scene::Camera about = before;
        about.target = {static_cast<float>(vine.head.x), static_cast<float>(vine.trellis.fruiting_height + 0.2), 0};
        orbit_as(about);
        orbit_.fov_deg = 34;
        orbit_.distance = std::max(orbit_.distance, 1.6f);
    } else {
        orbits_ = false;
    }
    view_.clear();
    ease_from(before);
}

void Eye::turn(float right_deg, float up_deg) {
    left_ = 0;
    view_.clear();
    if (orbits_) {
        orbit_.yaw_deg += right_deg;
        orbit_.pitch_deg = std::clamp(orbit_.pitch_deg - up_deg, -20.0f, 85.0f);
        return;
    }
    stance_.yaw_deg += stance_.other_side ? -right_deg : right_deg;
    stance_.pitch_deg += up_deg;
    stance_ = scene::held(stance_);
}

void Eye::step(float right_m, float up_m) {
    left_ = 0;
    view_.clear();
    if (orbits_) {
        const float yaw = glm::radians(orbit_.yaw_deg);
        orbit_.pivot += glm::vec3(std::cos(yaw), 0, std::sin(yaw)) * right_m + glm::vec3(0, up_m, 0);
        orbit_.pivot.y = std::max(orbit_.pivot.y, 0.05f);
        return;
    }
    const float along = stance_.other_side ? -right_m : right_m;
    // Leaning first, then the feet follow.
    const float leaned = std::clamp(stance_.lean_along + along, -0.3f, 0.3f);
    stance_.along += along - (leaned - stance_.lean_along);
    stance_.lean_along = leaned;
    stance_.along = std::clamp(stance_.along, -4.0f, 4.0f);
    stance_.lean_down -= up_m;
    stance_ = scene::held(stance_);
}

void Eye::nearer(float steps, glm::vec3 towards) {
    left_ = 0;
    view_.clear();
    if (orbits_) {
        const float before = orbit_.distance;
        orbit_.distance = std::clamp(before * std::pow(0.88f, steps), orbit_nearest, orbit_farthest);
        orbit_.pivot += (towards - orbit_.pivot) * std::max(0.0f, 1 - orbit_.distance / before);
        return;
    }
    // The place pointed at stays where it is in the picture: one walks towards it, and turns the head as one goes.
    const auto in_row = [&] {
        const scene::Camera c = aim();
        const glm::vec3 way = towards - c.eye;
        return std::fabs(way.z) > 1e-3f && way.z * c.eye.z < 0 ? c.eye - c.eye.z / way.z * way : towards;
    };
    const glm::vec3 place = glm::length(towards - aim().eye) < 1.05f ? in_row() : towards;
    const auto angles = [&] {
        const glm::vec3 way = place - aim().eye;
        return glm::vec2(glm::degrees(std::atan2(way.x, std::fabs(way.z))), glm::degrees(std::atan2(way.y, std::max(0.05f, glm::length(glm::vec2(way.x, way.z))))));
    };
    const glm::vec2 before = angles();
    // Leaning in comes last and goes first: feet from the alley to 0.6 m off the row, then the body.
    const float was = stance_.off - stance_.lean_in;
    const float off = std::clamp(was * std::pow(row_step, steps), nearest_lean, stance_.most_off);
    stance_.off = std::clamp(off + (off < feet_nearest ? 0.25f : 0.0f), feet_nearest, stance_.most_off);
    stance_.lean_in = std::clamp(stance_.off - off, 0.0f, 0.25f);
    if (steps > 0) stance_.along += (place.x - stance_.along) * std::clamp(1 - off / was, 0.0f, 1.0f);
    stance_.along = std::clamp(stance_.along, -4.0f, 4.0f);
    const float below = std::clamp((stance_.eye_height - place.y) / 0.7f, 0.0f, 1.0f);
    stance_.lean_down = 0.35f * below * std::clamp((leans_from - off) / (leans_from - nearest_lean), 0.0f, 1.0f);
    const glm::vec2 after = angles();
    stance_.yaw_deg += after.x - before.x;
    stance_.pitch_deg += after.y - before.y;
    stance_ = scene::held(stance_);
}

scene::Camera Eye::camera() const {
    scene::Camera to = aim();
    if (left_ <= 0) return to;
    const float t = 1 - left_, s = t * t * (3 - 2 * t);
    to.eye = glm::mix(from_.eye, to.eye, s);
    // Towards places equally far, so that the turn is even.
    const auto ahead = [](const scene::Camera& c, glm::vec3 eye) { return eye + glm::normalize(c.target - c.eye); };
    to.target = glm::mix(ahead(from_, to.eye), ahead(aim(), to.eye), s);
    to.fov_deg = from_.fov_deg + (to.fov_deg - from_.fov_deg) * s;
    return to;
}

bool Eye::advance(float seconds) {
    if (left_ <= 0) return false;
    left_ = std::max(0.0f, left_ - seconds / ease_seconds);
    return true;
}

}  // namespace spurwright::app
