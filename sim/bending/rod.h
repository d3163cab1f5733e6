// A planar elastic rod as a chain of straight segments: how it stands when it is clamped at its base, loaded, tied and
// kept under a ceiling. Plain numbers in and out, never a vine. Any one system of units will do (ours: mm and N, so that
// stiffness is in N mm2). Directions are unit vectors, so that a solve needs no sine: any turn but a full reversal at one
// bend is allowed.
//
// Energy of the discrete elastic rod [bergou-2008]: at a bend between segments of length a and b that turns by phi the
// curvature is kb = 2 tan(phi / 2), and the bend holds stiffness * (kb - kb at rest)^2 / (a + b); loads add their
// potential. In the angles of the segments its second derivative is tridiagonal, so a Newton step is one pass along the
// rod.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

namespace spurwright::bending {

struct Flat {
    double x = 0, y = 0;
};

// All of equal size. Bend i stands before segment i: bend 0 is the clamp.
struct Rod {
    Flat clamp{1, 0};               // the way the clamp points
    std::vector<double> length;     // of each segment, above 0
    std::vector<double> stiffness;  // at each bend, above 0
    std::vector<Flat> grown;        // the way each segment points where nothing pulls

    std::size_t size() const { return length.size(); }
    void clear();
    void add(double segment, double stiff, Flat way);
};

// Point p_0 is the clamp, p_i the outer end of segment i - 1.
struct Pull {  // a dead load
    std::uint32_t point = 0;
    Flat force;
};

struct Hold {  // the point lies on the line normal . p = at, free to turn and to slide along it
    std::uint32_t point = 0;
    Flat normal{0, 1};
    double at = 0;
};

struct Ceiling {  // no point but the last lies beyond: normal . p <= most
    Flat normal{0, 1};
    double most = 0;
};

struct HeldEnd {  // the outer end points this way
    Flat way{1, 0};
    Flat grown{1, 0};  // where nothing pulls
    double stiffness = 0;
};

struct Loads {
    Flat gravity;                // force a unit of weight: (0, -1) for weights in units of force
    std::vector<double> weight;  // of each segment, at its middle; empty: weightless
    std::vector<Pull> pulls;
    double end_moment = 0;
    std::vector<Hold> holds;  // at most `most_holds`
    std::optional<HeldEnd> end;
    std::optional<Ceiling> ceiling;
};

inline constexpr std::size_t most_holds = 3, most_touching = 3;

// Of a solve. `at` has one point more than there are segments. `bend` is the curvature beyond rest at each bend, per
// unit of length; its last is that of the held outer end, 0 where the end is free.
struct Bent {
    std::vector<Flat> along;  // the way of each segment
    std::vector<Flat> at;
    std::vector<double> bend;
    std::vector<double> force;            // of each hold, along its normal
    std::vector<std::uint32_t> touching;  // points that press against the ceiling
    double energy = 0;
    int steps = 0;         // of Newton
    bool settled = false;  // false: the last found after `most_steps`, or a hold is out of reach
};

inline constexpr int most_steps = 100;
inline constexpr double fine_settle = 1e-9;  // radians

// Keeps its memory from solve to solve.
class RodSolver {
public:
    // Starts from `bent.along` where it has the rod's size (and from the points it touched), else from the rest shape.
    // Settled after a step below `settle` radians; what is left then is about its square. No step raises the energy (with
    // the holds' part of it): `seen`, if given, is told it before and after each.
    void solve(const Rod& rod, const Loads& loads, Bent& bent, double settle = fine_settle, std::vector<double>* seen = nullptr);

private:
    struct Line {
        std::uint32_t point = 0;
        Flat normal;
        double at = 0;
        bool ceiling = false;
        double force = 0;
    };

    void begin(const Rod& rod, const Loads& loads, Bent& bent);
    void place(const Rod& rod, const std::vector<Flat>& along);
    double energy(const Rod& rod, const std::vector<Flat>& along) const;
    double merit(const Rod& rod, const std::vector<Flat>& along) const;
    void slope_and_stiffness(const Rod& rod, const std::vector<Flat>& along);
    bool factor(double shift);
    void back_solve(std::vector<double>& x) const;
    bool find_step(const Rod& rod, const std::vector<Flat>& along);
    void try_step(const std::vector<Flat>& along, double share);
    bool mend_touching(const Rod& rod, const Loads& loads);
    double miss(const Line& line) const { return line.normal.x * at_[line.point].x + line.normal.y * at_[line.point].y - line.at; }

    std::vector<Line> lines_;
    std::vector<std::uint32_t> moved_on_;              // points that touched and moved on
    std::vector<double> firm_, rest_;                  // of each bend and the held end: stiffness / lengths, curvature at rest
    std::vector<Flat> pull_;                           // what pulls at the middle of each segment and beyond
    std::vector<double> slope_, diagonal_, beside_, pivot_, ratio_, step_;
    std::vector<std::vector<double>> lever_, lean_;    // of each line: change of its miss with each angle; then solved
    std::vector<double> force_, force_before_, miss_;  // of each line
    std::vector<Flat> at_, trial_;
    Flat clamp_, end_;
    bool end_held_ = false;
    double moment_ = 0, length_ = 0, dear_ = 0;  // dear_: what a miss costs
    double largest_ = 0, promised_ = 0, misses_ = 0;
};

}  // namespace spurwright::bending
