#include "scenarios/records/lesson_record.h"

#include "scenarios/io/json_fields.h"
#include "scenarios/records/act.h"
#include "scenarios/records/answer.h"
#include "scenarios/records/readable_body.h"
#include "sim/core/hash.h"
#include "sim/pruning/plan_text.h"
#include "sim/rules/findings.h"
#include "sim/vine/canonical_text.h"

namespace spurwright::records {
namespace {

using io::Json;

constexpr std::int64_t most_tenths = 10'000, most_vine_number = 1'000'000, most_rung = 100;

Json lesson_body(const LadderVine& walked, const LessonDone& done) {
    const auto tenths = [](const std::optional<Tenths>& value) { return value ? Json(value->count) : Json(); };
    Json o = Json::object();
    o.set("scene", walked.scene);
    o.set("number", static_cast<std::int64_t>(walked.number));
    o.set("rung", walked.rung);
    o.set("as_good_tenths", walked.tolerance.count);
    Json steps = Json::list();
    for (const StepResult& result : walked.yours) {
        Json step = Json::object();
        step.set("step", word_of(result.step));
        step.set("lost_tenths", result.lost.count);
        step.set("mend_now_tenths", result.mend_now.count);
        step.set("capped", result.capped);
        steps.push(std::move(step));
    }
    o.set("yours", std::move(steps));
    o.set("vine_hash", hash_text(vine_hash(done.vine)));
    o.set("vine_code", done.code.empty() ? Json() : Json(done.code));
    o.set("plan", print_plan(done.plan));
    std::string shown;
    for (const bool one : done.shown) shown += one ? '1' : '0';
    o.set("shown", shown);
    o.set("rule_set_hash", hash_text(rules::rule_set_hash(done.house)));
    o.set("rule_set_name", done.house_name);
    o.set("judge_version", rules::judge_version);
    o.set("program_version", program_version());
    o.set("marks_tenths", tenths(done.points));
    o.set("best_tenths", tenths(done.best));
    o.set("plan_prefix", 0);  // nothing was done before the vine was opened
    o.set("plans_counted", done.tally.counted);
    o.set("plans_better", done.tally.better);
    o.set("plans_equal", done.tally.equal);
    return o;
}

std::optional<LadderVine> read_lesson_event(const Event& event) {
    const auto json = event.version == lesson_version ? io::read_json(event.body, "event") : failure(Error{});
    if (!json) return std::nullopt;
    io::Refusal refusal("event");
    io::Fields fields(refusal, *json);
    LadderVine walked;
    walked.scene = fields.text("scene", 100);
    walked.number = static_cast<std::size_t>(fields.whole("number", 0, most_vine_number));
    walked.rung = static_cast<int>(fields.whole("rung", 0, most_rung));
    walked.tolerance = Tenths{static_cast<std::int32_t>(fields.whole("as_good_tenths", 0, most_tenths))};
    for (const Json& one : fields.list("yours", true)) {
        io::Fields step(refusal, one);
        StepResult result;
        result.step = step.word<rules::Step>("step");
        result.lost = Tenths{static_cast<std::int32_t>(step.whole("lost_tenths", -most_tenths, most_tenths))};
        result.mend_now = Tenths{static_cast<std::int32_t>(step.whole("mend_now_tenths", 0, most_tenths))};
        result.capped = step.yes("capped");
        walked.yours.push_back(result);
    }
    if (refusal.any()) return std::nullopt;
    return walked;
}

Result<bool> same_lesson_kept(Store& store, const LadderVine& walked, const LessonDone& done, const std::optional<std::int64_t>& person) {
    bool same = false;
    auto read = store.each("SELECT " + in_body("plan") + ", " + in_body("rung") + " FROM event WHERE kind = 'lesson' AND " + in_body("vine_hash") + " = ?1 "
                           "AND person IS ?2 ORDER BY id DESC LIMIT 1",
                           {hash_text(vine_hash(done.vine)), value_of(person)}, 2,
                           [&](const Row& row) { same = row.text(0) == print_plan(done.plan) && row.whole(1) == walked.rung; });
    if (!read) return failure(read.error());
    return same;
}

}  // namespace

Result<std::optional<std::int64_t>> keep_lesson(Store& store, const LadderVine& walked, const LessonDone& done, std::optional<std::int64_t> person, const std::string& when_utc) {
    const auto act = Act::begin(store, "lesson", when_utc);
    if (!act) return failure(act.error());
    const auto there = same_lesson_kept(store, walked, done, person);
    if (!there) return failure(there.error());
    if (*there) return std::optional<std::int64_t>();
    if (auto kept = keep_what_it_needs(store, done.vine, done.code, done.house, done.house_name); !kept) return failure(kept.error());
    const auto id = add_event(store, {0, std::string(lesson_kind), lesson_version, when_utc, person, io::print_json_line(lesson_body(walked, done)), std::nullopt});
    if (!id) return failure(id.error());
    if (auto committed = (*act)->commit(); !committed) return failure(committed.error());
    return std::optional(*id);
}

Result<std::vector<LadderVine>> lessons_of(Store& store, std::int64_t person) {
    std::vector<LadderVine> all;
    auto read = each_event(store, lesson_kind, 0, [&](const Event& event) {
        if (event.person != person) return;
        if (auto walked = read_lesson_event(event)) all.push_back(*std::move(walked));
    });
    if (!read) return failure(read.error());
    return all;
}

}  // namespace spurwright::records
