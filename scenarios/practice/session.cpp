#include "scenarios/practice/session.h"

#include <algorithm>

#include "scenarios/scenes/drawn_vine.h"
#include "scenarios/words/load_words.h"
#include "sim/pruning/plan.h"
#include "sim/vine/course_book.h"

namespace spurwright::practice {

Session::Session(const io::Assets& assets, const settings::Folders& folders, words::Words words, house::OwnHouse house, std::function<std::uint64_t()> fresh_seed)
    : assets_(assets), keeping_(folders), records_(folders.store_file), house_(std::move(house)), fresh_seed_(std::move(fresh_seed)), words_(std::move(words)) {}

Result<std::unique_ptr<Session>> Session::make(const io::Assets& assets, const settings::Folders& folders, const Opening& opening,
                                               std::function<std::uint64_t()> fresh_seed) {
    auto words = words::load_words(assets, opening.language.value_or("en"));
    if (!words) return failure(std::move(words.error()));
    auto house = house::OwnHouse::make(assets, folders.house_file);
    if (!house) return failure(std::move(house.error()));
    std::unique_ptr<Session> session(new Session(assets, folders, *std::move(words), *std::move(house), std::move(fresh_seed)));
    auto listed = scene_lines(assets);
    if (!listed) return failure(std::move(listed.error()));
    session->shell_.scenes = *std::move(listed);
    session->recall();
    const auto said = session->shell_.message;  // stays to be read when a vine is opened at once
    if (opening.language) {  // for this sitting, whatever the settings say
        if (auto asked = words::load_words(assets, *opening.language)) session->words_ = *std::move(asked);
        session->shell_.settings.language = *opening.language;
    }
    Result<void> opened;
    if (opening.code) opened = session->open_named(*opening.code);
    else if (opening.scene) opened = session->open(open_scene(assets, *opening.scene, 0));
    if (!opened) return failure(std::move(opened.error()));
    if (!session->shell_.message) session->shell_.message = said;
    if (!session->shell_.settings.safety_seen) session->shell_.screen = Screen::safety;
    return session;
}

void Session::recall() {
    if (auto read = keeping_.recall(shell_.settings); !read) say(read.error());
    if (shell_.settings.language != words_.language()) (void)speak(shell_.settings.language);
    if (auto read = house_.recall(); !read) say(read.error());
    tell_house();
    if (auto found = keeping_.recall_work(); !found) say(found.error());
    if (keeping_.read_only()) house_.keep_nothing();
    shell_.read_only = keeping_.read_only();
    const auto& offered = keeping_.offered();
    if (!offered) return;
    shell_.offered = true;
    shell_.offered_vine = offered->number ? WalkedVine{{}, offered->scene, *offered->number} : WalkedVine{offered->code, {}, 0};
    shell_.offered_acts = offered->done;
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

void Session::begin(Task task) {
    stop_growing();  // whatever was sought, this one is wanted now
    // Work offered and not answered is not lost by beginning something else.
    if (keeping_.take_offered()) keeping_.set_aside();
    shell_.offered = false;
    practice_.emplace(std::move(task));
    say_how_it_is_told();
    shell_.message.reset();
    shell_.screen = Screen::row;
    shell_.row_system = practice_->start().system;
    shell_.offers_watch = practice_->task().begins == scenes::Begins::watch && !watched_;
    shell_.offers_drill = practice_->task().begins == scenes::Begins::old_or_new;
    shell_.offers_questions = practice_->task().begins == scenes::Begins::questions;
    ++vine_number_;
    winters_.clear();
    year_worker_.forget();
    seek_plans();
    if (!practice_->on_ladder()) return;
    shell_.offers_watch = false;
    if (!practice_->task().ladder->rung.watched()) return;
    no_offers();
    (void)practice_->watch();  // waits for the plans
}

// Findings told at every step are leaned on: every second vine goes without a word until its end, but on the rungs whose
// words still explain each step.
void Session::say_how_it_is_told() {
    const auto& ladder = practice_->task().ladder;
    const bool told = ladder ? ladder->rung.feedback : shell_.settings.step_feedback, explained = ladder && ladder->rung.explained;
    practice_->silent = told && !explained && ++told_vines_ % 2 == 0;
    practice_->step_feedback = told && !practice_->silent;
}

// Those of the vine in hand, unless they were found before.
void Session::seek_plans() {
    shell_.searching = !practice_->plans();
    if (!shell_.searching) return plan_worker_.forget();
    Vine vine = practice_->start();
    vine.courses = std::make_shared<CourseBook>();  // the window goes on writing in the vine's own
    plan_worker_.ask([vine = std::move(vine), house = practice_->task().house, begun = practice_->task().begun] { return search_plans(vine, house, begun); });
}

Result<void> Session::open(Result<Opened> opened) {
    if (!opened) return failure(std::move(opened.error()));
    if (opened->scene) scene_ = std::move(opened->scene);
    begin(std::move(opened->task));
    keep_work();
    return {};
}

Result<void> Session::open_of_scene(const std::string& scene, std::size_t number, Then then) {
    const auto line = std::find_if(shell_.scenes.begin(), shell_.scenes.end(), [&](const SceneLine& one) { return one.name == scene; });
    if (line == shell_.scenes.end() || number < line->vines) {
        auto opened = open_scene(assets_, scene, number);
        return opened ? then(*std::move(opened)) : failure(std::move(opened.error()));
    }
    if (!growing_worker_) growing_worker_ = std::make_unique<Worker<Result<Opened>>>();
    shell_.message.reset();
    shell_.growing = Growing{};
    shell_.growing->of = scenes::most_drawn;
    when_grown_ = std::move(then);
    growing_worker_->ask([&assets = assets_, scene, number, tried = shell_.growing->tried] { return open_scene(assets, scene, number, tried.get()); });
    return {};
}

void Session::stop_growing() {
    if (growing_worker_) growing_worker_->forget();
    when_grown_ = nullptr;
    shell_.growing.reset();
}

Result<void> Session::open_named(const std::string& code) { return open(open_code(assets_, code, house_.differs() || !scene_ ? house_.name() : scene_->house_rules)); }

Result<void> Session::next_vine() {
    if (practice_ && practice_->on_ladder() && shell_.screen == Screen::row) return open_ladder_vine({});
    const bool of_scenes = shell_.row_system == System::two_cane;
    if (!practice_ && of_scenes) return open(open_scene(assets_, shell_.scenes.front().name, 0));
    if (!of_scenes) {
        const auto code = next_code(fresh_seed_, shell_.row_system);
        return code ? open_named(*code) : failure(code.error());
    }
    // From a later winter of a scene's vine the row goes on with the scene's next one.
    const bool first_in_hand = winters_.empty() || !winters_.front().from;
    const Task& task = first_in_hand ? practice_->task() : winters_.front().from->task();
    if (scene_ && task.scene == scene_->name && task.scene_number + 1 < scene_->vines.size())
        return open(open_scene(assets_, task.scene, task.scene_number + 1));
    const auto code = next_code(fresh_seed_);
    return code ? open_named(*code) : failure(code.error());
}

Result<void> Session::take_up(settings::Work work) {
    if (work.number) return open_of_scene(work.scene, *work.number, [this, work](Opened opened) { return go_on_with(work, std::move(opened)); });
    auto opened = open_work(assets_, work, keeping_.path(work.vine_file));
    return opened ? go_on_with(work, *std::move(opened)) : failure(std::move(opened.error()));
}

Result<void> Session::go_on_with(const settings::Work& work, Opened opened) {
    (void)keeping_.take_offered();
    shell_.offered = false;
    if (opened.scene) scene_ = std::move(opened.scene);
    if (auto rung = take_up_rung(opened, work); !rung) return rung;
    if (auto whole = prune(opened.task.vine, work.plan); !whole) return failure(std::move(whole.error()));
    begin(std::move(opened.task));
    const std::size_t begun = practice_->task().begun.edits.size();  // they stand already
    for (std::size_t i = begun; i < work.plan.edits.size(); ++i) {
        (void)practice_->act(work.plan.edits[i]);
        if (practice_->waiting()) (void)practice_->confirm();
    }
    practice_->tell_shown(work.shown);
    practice_->jump(work.done);
    if (practice_->can_undo()) no_offers();
    keep_work();  // once, not each act anew
    return {};
}

void Session::answer(const Carried& carried) {
    switch (carried.came) {
        case Came::pointed: return;
        case Came::acted:
            acted(carried.refused ? failure(*carried.refused) : Result<void>{});
            if (!carried.refused && practice_->finished()) came_to_the_end();  // the word that it waited for
            return;
        case Came::moved: shell_.message.reset(); keep_ladder_vine(); return keep_work();
        case Came::shown: shell_.message.reset(); return;
    }
}

void Session::acted(const Result<void>& result) {
    if (!result) return say(result.error());
    shell_.message.reset();
    if (practice_ && practice_->can_undo()) no_offers();
    keep_work();
}

void Session::tell_house() {
    shell_.house = house_.file();
    shell_.house_shipped = house_.base();
}

// The vine in hand is judged by them at once; a scene's own rules come back with its next vine.
void Session::changed_house(const Result<void>& result) {
    if (!result) say(result.error());
    else shell_.message.reset();
    const bool same = house_.rules() == shell_.house.rules;
    tell_house();
    if (same || !practice_ || shows_two()) return;
    rules::HouseRules rules = house_.rules();
    if (const auto& target = practice_->task().from_book) rules.bud_load.target = reference_vines::asked_buds(*target).number;
    practice_->judge_under(house_.name(), rules);
    seek_plans();
    keep_work();
}

void Session::keep_work() {
    if (!practice_) return;
    if (auto kept = keeping_.keep(*practice_, vine_number_); !kept) say(kept.error());
}

void Session::keep_settings() {
    if (auto kept = keeping_.keep(shell_.settings); !kept) say(kept.error());
}

void Session::came_to_the_end() {
    if (practice_->on_ladder()) keep_work();  // what was done for the trainee at the end
    keep_finished();
    const Task& task = practice_->task();
    const WalkedVine here = task.scene.empty() ? WalkedVine{task.code, {}, 0} : WalkedVine{task.code, task.scene, task.scene_number};
    auto& walked = shell_.walked;
    const bool has_way_back = !here.code.empty() || !here.scene.empty();
    if (has_way_back && std::find(walked.begin(), walked.end(), here) == walked.end()) walked.push_back(here);
}

void Session::keep_finished() {
    if (!practice_ || shell_.read_only) return;
    keep_ladder_vine();
    if (const auto& ladder = practice_->task().ladder; ladder && !ladder->rung.whole() && !ladder->rung.watched()) return;  // not the trainee's work alone
    if (auto kept = records_.keep(*practice_, vine_number_, shell_.orbit, sitter(), words_); !kept) say(kept.error());
}

// Of the vine looked back on: asked for once its charges are known, and told whenever they come.
bool Session::poll_seasons() {
    if (!practice_) return false;
    if (acts_of_ != vine_number_) {  // another vine is in hand, perhaps one that was looked back on before
        if (acts_worker_) acts_worker_->forget();
        practice_->ask_seasons_anew();
        acts_of_ = vine_number_;
    }
    if (auto wish = practice_->take_acts_wish()) {
        if (!acts_worker_) acts_worker_ = std::make_unique<Worker<ahead::ActsAhead>>();
        acts_worker_->ask([wish = *std::move(wish)] { return acts_ahead(wish); });
    }
    auto lived = acts_worker_ ? acts_worker_->take() : std::nullopt;
    if (!lived) return false;
    practice_->add_seasons(*std::move(lived));
    return true;
}

bool Session::poll() {
    if (poll_book()) return true;
    if (crew_ && crew_->poll()) {
        if (!crew_->quiz()) say({Fault::not_allowed, {"error.quiz.no-vines"}, {}, {}});
        keep_quiz();  // one that a crash ended after its end
        return true;
    }
    if (looks_ && looks_->poll()) return true;
    if (auto grown = growing_worker_ ? growing_worker_->take() : std::nullopt) {
        const Then then = when_grown_;
        stop_growing();
        acted(*grown ? then(**std::move(grown)) : Result<void>(failure(grown->error())));
        return true;
    }
    if (auto lived = year_worker_.take()) {
        if (auto* spring = std::get_if<SpringVisit>(&*lived); spring && practice_) practice_->add_spring(std::move(*spring));
        if (auto* winter = std::get_if<NextWinter>(&*lived); winter && shows_two()) winters_.back().found = std::move(*winter);
        return true;
    }
    if (poll_seasons()) return true;
    auto found = plan_worker_.take();
    if (!found || !practice_) return false;
    const bool waited = practice_->watch_waits();
    practice_->add_plans(*std::move(found));
    if (waited && !practice_->watching()) say({Fault::not_allowed, {"best.none"}, {}, {}});
    shell_.searching = false;
    keep_finished();
    return true;
}

}  // namespace spurwright::practice
