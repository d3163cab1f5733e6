// What the history pruner's hands do, whatever the system: clear old wood, take canes off, cut to length, lay and tie.
// Inner to sim/growth. Frozen: every number here belongs to the generator version of the vine code.
#pragma once

#include <vector>

#include "sim/growth/history_pruner.h"
#include "sim/pruning/lay.h"

namespace spurwright::growth {

class HistoryCuts {
public:
    HistoryCuts(const Vine& vine, const PrunerHabits& habits);

    // Keeps a piece of one-year wood, and the way from it inward. All of them before the first cut.
    void keep(const Axis& piece);
    // Keeps older wood out to this node.
    void keep_to(NodeId node);

    void clear_old_wood(); // two years and older: back to what it still bears, or off
    void clear_canes();    // one-year wood that is not kept; laterals of what is

    // Cuts a piece 20 mm past its last bud, or short of the next node where the joint is short.
    void shorten(const Axis& axis, std::uint32_t last);
    std::uint32_t spur_end(const Axis& axis, int buds) const; // the node of that count bud, or of the last
    int spur_buds_of(const Axis& axis, int buds) const;       // as many as it has

    // Lays a cane with so many buds, stopped at so far from the trunk's foot along the row, by ripe wood and by thin
    // wood; two ties.
    void lay(const Axis& axis, Side side, int buds, double reach_mm, int half_wraps);

    Plan take() { return std::move(plan_); }

private:
    std::uint32_t row(const Axis& axis) const;
    bool is_kept(const Axis& axis) const;
    bool is_gone(const Axis& axis) const;
    bool is_left(const Axis& axis) const;
    void cut(const Axis& axis, std::uint32_t past, Length beyond, std::uint32_t keep);
    double stub_share(const Axis& axis) const;
    Length stub_of(const Axis& axis, const Node& joint) const;
    void take_off_old(const Axis& axis);
    std::uint32_t cane_end(const Axis& axis, const Course& course, Side side, int buds, double reach_mm) const;
    void tie(const Axis& axis, std::uint32_t index, bool tight);

    const Vine& vine_;
    const PrunerHabits& habits_;
    std::vector<std::uint32_t> last_; // nodes that stand after the plan so far, by axis row; untouched: all
    std::vector<int> needed_;         // the outermost node each axis must keep, by axis row; -1: none
    std::vector<const Axis*> kept_;
    Plan plan_;
};

} // namespace spurwright::growth
