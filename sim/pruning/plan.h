// What may be done to a vine in winter, as data, and the one function that does it. Must not know: rules, marks, files.
#pragma once

#include <variant>
#include <vector>

#include "sim/core/error.h"
#include "sim/vine/vine.h"

namespace spurwright {

// Through the wood `beyond` past that node (below 0: in the crown's collar): takes all that grows on.
struct Cut {
    NodeId past;
    Length beyond;
    Tool tool{};
    Angle tilt;  // slope of the face, -60 to 60 degrees, positive falls away from the last bud kept
    bool operator==(const Cut&) const = default;
};
// Bend onto the fruiting wire of that side.
struct Lay {
    AxisId cane;
    Side side{};
    int half_wraps = 0;  // 0 to 6
    bool operator==(const Lay&) const = default;
};
// Fasten to the wire there.
struct Fasten {
    NodeId at;
    Length beyond{15'000};
    bool tight = false;
    bool operator==(const Fasten&) const = default;
};
// Flagging tape: says what it is meant to be; cuts nothing.
struct Mark {
    AxisId axis;
    Role role{};
    bool operator==(const Mark&) const = default;
};

using Edit = std::variant<Cut, Lay, Fasten, Mark>;

struct Plan {  // a struct, not an alias: with a bare vector, a free function finds namesakes in std
    std::vector<Edit> edits;
    bool operator==(const Plan&) const = default;
};

inline constexpr std::size_t most_edits = 2'000;  // a vine left alone for years asks for about 800 (our choice)

// The vine after the plan. Touches nothing else, keeps no state, and is the only way wood is cut. On failure the
// error's `where` names the step (source "plan"); the input vine is as it was.
[[nodiscard]] Result<Vine> prune(const Vine& before, const Plan& plan);

// One edit more on a vine in hand, which began this winter as `uncut`; the vine is unchanged on failure. prune() is this,
// edit by edit on one copy.
[[nodiscard]] Result<void> prune_one(Vine& vine, const Edit& edit, const Vine& uncut);

}  // namespace spurwright
