#include "sim/bending/rod.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include "sim/core/check.h"
#include "sim/core/numeric.h"

namespace spurwright::bending {
namespace {

constexpr double least_share = 1e-4;      // of the promised fall that a step must bring
constexpr double settled_step = 1e-9;     // radians
constexpr double settled_miss = 1e-9;     // of the rod's length
constexpr double longest_step = 0.7;      // radians a segment turns in one step
constexpr double over_ceiling = 1e-4;     // of the rod's length: as good as touching
constexpr std::uint32_t nearby = 3;       // points: a touch that moves, not another one
constexpr double out_of_reach = 1e6;       // radians: a step so long says that a hold cannot be met
constexpr int most_mends = 16;
constexpr int most_halvings = 40;
constexpr std::size_t most_lines = most_holds + most_touching;

double dot(const Flat& a, const Flat& b) { return a.x * b.x + a.y * b.y; }

// Curvature of a bend whose segments point along unit vectors a and b: 2 tan(phi / 2) = 2 a x b / (1 + a . b).
double curvature(const Flat& a, const Flat& b) {
    const double along = 1.0 + dot(a, b);
    return 2.0 * (a.x * b.y - a.y * b.x) / std::max(along, 1e-12);
}

double curvature_of(double turn) {
    const auto [sine, cosine] = numeric::sincos(turn);
    return curvature({1, 0}, {cosine, sine});
}

Flat unit(double way) {
    const auto [sine, cosine] = numeric::sincos(way);
    return {cosine, sine};
}

// Solves the small full system by elimination with row exchange; false where it has no one answer.
bool solve_small(std::array<std::array<double, most_lines>, most_lines>& a, std::array<double, most_lines>& b, std::size_t n) {
    for (std::size_t k = 0; k < n; ++k) {
        std::size_t most = k;
        for (std::size_t i = k + 1; i < n; ++i)
            if (std::fabs(a[i][k]) > std::fabs(a[most][k])) most = i;
        if (std::fabs(a[most][k]) < 1e-300) return false;
        std::swap(a[k], a[most]);
        std::swap(b[k], b[most]);
        for (std::size_t i = k + 1; i < n; ++i) {
            const double times = a[i][k] / a[k][k];
            for (std::size_t j = k; j < n; ++j) a[i][j] -= times * a[k][j];
            b[i] -= times * b[k];
        }
    }
    for (std::size_t k = n; k-- > 0;) {
        for (std::size_t j = k + 1; j < n; ++j) b[k] -= a[k][j] * b[j];
        b[k] /= a[k][k];
    }
    return true;
}

}  // namespace

void Rod::clear() {
    length.clear();
    stiffness.clear();
    rest.clear();
}

void Rod::add(double segment, double stiff, double turn_at_rest) {
    length.push_back(segment);
    stiffness.push_back(stiff);
    rest.push_back(turn_at_rest);
}

// Directions and points of these angles.
void RodSolver::place(const Rod& rod, const std::vector<double>& way) {
    const std::size_t n = rod.size();
    cosine_.resize(n);
    sine_.resize(n);
    at_.resize(n + 1);
    at_[0] = {};
    for (std::size_t i = 0; i < n; ++i) {
        const Flat u = unit(way[i]);
        cosine_[i] = u.x;
        sine_[i] = u.y;
        at_[i + 1] = {at_[i].x + rod.length[i] * u.x, at_[i].y + rod.length[i] * u.y};
    }
}

double RodSolver::miss(const Line& line) const { return dot(line.normal, at_[line.point]) - line.at; }

// Of the placed rod, without its holds. `rest_` are curvatures.
double RodSolver::energy_at(const Rod& rod, const Loads& loads) {
    const std::size_t n = rod.size();
    double sum = 0;
    Flat before = clamp_;
    double last = 0;
    for (std::size_t i = 0; i < n; ++i) {
        const Flat here{cosine_[i], sine_[i]};
        const double beyond = curvature(before, here) - rest_[i];
        sum += rod.stiffness[i] * beyond * beyond / (last + rod.length[i]);
        sum -= rod.length[i] * (load_x_[i] * here.x + load_y_[i] * here.y);
        last = rod.length[i];
        before = here;
    }
    if (loads.end_way) {
        const double beyond = curvature(before, end_) - end_rest_;
        sum += loads.end_stiffness * beyond * beyond / last;
    }
    return sum;
}

double RodSolver::merit_at(const Rod& rod, const Loads& loads, const std::vector<double>& way) {
    place(rod, way);
    double sum = energy_at(rod, loads) - loads.end_moment * (way.back() - rod.clamp);
    for (const Line& line : lines_) {
        const double off = miss(line);
        sum += line.force * off + 0.5 * mu_ * off * off;
    }
    return sum;
}

// First derivative of the energy alone, and the second of energy and held lines together, of the placed rod.
void RodSolver::slope_and_stiffness(const Rod& rod, const Loads& loads) {
    const std::size_t n = rod.size();
    slope_.assign(n, 0.0);
    diagonal_.assign(n, 0.0);
    beside_.assign(n, 0.0);
    Flat before = clamp_;
    double last = 0;
    const auto bend = [&](double stiff, double rest, const Flat& here, double sum_of_lengths, std::size_t outer) {
        const double t = curvature(before, here), grows = 1.0 + 0.25 * t * t, k = 2.0 * stiff / sum_of_lengths;
        const double moment = k * (t - rest) * grows;
        const double stiffness = k * grows * (grows + (t - rest) * 0.5 * t);
        if (outer < n) slope_[outer] += moment, diagonal_[outer] += stiffness;
        if (outer > 0) slope_[outer - 1] -= moment, diagonal_[outer - 1] += stiffness;
        if (outer > 0 && outer < n) beside_[outer - 1] = -stiffness;
    };
    for (std::size_t i = 0; i < n; ++i) {
        const Flat here{cosine_[i], sine_[i]};
        bend(rod.stiffness[i], rest_[i], here, last + rod.length[i], i);
        slope_[i] -= rod.length[i] * (load_y_[i] * here.x - load_x_[i] * here.y);
        diagonal_[i] += rod.length[i] * (load_x_[i] * here.x + load_y_[i] * here.y);
        last = rod.length[i];
        before = here;
    }
    if (loads.end_way) bend(loads.end_stiffness, end_rest_, end_, last, n);
    slope_[n - 1] -= loads.end_moment;
    for (const Line& line : lines_) {
        if (line.force == 0.0) continue;
        for (std::uint32_t i = 0; i < line.point; ++i)
            diagonal_[i] -= line.force * rod.length[i] * (line.normal.x * cosine_[i] + line.normal.y * sine_[i]);
    }
}

// Tridiagonal: lower times diagonal times its mirror. False where it is not positive.
bool RodSolver::factor(double shift) {
    const std::size_t n = diagonal_.size();
    pivot_.resize(n);
    ratio_.resize(n);
    double before = 0;
    for (std::size_t i = 0; i < n; ++i) {
        pivot_[i] = diagonal_[i] + shift - (i > 0 ? ratio_[i - 1] * before : 0.0);
        if (!(pivot_[i] > 1e-9 * std::fabs(diagonal_[i]))) return false;
        before = beside_[i];
        ratio_[i] = before / pivot_[i];
    }
    return true;
}

void RodSolver::back_solve(std::vector<double>& x) const {
    const std::size_t n = pivot_.size();
    for (std::size_t i = 1; i < n; ++i) x[i] -= ratio_[i - 1] * x[i - 1];
    x[n - 1] /= pivot_[n - 1];
    for (std::size_t i = n - 1; i-- > 0;) x[i] = x[i] / pivot_[i] - ratio_[i] * x[i + 1];
}

// Lets go of points that pull at the ceiling and takes hold of the one furthest over it. True where something changed.
bool RodSolver::mend_touching(const Rod& rod, const Loads& loads, double length) {
    if (!loads.ceiling) return false;
    const auto pulls = std::find_if(lines_.begin(), lines_.end(), [](const Line& l) { return l.ceiling && l.force < 0.0; });
    if (pulls != lines_.end()) return lines_.erase(pulls), true;
    std::uint32_t highest = 0;
    double most = loads.ceiling->most + over_ceiling * length;
    for (std::uint32_t i = 1; i + 1 < at_.size() && i < rod.size(); ++i) {
        const double here = dot(loads.ceiling->normal, at_[i]);
        if (here > most) most = here, highest = i;
    }
    if (highest == 0) return false;
    // A point that touches moves along to the new one, unless the rod was there before: then it lies along the ceiling
    // there and both hold.
    Line line{highest, loads.ceiling->normal, loads.ceiling->most, true, 0.0};
    const auto apart = [&](const Line& l) { return std::max(l.point, highest) - std::min(l.point, highest); };
    auto nearest = lines_.end();
    std::size_t touching = 0;
    for (auto at = lines_.begin(); at != lines_.end(); ++at) {
        if (!at->ceiling) continue;
        ++touching;
        if (nearest == lines_.end() || apart(*at) < apart(*nearest)) nearest = at;
    }
    const bool been = std::find(moved_on_.begin(), moved_on_.end(), highest) != moved_on_.end();
    if (touching == most_touching || (touching > 0 && !been && apart(*nearest) <= nearby)) {
        moved_on_.push_back(nearest->point);
        line.force = nearest->force;
        *nearest = line;
    } else {
        lines_.push_back(line);
    }
    return true;
}

void RodSolver::solve(const Rod& rod, const Loads& loads, Bent& bent, std::vector<double>* seen) {
    const std::size_t n = rod.size();
    SPURWRIGHT_CHECK(n, >, std::size_t{0});
    SPURWRIGHT_CHECK(rod.stiffness.size(), ==, n);
    SPURWRIGHT_CHECK(rod.rest.size(), ==, n);
    SPURWRIGHT_CHECK(loads.holds.size(), <=, most_holds);
    clamp_ = unit(rod.clamp);
    rest_.resize(n);
    double length = 0, stiff = 0;
    for (std::size_t i = 0; i < n; ++i) {
        rest_[i] = rod.rest[i] == 0.0 ? 0.0 : curvature_of(rod.rest[i]);
        length += rod.length[i];
        stiff += rod.stiffness[i] / static_cast<double>(n);
    }
    if (loads.end_way) end_ = unit(*loads.end_way), end_rest_ = curvature_of(loads.end_rest);
    mu_ = 100.0 * stiff / (length * length * length);

    // What pulls at everything beyond the middle of each segment.
    load_x_.assign(n, 0.0);
    load_y_.assign(n, 0.0);
    for (const Pull& pull : loads.pulls)
        if (pull.point > 0) load_x_[pull.point - 1] += pull.force.x, load_y_[pull.point - 1] += pull.force.y;
    double weight = 0;
    for (std::size_t i = n; i-- > 0;) {
        if (i + 1 < n) load_x_[i] += load_x_[i + 1], load_y_[i] += load_y_[i + 1];
    }
    if (!loads.weight.empty())
        for (std::size_t i = n; i-- > 0;) {
            const double beyond = weight + 0.5 * loads.weight[i];
            load_x_[i] += loads.gravity.x * beyond;
            load_y_[i] += loads.gravity.y * beyond;
            weight += loads.weight[i];
        }

    if (bent.way.size() != n) {
        bent.way.resize(n);
        double way = rod.clamp;
        for (std::size_t i = 0; i < n; ++i) bent.way[i] = way += rod.rest[i];
    }
    lines_.clear();
    moved_on_.clear();
    for (const Hold& hold : loads.holds) lines_.push_back({hold.point, hold.normal, hold.at, false, 0.0});

    bent.steps = 0;
    bent.settled = false;
    int mended = 0;
    while (bent.steps < most_steps) {
        place(rod, bent.way);
        slope_and_stiffness(rod, loads);
        double shift = 0;
        while (!factor(shift)) {
            double most = 0;
            for (const double d : diagonal_) most = std::max(most, std::fabs(d));
            shift = shift > 0 ? 10.0 * shift : 1e-7 * most;
        }
        step_ = slope_;
        back_solve(step_);
        // Forces of the lines, so that the step lays each point on its line.
        const std::size_t m = lines_.size();
        lean_.resize(std::max(lean_.size(), m));
        lever_.resize(lean_.size());
        std::array<std::array<double, most_lines>, most_lines> small{};
        std::array<double, most_lines> force{};
        for (std::size_t k = 0; k < m; ++k) {
            const Line& line = lines_[k];
            lever_[k].assign(n, 0.0);
            for (std::uint32_t i = 0; i < line.point; ++i)
                lever_[k][i] = rod.length[i] * (line.normal.y * cosine_[i] - line.normal.x * sine_[i]);
            lean_[k] = lever_[k];
            back_solve(lean_[k]);
        }
        double misses = 0;
        for (std::size_t k = 0; k < m; ++k) {
            force[k] = miss(lines_[k]);
            misses = std::max(misses, std::fabs(force[k]));
            for (std::size_t i = 0; i < n; ++i) force[k] -= lever_[k][i] * step_[i];
            for (std::size_t j = 0; j < m; ++j)
                for (std::size_t i = 0; i < n; ++i) small[k][j] += lever_[k][i] * lean_[j][i];
        }
        if (m > 0 && !solve_small(small, force, m)) break;
        double largest = 0, promised = 0;
        for (std::size_t i = 0; i < n; ++i) {
            double d = -step_[i];
            for (std::size_t k = 0; k < m; ++k) d -= lean_[k][i] * force[k];
            step_[i] = d;
            largest = std::max(largest, std::fabs(d));
        }
        if (!(largest < out_of_reach)) break;
        std::array<double, most_lines> force_before{};
        for (std::size_t k = 0; k < m; ++k) force_before[k] = std::exchange(lines_[k].force, force[k]);
        double share = std::min(1.0, longest_step / std::max(largest, 1e-300));
        const double before = merit_at(rod, loads, bent.way);
        // How fast the merit falls along the step.
        for (std::size_t i = 0; i < n; ++i) {
            double fall = slope_[i];
            for (std::size_t k = 0; k < m; ++k) fall += lever_[k][i] * (force[k] + mu_ * miss(lines_[k]));
            promised -= fall * step_[i];
        }
        if (seen) seen->push_back(before);
        double after = before;
        int halvings = 0;
        trial_.resize(n);
        for (; halvings < most_halvings; ++halvings, share *= 0.5) {
            for (std::size_t i = 0; i < n; ++i) trial_[i] = bent.way[i] + share * step_[i];
            after = merit_at(rod, loads, trial_);
            if (after <= before - least_share * share * promised) break;
            if (largest < 1e-6) break;  // below what the energy can tell
        }
        ++bent.steps;
        if (halvings == most_halvings) break;
        bent.way.swap(trial_);
        // A step cut short goes as far with the forces as with the angles.
        for (std::size_t k = 0; k < m && share < 1.0; ++k) lines_[k].force = force_before[k] + share * (force[k] - force_before[k]);
        if (seen) seen->push_back(after);
        if (largest * share < settled_step && misses < settled_miss * length) {
            if (mended < most_mends && mend_touching(rod, loads, length)) {
                ++mended;
                continue;
            }
            bent.settled = true;
            break;
        }
        if (largest < 1e-2 && mended < most_mends && mend_touching(rod, loads, length)) ++mended;
    }

    place(rod, bent.way);
    bent.energy = energy_at(rod, loads) - loads.end_moment * (bent.way.back() - rod.clamp);
    bent.at = at_;
    bent.bend.assign(n + 1, 0.0);
    Flat before = clamp_;
    double last = 0;
    for (std::size_t i = 0; i < n; ++i) {
        const Flat here{cosine_[i], sine_[i]};
        bent.bend[i] = 2.0 * (curvature(before, here) - rest_[i]) / (last + rod.length[i]);
        last = rod.length[i];
        before = here;
    }
    if (loads.end_way) bent.bend[n] = 2.0 * (curvature(before, end_) - end_rest_) / last;
    bent.force.clear();
    bent.touching.clear();
    for (const Line& line : lines_)
        if (line.ceiling) bent.touching.push_back(line.point);
        else bent.force.push_back(-line.force);
}

}  // namespace spurwright::bending
