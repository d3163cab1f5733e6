#include "scenarios/practice/vine_requests.h"

#include <algorithm>

namespace spurwright::practice {
namespace {

constexpr Carried pointed{Came::pointed, {}}, moved{Came::moved, {}}, shown{Came::shown, {}};

Carried acted(const Result<void>& result) { return {Came::acted, result ? std::nullopt : std::optional(result.error())}; }

// One function a kind.
struct Hand {
    Practice& vine;

    LookBack* look() const { return vine.look() ? &*vine.look() : nullptr; }

    // ---- the hand
    Carried operator()(const ask::TakeTool& a) const {
        vine.tool = a.tool;
        vine.calliper_asked = a.tool == HandTool::calliper;
        return pointed;
    }
    Carried operator()(const ask::TapeSays& a) const {
        vine.tape = a.role;
        return pointed;
    }
    Carried operator()(const ask::Choose& a) const {
        vine.choose(a.axis);
        if (vine.chosen && a.node && axis_of(a.node) == a.axis) vine.chosen_node = a.node;
        return pointed;
    }
    Carried operator()(const ask::WalkCanes& a) const { return vine.walk_canes(a.step), pointed; }
    Carried operator()(const ask::WalkBuds& a) const { return vine.walk_buds(a.step), pointed; }
    // ---- acts
    Carried operator()(const ask::CutHere& a) const { return acted(vine.cut(a.spot, tool_of(a.tool))); }
    Carried operator()(const ask::PullCane& a) const { return vine.pull(a.to), pointed; }
    Carried operator()(const ask::LayTo& a) const { return acted(vine.lay(a.cane, a.side)); }
    Carried operator()(const ask::TieHere& a) const { return acted(vine.tie(a.spot)); }
    Carried operator()(const ask::MarkAs& a) const { return acted(vine.mark(a.axis, a.role)); }
    Carried operator()(const ask::Confirm&) const { return acted(vine.confirm()); }
    // ---- among acts
    Carried operator()(const ask::Undo&) const { return vine.undo(), moved; }
    Carried operator()(const ask::Redo&) const { return vine.redo(), moved; }
    Carried operator()(const ask::JumpTo& a) const { return vine.jump(a.done), moved; }
    Carried operator()(const ask::CutAgain&) const { return vine.cut_again(), moved; }
    Carried operator()(const ask::GoOnPruning&) const { return vine.go_on_pruning(), moved; }
    // ---- the look back
    Carried operator()(const ask::ShowPiece& a) const {
        if (LookBack* back = look()) back->current = std::min(a.at, back->walk.size());
        return pointed;
    }
    Carried operator()(const ask::NextPiece& a) const {
        LookBack* back = look();
        if (!back) return pointed;
        // Folded pieces are passed over where others are; the heading stands at the end of the round.
        const bool any = std::any_of(back->walk.begin(), back->walk.end(), [](const Walked& w) { return !w.folded; });
        const auto count = back->walk.size() + 1;
        for (std::size_t i = 0; i < count; ++i) {
            back->current = (back->current + (a.step > 0 ? 1 : count - 1)) % count;
            if (back->current == back->walk.size() || !any || !back->walk[back->current].folded) break;
        }
        return pointed;
    }
    Carried operator()(const ask::ShowTwin& a) const {
        if (LookBack* back = look()) back->twin_shown = a.on;
        return pointed;
    }
    Carried operator()(const ask::NextAsGood&) const {
        LookBack* back = look();
        if (back && !back->twins.empty()) back->as_good_shown = (back->as_good_shown + 1) % back->twins.size();
        return pointed;
    }
    Carried operator()(const ask::TakeCut& a) const {
        const LookBack* back = look();
        const bool at_piece = back && back->current < back->walk.size();
        return vine.take_cut(a.axis ? a.axis : vine.chosen ? vine.chosen : at_piece ? back->walk[back->current].axis : AxisId{}), pointed;
    }
    Carried operator()(const ask::NextCut& a) const { return vine.take_next_cut(a.step), pointed; }
    Carried operator()(const ask::MoveCut& a) const { return vine.move_cut(a.at), pointed; }
    Carried operator()(const ask::LeaveCut&) const { return vine.leave_cut(), pointed; }
    Carried operator()(const ask::GrowOn& a) const { return vine.grow_on(a.on), pointed; }
    Carried operator()(const ask::SayStanding& a) const { return vine.say_standing(a.off), pointed; }
    // ---- shown on the vine
    // On the ladder what is shown is done: work like any other.
    Carried operator()(const ask::WatchNext&) const { return vine.watch_next(), vine.on_ladder() ? moved : shown; }
    Carried operator()(const ask::WatchBack&) const { return vine.watch_back(), vine.on_ladder() ? moved : shown; }
    Carried operator()(const ask::WatchRest&) const { return vine.watch_rest(), vine.on_ladder() ? moved : shown; }
    Carried operator()(const ask::DrillAnswer& a) const {
        if (vine.drill()) vine.drill()->answer(a.older);
        return shown;
    }
    Carried operator()(const ask::DrillNext&) const {
        if (vine.drill() && !vine.drill()->here()) vine.end_showing();
        else if (vine.drill()) vine.drill()->next();
        return shown;
    }
    Carried operator()(const ask::SayAnswer& a) const {
        if (vine.questions()) vine.questions()->answer(a.which);
        return shown;
    }
    Carried operator()(const ask::QuestionNext&) const {
        if (vine.questions() && !vine.questions()->here()) vine.end_showing();
        else if (vine.questions()) vine.questions()->next();
        return shown;
    }
    Carried operator()(const ask::SayDead& a) const {
        if (vine.buds()) vine.buds()->answer(a.dead);
        return shown;
    }
    Carried operator()(const ask::BudsNext&) const {
        if (vine.buds() && !vine.buds()->here()) vine.end_showing();
        else if (vine.buds()) vine.buds()->next();
        return shown;
    }
};

}  // namespace

std::optional<Carried> carry_out_on(Practice& vine, const Request& request) {
    return std::visit(
        [&](const auto& asked) -> std::optional<Carried> {
            if constexpr (of_the_vine<std::decay_t<decltype(asked)>>) return Hand{vine}(asked);
            else return std::nullopt;
        },
        request);
}

}  // namespace spurwright::practice
