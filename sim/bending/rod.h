// A planar elastic rod as a chain of straight segments: how it stands when it is clamped at its base, loaded, tied and
// kept under a bound. Plain numbers in and out, never a vine. Any one system of units will do (ours: mm, N, so that
// stiffness is N mm2); angles are radians in the plane, counter-clockwise from +x.
//
// Energy of the discrete elastic rod [bergou-2008]: at a bend between segments of length a and b that turns by phi the
// curvature is kb = 2 tan(phi / 2), and it holds stiffness * (kb - kb at rest)^2 / (a + b); loads add their potential.
// In the angles of the segments its second derivative is tridiagonal, so a Newton step costs a pass along the rod.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

namespace spurwright::bending {

struct Flat { double x = 0, y = 0; };

// `length`, `stiffness` and `rest` are of equal size. Bend i stands before segment i: bend 0 is the clamp.
struct Rod {
    double clamp = 0;               // the way the clamp points
    std::vector<double> length;     // of each segment
    std::vector<double> stiffness;  // at each bend
    std::vector<double> rest;       // turn of each bend where nothing pulls

    std::size_t size() const { return length.size(); }
    void clear();
    void add(double segment, double stiff, double turn_at_rest);
};

// Point p_0 is the clamp, p_i the outer end of segment i - 1.
struct Pull { std::uint32_t point = 0; Flat force; };  // a dead load

// The point lies on a line: normal . p = at. Turning there is free. `normal` is a unit vector.
struct Hold { std::uint32_t point = 0; Flat normal{0, 1}; double at = 0; };

// No point of the rod before its last lies beyond: normal . p <= most.
struct Ceiling { Flat normal{0, 1}; double most = 0; };

struct Loads {
    Flat gravity;                   // force a unit of `weight`: (0, -1) for weights in force
    std::vector<double> weight;     // of each segment, at its middle; empty: weightless
    std::vector<Pull> pulls;
    double end_moment = 0;
    std::vector<Hold> holds;        // at most `most_holds`
    std::optional<double> end_way;  // the outer end points this way; `end_rest`: the turn it has there at rest
    double end_stiffness = 0, end_rest = 0;
    std::optional<Ceiling> ceiling;
};

inline constexpr std::size_t most_holds = 3, most_touching = 3;

// Of a solve. `at` has one point more than the rod has segments. `bend` is the curvature beyond rest at each bend, per
// unit of length; its last is that of the held outer end, 0 where the end is free.
struct Bent {
    std::vector<double> way;   // of each segment
    std::vector<Flat> at;
    std::vector<double> bend;
    std::vector<double> force;  // that each hold exerts along its normal
    std::vector<std::uint32_t> touching;  // points that press against the ceiling
    double energy = 0;
    int steps = 0;              // of Newton
    bool settled = false;       // false: the answer is the last found after `most_steps`, or a hold is out of reach
};

inline constexpr int most_steps = 100;

// Memory of a solver, used again from solve to solve.
class RodSolver {
public:
    // Starts from `bent.way` where it has the rod's size, else from the rest shape. After each step the energy (with
    // the holds' part of it) is no higher than before it; `seen`, if given, is told it: before and after each step.
    void solve(const Rod& rod, const Loads& loads, Bent& bent, std::vector<double>* seen = nullptr);

private:
    struct Line { std::uint32_t point = 0; Flat normal; double at = 0; bool ceiling = false; double force = 0; };

    void place(const Rod& rod, const std::vector<double>& way);
    double energy_at(const Rod& rod, const Loads& loads);
    double merit_at(const Rod& rod, const Loads& loads, const std::vector<double>& way);
    void slope_and_stiffness(const Rod& rod, const Loads& loads);
    bool factor(double shift);
    void back_solve(std::vector<double>& x) const;
    bool mend_touching(const Rod& rod, const Loads& loads, double length);
    double miss(const Line& line) const;

    std::vector<Line> lines_;
    std::vector<std::uint32_t> moved_on_;  // points that touched and moved on
    std::vector<double> cosine_, sine_, load_x_, load_y_, slope_, diagonal_, beside_, pivot_, ratio_, step_, trial_;
    std::vector<std::vector<double>> lean_;  // of each line: change of its miss with each angle, then solved
    std::vector<std::vector<double>> lever_;
    std::vector<Flat> at_;
    std::vector<double> rest_;  // curvatures of the rest turns
    Flat clamp_, end_;
    double end_rest_ = 0;
    double mu_ = 0;  // how dear a miss of a line is to the merit
};

}  // namespace spurwright::bending
