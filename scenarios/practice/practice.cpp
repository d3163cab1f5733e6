#include "scenarios/practice/practice.h"

#include <algorithm>
#include <tuple>

#include "scenarios/practice/walked_pieces.h"
#include "sim/core/check.h"
#include "sim/pruning/legal_edits.h"
#include "sim/rules/asked.h"
#include "sim/rules/piece_points.h"
#include "sim/vine/course_book.h"
#include "sim/vine/vine_query.h"

namespace spurwright::practice {
namespace {

constexpr Length usual_tie{15'000};
constexpr int usual_half_wraps = 2;

bool snapped_now(const Vine& vine, AxisId id) {
    return std::any_of(vine.laid.begin(), vine.laid.end(), [&](const Laid& l) { return l.winter == vine.winter && l.axis == id && l.state == LaidState::snapped; });
}

bool laid_now(const Vine& vine, AxisId id) {
    return std::any_of(vine.laid.begin(), vine.laid.end(), [&](const Laid& l) { return l.winter == vine.winter && l.axis == id; });
}

}  // namespace

Practice::Practice(Task task) : task_(std::move(task)), now_(task_.vine) {
    begin();
    ask_of_vine();
    if (task_.vine.system == System::cordon) tape = Role::spur;
    tell_strip();
    reckon_shown();
}

// The acts that the task begins with stand as somebody's before.
void Practice::begin() {
    log_ = {};
    named_.clear();
    shown_.assign(task_.begun.edits.size(), false);
    now_ = task_.vine;
    for (const Edit& edit : task_.begun.edits) {
        const auto done = prune_one(now_, edit, task_.vine);
        SPURWRIGHT_CHECK(done.has_value(), ==, true);  // whoever set the task tried them
        named_.push_back(named(edit, now_));
        log_.add(edit);
    }
}

// What is asked belongs to the task: the strip counts acts only.
void Practice::tell_strip() { strip_ = step_strip(task_.vine, now_, done_count(), {asked_buds(), row_spurs_}); }

void Practice::ask_of_vine() {
    row_spurs_ = task_.vine.system == System::cordon ? rules::asked(task_.vine, task_.house).spurs() : 0;
}

int Practice::asked_buds() const { return rules::target_buds(task_.house, task_.vine.spacing); }

Result<void> Practice::act(const Edit& edit) {
    if (const auto* lay = std::get_if<Lay>(&edit); lay && task_.vine.system == System::cordon)
        return failure({Fault::not_allowed, {"error.practice.cordon-lays-none"}, {{"part", lay->cane}}, {}});
    if (auto why = why_not(now_, edit)) return failure(*std::move(why));
    waiting_.reset();
    if (done_count() >= most_edits) return failure({Fault::not_allowed, {"error.plan.too-many"}, {{"most", Count{most_edits}}}, {"plan", 0, 0, 0}});
    if (const auto* cut = std::get_if<Cut>(&edit)) waiting_ = warning(*cut);
    if (const auto* tie = std::get_if<Fasten>(&edit)) waiting_ = warning(*tie);
    if (waiting_) return {};
    return carry_out(edit);
}

// A tight tie too near the base pulls the cane down there: a hand feels it before it breaks.
std::optional<Waiting> Practice::warning(const Fasten& tie) const {
    const AxisId cane = axis_of(tie.at);
    Vine tied = now_;
    if (snapped_now(now_, cane) || !prune_one(tied, tie, task_.vine) || !snapped_now(tied, cane)) return std::nullopt;
    return Waiting{tie, {"act.warn.snap"}, {{"part", cane}}};
}

std::optional<Waiting> Practice::warning(const Cut& cut) const {
    if (cuts_trunk(now_, cut)) return Waiting{cut, {"act.warn.trunk"}, {{"part", axis_of(cut.past)}}};
    // Of what comes off with it, a piece that the trainee's own tape says stays; or that piece itself at its base.
    std::vector<AxisId> lost = preview(now_, cut).axes;
    std::erase(lost, axis_of(cut.past));
    if (index_of(cut.past) == 0) lost.push_back(axis_of(cut.past));
    for (const AxisId axis : lost) {
        const Role role = role_of(axis);
        if (role == Role::left || role == Role::right || role == Role::spur) return Waiting{cut, {"act.warn.taped"}, {{"part", axis}}};
    }
    return std::nullopt;
}

Result<void> Practice::confirm() {
    if (!waiting_) return {};
    const std::optional<Edit> edit = waiting_->edit;
    waiting_.reset();
    if (edit) return carry_out(*edit);
    finish();
    return {};
}

Result<void> Practice::carry_out(const Edit& edit, bool shown) {
    waiting_.reset();
    if (auto done = prune_one(now_, edit, task_.vine); !done) return failure(std::move(done.error()));
    named_.resize(done_count());
    shown_.resize(named_.size());
    named_.push_back(named(edit, now_));
    shown_.push_back(shown);
    log_.add(edit);
    changed();
    return {};
}

void Practice::changed() {
    ++change_;
    pull({});
    look_.reset();
    grown_on_.reset();
    close_spring();
    if (held_ && strip_[static_cast<std::size_t>(*held_)].done) held_.reset();
    tell_strip();
    step_ = held_.value_or(next_step(strip_));
    reckon_shown();
    // Off, or nothing but its base left standing by this winter's cut.
    const auto gone = [&](AxisId id) {
        const Axis* axis = now_.find(id);
        if (!axis || axis->removed) return true;
        const auto nodes = now_.nodes_of(*axis), before = task_.vine.nodes_of(*task_.vine.find(id));
        return nodes.size() > 1 && nodes[1].removed && !before[1].removed;
    };
    if (chosen && gone(chosen)) chosen = {};
    if (!chosen || !now_.find(chosen_node) || now_.find(chosen_node)->removed) chosen_node = {};
    hover = {};
}

void Practice::replay() {
    auto vine = prune(task_.vine, log_.done());
    SPURWRIGHT_CHECK(vine.has_value(), ==, true);  // each edit was legal when it was made
    now_ = *std::move(vine);
    waiting_.reset();
    changed();
}

void Practice::undo() {
    if (can_undo() && log_.undo()) replay();
}
void Practice::redo() {
    if (log_.redo()) replay();
}
void Practice::jump(std::size_t done) {
    done = std::clamp(done, task_.begun.edits.size(), named_.size());
    if (done == done_count()) return;
    while (done_count() > done) log_.undo();
    while (done_count() < done) log_.redo();
    replay();
}

void Practice::pull(const Pull& to) {
    const Axis* cane = task_.vine.find(to.cane);
    const Axis* now = now_.find(to.cane);
    const bool held = cane && now && !now->removed && cane->node_count > 1 && !finished() && !hand_rests() &&
                      !laid_now(now_, to.cane) && axis_of(to.node) == to.cane;
    pull_ = held ? to : Pull{};
    pull_.share = std::clamp(pull_.share, PerMille{0}, whole);
    bend_.reset();
    if (held) bend_ = hand_bend(task_.vine, *cane, pull_.side, index_of(pull_.node), pull_.share);
}

void Practice::choose(AxisId axis) {
    if (pull_.cane != axis) pull({});
    const Axis* found = now_.find(axis);
    chosen = found && !found->removed ? axis : AxisId{};
    chosen_node = {};
}

void Practice::walk_canes(int step) {
    hover = {};  // the hand that walks by keys does not point
    const auto canes = walked_pieces(now_, left_to_do(task_.vine, now_, step_));
    if (canes.empty()) return;
    const auto count = static_cast<int>(canes.size());
    const auto at = std::find(canes.begin(), canes.end(), chosen);
    const int from = at == canes.end() ? (step > 0 ? -1 : count) : static_cast<int>(at - canes.begin());
    choose(canes[static_cast<std::size_t>(((from + step) % count + count) % count)]);
    // Wood that bears what stays is cut beyond it: a cut at its base would take that off too.
    if (step_ == Step::clear && age(now_, *now_.find(chosen)) > 1) chosen_node = bears_kept(now_, chosen);
}

void Practice::walk_buds(int step) {
    hover = {};
    const Axis* axis = now_.find(chosen);
    if (!axis || axis->removed) return;
    int last = 0;
    for (const Node& node : now_.nodes_of(*axis))
        if (!node.removed) last = static_cast<int>(index_of(node.id));
    const int from = chosen_node ? static_cast<int>(index_of(chosen_node)) : 0;
    chosen_node = node_id(chosen, static_cast<std::uint32_t>(std::clamp(from + step, 0, last)));
}

std::optional<CutPreview> Practice::would_cut() const {
    if (!cuts(tool)) return std::nullopt;
    const Spot spot = hover ? hover : Spot{chosen, chosen_node, {-1}};
    if (!spot || !now_.find(spot.axis)) return std::nullopt;
    const Cut cut = cut_at(now_, spot, tool_of(tool));
    if (why_not(now_, cut)) return std::nullopt;
    return preview(now_, cut);
}

std::optional<Error> Practice::why_not_cut() const {
    if (!cuts(tool)) return std::nullopt;
    const Spot spot = hover ? hover : Spot{chosen, chosen_node, {-1}};
    if (!spot) return std::nullopt;
    return why_not(now_, cut_at(now_, spot, tool_of(tool)));
}

Result<void> Practice::cut(const Spot& spot, Tool with) {
    const Spot at = spot ? spot : hover ? hover : Spot{chosen, chosen_node, {-1}};
    if (!at) return failure({Fault::not_allowed, {"error.practice.choose-first"}, {}, {}});
    return act(cut_at(now_, at, with));
}

Result<void> Practice::lay(AxisId cane, Side side) {
    pull({});
    const AxisId id = cane ? cane : chosen;
    if (!id) return failure({Fault::not_allowed, {"error.practice.choose-first"}, {}, {}});
    return act(Lay{id, side, usual_half_wraps});
}

Result<void> Practice::tie(const Spot& spot) {
    const Spot at = spot ? spot : Spot{chosen, chosen_node, {-1}};
    const Axis* axis = now_.find(at.axis);
    if (!axis) return failure({Fault::not_allowed, {"error.practice.choose-first"}, {}, {}});
    const NodeId node = at.node;
    std::uint32_t outermost = 0;
    for (const Node& n : now_.nodes_of(*axis))
        if (!n.removed) outermost = index_of(n.id);
    const auto tie_at = [&](NodeId to) {
        const bool end = index_of(to) + 2 >= outermost;
        const Length wood = now_.find(to) ? wood_beyond(now_, *axis, index_of(to)) : Length{};
        const Length beyond = at.beyond.count >= 0 ? std::min(at.beyond, wood) : std::min(usual_tie, Length{wood.count / 2});
        return Fasten{to, {beyond.count / 100 * 100}, end};
    };
    if (node) return act(tie_at(node));
    if (tied_now(axis->id)) return failure({Fault::not_allowed, {"error.practice.tied"}, {{"part", axis->id}}, {}});
    // An end tie sits one node short of the end, as the hand that ties a whole cane puts it; at the end where the cane
    // would not stand that.
    const Fasten usual = tie_at(node_id(axis->id, outermost > 0 ? outermost - 1 : 0));
    auto tied = act(warning(usual) ? tie_at(node_id(axis->id, outermost)) : usual);
    if (tied && !waiting_) choose_next_untied();
    return tied;
}

bool Practice::tied_now(AxisId cane) const {
    return std::any_of(now_.ties.begin(), now_.ties.end(), [&](const Tie& tie) { return axis_of(tie.node) == cane && tie.winter == now_.winter && tie.state != TieState::cut; });
}

// The hand goes on to the next cane that waits for its tie.
void Practice::choose_next_untied() {
    for (const AxisId cane : left_to_do(task_.vine, now_, Step::lay_and_tie))
        if (std::any_of(now_.laid.begin(), now_.laid.end(), [&](const Laid& laid) { return laid.axis == cane && laid.winter == now_.winter; })) return choose(cane);
}

Result<void> Practice::mark(AxisId axis, Role role) {
    const AxisId id = axis ? axis : chosen;
    if (!id) return failure({Fault::not_allowed, {"error.practice.choose-first"}, {}, {}});
    return act(Mark{id, role});
}

Role Practice::role_of(AxisId axis) const {
    const Axis* found = now_.find(axis);
    return found ? found->mark : Role::none;
}

// Going to a step takes its tool up, with nothing chosen yet.
void Practice::go_to(Step step) {
    if (step == Step::look_back && !finished() && nothing_cut()) {
        waiting_ = Waiting{std::nullopt, {"act.warn.nothing-cut"}, {}};
        return;
    }
    step_ = step;
    held_ = step;
    if (step == Step::look_back) return finish();
    chosen = {};
    chosen_node = {};
    tool = tool_of(step);
    calliper_asked = false;
    if (to_be_shown(step)) show(step);
}

// Tapes alone, or nothing: pressed by mistake, most likely. Where the rest is done for the trainee tapes are enough.
bool Practice::nothing_cut() const {
    if (!to_show_.empty()) return false;
    const Plan acts = done();
    return std::all_of(acts.edits.begin() + static_cast<std::ptrdiff_t>(task_.begun.edits.size()), acts.edits.end(),
                       [](const Edit& edit) { return std::holds_alternative<Mark>(edit); });
}

void Practice::go_on_pruning() {
    if (look_) changed();
}

void Practice::finish() {
    waiting_.reset();
    if (!look_) do_at_once(to_show_);  // what was not the trainee's to do
    step_ = Step::look_back;
    held_.reset();
    look_ = look_back(task_.vine, now_, task_.house);
    if (plans_) practice::add_plans(*look_, task_.vine, task_.house, *plans_, done());
    tell_yours_alone();
}

void Practice::judge_under(std::string house_name, const rules::HouseRules& house) {
    end_showing();
    close_spring();
    grown_on_.reset();
    task_.house_name = std::move(house_name);
    task_.house = house;
    ask_of_vine();
    plans_.reset();
    tell_strip();
    reckon_shown();
    if (look_) finish();
}

SpringVisitWish Practice::spring_wish() const { return {now_, task_.house, *task_.frost, task_.spring}; }

void Practice::await_spring(std::shared_ptr<std::atomic<int>> lived) {
    spring_.reset();
    spring_lived_ = std::move(lived);
}

void Practice::add_spring(SpringVisit visit) {
    if (!spring_lived_) return;
    spring_lived_.reset();
    spring_ = std::move(visit);
}

void Practice::say_standing(bool off) {
    if (!spring_ || spring_->said || spring_->kickers.empty()) return;
    spring_->said = true;
    spring_->said_off = off;
}

void Practice::close_spring() {
    spring_.reset();
    spring_lived_.reset();
}

void Practice::add_plans(PlansFound plans) {
    plans_ = std::move(plans);
    if (look_) practice::add_plans(*look_, task_.vine, task_.house, *plans_, done());
    tell_yours_alone();
    if (watch_waits_) (void)begin_watching();
}

std::optional<ActsWish> Practice::take_acts_wish() {
    if (!awaits_seasons() || !look_->charged->seasons_due) return std::nullopt;
    look_->charged->seasons_due = false;
    ActsWish wish{task_.vine, task_.house, look_->charged->ways, task_.frost ? task_.frost->climate : std::string(ahead::usual_climate)};
    wish.vine.courses = std::make_shared<CourseBook>(); // the window goes on writing in the vine's own
    return wish;
}

void Practice::add_seasons(ahead::ActsAhead seasons) {
    if (awaits_seasons()) look_->charged->seasons = std::move(seasons);
}

void Practice::ask_seasons_anew() {
    if (awaits_seasons()) look_->charged->seasons_due = true;
}

ahead::ActsAhead acts_ahead(const ActsWish& wish) {
    return ahead::acts_ahead(wish.vine, wish.house, wish.ways, ahead::usual_wish(wish.vine, wish.climate));
}

PrunedWork Practice::work(const Plan& done) const { return {task_.vine, task_.house, done, look_->mine, task_.begun.edits.size()}; }

void Practice::take_cut(AxisId axis) {
    if (!look_) return;
    const Plan acts = done();
    look_->moved = practice::take_cut(work(acts), axis);
}

void Practice::take_next_cut(int step) {
    if (!look_ || !look_->moved) return;
    const MovedCut& now = *look_->moved;
    take_cut(now.pieces[(now.piece + (step > 0 ? 1 : now.pieces.size() - 1)) % now.pieces.size()].axis);
}

void Practice::move_cut(std::size_t at) {
    if (!look_ || !look_->moved || at == look_->moved->at) return;
    const Plan acts = done();
    practice::move_cut(*look_->moved, work(acts), at);
}

void Practice::leave_cut() {
    if (look_) look_->moved.reset();
}

bool Practice::may_grow_on() const { return look_ && task_.grow_on.winters > 0 && plans_ && !plans_->none(); }

void Practice::grow_on(bool on) {
    grown_on_.reset();
    if (on && may_grow_on()) grown_on_ = practice::grow_on(task_.vine, now_, *plans_->planning, task_.grow_on);
}

void Practice::cut_again() {
    end_showing();
    look_.reset();
    begin();
    chosen = {};
    chosen_node = {};
    waiting_.reset();
    held_.reset();
    changed();
    step_ = Step::look;
}

std::vector<Walked> Practice::feedback(Step step) const {
    std::vector<Walked> of_step;
    if (!step_feedback || !is_mine(step)) return of_step;
    // As if the canes taped so far lay where their tapes send them: what was chosen can be judged before it is laid.
    Vine meant = now_;
    for (const Axis& axis : now_.axes) {
        if (axis.removed || laid_now(now_, axis.id)) continue;
        if (axis.mark == Role::left) (void)prune_one(meant, Lay{axis.id, Side::left, usual_half_wraps}, task_.vine);
        if (axis.mark == Role::right) (void)prune_one(meant, Lay{axis.id, Side::right, usual_half_wraps}, task_.vine);
    }
    for (Walked& w : look_back(task_.vine, meant, task_.house).walk)
        if (w.stop == Stop::finding && w.step == step && !w.folded) of_step.push_back(std::move(w));
    return of_step;
}

}  // namespace spurwright::practice
