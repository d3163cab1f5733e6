// How each temptation comes onto a vine: put() changes or adds its wood and names what tempts. Inner to sim/growth:
// tempt.h. The vine's rows are linked before and after.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "sim/growth/added_wood.h"
#include "sim/growth/tempt.h"

namespace spurwright::growth {

Result<AxisId> put(Vine& vine, const FatTopCane& t);
Result<AxisId> put(Vine& vine, const FarCane& t);
Result<AxisId> put(Vine& vine, const PlainNearCane& t);
Result<AxisId> put(Vine& vine, const OldUpright& t);
Result<AxisId> put(Vine& vine, const AlleyCane& t);
Result<AxisId> put(Vine& vine, const BendBull& t);
Result<AxisId> put(Vine& vine, const TrunkSucker& t);
Result<AxisId> put(Vine& vine, const RootstockSucker& t);
Result<AxisId> put(Vine& vine, const NeighbourCane& t);
Result<AxisId> put(Vine& vine, const LateralLikeCane& t);
Result<AxisId> put(Vine& vine, const ShadedCane& t);
Result<AxisId> put(Vine& vine, const CrackedBase& t);
Result<AxisId> put(Vine& vine, const DoubleCane& t);
Result<AxisId> put(Vine& vine, const ShortRipeCane& t);
Result<AxisId> put(Vine& vine, const WireScar& t);
Result<AxisId> put(Vine& vine, const SpottedCane& t);
Result<AxisId> put(Vine& vine, const SingleSpurPlace& t);
Result<AxisId> put(Vine& vine, const ClimbedHead& t);

// The refusals.
Error no_place(std::string_view name);
Error out_of_range(std::string_view name);

bool within(std::int64_t value, std::int64_t low, std::int64_t high);
bool can_stand(Length diameter, Length joint); // no thicker, no longer-jointed than any shoot the model grows

// One-year axes that stand on a node.
std::vector<AxisId> canes_on(const Vine& vine, NodeId node);

// Of the places, the one nearest to `out` from the crown point of the side; the first where two are as near.
std::optional<NodeId> nearest_place(const Vine& vine, const std::vector<NodeId>& places, Side side, Length out);

// Nodes near the head that bear renewal canes: last winter's spurs, and the base of last winter's laid cane.
std::vector<NodeId> near_places(const Vine& vine, Side side);

// Sound wood of these measures, one winter old.
AddedWood sound_cane(const Vine& vine, NodeId on, Side side, Length diameter, Length joint);

// A new cane where the season grew another, or none.
AxisId replace_cane(Vine& vine, const AddedWood& wood);

} // namespace spurwright::growth
