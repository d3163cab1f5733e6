#include "sim/bending/laying.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "sim/bending/section.h"
#include "sim/core/check.h"

namespace spurwright::bending {
namespace {

constexpr double longest_segment = 25.0;  // mm: 3 in a joint of 60 to 75 mm; strains as with 5 mm to 0.03 points of % (tested; our choice)
constexpr double way_down = 3.7;          // length from the arch down onto the wire, in roots of its radius times its height (computed)
constexpr double leaving_part = 300.0;    // mm over which a cane shows how steeply it leaves (our choice)
constexpr double good_enough = 2e-3;      // radians: a step of this size leaves about its square
constexpr double least_run_on = 50.0;     // mm
constexpr double free_arch = 0.3;         // of its length: how far a cane in the hand may arch over it at first (our choice)
constexpr std::uint32_t most_joints = 120;
constexpr double most_segments = 16;  // of a joint: one of more than 400 mm stands in no vineyard, only in an odd file (our choice)

std::uint32_t segments_in(double joint) { return static_cast<std::uint32_t>(std::clamp(std::ceil(joint / longest_segment), 1.0, most_segments)); }

// Part of the way from one unit vector to another; they never point against each other but by a drawing's fault.
Flat between(Flat a, Flat b, double share) {
    const Flat sum{a.x + share * (b.x - a.x), a.y + share * (b.y - a.y)};
    const double size = std::sqrt(sum.x * sum.x + sum.y * sum.y);
    return size > 1e-9 ? Flat{sum.x / size, sum.y / size} : a;
}

}  // namespace

double hand_ceiling(double wire_height, Flat leaving) {
    const double turn = numeric::acos(leaving.x);
    const double radius = least_hand_radius * std::min(1.0, numeric::pi / 2 / std::max(turn, 1e-6));
    return std::max(wire_height + arch_over_wire, radius * (1.0 - leaving.x));
}

Flat leaving_way(const Grown& cane) {
    Flat most = cane.way[0];
    double s = 0;
    for (std::size_t i = 0; i < cane.joint.size() && s < leaving_part; s += cane.joint[i], ++i)
        if (cane.way[i].x < most.x) most = cane.way[i];
    return most;
}

// A cane too short for its tie is thought to run on as its last joint does, in joints that are not tiny.
double joint_of(const Grown& cane, std::uint32_t i) { return i < cane.joint.size() ? cane.joint[i] : std::max(cane.joint.back(), least_run_on); }
double LayingHand::diameter_of(const Grown& cane, std::uint32_t i) const { return cane.diameter[std::min<std::size_t>(i, cane.diameter.size() - 1)]; }
Flat LayingHand::way_of(const Grown& cane, std::uint32_t node) const { return cane.way[std::min<std::size_t>(node, cane.way.size() - 1)]; }

// The rod up to the tie, and the held end there.
void LayingHand::cut_up(const Grown& cane, std::uint32_t tie) {
    rod_.clear();
    pieces_.clear();
    thick_.clear();
    rod_.clamp = cane.way[0];
    double thick_before = diameter_of(cane, 0);
    for (std::uint32_t i = 0; i < tie; ++i) {
        const double joint = joint_of(cane, i), thick = diameter_of(cane, i);
        const Flat from = way_of(cane, i), to = way_of(cane, i + 1);
        const std::uint32_t pieces = segments_in(joint);
        pieces_.push_back(pieces);
        for (std::uint32_t j = 0; j < pieces; ++j) {
            const double at_bend = j == 0 ? 0.5 * (thick_before + thick) : thick;
            rod_.add(joint / pieces, stiffness(modulus_mpa, at_bend), between(from, to, (j + 0.5) / pieces));
            thick_.push_back(at_bend);
        }
        thick_before = thick;
    }
    thick_.push_back(thick_before);
    loads_.end = HeldEnd{{1, 0}, way_of(cane, tie), stiffness(modulus_mpa, thick_before)};
}

void LayingHand::tied_at(const Grown& cane, const WireAbove& wire, std::uint32_t tie, LaidCane& laid) {
    SPURWRIGHT_CHECK(tie, >=, 1u);
    cut_up(cane, tie);
    const auto n = static_cast<std::uint32_t>(rod_.size());
    loads_.holds = {{n, {0, 1}, wire.height}};
    loads_.ceiling = Ceiling{{0, 1}, wire.ceiling};
    // Starts from the last tie's answer where there is one; new segments lie along the wire.
    if (bent_.along.empty()) {
        double length = 0, s = 0;
        for (const double l : rod_.length) length += l;
        for (std::uint32_t i = 0; i < n; s += rod_.length[i], ++i)
            bent_.along.push_back(between(rod_.grown[i], {1, 0}, (s + 0.5 * rod_.length[i]) / length));
        bent_.touching.clear();
    } else {
        bent_.along.resize(n, {1, 0});
    }
    solver_.solve(rod_, loads_, bent_, good_enough);

    laid.tie = tie;
    laid.settled = bent_.settled;
    laid.at.clear();
    laid.strain = 0;
    laid.worst = 1;
    if (!bent_.settled) {
        laid.strain = std::numeric_limits<double>::infinity();
        bent_.along.clear();
        return;
    }
    laid.at.push_back({});
    std::uint32_t bend = 0;
    const auto joints = static_cast<std::uint32_t>(cane.joint.size());
    for (std::uint32_t i = 0; i < std::min(tie, joints); ++i) {
        for (std::uint32_t j = 0; j < pieces_[i]; ++j, ++bend) {
            const double strain = skin_strain(thick_[bend], bent_.bend[bend]);
            if (strain > laid.strain) laid.strain = strain, laid.worst = i + 1;
        }
        laid.at.push_back(bent_.at[bend]);
    }
    if (tie <= joints) {
        const double strain = skin_strain(thick_[n], bent_.bend[n]);
        if (strain > laid.strain) laid.strain = strain, laid.worst = tie;
    }
    for (std::uint32_t i = tie; i < joints; ++i) laid.at.push_back({laid.at.back().x + cane.joint[i], wire.height});
}

void LayingHand::held_at(const Grown& cane, const WireAbove& wire, std::uint32_t node, double pulled, HeldCane& held) {
    const auto joints = static_cast<std::uint32_t>(cane.joint.size());
    node = std::clamp(node, 1u, joints);
    pulled = numeric::clamp(pulled, 0.0, 1.0);
    cut_up(cane, node);
    loads_.end.reset();
    const auto n = static_cast<std::uint32_t>(rod_.size());
    Flat stands;
    double length = 0;
    for (std::uint32_t i = 0; i < n; length += rod_.length[i], ++i)
        stands = {stands.x + rod_.length[i] * rod_.grown[i].x, stands.y + rod_.length[i] * rod_.grown[i].y};
    const auto hold = [&](Flat normal, double at, double ceiling, double share) {
        loads_.holds = {{n, normal, at}};
        loads_.ceiling = Ceiling{{0, 1}, ceiling};
        bent_.along.clear();
        bent_.touching.clear();
        for (std::uint32_t i = 0; i < n; ++i) bent_.along.push_back(between(rod_.grown[i], {1, 0}, share * (i + 0.5) / n));
        solver_.solve(rod_, loads_, bent_, good_enough);
    };
    // All the way down first: it tells where the node will lie. On its way there it is held on the line from the base that
    // turns with the pull, free to slide along it: so a cane that leans back is drawn over, not pressed further back.
    hold({0, 1}, std::min(stands.y, wire.height), wire.ceiling, 1.0);
    const Flat lies = bent_.at.back();
    const auto part = [&](double standing, double lying) { return (1 - pulled) * standing + pulled * lying; };
    const auto [sine, cosine] = numeric::sincos(part(numeric::atan2(stands.y, stands.x), numeric::atan2(lies.y, lies.x)));
    const double as_high = sine * part(std::sqrt(stands.x * stands.x + stands.y * stands.y), std::sqrt(lies.x * lies.x + lies.y * lies.y));
    hold({sine, -cosine}, 0.0, as_high + part(free_arch * length, wire.ceiling - lies.y), pulled);

    held.settled = bent_.settled;
    held.strain = 0;
    held.worst = 1;
    held.at = {{}};
    held.line = {{}};
    std::uint32_t bend = 0;
    for (std::uint32_t i = 0; i < node; ++i) {
        for (std::uint32_t j = 0; j < pieces_[i]; ++j, ++bend) {
            const double strain = skin_strain(thick_[bend], bent_.bend[bend]);
            if (strain > held.strain) held.strain = strain, held.worst = i + 1;
            held.line.push_back(bent_.at[bend + 1]);
        }
        held.at.push_back(bent_.at[bend]);
    }
    // The free end turns with the segment in the hand.
    const Flat was = rod_.grown.back(), is = bent_.along.back();
    const double along = was.x * is.x + was.y * is.y, off = was.x * is.y - was.y * is.x;
    for (std::uint32_t i = node; i < joints; ++i) {
        const Flat way = between(cane.way[i], cane.way[i + 1], 0.5), last = held.at.back();
        held.at.push_back({last.x + cane.joint[i] * (along * way.x - off * way.y), last.y + cane.joint[i] * (off * way.x + along * way.y)});
        held.line.push_back(held.at.back());
    }
}

void LayingHand::least(const Grown& cane, const WireAbove& wire, LaidCane& laid) {
    SPURWRIGHT_CHECK(cane.joint.size(), >, std::size_t{0});
    SPURWRIGHT_CHECK(cane.way.size(), ==, cane.joint.size() + 1);
    // Where an arc under the ceiling and an easy way down from it would come onto the wire.
    const double turn = std::max(0.05, numeric::acos(leaving_way(cane).x));
    const double radius = std::max(wire.ceiling, 1.0) / (1.0 - numeric::sincos(turn).cosine);
    const double wanted = radius * turn + way_down * std::sqrt(std::max(0.0, wire.ceiling - wire.height) * radius);
    std::uint32_t tie = 1;
    for (double s = joint_of(cane, 0); s < wanted && tie < most_joints; ++tie) s += joint_of(cane, tie);
    bent_.along.clear();
    tied_at(cane, wire, tie, laid);
    LaidCane other;
    bool went_out = false;
    while (tie < most_joints) {
        tied_at(cane, wire, tie + 1, other);
        if (!(other.strain < laid.strain) && laid.settled) break;
        std::swap(laid, other);
        ++tie;
        went_out = true;
    }
    while (!went_out && tie > 1) {
        tied_at(cane, wire, tie - 1, other);
        if (!(other.strain < laid.strain)) break;
        std::swap(laid, other);
        --tie;
    }
}

}  // namespace spurwright::bending
