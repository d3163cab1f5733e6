// The planar rod against the same problem solved without its structure: a dense second derivative with the hold's row
// and column, factored by a general library each step (Eigen). Equal answers first; then the ratio, and how the rod's own
// time grows with its segments. Also what the book of courses saves: a vine's tables with every cane bent anew and kept.
#include <Eigen/Dense>

#include <cmath>

#include "sim/bending/laying.h"
#include "sim/bending/rod.h"
#include "sim/bending/section.h"
#include "sim/growth/history.h"
#include "sim/planning/vine_tables.h"
#include "sim/vine/vine_builder.h"
#include "tests/bench/ratio.h"

using namespace spurwright;
using namespace spurwright::bending;

namespace {

constexpr double length = 1'500, wire = 120;  // mm

double grown_way(double s) { return (72.0 - 27.0 * std::exp(-s / 40)) * 3.14159265358979 / 180; }

// A cane of 24 nodes in `segments`, free at its tip, held at the wire after two fifths of its length.
Rod cane(std::uint32_t segments) {
    Rod rod;
    rod.clamp = {std::cos(grown_way(0)), std::sin(grown_way(0))};
    for (std::uint32_t i = 0; i < segments; ++i) {
        const double s = (i + 0.5) * length / segments, d = 10 * std::pow(1 - 0.55 * s / length, 0.8);
        rod.add(length / segments, stiffness(modulus_mpa, d), {std::cos(grown_way(s)), std::sin(grown_way(s))});
    }
    return rod;
}

std::uint32_t hand_of(const Rod& rod) { return static_cast<std::uint32_t>(rod.size() * 2 / 5); }

Loads loads_of(const Rod& rod) {
    Loads loads;
    loads.gravity = {0, -1};
    for (std::size_t i = 0; i < rod.size(); ++i) loads.weight.push_back(rod.length[i] * 0.95e-6 * 9.81 * 60);
    loads.holds = {{hand_of(rod), {0, 1}, wire}};
    return loads;
}

// Where both begin: the rest shape leant over.
struct Start {
    explicit Start(const Rod& rod) : angles(static_cast<Eigen::Index>(rod.size())) {
        for (std::size_t i = 0; i < rod.size(); ++i) {
            const double lean = 1 - std::min(1.0, (static_cast<double>(i) + 0.5) / hand_of(rod));
            const double angle = std::atan2(rod.grown[i].y, rod.grown[i].x) * lean;
            angles[static_cast<Eigen::Index>(i)] = angle;
            along.push_back({std::cos(angle), std::sin(angle)});
        }
    }
    Eigen::VectorXd angles;
    std::vector<Flat> along;
};

void solve_own(RodSolver& solver, const Rod& rod, const Loads& loads, const Start& start, Bent& bent) {
    bent.along = start.along;
    solver.solve(rod, loads, bent);
}

// Newton on angles and the hold's force, by the textbook: every matrix full.
struct Dense {
    Eigen::VectorXd way, x, y;
    double force = 0;
    int steps = 0;

    void solve(const Rod& rod, const Loads& loads, const Start& start) {
        const auto n = static_cast<Eigen::Index>(rod.size());
        const auto hand = static_cast<Eigen::Index>(hand_of(rod));
        const auto at = [](const auto& list, Eigen::Index i) { return list[static_cast<std::size_t>(i)]; };
        way = start.angles;
        Eigen::VectorXd grown(n), heavy = Eigen::VectorXd::Zero(n);
        for (Eigen::Index i = 0; i < n; ++i) grown[i] = std::atan2(at(rod.grown, i).y, at(rod.grown, i).x);
        double beyond = 0;
        for (Eigen::Index i = n; i-- > 0; beyond += at(loads.weight, i)) heavy[i] = beyond + 0.5 * at(loads.weight, i);
        const double clamp = std::atan2(rod.clamp.y, rod.clamp.x);
        force = 0;
        for (steps = 0; steps < 60; ++steps) {
            Eigen::MatrixXd full = Eigen::MatrixXd::Zero(n + 1, n + 1);
            Eigen::VectorXd right = Eigen::VectorXd::Zero(n + 1);
            double high = 0;
            for (Eigen::Index i = 0; i < n; ++i) {
                const double before = i > 0 ? way[i - 1] : clamp, rest = i > 0 ? grown[i] - grown[i - 1] : grown[0] - clamp;
                const double k = at(rod.stiffness, i) / ((i > 0 ? at(rod.length, i - 1) : 0.0) + at(rod.length, i));
                const double t = 2 * std::tan((way[i] - before) / 2), t0 = 2 * std::tan(rest / 2), grows = 1 + t * t / 4;
                const double moment = 2 * k * (t - t0) * grows, stiff = 2 * k * (grows * grows + (t - t0) * t / 2 * grows);
                right[i] -= moment;
                full(i, i) += stiff;
                if (i > 0) {
                    right[i - 1] += moment;
                    full(i - 1, i - 1) += stiff;
                    full(i, i - 1) -= stiff;
                    full(i - 1, i) -= stiff;
                }
                const double l = at(rod.length, i), pull = heavy[i] + (i < hand ? force : 0.0);
                right[i] -= l * heavy[i] * std::cos(way[i]);
                full(i, i) -= l * pull * std::sin(way[i]);
                if (i < hand) {
                    full(i, n) = full(n, i) = l * std::cos(way[i]);
                    high += l * std::sin(way[i]);
                }
            }
            right[n] = wire - high;
            const Eigen::VectorXd step = full.partialPivLu().solve(right);
            double share = 1, largest = step.head(n).cwiseAbs().maxCoeff();
            if (largest > 0.7) share = 0.7 / largest;
            way += share * step.head(n);
            force = share < 1 ? force + share * (step[n] - force) : step[n];
            if (largest < fine_settle) break;
        }
        x.resize(n + 1);
        y.resize(n + 1);
        x[0] = y[0] = 0;
        for (Eigen::Index i = 0; i < n; ++i) {
            x[i + 1] = x[i] + at(rod.length, i) * std::cos(way[i]);
            y[i + 1] = y[i] + at(rod.length, i) * std::sin(way[i]);
        }
    }
};

}  // namespace

int main(int argc, char** argv) {
    bench::Bench bench(argc, argv);
    const Rod rod = cane(96);
    const Loads loads = loads_of(rod);
    const Start start(rod);
    RodSolver solver;
    Bent bent;
    Dense dense;
    solve_own(solver, rod, loads, start, bent);
    dense.solve(rod, loads, start);
    double apart = 0;
    for (std::size_t i = 0; i < bent.at.size(); ++i)
        apart = std::max(apart, std::hypot(bent.at[i].x - dense.x[static_cast<Eigen::Index>(i)], bent.at[i].y - dense.y[static_cast<Eigen::Index>(i)]));
    std::printf("cane of 24 nodes, 96 segments: %d steps, dense %d steps, shapes %.2g mm apart; Eigen %d.%d.%d\n", bent.steps, dense.steps, apart, EIGEN_WORLD_VERSION, EIGEN_MAJOR_VERSION,
                EIGEN_MINOR_VERSION);
    bench.require(bent.settled && apart < 1e-5, "the rod and the dense solve");
    bench.ratio("rod, dense solve / own, 24 nodes in 96 segments", bench::Bar::at_least, 10,
                [&] { return dense.solve(rod, loads, start), static_cast<std::uint64_t>(dense.x[96]); }, 1,
                [&] { return solve_own(solver, rod, loads, start, bent), static_cast<std::uint64_t>(bent.at[96].x); }, 20);

    const std::vector<double> sizes{48, 96, 192, 384};
    std::vector<Rod> rods;
    std::vector<Loads> all;
    std::vector<Start> starts;
    for (const double size : sizes) {
        rods.push_back(cane(static_cast<std::uint32_t>(size)));
        all.push_back(loads_of(rods.back()));
        starts.emplace_back(rods.back());
        solve_own(solver, rods.back(), all.back(), starts.back(), bent);
        std::printf("  %.0f segments: %d steps\n", size, bent.steps);
    }
    bench.slope("L28 rod, in segments", 1.1, sizes, [&](std::size_t i) {
        return [&, i] { return solve_own(solver, rods[i], all[i], starts[i], bent), static_cast<std::uint64_t>(bent.at.back().x); };
    }, 20);

    growth::Site site;
    site.seed = 7;
    Vine vine = growth::grow_vine(site).value();
    const rules::HouseRules house;
    const auto tables = [&] { return static_cast<std::uint64_t>(planning::vine_tables(vine, house).tables.candidates.size()); };
    bench.ratio("tables of a vine, each cane bent anew / courses kept", bench::Bar::none, 0, [&] { return link_rows(vine), tables(); }, 2, tables, 10);
    return bench.status();
}
