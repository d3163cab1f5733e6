#include "scenarios/practice/step_strip.h"

#include <algorithm>
#include <vector>

#include "sim/vine/vine_query.h"

namespace spurwright::practice {
namespace {

constexpr int most_spur_buds = 3;  // a cane cut to so few count buds is meant as a spur

// What the trainee's own tapes and acts say of each axis.
struct Own {
    std::vector<AxisId> canes, spurs;
    std::vector<AxisId> standing;  // one-year canes that are none of these, and last winter's canes and spurs with nothing kept beyond
    std::vector<AxisId> uncut_canes, uncut_spurs, untied;  // of the own
    int spurs_cut = 0, canes_cut = 0, canes_tied = 0, cuts = 0, buds = 0;
};

class Reader {
public:
    Reader(const Vine& start, const Vine& now) : start_(start), now_(now) {}

    Own read() {
        for (const Axis& axis : now_.axes) sort(axis);
        for (const Axis& axis : now_.axes) count_standing(axis);
        own_.cuts = static_cast<int>(now_.wounds.size() - start_.wounds.size());
        return own_;
    }

private:
    bool cut_now(AxisId id, std::uint32_t from) const {
        return std::any_of(now_.wounds.begin(), now_.wounds.end(),
                           [&](const Wound& w) { return w.winter == now_.winter && w.axis == id && w.node && axis_of(w.node) == id && index_of(w.node) >= from; });
    }
    bool laid_now(AxisId id) const {
        return std::any_of(now_.laid.begin(), now_.laid.end(), [&](const Laid& l) { return l.winter == now_.winter && l.axis == id; });
    }
    bool tied_now(AxisId id) const {
        return std::any_of(now_.ties.begin(), now_.ties.end(), [&](const Tie& t) { return t.winter == now_.winter && axis_of(t.node) == id; });
    }
    bool is_own(AxisId id) const {
        const auto in = [&](const std::vector<AxisId>& list) { return std::find(list.begin(), list.end(), id) != list.end(); };
        return in(own_.canes) || in(own_.spurs);
    }

    void sort(const Axis& axis) {
        if (axis.removed || axis.state == AxisState::dead || is_trunk(axis)) return;
        const bool cane = axis.mark == Role::left || axis.mark == Role::right || laid_now(axis.id);
        if (cane) {
            own_.canes.push_back(axis.id);
            const bool cut = cut_now(axis.id, 1) || laid_now(axis.id), tied = laid_now(axis.id) && tied_now(axis.id);  // laid whole: that is its length
            own_.canes_cut += cut ? 1 : 0;
            if (!cut) own_.uncut_canes.push_back(axis.id);
            if (!tied) own_.untied.push_back(axis.id);
            own_.buds += count_buds(now_, axis);
            own_.canes_tied += tied ? 1 : 0;
            return;
        }
        const bool short_cut = is_cane(now_, axis) && cut_now(axis.id, 1) && count_buds(now_, axis) <= most_spur_buds;
        if (axis.mark != Role::spur && !short_cut) return;
        own_.spurs.push_back(axis.id);
        own_.buds += count_buds(now_, axis);
        const bool cut = cut_now(axis.id, 1) && count_buds(now_, axis) <= most_spur_buds;
        own_.spurs_cut += cut ? 1 : 0;
        if (!cut) own_.uncut_spurs.push_back(axis.id);
    }

    void count_standing(const Axis& axis) {
        if (axis.removed || axis.state == AxisState::dead || is_own(axis.id)) return;
        if (axis.mark == Role::spare || axis.mark == Role::kicker) return;
        const auto nodes = now_.nodes_of(axis);
        if (is_cane(now_, axis) && nodes.size() > 1 && !nodes[1].removed) own_.standing.push_back(axis.id);
        if (age(now_, axis) == 2 && !is_trunk(axis) && runs_on(axis)) own_.standing.push_back(axis.id);
    }

    // Whether last winter's cane or spur has wood beyond the last piece kept on it.
    bool runs_on(const Axis& axis) const {
        std::uint32_t last_kept = 0, outermost = 0;
        for (const Node& node : now_.nodes_of(axis))
            if (!node.removed) outermost = index_of(node.id);
        for (const Axis& child : now_.axes)
            if (!child.removed && child.parent && axis_of(child.parent) == axis.id && is_own(child.id)) last_kept = std::max(last_kept, index_of(child.parent));
        return outermost > last_kept;
    }

    const Vine& start_;
    const Vine& now_;
    Own own_;
};

Count n(std::size_t value) { return {static_cast<std::int64_t>(value)}; }

StepSaid said(Step step, bool done, std::string_view open, std::string_view closed, Arguments arguments) {
    return {step, done, true, TextKey{done ? closed : open}, std::move(arguments)};
}

// Spurs along two arms that lie already: nothing to shorten but them, nothing to lay.
StepStrip cordon_strip(const Own& own, std::size_t acts, const AskedOfVine& asked) {
    const auto wanted = static_cast<std::size_t>(std::max(asked.row_spurs, 1)), cut = static_cast<std::size_t>(own.spurs_cut);
    const bool all_cut = !own.spurs.empty() && cut == own.spurs.size();
    StepStrip strip;
    strip[0] = said(Step::look, acts > 0, "step.say.look-cordon", "step.say.look-done", {});
    strip[1] = said(Step::choose, own.spurs.size() >= wanted, "step.say.choose-cordon", "step.say.choose-cordon-done", {{"n", n(own.spurs.size())}, {"of", n(wanted)}});
    strip[2] = said(Step::clear, own.standing.empty() && own.cuts > 0, "step.say.clear", "step.say.clear-cordon-done", {{"n", n(own.standing.size())}});
    strip[3] = said(Step::spurs, all_cut && own.spurs.size() >= wanted, "step.say.spurs-cordon", "step.say.spurs-cordon-done",
                    {{"n", n(cut)}, {"of", n(std::max(own.spurs.size(), wanted))}, {"buds", Count{own.buds}}, {"asked", Count{asked.buds}}});
    strip[4] = {Step::lengths, true, false, {"step.say.lengths-cordon"}, {}};
    strip[5] = {Step::lay_and_tie, true, false, {"step.say.lengths-cordon"}, {}};
    strip[6] = said(Step::look_back, false, "step.say.look-back", "step.say.look-back", {});
    return strip;
}

}  // namespace

StepStrip step_strip(const Vine& start, const Vine& now, std::size_t acts, const AskedOfVine& asked) {
    const Own own = Reader(start, now).read();
    if (start.system == System::cordon) return cordon_strip(own, acts, asked);
    const std::size_t wanted = start.system == System::one_cane ? 1 : 2;  // canes, and spurs
    const std::size_t pieces = std::min(own.canes.size(), wanted) + std::min(own.spurs.size(), wanted);
    const bool lengths = own.canes.size() >= wanted && static_cast<std::size_t>(own.canes_cut) == own.canes.size();
    const bool tied = own.canes.size() >= wanted && static_cast<std::size_t>(own.canes_tied) == own.canes.size();
    StepStrip strip;
    strip[0] = said(Step::look, acts > 0, "step.say.look", "step.say.look-done", {});
    strip[1] = said(Step::choose, pieces >= 2 * wanted, wanted == 1 ? "step.say.choose-one" : "step.say.choose", wanted == 1 ? "step.say.choose-one-done" : "step.say.choose-done",
                    {{"n", n(pieces)}, {"of", n(2 * wanted)}});
    strip[2] = said(Step::clear, own.standing.empty() && own.cuts > 0, "step.say.clear", "step.say.clear-done", {{"n", n(own.standing.size())}});
    strip[3] = said(Step::spurs, !own.spurs.empty() && static_cast<std::size_t>(own.spurs_cut) == own.spurs.size(), "step.say.spurs", "step.say.spurs-done",
                    {{"n", n(static_cast<std::size_t>(own.spurs_cut))}, {"of", n(std::max(own.spurs.size(), wanted))}});
    strip[4] = said(Step::lengths, lengths, "step.say.lengths", "step.say.lengths-done",
                    {{"n", n(static_cast<std::size_t>(own.canes_cut))}, {"of", n(std::max(own.canes.size(), wanted))}, {"buds", Count{own.buds}}, {"asked", Count{asked.buds}}});
    strip[5] = said(Step::lay_and_tie, tied, "step.say.lay-and-tie", "step.say.lay-and-tie-done",
                    {{"n", n(static_cast<std::size_t>(own.canes_tied))}, {"of", n(std::max(own.canes.size(), wanted))}});
    strip[6] = said(Step::look_back, false, "step.say.look-back", "step.say.look-back", {});
    return strip;
}

std::vector<AxisId> left_to_do(const Vine& start, const Vine& now, Step step) {
    const Own own = Reader(start, now).read();
    switch (step) {
        case Step::clear: return own.standing;
        case Step::spurs: return own.uncut_spurs;
        case Step::lengths: return own.uncut_canes;
        case Step::lay_and_tie: return own.untied;
        case Step::look:
        case Step::choose:
        case Step::look_back: break;
    }
    return {};
}

HandTool tool_of(Step step) {
    switch (step) {
        case Step::choose: return HandTool::tape;
        case Step::clear:
        case Step::spurs:
        case Step::lengths: return HandTool::shears;
        case Step::lay_and_tie: return HandTool::hands;
        case Step::look:
        case Step::look_back: break;
    }
    return HandTool::none;
}

Step next_step(const StepStrip& strip) {
    for (const StepSaid& step : strip)
        if (!step.done) return step.step;
    return Step::look_back;
}

Step step_after(const StepStrip& strip, Step step) {
    for (std::size_t i = static_cast<std::size_t>(step) + 1; i < strip.size(); ++i)
        if (strip[i].asked) return strip[i].step;
    return Step::look_back;
}

}  // namespace spurwright::practice
