#include "scenarios/practice/moved_cut.h"

#include <algorithm>
#include <cstdlib>

#include "sim/planning/cordon_charges.h"
#include "sim/planning/open_choices.h"
#include "sim/rules/judge.h"
#include "sim/vine/vine_query.h"

namespace spurwright::practice {
namespace {

std::vector<std::uint32_t> buds_of(const PrunedWork& work, AxisId axis) {
    return ripe_count_nodes(work.before, *work.before.find(axis), work.house.habits());
}

bool begun_on(const PrunedWork& work, AxisId axis) {
    const auto made = work.plan.edits.begin(), given = made + static_cast<std::ptrdiff_t>(work.begun);
    return std::any_of(made, given, [&](const Edit& edit) {
        const auto* cut = std::get_if<Cut>(&edit);
        return cut && axis_of(cut->past) == axis;
    });
}

std::optional<Vine> with_cut_at(const PrunedWork& work, NodeId last) {
    const auto moved = planning::with_cut_moved(work.before, work.house, work.plan, last);
    if (!moved) return std::nullopt;
    auto after = prune(work.before, *moved);
    if (!after) return std::nullopt;
    return *std::move(after);
}

std::vector<MovedCut::End> ends_of(const PrunedWork& work, const KeptPiece& piece) {
    const auto nodes = buds_of(work, piece.axis);
    const auto fewest = piece.spur ? std::size_t{1} : static_cast<std::size_t>(std::max(1, work.house.cane_count.floor_buds));
    const std::size_t most = piece.spur ? std::min<std::size_t>(planning::most_spur_buds, nodes.size()) : nodes.size();
    std::vector<MovedCut::End> ends;
    for (std::size_t n = fewest; n <= most; ++n) {
        const NodeId last = node_id(piece.axis, nodes[n - 1]);
        if (last == piece.end) {
            ends.push_back({last, static_cast<int>(n), work.mine.points, work.mine.points_before_caps});
            continue;
        }
        const auto after = with_cut_at(work, last);
        if (!after) continue;
        const rules::Judgement then = rules::judge(work.before, *after, work.house);
        ends.push_back({last, static_cast<int>(n), then.points, then.points_before_caps});
    }
    return ends;
}

std::size_t own_end(const std::vector<MovedCut::End>& ends, const KeptPiece& piece) {
    const auto own = std::find_if(ends.begin(), ends.end(), [&](const MovedCut::End& end) { return end.last == piece.end; });
    return static_cast<std::size_t>(own - ends.begin());
}

const rules::Finding* same_of(const std::vector<rules::Finding>& findings, const rules::Finding& f) {
    const auto same = std::find_if(findings.begin(), findings.end(), [&](const rules::Finding& other) {
        return other.rule == f.rule && other.on == f.on && other.side == f.side;
    });
    return same == findings.end() ? nullptr : &*same;
}

// A cap first, since it outweighs all; then what changed most. A sentence that only counts otherwise and costs as much
// as before is left out.
std::vector<SaidAnew> said_anew(const rules::Judgement& mine, const rules::Judgement& then) {
    std::vector<SaidAnew> says;
    for (const rules::Finding& f : then.findings) {
        const rules::Finding* own = same_of(mine.findings, f);
        if (own && own->lost() == f.lost()) continue;
        says.push_back({own ? own->lost() : Tenths{}, f.lost(), f.said.key, f.said.arguments});
    }
    std::stable_sort(says.begin(), says.end(), [](const SaidAnew& one, const SaidAnew& other) {
        return std::abs((one.lost - one.lost_before).count) > std::abs((other.lost - other.lost_before).count);
    });
    std::size_t caps = 0;
    for (const rules::Cap& cap : then.caps) {
        const bool held = std::any_of(mine.caps.begin(), mine.caps.end(), [&](const rules::Cap& own) { return own.cap == cap.cap; });
        if (!held) says.insert(says.begin() + static_cast<std::ptrdiff_t>(caps++), {{}, {}, cap.key, cap.arguments});
    }
    return says;
}

}  // namespace

Tenths MovedCut::gained_at(std::size_t end) const {
    const Tenths points = ends[end].points - ends[mine].points;
    return points.count != 0 ? points : ends[end].before_caps - ends[mine].before_caps;
}

std::size_t MovedCut::best() const {
    std::size_t most = mine;
    for (std::size_t i = 0; i < ends.size(); ++i) {
        const auto worth = [&](std::size_t end) { return std::pair{ends[end].points, ends[end].before_caps}; };
        if (worth(i) > worth(most)) most = i;
    }
    return most;
}

std::vector<KeptPiece> kept_pieces(const PrunedWork& work) {
    std::vector<KeptPiece> pieces;
    const auto after = prune(work.before, work.plan);
    if (!after) return pieces;
    const rules::PlanFacts facts = rules::measure_plan(work.before, *after, work.house, rules::offers(work.before, work.house));
    const auto add = [&](AxisId axis, Side side, bool spur, NodeId end) {
        if (!axis || begun_on(work, axis)) return;
        KeptPiece piece{axis, side, spur, end};
        const auto ends = ends_of(work, piece);
        if (ends.size() > 1 && own_end(ends, piece) < ends.size()) pieces.push_back(piece);
    };
    const auto add_spur = [&](AxisId axis, Side side, int buds) {
        if (!axis || buds < 1) return;
        const auto nodes = buds_of(work, axis);
        if (static_cast<std::size_t>(buds) <= nodes.size()) add(axis, side, true, node_id(axis, nodes[static_cast<std::size_t>(buds) - 1]));
    };
    if (work.before.system == System::cordon) {
        const planning::CordonChoice row = planning::kept_row(facts);
        for (const Side side : both_sides)
            for (const planning::SpurKept& spur : row[planning::at(side)]) add_spur(spur.axis, side, spur.buds);
        return pieces;
    }
    const planning::Choice kept = planning::kept_choice(work.before, facts, work.house);
    if (kept.left_cane) add(axis_of(kept.left_cane), Side::left, false, kept.left_cane);
    if (kept.right_cane) add(axis_of(kept.right_cane), Side::right, false, kept.right_cane);
    add_spur(kept.left_spur, Side::left, kept.left_buds);
    add_spur(kept.right_spur, Side::right, kept.right_buds);
    return pieces;
}

std::optional<MovedCut> take_cut(const PrunedWork& work, AxisId axis) {
    MovedCut cut;
    cut.pieces = kept_pieces(work);
    if (cut.pieces.empty()) return std::nullopt;
    const auto wanted = std::find_if(cut.pieces.begin(), cut.pieces.end(), [&](const KeptPiece& piece) { return piece.axis == axis; });
    if (wanted != cut.pieces.end()) cut.piece = static_cast<std::size_t>(wanted - cut.pieces.begin());
    cut.ends = ends_of(work, cut.of());
    cut.mine = own_end(cut.ends, cut.of());
    move_cut(cut, work, cut.mine);
    return cut;
}

void move_cut(MovedCut& cut, const PrunedWork& work, std::size_t at) {
    cut.at = std::min(at, cut.ends.size() - 1);
    cut.says.clear();
    std::optional<Vine> after;
    if (cut.at == cut.mine) {
        auto own = prune(work.before, work.plan);
        if (own) after = *std::move(own);
    } else {
        after = with_cut_at(work, cut.end().last);
    }
    if (!after) return;
    if (cut.at != cut.mine) cut.says = said_anew(work.mine, rules::judge(work.before, *after, work.house));
    cut.line = twin_of(*after, *after->find(cut.of().axis), cut.of().side, cut.of().spur);
}

}  // namespace spurwright::practice
