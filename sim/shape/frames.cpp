#include "sim/shape/frames.h"

#include "sim/core/check.h"

namespace spurwright::shape {

Frame carried(const Frame& at_from, Vec3 from, Vec3 to, Vec3 along_to) {
    const Vec3 chord = to - from;
    const double c1 = dot(chord, chord);
    const Vec3 out = at_from.out - (2 / c1 * dot(chord, at_from.out)) * chord;
    const Vec3 along = at_from.along - (2 / c1 * dot(chord, at_from.along)) * chord;
    const Vec3 turn = along_to - along;
    const double c2 = dot(turn, turn);
    return {along_to, c2 > 0 ? out - (2 / c2 * dot(turn, out)) * turn : out};
}

std::vector<Frame> frames_along(const std::vector<Vec3>& points, const std::vector<Vec3>& tangents, Vec3 first_out) {
    SPURWRIGHT_CHECK(points.size(), ==, tangents.size());
    std::vector<Frame> frames;
    frames.reserve(points.size());
    for (std::size_t i = 0; i < points.size(); ++i)
        frames.push_back(i == 0 ? Frame{tangents[0], square_part(first_out, tangents[0])}
                                : carried(frames.back(), points[i - 1], points[i], tangents[i]));
    return frames;
}

} // namespace spurwright::shape
