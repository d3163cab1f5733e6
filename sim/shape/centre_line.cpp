#include "sim/shape/centre_line.h"

#include "sim/core/check.h"

namespace spurwright::shape {
namespace {

double quadratic(double a, double middle, double b, double t) {
    return a * (1 - t) * (1 - 2 * t) + 4 * middle * t * (1 - t) + b * t * (2 * t - 1);
}

} // namespace

CentreLine::CentreLine(std::vector<LinePoint> points, std::vector<Radii> middles)
    : points_(std::move(points)), middles_(std::move(middles)) {
    SPURWRIGHT_CHECK(points_.size(), ==, middles_.size() + 1);
    SPURWRIGHT_CHECK(points_.size(), >=, std::size_t{2});
    const std::size_t last = points_.size() - 1;
    const auto chord = [&](std::size_t i) { return unit(points_[i + 1].place - points_[i].place); };
    slopes_.resize(points_.size());
    slopes_[0] = chord(0);
    slopes_[last] = chord(last - 1);
    for (std::size_t i = 1; i < last; ++i) {
        const double before = segment_length(i - 1), after = segment_length(i);
        slopes_[i] = 1 / (before + after) * (after * chord(i - 1) + before * chord(i));
    }
}

LineSample CentreLine::at(std::size_t segment, double t) const {
    const LinePoint &a = points_[segment], &b = points_[segment + 1];
    const double h = segment_length(segment), t2 = t * t, t3 = t2 * t;
    const Vec3 place = (2 * t3 - 3 * t2 + 1) * a.place + (h * (t3 - 2 * t2 + t)) * slopes_[segment] +
                       (3 * t2 - 2 * t3) * b.place + (h * (t3 - t2)) * slopes_[segment + 1];
    const Vec3 way = (6 * t2 - 6 * t) * (a.place - b.place) + (h * (3 * t2 - 4 * t + 1)) * slopes_[segment] +
                     (h * (3 * t2 - 2 * t)) * slopes_[segment + 1];
    const Radii& middle = middles_[segment];
    return {place,
            unit(way, unit(b.place - a.place)),
            {quadratic(a.radii.major, middle.major, b.radii.major, t),
             quadratic(a.radii.minor, middle.minor, b.radii.minor, t)}};
}

} // namespace spurwright::shape
