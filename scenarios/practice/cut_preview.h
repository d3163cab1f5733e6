// What a cut would take off, before it is made. The same question that prune() answers by doing it.
#pragma once

#include <optional>
#include <vector>

#include "scenarios/practice/hand.h"
#include "sim/vine/vine.h"

namespace spurwright::practice {

struct CutPreview {
    Cut cut;
    std::vector<AxisId> axes;  // that come off whole, rising; the axis cut is among them only if its crown goes
    std::vector<NodeId> nodes; // every node that comes off, rising
    int buds_kept = 0;         // count buds left on the axis cut
    int buds_off = 0;          // count buds that come off, on one-year wood of any axis
    double mass_mg = 0;        // of the wood that comes off
    TextKey key;               // act.would-cut, act.would-take-off: {part} {n} {beyond} {mass}
    Arguments arguments;
    std::optional<TextKey> warning;  // act.warn.trunk: asked once more before it is done
    bool operator==(const CutPreview&) const = default;
};

// Where a cut is made when only a node was named: 20 mm past it on one-year wood, three halves of the diameter on
// older wood, 8 mm past a crown; never through the next node, never more wood than there is. Whole tenths of a mm.
Length default_beyond(const Vine& vine, NodeId past);

// The cut meant by a spot: its place if it has one, held within the wood there; else the default.
Cut cut_at(const Vine& vine, const Spot& spot, Tool tool);

// Nothing comes off where the cut is not legal: ask why_not() first.
CutPreview preview(const Vine& vine, const Cut& cut);

// Whether this cut takes a trunk's wood off: above the crown points, nothing grows back as it was.
bool cuts_trunk(const Vine& vine, const Cut& cut);

}  // namespace spurwright::practice
