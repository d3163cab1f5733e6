#include "scenarios/practice/record_keeper.h"

#include "scenarios/records/answer.h"
#include "scenarios/records/backup.h"
#include "scenarios/records/quiz_record.h"
#include "sim/planning/difficulty.h"
#include "sim/pruning/plan_text.h"

namespace spurwright::practice {
namespace {

Result<records::Store> opened_store(const std::string& path) { return records::open_backed_up(path, records::today()); }

records::FinishedVine finished_vine(const Practice& practice, bool orbit, std::optional<std::int64_t> person) {
    const Task& task = practice.task();
    const LookBack& look = *practice.look();
    const auto difficulty = look.plans->none() || !look.plans->planning || !task.begun.edits.empty() ? std::nullopt : planning::difficulty_of(task.vine, task.house, *look.plans->planning);
    return {task.vine,       task.code, practice.done(), task.begun.edits.size(), task.house, task.house_name, task.scene.empty() ? "own" : "lesson", "window",
            orbit ? "orbit" : "row", person,    look.mine,       look.plans->none() ? std::nullopt : std::optional(look.plans->best().points),
            look.tally,      difficulty ? std::optional(difficulty->scale) : std::nullopt, look.plans->none() ? std::nullopt : std::optional(look.plans->tolerance)};
}

}  // namespace

Result<void> RecordKeeper::keep(const Practice& practice, std::uint64_t vine_number, bool orbit, std::optional<std::int64_t> person, const words::Words& words) {
    if (!keeps() || !practice.finished() || !practice.look()->plans || practice.done().edits.empty()) return {};
    const std::string plan = print_plan(practice.done());
    if (vine_kept_ == vine_number && plan_kept_ == plan) return {};
    auto store = opened_store(store_file_);
    if (!store) return failure(store.error());
    if (auto kept = records::keep_finished(*store, finished_vine(practice, orbit, person), words, records::utc_now()); !kept) return failure(kept.error());
    vine_kept_ = vine_number;
    plan_kept_ = plan;
    return {};
}

Result<void> RecordKeeper::keep(const records::LadderVine& walked, const records::LessonDone& done, std::optional<std::int64_t> person) const {
    if (!keeps()) return {};
    auto store = opened_store(store_file_);
    if (!store) return failure(store.error());
    const auto kept = records::keep_lesson(*store, walked, done, person, records::utc_now());
    return kept ? Result<void>{} : Result<void>(failure(kept.error()));
}

Result<void> RecordKeeper::keep(const CrewQuiz& crew, const rules::HouseRules& house) {
    if (!keeps() || !crew.quiz() || crew.quiz()->phase() != quiz::Phase::ended || has_kept(crew)) return {};
    auto store = opened_store(store_file_);
    if (!store) return failure(store.error());
    if (auto kept = records::keep_quiz(*store, {*crew.quiz(), crew.happened(), house}, records::utc_now()); !kept) return failure(kept.error());
    quiz_kept_ = crew.happened().size();
    return {};
}

}  // namespace spurwright::practice
