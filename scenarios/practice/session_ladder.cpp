// The ladder from the session: gone to, a vine of it opened, what came of it kept and counted.
#include "scenarios/practice/session.h"

namespace spurwright::practice {

// What there is of it: the lessons' files are read once, and what was walked whenever somebody else sits here.
Result<void> Session::need_ladder() {
    if (ladder_) return {};
    auto desk = ladder_desk(assets_, records_.store_file(), sitter());
    if (!desk) return failure(std::move(desk.error()));
    ladder_ = *std::move(desk);
    return {};
}

void Session::go_to_ladder() {
    shell_.message.reset();
    if (auto there = need_ladder(); !there) return say(there.error());
    shell_.screen = Screen::ladder;
}

// No lesson, no rung: those that are suggested.
Result<void> Session::open_ladder_vine(const ask::LadderVine& wish) {
    if (auto there = need_ladder(); !there) return there;
    const std::size_t lesson = wish.lesson.value_or(ladder_->next);
    if (lesson >= ladder_->lessons.lessons.size()) return {};
    return open_of_scene(ladder_->lessons.lessons[lesson].scene, ladder_->progress[lesson].next, [this, lesson, rung = wish.rung.value_or(ladder_->standing.rung)](Opened opened) {
        put_on_rung(opened, *ladder_, lesson, rung);
        return open(std::move(opened));
    });
}

// Of work taken up again: the rung it was on, with what was done for the trainee.
Result<void> Session::take_up_rung(Opened& opened, const settings::Work& work) {
    if (!work.rung) return {};
    if (auto there = need_ladder(); !there) return there;
    const std::size_t lesson = ladder_->at_of(work.scene);
    if (lesson == ladder_->lessons.lessons.size() || *work.rung > ladder_->top()) return {};  // the files are others now: a vine like any
    opened.task.ladder = OnRung{*work.rung, ladder_->rung(*work.rung), ladder_->lessons.lessons[lesson]};
    if (!sitter() && ladder_->walked.empty()) {
        ladder_->from = *work.rung;
        ladder_->reckon();
    }
    return {};
}

// A vine on the ladder counts once, when it is first finished; a watched one when it was watched to its end.
void Session::keep_ladder_vine() {
    if (!practice_ || !practice_->on_ladder() || ladder_counted_ == vine_number_ || shell_.read_only) return;
    const Task& task = practice_->task();
    records::LadderVine walked{task.scene, task.scene_number, task.ladder->number, {}, {}};
    records::LessonDone done{task.vine, task.code, {}, {}, task.house, task.house_name, {}, {}, {}};
    if (task.ladder->rung.watched()) {
        if (!practice_->watching() || practice_->watching()->shown()) return;
        walked.tolerance = practice_->plans() ? practice_->plans()->tolerance : Tenths{};
    } else {
        const auto yours = practice_->yours();
        if (!yours) return;
        const LookBack& look = *practice_->look();
        walked.tolerance = look.plans->tolerance;
        walked.yours = yours->steps;
        done.plan = practice_->done();
        done.shown = practice_->shown_acts();
        done.shown.resize(done.plan.edits.size());
        done.points = look.mine.points;
        done.best = look.plans->best().points;
        done.tally = look.tally;
    }
    ladder_counted_ = vine_number_;
    if (auto there = need_ladder(); !there) return say(there.error());
    ladder_->walked.push_back(walked);
    ladder_->reckon();
    if (auto kept = records_.keep(walked, done, sitter()); !kept) say(kept.error());
}

}  // namespace spurwright::practice
