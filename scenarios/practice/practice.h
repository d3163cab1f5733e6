// One vine being pruned by one person: the vine at its start, the acts so far, what is in the hand and what it points
// at, and the look back once it is finished. Undo moves a cursor; the vine now is always start + done acts.
// Screens read it and ask through request.h; must not know: files, threads, screens, pictures, sentences.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "scenarios/practice/bud_sample.h"
#include "scenarios/practice/cut_preview.h"
#include "scenarios/practice/grow_on.h"
#include "scenarios/practice/ladder_vine.h"
#include "scenarios/practice/look_back.h"
#include "scenarios/practice/named_act.h"
#include "scenarios/practice/spring_visit.h"
#include "scenarios/practice/scene_questions.h"
#include "scenarios/practice/step_strip.h"
#include "scenarios/practice/touch_drill.h"
#include "scenarios/practice/watching.h"
#include "scenarios/reference_vines/vine_target.h"
#include "scenarios/scenes/scene_file.h"
#include "sim/pruning/edit_log.h"
#include "sim/pruning/hand_bend.h"

namespace spurwright::practice {

// What is set before somebody.
struct Task {
    Vine vine;                            // uncut this winter
    std::string code;                     // empty for a vine that no code grows
    std::string scene;                    // "first"; empty outside a scene
    std::string house_name;               // "general"
    rules::HouseRules house;
    std::vector<std::string> learn_keys;  // what is to be remembered of the scene
    std::size_t scene_number = 0;         // which of the scene's vines
    std::string task_key{};               // what the scene asks; empty outside a scene
    scenes::Begins begins{};              // what comes before the scene's pruning
    GrowOnWish grow_on{};                 // what the scene lets grow on afterwards
    std::optional<scenes::Frost> frost{}; // a second visit in spring
    int spring = 1;                       // the draw of weather of that spring
    std::vector<scenes::Ask> asks{};      // before the first cut
    std::optional<Mass> tag{};            // of last winter's prunings
    Plan begun{};                         // acts that were made before: legal on the vine, and never undone
    std::optional<scenes::WeighAsked> weigh{}; // afterwards the prunings are weighed and next winter's buds said
    std::optional<reference_vines::VineTarget> from_book{}; // the reference vine whose weight sets the number of buds
    std::optional<OnRung> ladder{};       // opened on a rung of the ladder: whose each step is
};

// The ways parted by acts that cost something, to be lived through; an own copy of all they need.
struct ActsWish {
    Vine vine; // uncut this winter
    rules::HouseRules house;
    std::vector<ahead::TwoWays> ways;
    std::string climate;
};
ahead::ActsAhead acts_ahead(const ActsWish& wish);

// What waits for a word: done by confirm(), forgotten by take_back() or by the next act.
struct Waiting {
    std::optional<Edit> edit;  // none: the look back
    TextKey key;  // act.warn.trunk, act.warn.taped, act.warn.snap, act.warn.nothing-cut
    Arguments arguments;
};

class Practice {
public:
    explicit Practice(Task task);

    // ---- the vine
    const Task& task() const { return task_; }
    const Vine& start() const { return task_.vine; }
    const Vine& now() const { return watching_ ? watching_->now() : now_; }  // what stands before the eye
    int asked_buds() const;              // count buds that the house asks for on this vine
    int asked_row_spurs() const { return row_spurs_; }  // spurs along the arms of a cordon; 0 on a vine of canes
    std::uint64_t change() const { return change_; }  // rises whenever `now` changes: what was drawn or found before is old

    // ---- the acts
    const std::vector<NamedAct>& acts() const { return named_; }  // in order, undone ones too
    std::size_t done_count() const { return named_.size() - log_.undone(); }
    Plan done() const { return log_.done(); }
    Plan all_acts() const { return log_.all(); }  // undone ones too
    bool can_undo() const { return done_count() > task_.begun.edits.size(); }
    bool can_redo() const { return log_.undone() > 0; }

    // Does it, or says why not and changes nothing. A cut through a trunk, or one that takes
    // a piece off that its tape says stays, waits for confirm(). Forgets what was undone.
    [[nodiscard]] Result<void> act(const Edit& edit);
    const std::optional<Waiting>& waiting() const { return waiting_; }
    [[nodiscard]] Result<void> confirm();
    void take_back() { waiting_.reset(); }

    void undo();
    void redo();
    void jump(std::size_t done);  // undo or redo until so many acts are done

    // ---- the hand
    HandTool tool = HandTool::none;
    Role tape = Role::left;       // what the tape in hand says
    Spot hover;                   // under the pointer
    AxisId chosen;                // none: nothing chosen
    NodeId chosen_node;           // a bud walked to on it; none: the cane as a whole
    bool calliper_asked = false;  // millimetres shown
    // Holds a cane that can still be laid, at a node from its first to its last, 0 to 1000 of the way; anything else is
    // let go.
    void pull(const Pull& to);
    const Pull& pulled() const { return pull_; }
    const std::optional<HandBend>& bend() const { return bend_; }  // how the pulled cane stands
    void choose(AxisId axis);                 // none: takes the choice back
    void walk_canes(int step);                // canes standing, from the near post to the far post
    void walk_buds(int step);                 // nodes standing on the chosen axis, crown first
    // What a cut with the tool in hand would do at the hover, else at the chosen bud. None: no cutting tool, no place.
    std::optional<CutPreview> would_cut() const;
    // Why the cut meant by the hand cannot be made, where it cannot.
    std::optional<Error> why_not_cut() const;

    // ---- the acts as the hand means them, at a spot or at what is chosen
    [[nodiscard]] Result<void> cut(const Spot& spot, Tool tool);
    [[nodiscard]] Result<void> lay(AxisId cane, Side side);
    [[nodiscard]] Result<void> tie(const Spot& spot);  // on the axis as a whole: at its outermost count bud
    [[nodiscard]] Result<void> mark(AxisId axis, Role role);
    Role role_of(AxisId axis) const;

    // ---- the steps
    const StepStrip& strip() const { return strip_; }
    Step step() const { return step_; }        // where the trainee says to be
    Step next() const { return next_step(strip_); }
    // Never refused; look back finishes, or waits for a word where nothing is cut, laid or tied yet.
    void go_to(Step step);
    bool step_feedback = false;                // findings of a step when it is left
    bool silent = false;                       // of a sitting with these: without a word until the end

    // ---- the look back
    bool finished() const { return look_.has_value(); }
    void finish();                             // judged; the plans come later
    void go_on_pruning();                      // out of the look back, with all acts as they stand
    // Under other house rules from now on: what was judged is judged anew, and the plans have to be found again.
    void judge_under(std::string house_name, const rules::HouseRules& house);
    const std::optional<PlansFound>& plans() const { return plans_; }
    void add_plans(PlansFound plans);          // found for start() and house(); kept for the vine, shown once finished
    const std::optional<LookBack>& look() const { return look_; }
    std::optional<LookBack>& look() { return look_; }
    // What the acts charged mean next season: asked for once a look back, lived on a worker, told when it comes.
    std::optional<ActsWish> take_acts_wish();
    bool awaits_seasons() const { return look_ && look_->charged && !look_->charged->seasons; }
    void ask_seasons_anew();  // the answer was lost on its way
    void add_seasons(ahead::ActsAhead seasons);
    // What if a cut had been made elsewhere: of the piece of this axis, else of the first; the next of the pieces; to one
    // of its ends. Nothing of it is an act.
    void take_cut(AxisId axis);
    void take_next_cut(int step);
    void move_cut(std::size_t at);
    void leave_cut();
    // Whether the next winter can be seen, of this vine and of the best plan's.
    bool may_live_on() const { return look_ && plans_ && !plans_->none(); }
    // The scene's two choices, grown on: shown once asked for. Needs the plans of a scene that lets grow on.
    bool may_grow_on() const;
    void grow_on(bool on);
    const std::optional<GrownOn>& grown_on() const { return grown_on_; }
    // The frost scene's second visit: asked for, lived on a worker, shown, answered. Nothing of it is an act of winter.
    bool may_visit_in_spring() const { return look_ && task_.frost; }
    SpringVisitWish spring_wish() const;  // needs may_visit_in_spring()
    void await_spring(std::shared_ptr<std::atomic<int>> lived);
    const std::atomic<int>* spring_lived() const { return spring_lived_.get(); }  // of springs_lived; null: not waited for
    void add_spring(SpringVisit visit);  // dropped where nobody waits any more
    void say_standing(bool off);         // whether the cane that stands comes off; once
    const std::optional<SpringVisit>& spring() const { return spring_; }
    void close_spring();
    void cut_again();                          // before the first own act; nothing of the look back remains
    // ---- shown: the hand rests meanwhile, and the own acts stay as they are
    // The best plan, watched on this vine; waits for the plans. Refused once there are own acts, and without a plan.
    [[nodiscard]] Result<void> watch();
    const std::optional<Watching>& watching() const { return watching_; }
    bool watch_waits() const { return watch_waits_; }  // for the plans
    void watch_next();
    void watch_back();
    // Places touched, old or new, on the vine as it stands.
    [[nodiscard]] Result<void> begin_drill();
    const std::optional<TouchDrill>& drill() const { return drill_; }
    std::optional<TouchDrill>& drill() { return drill_; }
    // Buds cut open after a cold winter, on the uncut vine.
    [[nodiscard]] Result<void> begin_buds();
    const std::optional<BudSample>& buds() const { return buds_; }
    std::optional<BudSample>& buds() { return buds_; }
    // What the scene asks before the first cut.
    [[nodiscard]] Result<void> begin_questions();
    const std::optional<SceneQuestions>& questions() const { return questions_; }
    std::optional<SceneQuestions>& questions() { return questions_; }
    bool hand_rests() const { return watching_ || watch_waits_ || drill_ || buds_ || questions_; }
    void end_showing();  // of either: the vine is in hand again as it was

    // ---- on the ladder: what is not the trainee's is done for them, to go with what they chose. All acts are in one list.
    bool on_ladder() const { return task_.ladder.has_value(); }
    // A vine that was watched is, pruned afterwards, a vine like any.
    bool is_mine(Step step) const { return !task_.ladder || task_.ladder->rung.watched() || task_.ladder->rung.is_mine(step); }
    // Something of a step that is not the trainee's is still to be done.
    bool to_be_shown(Step step) const;
    std::optional<Step> showing_step() const { return showing_; }  // being shown, act by act
    // Taped, and no plan can keep them as taped: what is shown goes without them.
    const std::vector<AxisId>& not_held() const { return not_held_; }
    void watch_rest();  // the rest of the step, or of what is watched, at once
    const std::vector<bool>& shown_acts() const { return shown_; }  // of all_acts(): done for the trainee
    void tell_shown(const std::vector<bool>& shown);                // of work taken up again
    // In the trainee's own steps; none before the plans are found, or where nothing is finished.
    std::optional<YoursOnVine> yours() const;

    // Findings of one step as things stand, in step-feedback mode; empty otherwise.
    std::vector<Walked> feedback(Step step) const;

private:
    void ask_of_vine();
    void tell_strip();
    PrunedWork work(const Plan& done) const;

    Task task_;
    Vine now_;
    EditLog log_;
    std::vector<NamedAct> named_;
    std::uint64_t change_ = 0;
    std::optional<Waiting> waiting_;
    Pull pull_;
    std::optional<HandBend> bend_;
    int row_spurs_ = 0;
    StepStrip strip_{};
    Step step_{};
    std::optional<Step> held_;  // the trainee went there: the strip stays until an act is made after that step was done
    std::optional<PlansFound> plans_;
    std::optional<LookBack> look_;
    std::optional<GrownOn> grown_on_;
    std::optional<SpringVisit> spring_;
    std::shared_ptr<std::atomic<int>> spring_lived_;
    std::optional<Watching> watching_;
    std::optional<TouchDrill> drill_;
    std::optional<BudSample> buds_;
    std::optional<SceneQuestions> questions_;
    bool watch_waits_ = false;
    std::vector<bool> shown_;              // beside named_
    std::vector<WatchedAct> to_show_;      // what is still to be done of steps that are not the trainee's, in order
    std::vector<AxisId> not_held_;
    std::optional<Step> showing_;

    void begin();
    void reckon_shown();
    void show(Step step);
    void next_shown();
    void do_at_once(std::vector<WatchedAct> acts);
    void tell_yours_alone();
    void changed();
    void replay();
    void put_down();
    [[nodiscard]] Result<void> begin_watching();
    bool nothing_cut() const;
    bool tied_now(AxisId cane) const;
    void choose_next_untied();
    std::optional<Waiting> warning(const Cut& cut) const;
    std::optional<Waiting> warning(const Fasten& tie) const;
    [[nodiscard]] Result<void> carry_out(const Edit& edit, bool shown = false);
};

}  // namespace spurwright::practice
