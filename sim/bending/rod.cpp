#include "sim/bending/rod.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include "sim/core/check.h"

namespace spurwright::bending {
namespace {

constexpr double least_share = 1e-4;   // of the promised fall that a step must bring
constexpr double longest_step = 0.7;   // radians a segment turns in one step
constexpr double out_of_reach = 1e6;   // radians: a step so long says that a hold cannot be met
constexpr double below_telling = 1e-6; // radians: energies of doubles do not tell such steps apart
constexpr double dear_miss = 100.0;    // of the stiffness over the length cubed
constexpr double early_mend = 1e-2;    // radians: near enough to see what touches
constexpr double over_ceiling = 1e-4;  // of the rod's length: as good as touching
constexpr std::uint32_t nearby = 3;    // points: a touch that moves, not another one
constexpr int most_mends = 16, most_halvings = 40;
constexpr std::size_t most_lines = most_holds + most_touching;

double dot(Flat a, Flat b) { return a.x * b.x + a.y * b.y; }

// Of a bend between unit vectors: 2 tan(phi / 2) = 2 a x b / (1 + a . b).
double curvature(Flat a, Flat b) { return 2.0 * (a.x * b.y - a.y * b.x) / std::max(1.0 + dot(a, b), 1e-12); }

// Turned by 2 atan(angle / 2): the angle itself up to its third power, without a sine.
Flat turned(Flat a, double angle) {
    const double q = 0.5 * angle, over = 1.0 / (1.0 + q * q), cosine = (1.0 - q * q) * over, sine = 2.0 * q * over;
    return {cosine * a.x - sine * a.y, sine * a.x + cosine * a.y};
}

using Small = std::array<std::array<double, most_lines>, most_lines>;

// Elimination with row exchange; false where there is no one answer.
bool solve_small(Small& a, std::vector<double>& b) {
    const std::size_t n = b.size();
    for (std::size_t k = 0; k < n; ++k) {
        std::size_t most = k;
        for (std::size_t i = k + 1; i < n; ++i)
            if (std::fabs(a[i][k]) > std::fabs(a[most][k])) most = i;
        if (!(std::fabs(a[most][k]) > 1e-300)) return false;
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
    grown.clear();
}

void Rod::add(double segment, double stiff, Flat way) {
    length.push_back(segment);
    stiffness.push_back(stiff);
    grown.push_back(way);
}

void RodSolver::begin(const Rod& rod, const Loads& loads, Bent& bent) {
    const std::size_t n = rod.size();
    SPURWRIGHT_CHECK(n, >, std::size_t{0});
    SPURWRIGHT_CHECK(rod.stiffness.size(), ==, n);
    SPURWRIGHT_CHECK(rod.grown.size(), ==, n);
    SPURWRIGHT_CHECK(loads.holds.size(), <=, most_holds);
    clamp_ = rod.clamp;
    firm_.resize(n + 1);
    rest_.resize(n + 1);
    length_ = 0;
    double stiff = 0, last = 0;
    Flat before = rod.clamp;
    for (std::size_t i = 0; i < n; ++i) {
        firm_[i] = rod.stiffness[i] / (last + rod.length[i]);
        rest_[i] = curvature(before, rod.grown[i]);
        before = rod.grown[i];
        last = rod.length[i];
        length_ += last;
        stiff += rod.stiffness[i];
    }
    end_held_ = loads.end.has_value();
    if (end_held_) {
        end_ = loads.end->way;
        firm_[n] = loads.end->stiffness / last;
        rest_[n] = curvature(before, loads.end->grown);
    }
    moment_ = loads.end_moment;
    dear_ = dear_miss * stiff / static_cast<double>(n) / (length_ * length_ * length_);

    pull_.assign(n, {});
    for (const Pull& pull : loads.pulls)
        if (pull.point > 0) pull_[pull.point - 1].x += pull.force.x, pull_[pull.point - 1].y += pull.force.y;
    for (std::size_t i = n - 1; i-- > 0;) pull_[i].x += pull_[i + 1].x, pull_[i].y += pull_[i + 1].y;
    double beyond = 0;
    for (std::size_t i = loads.weight.empty() ? 0 : n; i-- > 0; beyond += loads.weight[i]) {
        const double here = beyond + 0.5 * loads.weight[i];
        pull_[i].x += loads.gravity.x * here;
        pull_[i].y += loads.gravity.y * here;
    }

    lines_.clear();
    moved_on_.clear();
    for (const Hold& hold : loads.holds) lines_.push_back({hold.point, hold.normal, hold.at, false, 0.0});
    if (bent.along.size() != n) {
        bent.along = rod.grown;
    } else if (loads.ceiling && bent.touching.size() <= most_touching) {
        for (const std::uint32_t point : bent.touching)
            if (point < n) lines_.push_back({point, loads.ceiling->normal, loads.ceiling->most, true, 0.0});
    }
}

void RodSolver::place(const Rod& rod, const std::vector<Flat>& along) {
    const std::size_t n = rod.size();
    at_.resize(n + 1);
    Flat p;
    at_[0] = p;
    for (std::size_t i = 0; i < n; ++i) {
        p = {p.x + rod.length[i] * along[i].x, p.y + rod.length[i] * along[i].y};
        at_[i + 1] = p;
    }
}

// Of bends and loads; the end moment's own part is counted in merit(), by the turns it has done.
double RodSolver::energy(const Rod& rod, const std::vector<Flat>& along) const {
    const std::size_t n = rod.size();
    double sum = 0;
    Flat before = clamp_;
    for (std::size_t i = 0; i < n; ++i) {
        const double beyond = curvature(before, along[i]) - rest_[i];
        sum += firm_[i] * beyond * beyond - rod.length[i] * dot(pull_[i], along[i]);
        before = along[i];
    }
    if (end_held_) {
        const double beyond = curvature(before, end_) - rest_[n];
        sum += firm_[n] * beyond * beyond;
    }
    return sum;
}

double RodSolver::merit(const Rod& rod, const std::vector<Flat>& along) const {
    double sum = energy(rod, along);
    for (const Line& line : lines_) {
        const double off = miss(line);
        sum += (line.force + 0.5 * dear_ * off) * off;
    }
    return sum;
}

// First derivative of the energy alone, and the second of energy and lines together.
void RodSolver::slope_and_stiffness(const Rod& rod, const std::vector<Flat>& along) {
    const std::size_t n = rod.size();
    slope_.assign(n, 0.0);
    diagonal_.assign(n, 0.0);
    beside_.assign(n, 0.0);
    const auto bend = [&](std::size_t i, Flat before, Flat here) {
        const double t = curvature(before, here), grows = 1.0 + 0.25 * t * t, beyond = t - rest_[i], k = 2.0 * firm_[i] * grows;
        const double moment = k * beyond, stiff = k * (grows + 0.5 * beyond * t);
        if (i < n) slope_[i] += moment, diagonal_[i] += stiff;
        if (i > 0) slope_[i - 1] -= moment, diagonal_[i - 1] += stiff;
        if (i > 0 && i < n) beside_[i - 1] = -stiff;
    };
    Flat before = clamp_;
    for (std::size_t i = 0; i < n; ++i) {
        bend(i, before, along[i]);
        slope_[i] -= rod.length[i] * (pull_[i].y * along[i].x - pull_[i].x * along[i].y);
        diagonal_[i] += rod.length[i] * dot(pull_[i], along[i]);
        before = along[i];
    }
    if (end_held_) bend(n, before, end_);
    slope_[n - 1] -= moment_;
    for (const Line& line : lines_)
        if (line.force != 0.0)
            for (std::uint32_t i = 0; i < line.point; ++i) diagonal_[i] -= line.force * rod.length[i] * dot(line.normal, along[i]);
}

// The tridiagonal matrix as lower times diagonal times its mirror; false where it is not positive.
bool RodSolver::factor(double shift) {
    const std::size_t n = diagonal_.size();
    pivot_.resize(n);  // its inverse
    ratio_.resize(n);
    double carried = 0;
    for (std::size_t i = 0; i < n; ++i) {
        const double pivot = diagonal_[i] + shift - carried;
        if (!(pivot > 1e-9 * std::fabs(diagonal_[i]))) return false;
        pivot_[i] = 1.0 / pivot;
        ratio_[i] = beside_[i] * pivot_[i];
        carried = ratio_[i] * beside_[i];
    }
    return true;
}

void RodSolver::back_solve(std::vector<double>& x) const {
    const std::size_t n = pivot_.size();
    for (std::size_t i = 1; i < n; ++i) x[i] -= ratio_[i - 1] * x[i - 1];
    x[n - 1] *= pivot_[n - 1];
    for (std::size_t i = n - 1; i-- > 0;) x[i] = x[i] * pivot_[i] - ratio_[i] * x[i + 1];
}

// The step to where slope and misses are 0 by first and second derivatives, and the lines' forces there.
bool RodSolver::find_step(const Rod& rod, const std::vector<Flat>& along) {
    const std::size_t n = rod.size(), m = lines_.size();
    slope_and_stiffness(rod, along);
    double shift = 0;
    while (!factor(shift)) {
        double most = 0;
        for (const double d : diagonal_) most = std::max(most, std::fabs(d));
        shift = shift > 0 ? 10.0 * shift : 1e-7 * most;
    }
    step_ = slope_;
    back_solve(step_);
    lever_.resize(std::max(lever_.size(), m));
    lean_.resize(lever_.size());
    force_.resize(m);
    miss_.resize(m);
    misses_ = 0;
    Small small{};
    for (std::size_t k = 0; k < m; ++k) {
        const Line& line = lines_[k];
        lever_[k].assign(n, 0.0);
        for (std::uint32_t i = 0; i < line.point; ++i) lever_[k][i] = rod.length[i] * (line.normal.y * along[i].x - line.normal.x * along[i].y);
        lean_[k] = lever_[k];
        back_solve(lean_[k]);
        miss_[k] = force_[k] = miss(line);
        misses_ = std::max(misses_, std::fabs(miss_[k]));
        for (std::uint32_t i = 0; i < line.point; ++i) force_[k] -= lever_[k][i] * step_[i];
        for (std::size_t j = 0; j <= k; ++j) {
            double sum = 0;
            for (std::uint32_t i = 0; i < lines_[j].point; ++i) sum += lever_[j][i] * lean_[k][i];
            small[k][j] = small[j][k] = sum;
        }
    }
    if (m > 0 && !solve_small(small, force_)) return false;
    largest_ = promised_ = 0;
    for (std::size_t i = 0; i < n; ++i) {
        double d = -step_[i], fall = slope_[i];
        for (std::size_t k = 0; k < m; ++k) {
            d -= lean_[k][i] * force_[k];
            fall += lever_[k][i] * (force_[k] + dear_ * miss_[k]);
        }
        step_[i] = d;
        largest_ = std::max(largest_, std::fabs(d));
        promised_ -= fall * d;
    }
    return largest_ < out_of_reach;
}

void RodSolver::try_step(const std::vector<Flat>& along, double share) {
    trial_.resize(along.size());
    for (std::size_t i = 0; i < along.size(); ++i) trial_[i] = turned(along[i], share * step_[i]);
}

// Lets go of a point that hangs from the ceiling, else takes hold of the one furthest over it. True where it changed
// something.
bool RodSolver::mend_touching(const Rod& rod, const Loads& loads) {
    if (!loads.ceiling) return false;
    const auto hangs = std::find_if(lines_.begin(), lines_.end(), [](const Line& l) { return l.ceiling && l.force < 0.0; });
    if (hangs != lines_.end()) return lines_.erase(hangs), true;
    std::uint32_t highest = 0;
    double most = loads.ceiling->most + over_ceiling * length_;
    for (std::uint32_t i = 1; i < rod.size(); ++i) {
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

void RodSolver::solve(const Rod& rod, const Loads& loads, Bent& bent, double settle, std::vector<double>* seen) {
    begin(rod, loads, bent);
    const std::size_t n = rod.size();
    bent.steps = 0;
    bent.settled = false;
    int mends = 0;
    const auto mended = [&] { return mends < most_mends && mend_touching(rod, loads) && ++mends > 0; };
    double turns = 0;  // of the outer end, for the end moment's part
    place(rod, bent.along);
    while (bent.steps < most_steps && find_step(rod, bent.along)) {
        // The lines' new forces make the step one that leads down.
        force_before_.resize(lines_.size());
        for (std::size_t k = 0; k < lines_.size(); ++k) force_before_[k] = std::exchange(lines_[k].force, force_[k]);
        const double before = merit(rod, bent.along);
        double share = std::min(1.0, longest_step / std::max(largest_, 1e-300)), after = before, turn = 0;
        int halvings = 0;
        for (; halvings < most_halvings; ++halvings, share *= 0.5) {
            try_step(bent.along, share);
            place(rod, trial_);
            const double q = 0.5 * share * step_[n - 1];
            turn = 2.0 * (q - q * q * q / 3.0);  // 2 atan(q), near enough for a merit
            after = merit(rod, trial_) - moment_ * turn;
            if (after <= before - least_share * share * promised_ || largest_ < below_telling) break;
        }
        ++bent.steps;
        if (halvings == most_halvings) break;
        bent.along.swap(trial_);
        if (seen) seen->insert(seen->end(), {before - moment_ * turns, after - moment_ * turns});
        turns += turn;
        // A step cut short goes as far with the forces as with the angles.
        for (std::size_t k = 0; k < lines_.size() && share < 1.0; ++k) lines_[k].force = force_before_[k] + share * (force_[k] - force_before_[k]);
        const bool still = largest_ * share < settle && misses_ < settle * length_;
        if ((still || largest_ < early_mend) && mended()) continue;
        if (still) {
            bent.settled = true;
            break;
        }
    }

    bent.energy = energy(rod, bent.along) - moment_ * turns;
    bent.bend.assign(n + 1, 0.0);
    Flat before = clamp_;
    double last = 0;
    for (std::size_t i = 0; i < n; ++i) {
        bent.bend[i] = 2.0 * (curvature(before, bent.along[i]) - rest_[i]) / (last + rod.length[i]);
        last = rod.length[i];
        before = bent.along[i];
        const double size = std::sqrt(dot(before, before));
        bent.along[i] = {before.x / size, before.y / size};
    }
    if (end_held_) bent.bend[n] = 2.0 * (curvature(before, end_) - rest_[n]) / last;
    place(rod, bent.along);
    bent.at = at_;
    bent.force.clear();
    bent.touching.clear();
    for (const Line& line : lines_)
        if (line.ceiling) bent.touching.push_back(line.point);
        else bent.force.push_back(-line.force);
}

}  // namespace spurwright::bending
