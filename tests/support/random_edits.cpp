#include "tests/support/random_edits.h"

#include <algorithm>

#include "sim/core/random.h"
#include "sim/pruning/legal_edits.h"

namespace spurwright::test {
namespace {

enum : std::uint32_t { kind_draw = 1, which_draw, place_draw, how_draw };

template <class T>
const T& pick(const std::vector<T>& from, std::uint64_t bits) {
    return from[static_cast<std::size_t>(between(bits, 0, static_cast<std::int32_t>(from.size()) - 1))];
}

}  // namespace

Plan random_edits(const Vine& before, std::uint64_t seed, int count) {
    Plan plan;
    Vine vine = before;
    for (std::uint32_t i = 0; i < static_cast<std::uint32_t>(count); ++i) {
        const LegalEdits legal = legal_edits(vine);
        const auto bits = [&](std::uint32_t trait) { return draw(seed, trait, i); };
        const int kind = between(bits(kind_draw), 0, 9);
        std::optional<Edit> edit;
        if (kind < 5 && !legal.cuts.empty()) {
            const CutRange& range = pick(legal.cuts, bits(which_draw));
            const int low = -(-range.lowest.count / 100), high = range.highest.count / 100;
            edit = Cut{range.past, {between(bits(place_draw), low, high) * 100}, static_cast<Tool>(between(bits(how_draw), 0, 2)), {}};
        } else if (kind < 7 && !legal.lays.empty()) {
            edit = Lay{pick(legal.lays, bits(which_draw)), between(bits(place_draw), 0, 1) ? Side::left : Side::right, between(bits(how_draw), 0, 6)};
        } else if (kind < 9 && !legal.ties.empty()) {
            const NodeId at = pick(legal.ties, bits(which_draw));
            const Length most = wood_beyond(vine, *vine.find(axis_of(at)), index_of(at));
            edit = Fasten{at, {between(bits(place_draw), 0, std::min(most.count / 100, 150)) * 100}, between(bits(how_draw), 0, 1) == 1};
        } else {
            edit = Mark{pick(legal.marks, bits(which_draw)), static_cast<Role>(between(bits(how_draw), 0, 6))};
        }
        if (!edit || !prune_one(vine, *edit, before)) continue;
        plan.edits.push_back(*edit);
    }
    return plan;
}

}  // namespace spurwright::test
