// A shoot that pushes in spring, before it has a name of its own: where it stands, of what kind of bud, which way.
#pragma once

#include "sim/growth/growth_constants.h"
#include "sim/growth/traits.h"
#include "sim/vine/vine.h"

namespace spurwright::growth {

// replacement: of a secondary or tertiary bud whose primary died.
enum class PushKind : unsigned char { count, twin, base, head, sucker, replacement };

struct Push {
    NodeId on;             // the node that bears it
    std::uint32_t nth = 0; // among the pushes of that node: 0 count bud, 1 its secondary, then base and latent buds
    PushKind kind{};
    Side side{};
    double along_cane = -1;     // 0 at the basal count node of a cane to 1 at its end; below 0: spur or head
    int count_index = 0;        // 1 at the basal count node
    bool laid = false;          // on a cane laid in the winter before
    double azimuth_deg = 0;     // of its base, from the row direction of its side
    bool towards_front = false; // across the row: +z
    double parent_area = 0;     // mm2, section of the cane that bore the bud

    bool from_node_bud() const {
        return kind == PushKind::count || kind == PushKind::twin || kind == PushKind::replacement;
    }
};

// The draws of pushes: addressed by the bearing node, the season and which of its pushes. With scatter off what
// happens with chance p happens as often as the running sum of the chances asks.
class PushDraws {
public:
    PushDraws(const Draws& draws, int season) : draws_(draws), season_(static_cast<std::uint32_t>(season)) {}

    const Draws& draws() const { return draws_; }
    std::uint32_t season() const { return season_; }
    std::uint32_t address(std::uint32_t nth) const { return season_ * pushes_a_node + nth; }
    bool happens(Trait trait, NodeId node, std::uint32_t nth, double p, double& sum) const {
        if (draws_.scatter()) return draws_.chance(trait, node.value, address(nth), p);
        sum += p;
        if (sum < 1.0) return false;
        sum -= 1.0;
        return true;
    }

private:
    static constexpr std::uint32_t pushes_a_node = 64;
    const Draws& draws_;
    std::uint32_t season_;
};

// Draws the way a push leaves its bearer: the angle to the row by its sd in degrees, and to which side across.
void turn(Push& push, const Vine& vine, double sd_deg, const Constants& c, const PushDraws& draws);

} // namespace spurwright::growth
