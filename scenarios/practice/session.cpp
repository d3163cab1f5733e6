#include "scenarios/practice/session.h"

#include <algorithm>
#include <type_traits>

#include "scenarios/commands/judged.h"
#include "scenarios/commands/vine_source.h"
#include "scenarios/io/house_rules_file.h"
#include "scenarios/io/vine_file.h"
#include "scenarios/practice/disagreement.h"
#include "scenarios/scenes/scene_vine.h"
#include "scenarios/words/load_words.h"
#include "sim/growth/history.h"
#include "sim/vine/vine_query.h"

namespace spurwright::practice {
namespace {

constexpr std::string_view usual_house = "general";
constexpr int most_tries = 20;          // seeds looked at for one next vine
constexpr std::size_t least_canes = 5;  // that a next vine offers: something to choose among (our choice)
constexpr int own_age_from = 7, own_ages = 12;  // winters of the vines after the scene's: our choice

template <class E>
bool read_into(E& to, const std::string& word) {
    const auto read = read_word<E>(word);
    if (read) to = *read;
    return read.has_value();
}

// What the hand does on the vine: not while something is shown on it.
template <class Asked, class... Kinds>
constexpr bool one_of = (std::is_same_v<Asked, Kinds> || ...);
template <class Asked>
constexpr bool of_the_hand = one_of<Asked, ask::TakeTool, ask::TapeSays, ask::Choose, ask::WalkCanes, ask::WalkBuds, ask::CutHere, ask::LayTo, ask::TieHere,
                                    ask::MarkAs, ask::Confirm, ask::Undo, ask::Redo, ask::JumpTo, ask::GoToStep, ask::NextStep>;

// The near and the far cane of a scene that has both.
GrowOnWish grow_on_wish(const scenes::Scene& scene, const scenes::GrownSceneVine& grown) {
    GrowOnWish wish{scene.grow_on, {}, {}};
    for (std::size_t i = 0; i < grown.tempting.size(); ++i) {
        if (std::holds_alternative<growth::PlainNearCane>(grown.switches[i])) wish.near = grown.tempting[i];
        if (std::holds_alternative<growth::FarCane>(grown.switches[i])) wish.far = grown.tempting[i];
    }
    if (!wish.near || !wish.far) wish.winters = 0;
    return wish;
}

}  // namespace

// Carries out one request; one function a kind.
struct Session::Asker {
    Session& s;

    Practice& vine() { return *s.practice_; }
    bool any() const { return s.practice_.has_value(); }
    LookBack* look() { return any() && vine().look() ? &*vine().look() : nullptr; }

    // ---- the hand
    bool operator()(const ask::TakeTool& a) {
        if (any()) {
            vine().tool = a.tool;
            vine().calliper_asked = a.tool == HandTool::calliper;
        }
        return true;
    }
    bool operator()(const ask::TapeSays& a) {
        if (any()) vine().tape = a.role;
        return true;
    }
    bool operator()(const ask::Choose& a) {
        if (any()) {
            vine().choose(a.axis);
            if (vine().chosen && a.node && axis_of(a.node) == a.axis) vine().chosen_node = a.node;
        }
        return true;
    }
    bool operator()(const ask::WalkCanes& a) {
        if (any()) vine().walk_canes(a.step);
        return true;
    }
    bool operator()(const ask::WalkBuds& a) {
        if (any()) vine().walk_buds(a.step);
        return true;
    }
    // ---- acts
    bool operator()(const ask::CutHere& a) {
        if (any()) s.acted(vine().cut(a.spot, tool_of(a.tool)));
        return true;
    }
    bool operator()(const ask::LayTo& a) {
        if (any()) s.acted(vine().lay(a.cane, a.side));
        return true;
    }
    bool operator()(const ask::TieHere& a) {
        if (any()) s.acted(vine().tie(a.spot));
        return true;
    }
    bool operator()(const ask::MarkAs& a) {
        if (any()) s.acted(vine().mark(a.axis, a.role));
        return true;
    }
    bool operator()(const ask::Confirm&) {
        if (any()) s.acted(vine().confirm());
        return true;
    }
    bool operator()(const ask::TakeBack&) {
        if (s.shell_.message) s.shell_.message.reset();
        else if (s.shell_.offers_watch || s.shell_.offers_drill) s.no_offers();
        else if (any() && vine().waiting()) vine().take_back();
        else if (any() && vine().tool != HandTool::none) {
            vine().tool = HandTool::none;
            vine().calliper_asked = false;
        } else if (any()) vine().choose({});
        return true;
    }
    bool operator()(const ask::Undo&) { return moved([](Practice& p) { p.undo(); }); }
    bool operator()(const ask::Redo&) { return moved([](Practice& p) { p.redo(); }); }
    bool operator()(const ask::JumpTo& a) {
        return moved([&](Practice& p) { p.jump(a.done); });
    }
    // ---- the way through
    bool operator()(const ask::GoToStep& a) {
        if (any()) {
            vine().go_to(a.step);
            note_finished();
        }
        return true;
    }
    bool operator()(const ask::NextStep&) {
        if (!any()) return true;
        if (vine().finished()) s.acted(s.next_vine());
        else {
            const auto now = static_cast<std::size_t>(vine().step());
            // From a step left early the strip goes on to the next one; it names what is still to do, and never blocks.
            vine().go_to(static_cast<Step>(std::min(now + 1, step_count - 1)));
            note_finished();
        }
        return true;
    }
    bool operator()(const ask::CutAgain&) {
        return moved([](Practice& p) { p.cut_again(); });
    }
    bool operator()(const ask::NextVine&) {
        s.acted(s.next_vine());
        return true;
    }
    bool operator()(const ask::OpenScene& a) {
        s.acted(s.open_scene(a.name, a.number));
        return true;
    }
    bool operator()(const ask::OpenCode& a) {
        s.acted(s.open_code(a.code));
        return true;
    }
    bool operator()(const ask::OfferTaken& a) {
        if (!s.offered_) return true;
        const settings::Work work = *s.offered_;
        s.offered_.reset();
        s.shell_.offered = false;
        if (a.yes) s.acted(s.take_up(work));
        else s.work_.set_aside();
        return true;
    }
    // ---- the look back
    bool operator()(const ask::ShowPiece& a) {
        if (LookBack* back = look()) back->current = std::min(a.at, back->walk.size());
        return true;
    }
    bool operator()(const ask::NextPiece& a) {
        LookBack* back = look();
        if (!back) return true;
        // Folded pieces are passed over; the heading stands at the end of the round.
        const auto count = back->walk.size() + 1;
        for (std::size_t i = 0; i < count; ++i) {
            back->current = (back->current + (a.step > 0 ? 1 : count - 1)) % count;
            if (back->current == back->walk.size() || !back->walk[back->current].folded) break;
        }
        return true;
    }
    bool operator()(const ask::ShowTwin& a) {
        if (LookBack* back = look()) back->twin_shown = a.on;
        return true;
    }
    bool operator()(const ask::NextAsGood&) {
        LookBack* back = look();
        if (back && !back->twins.empty()) back->as_good_shown = (back->as_good_shown + 1) % back->twins.size();
        return true;
    }
    bool operator()(const ask::Disagree& a) {
        s.shell_.message.reset();
        if (any()) s.acted(s.disagree(a.note));
        return true;
    }
    // ---- shown on the vine
    bool operator()(const ask::Watch& a) {
        if (!any()) return true;
        if (!a.on) return ended();
        s.no_offers();
        s.watched_ = true;
        s.shell_.screen = Screen::row;
        return told(vine().watch());
    }
    bool operator()(const ask::WatchNext&) { return shown([](Practice& p) { p.watch_next(); }); }
    bool operator()(const ask::WatchBack&) { return shown([](Practice& p) { p.watch_back(); }); }
    bool operator()(const ask::WatchOwn&) { return ended(); }
    bool operator()(const ask::Drill&) {
        if (!any()) return true;
        s.shell_.offers_drill = false;
        s.shell_.screen = Screen::row;
        return told(vine().begin_drill());
    }
    bool operator()(const ask::DrillAnswer& a) {
        return shown([&](Practice& p) {
            if (p.drill()) p.drill()->answer(a.older);
        });
    }
    bool operator()(const ask::DrillNext&) {
        return shown([](Practice& p) {
            if (p.drill() && !p.drill()->here()) p.end_showing();
            else if (p.drill()) p.drill()->next();
        });
    }
    bool operator()(const ask::DrillEnd&) {
        s.shell_.offers_drill = false;
        return shown([](Practice& p) {
            if (p.drill()) p.end_showing();
        });
    }
    bool operator()(const ask::GrowOn& a) {
        if (any()) vine().grow_on(a.on);
        return true;
    }
    // ---- looking: the picture's
    bool operator()(const ask::LookAtPiece&) { return false; }
    bool operator()(const ask::LookFrom&) { return false; }
    bool operator()(const ask::LookAtChosen&) { return false; }
    bool operator()(const ask::Hatch& a) {
        s.shell_.hatch = a.on;
        return true;
    }
    bool operator()(const ask::Orbit&) { return false; }
    // ---- the shell
    bool operator()(const ask::GoTo& a) {
        if (a.screen != Screen::row || any()) s.shell_.screen = a.screen;
        return true;
    }
    bool operator()(const ask::Speak& a) {
        s.acted(s.speak(a.language));
        return true;
    }
    bool operator()(const ask::TextScale& a) {
        s.shell_.settings.text_percent = std::clamp(a.percent, settings::least_text_percent, settings::most_text_percent);
        return kept();
    }
    bool operator()(const ask::Theme& a) { return read_into(s.shell_.settings.theme, a.theme), kept(); }
    bool operator()(const ask::Units& a) { return read_into(s.shell_.settings.units, a.units), kept(); }
    bool operator()(const ask::ReducedMotion& a) {
        s.shell_.settings.reduced_motion = a.on;
        return kept();
    }
    bool operator()(const ask::StepFeedback& a) {
        s.shell_.settings.step_feedback = a.on;
        if (any()) vine().step_feedback = a.on;
        return kept();
    }
    bool operator()(const ask::SafetySeen&) {
        s.shell_.settings.safety_seen = true;
        s.shell_.screen = any() ? Screen::row : Screen::home;
        return kept();
    }
    bool operator()(const ask::CloseMessage&) {
        s.shell_.message.reset();
        return true;
    }
    bool operator()(const ask::Leave&) {
        s.leaving_ = true;
        return true;
    }

private:
    template <class Move>
    bool moved(Move move) {
        if (!any()) return true;
        move(vine());
        s.shell_.message.reset();
        s.keep_work();
        return true;
    }
    bool kept() {
        s.keep_settings();
        return true;
    }
    // Nothing of what is shown is the trainee's work: no act is kept.
    bool told(const Result<void>& result) {
        if (result) s.shell_.message.reset();
        else s.say(result.error());
        return true;
    }
    template <class Show>
    bool shown(Show show) {
        if (any()) show(vine());
        s.shell_.message.reset();
        return true;
    }
    bool ended() {
        s.no_offers();
        return shown([](Practice& p) { p.end_showing(); });
    }
    void note_finished() {
        if (!vine().finished()) return;
        const Task& task = vine().task();
        const WalkedVine here = task.scene.empty() ? WalkedVine{task.code, {}, 0} : WalkedVine{task.code, task.scene, task.scene_number};
        auto& walked = s.shell_.walked;
        const bool has_way_back = !here.code.empty() || !here.scene.empty();
        if (has_way_back && std::find(walked.begin(), walked.end(), here) == walked.end()) walked.push_back(here);
    }
};

Session::Session(const io::Assets& assets, const settings::Folders& folders, words::Words words, std::function<std::uint64_t()> fresh_seed)
    : assets_(assets), folders_(folders), work_(folders.work_folder), fresh_seed_(std::move(fresh_seed)), words_(std::move(words)) {}

Result<std::unique_ptr<Session>> Session::make(const io::Assets& assets, const settings::Folders& folders, const Opening& opening,
                                               std::function<std::uint64_t()> fresh_seed) {
    auto words = words::load_words(assets, opening.language.value_or("en"));
    if (!words) return failure(std::move(words.error()));
    std::unique_ptr<Session> session(new Session(assets, folders, *std::move(words), std::move(fresh_seed)));
    if (auto listed = session->list_scenes(); !listed) return failure(std::move(listed.error()));
    session->recall();
    const auto said = session->shell_.message;  // stays to be read when a vine is opened at once
    if (opening.language) session->shell_.settings.language = *opening.language;
    Result<void> opened;
    if (opening.code) opened = session->open_code(*opening.code);
    else if (opening.scene) opened = session->open_scene(*opening.scene, 0);
    if (!opened) return failure(std::move(opened.error()));
    if (!session->shell_.message) session->shell_.message = said;
    if (!session->shell_.settings.safety_seen) session->shell_.screen = Screen::safety;
    return session;
}

void Session::recall() {
    if (!folders_.settings_file.empty()) {
        const settings::Loaded loaded = settings::load_settings(folders_.settings_file);
        shell_.settings = loaded.settings;
        may_save_settings_ = loaded.may_save;
        if (loaded.why) say({loaded.why->fault, {"screen.message.settings-unread"}, {{"path", folders_.settings_file}}, {}});
        if (shell_.settings.language != words_.language()) (void)speak(shell_.settings.language);
    }
    if (!work_.keeps()) return;
    if (auto made = settings::make_folder(work_.folder()); !made) {
        may_keep_ = false;
        return say(made.error());
    }
    lock_ = std::make_unique<settings::WorkLock>(work_.folder());
    if (lock_->held_by_another()) {
        shell_.read_only = true;
        return say({Fault::not_allowed, {"screen.message.second-window"}, {}, {}});
    }
    auto work = work_.load();
    if (!work) {
        if (work.error().fault == Fault::newer) may_keep_ = false;  // left as it was
        return say({work.error().fault, {"screen.message.work-unread"}, {{"path", work_.folder()}}, {}});
    }
    if (!*work || (*work)->plan.edits.empty()) return;
    offered_ = **work;
    shell_.offered = true;
    shell_.offered_vine = offered_->number ? WalkedVine{{}, offered_->scene, *offered_->number} : WalkedVine{offered_->code, {}, 0};
    shell_.offered_acts = offered_->done;
}

Result<void> Session::speak(const std::string& language) {
    auto words = words::load_words(assets_, language);
    if (!words) return failure(std::move(words.error()));
    words_ = *std::move(words);
    ++words_number_;
    const bool changed = shell_.settings.language != language;
    shell_.settings.language = language;
    if (changed) keep_settings();
    return {};
}

Result<void> Session::list_scenes() {
    const auto names = scenes::load_scene_order(assets_);
    if (!names) return failure(names.error());
    for (const std::string& name : *names) {
        auto scene = scenes::load_scene(assets_, name);
        if (!scene) return failure(std::move(scene.error()));
        shell_.scenes.push_back({name, scene->title_key, scene->task_key, scene->vines.size()});
    }
    return {};
}

Result<void> Session::open_code(const std::string& code) {
    auto found = commands::vine_of_code(code);
    if (!found) return failure(std::move(found.error()));
    if (auto judged = commands::can_be_judged(found->vine, code); !judged) return judged;
    const std::string house_name = scene_ ? scene_->house_rules : std::string(usual_house);
    auto house = io::load_house_rules(house_name, assets_);
    if (!house) return failure(std::move(house.error()));
    begin(Task{std::move(found->vine), found->code, {}, house_name, house->rules, {}});
    return {};
}

Result<Task> Session::scene_task(const std::string& name, std::size_t number) {
    auto scene = scenes::load_scene(assets_, name);
    if (!scene) return failure(std::move(scene.error()));
    number = std::min(number, scene->vines.size() - 1);
    auto grown = scenes::grow_scene_vine(*scene, number);
    if (!grown) return failure(std::move(grown.error()));
    if (auto judged = commands::can_be_judged(grown->vine, name); !judged) return failure(std::move(judged.error()));
    auto house = scenes::scene_house(*scene, assets_);
    if (!house) return failure(std::move(house.error()));
    scene_ = *std::move(scene);
    const GrowOnWish wish = grow_on_wish(*scene_, *grown);
    return Task{std::move(grown->vine), std::move(grown->code), name,          scene_->house_rules, *std::move(house),
                scene_->learn_keys,     number,                 scene_->task_key, scene_->begins,      wish};
}

Result<void> Session::open_scene(const std::string& name, std::size_t number) {
    auto task = scene_task(name, number);
    if (!task) return failure(std::move(task.error()));
    begin(*std::move(task));
    return {};
}

void Session::begin(Task task) {
    // Work offered and not answered is not lost by beginning something else.
    if (offered_ && !shell_.read_only) work_.set_aside();
    offered_.reset();
    shell_.offered = false;
    practice_.emplace(std::move(task));
    practice_->step_feedback = shell_.settings.step_feedback;
    shell_.message.reset();
    shell_.screen = Screen::row;
    shell_.offers_watch = practice_->task().begins == scenes::Begins::watch && !watched_;
    shell_.offers_drill = practice_->task().begins == scenes::Begins::old_or_new;
    ++vine_number_;
    worker_.ask(practice_->start(), practice_->task().house);
    shell_.searching = true;
    keep_work();
}

Result<void> Session::next_vine() {
    if (!practice_) return open_scene(shell_.scenes.front().name, 0);
    const Task& task = practice_->task();
    if (scene_ && task.scene == scene_->name && task.scene_number + 1 < scene_->vines.size())
        return open_scene(scene_->name, task.scene_number + 1);
    for (int i = 0; i < most_tries; ++i) {
        growth::Site site;
        site.seed = fresh_seed_() & ((std::uint64_t{1} << 40) - 1);
        site.age = own_age_from + static_cast<int>(site.seed % own_ages);
        const auto coded = growth::coded(site);
        if (!coded) continue;
        const auto vine = growth::grow_vine(site);
        if (!vine || (i + 1 < most_tries && cane_candidates(*vine).size() < least_canes)) continue;
        return open_code(print_code(*coded));
    }
    return failure({Fault::bad_file, {"screen.message.no-next-vine"}, {}, {}});
}

// The vine that work was done on: a scene's by name and number, a code's, or the one kept beside the work.
Result<Task> Session::kept_task(const settings::Work& work) {
    if (work.number) return scene_task(work.scene, *work.number);
    Vine vine;
    if (!work.code.empty()) {
        auto found = commands::vine_of_code(work.code);
        if (!found) return failure(std::move(found.error()));
        vine = std::move(found->vine);
    } else {
        auto file = io::load_vine_file(work_.path(work.vine_file));
        if (!file) return failure(std::move(file.error()));
        vine = std::move(file->vine);
    }
    auto house = io::load_house_rules(work.house, assets_);
    if (!house) return failure(std::move(house.error()));
    return Task{std::move(vine), work.code, work.scene, work.house, house->rules, {}};
}

Result<void> Session::take_up(const settings::Work& work) {
    auto task = kept_task(work);
    if (!task) return failure(std::move(task.error()));
    if (auto whole = prune(task->vine, work.plan); !whole) return failure(std::move(whole.error()));
    may_keep_ = false;  // not each act anew
    begin(*std::move(task));
    for (const Edit& edit : work.plan.edits) {
        (void)practice_->act(edit);
        if (practice_->waiting()) (void)practice_->confirm();
    }
    practice_->jump(work.done);
    if (practice_->can_undo()) no_offers();
    may_keep_ = true;
    keep_work();
    return {};
}

Result<void> Session::disagree(const std::string& note) {
    if (!work_.keeps() || shell_.read_only) return failure({Fault::cannot_write, {"screen.message.not-saved"}, {}, {}});
    if (auto made = settings::make_folder(work_.folder()); !made) return made;
    return add_line(work_.path("disagreements.jsonl"), disagreement_line(*practice_, note));
}

void Session::acted(const Result<void>& result) {
    if (!result) return say(result.error());
    shell_.message.reset();
    if (practice_ && practice_->can_undo()) no_offers();
    keep_work();
}

void Session::keep_work() {
    if (!practice_ || !work_.keeps() || shell_.read_only || !may_keep_) return;
    settings::Work work;
    const Task& task = practice_->task();
    work.code = task.code;
    work.scene = task.scene;
    work.house = task.house_name;
    work.plan = practice_->all_acts();
    work.done = practice_->done_count();
    if (!task.scene.empty()) work.number = task.scene_number;
    if (task.code.empty() && task.scene.empty()) {
        work.vine_file = "vine.json";
        if (auto made = settings::make_folder(work_.folder()); !made) return say({Fault::cannot_write, {"screen.message.not-saved"}, {}, {}});
        if (vine_kept_ != vine_number_) {
            io::VineFile file;
            file.vine = task.vine;
            if (!io::save_vine_file(work_.path(work.vine_file), file)) return say({Fault::cannot_write, {"screen.message.not-saved"}, {}, {}});
            vine_kept_ = vine_number_;
        }
    }
    if (auto saved = work_.save(work); saved) unsaved_said_ = false;
    else if (!unsaved_said_) {
        unsaved_said_ = true;  // aloud once; the work goes on in memory
        say({Fault::cannot_write, {"screen.message.not-saved"}, {}, {}});
    }
}

void Session::keep_settings() {
    if (folders_.settings_file.empty() || shell_.read_only || !may_save_settings_) return;
    auto made = settings::make_folder(settings::folder_of(folders_.settings_file));
    if (made) made = settings::save_settings(folders_.settings_file, shell_.settings);
    if (!made) say(made.error());
}

bool Session::carry_out(const Request& request) {
    const bool hand = std::visit([](const auto& asked) { return of_the_hand<std::decay_t<decltype(asked)>>; }, request);
    if (hand && practice_ && practice_->hand_rests()) {
        say({Fault::not_allowed, {"error.practice.hand-rests"}, {}, {}});
        return true;
    }
    return std::visit(Asker{*this}, request);
}

bool Session::poll() {
    auto found = worker_.take();
    if (!found || !practice_) return false;
    const bool waited = practice_->watch_waits();
    practice_->add_plans(*std::move(found));
    if (waited && !practice_->watching()) say({Fault::not_allowed, {"best.none"}, {}, {}});
    shell_.searching = false;
    return true;
}

}  // namespace spurwright::practice
