#include "render/scene/fall.h"

#include <algorithm>
#include <cmath>

#include "render/mesh/ground_mesh.h"
#include "render/mesh/noise.h"

namespace spurwright::scene {
namespace {

using mesh::Pose;
using mesh::Vec3;
namespace noise = mesh::noise;

constexpr double gravity = 9.81, drag = 1.2;          // metres a second squared, a second
constexpr double nearest = 0.22, farthest = 0.50;     // of the balance point from the row when it lies, metres
constexpr double most_across = 0.6;                   // radians that a piece lies off the row's line
constexpr double most_roll = 1.05;                     // radians about its own length
constexpr int rolls = 9;                              // of which so many are tried; the flattest is taken

// Metres fallen after so many seconds.
double dropped(double t) { return gravity / drag * (t - (1 - std::exp(-drag * t)) / drag); }

double seconds_to_drop(double height) {
    double low = 0, high = 2;
    for (int i = 0; i < 40; ++i) (dropped((low + high) / 2) < height ? low : high) = (low + high) / 2;
    return high;
}

// Turned about a unit axis through a point that goes to `to`.
Pose about(Vec3 axis, double angle, Vec3 from, Vec3 to) {
    const double c = std::cos(angle), s = std::sin(angle);
    const auto turned = [&](Vec3 d) { return c * d + s * shape::cross(axis, d) + (1 - c) * shape::dot(axis, d) * axis; };
    Pose pose{turned({1, 0, 0}), turned({0, 1, 0}), turned({0, 0, 1}), {}};
    pose.move = to - pose.turned(from);
    return pose;
}

// One axis and angle for two turns in a row.
void set_turn(Fall& fall, const Pose& whole) {
    const double trace = whole.x.x + whole.y.y + whole.z.z;
    fall.turn = std::acos(std::clamp((trace - 1) / 2, -1.0, 1.0));
    fall.axis = shape::unit({whole.y.z - whole.z.y, whole.z.x - whole.x.z, whole.x.y - whole.y.x}, {0, 0, 1});
}

struct Dot {
    Vec3 place;
    double radius;
};

std::vector<Dot> dots_of(const shape::VineShape& piece) {
    std::vector<Dot> dots;
    for (const auto& stem : piece.stems)
        for (const auto& point : stem.line.points()) dots.push_back({point.place, point.radii.mean()});
    return dots;
}

} // namespace

Fall fall_of(const shape::FallenPiece& piece) {
    Fall fall;
    fall.balance = piece.balance;
    const std::uint32_t key = piece.foot.value;
    const auto dots = dots_of(piece.shape);
    // Its length comes to lie along the row, more or less, top away from where it leaned.
    Vec3 far = piece.balance;
    for (const Dot& d : dots)
        if (shape::length(d.place - piece.cut) > shape::length(far - piece.cut)) far = d.place;
    const Vec3 length = shape::unit(far - piece.cut, {0, 1, 0});
    const double across = noise::between(-most_across, most_across, key, 21);
    const double way = length.x > 0.15 ? 1 : length.x < -0.15 ? -1 : noise::unit(key, 22) < 0.5 ? -1 : 1;
    const Vec3 lies = {way * std::cos(across), 0, std::sin(across)};
    const Vec3 hinge = shape::unit(shape::cross(length, lies), shape::any_square_to(lies));
    const Pose toppled = about(hinge, std::acos(std::clamp(shape::dot(length, lies), -1.0, 1.0)), {}, {});
    Pose flattest = toppled;
    double least = 1e9;
    for (int k = 0; k < rolls; ++k) {
        const Pose roll = about(lies, most_roll * (2.0 * k / (rolls - 1) - 1), {}, {});
        const Pose both{roll.turned(toppled.x), roll.turned(toppled.y), roll.turned(toppled.z), {}};
        double low = 1e9, high = -1e9;
        for (const Dot& d : dots) low = std::min(low, both.turned(d.place).y), high = std::max(high, both.turned(d.place).y);
        if (high - low < least - 1e-6) least = high - low, flattest = both;
    }
    set_turn(fall, flattest);
    fall.rest = {piece.balance.x + noise::between(-0.08, 0.08, key, 23), 0, noise::between(nearest, farthest, key, 24)};
    // As low as the soil lets it.
    const Pose lying = about(fall.axis, fall.turn, fall.balance, fall.rest);
    double lift = -1e9;
    for (const Dot& d : dots) {
        const Vec3 at = lying.of(d.place);
        lift = std::max(lift, mesh::ground_height(at.x, at.z) - (at.y - d.radius));
    }
    fall.rest.y += lift;
    fall.seconds = seconds_to_drop(std::max(0.02, fall.balance.y - fall.rest.y));
    return fall;
}

Pose pose_at(const Fall& fall, double seconds) {
    const double t = std::clamp(seconds, 0.0, fall.seconds), share = t / fall.seconds;
    // It begins to turn slowly, held by the wires, and lands turning.
    const double turned = share * share * (1.6 - 0.6 * share);
    Vec3 at = shape::lerp(fall.balance, fall.rest, share);
    at.y = share >= 1 ? fall.rest.y : fall.balance.y - dropped(t);
    return about(fall.axis, turned * fall.turn, fall.balance, at);
}

} // namespace spurwright::scene
