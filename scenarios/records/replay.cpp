#include "scenarios/records/replay.h"

#include "scenarios/commands/judged.h"
#include "scenarios/io/json_fields.h"
#include "scenarios/io/vine_file.h"
#include "scenarios/quiz/item_maker.h"
#include "scenarios/records/answer.h"
#include "scenarios/records/backup.h"
#include "scenarios/records/lesson_record.h"
#include "scenarios/records/quiz_record.h"
#include "scenarios/records/restore.h"
#include "scenarios/records/weighing_record.h"
#include "sim/core/hash.h"
#include "sim/planning/planning.h"
#include "sim/pruning/plan_text.h"
#include "sim/pruning/plan.h"
#include "sim/rules/judge.h"
#include "sim/rules/rule_set_reader.h"
#include "sim/vine/canonical_text.h"

namespace spurwright::records {
namespace {

// Why it cannot be judged again.
struct Lost {
    TextKey why;
};
template <class T>
using OrLost = std::variant<T, Lost>;

template <class T>
const Lost* lost_of(const OrLost<T>& found) {
    return std::get_if<Lost>(&found);
}

OrLost<Vine> vine_kept(Store& store, const std::string& hash) {
    const auto kept = kept_vine(store, hash);
    if (!kept) return Lost{TextKey{"records.lost.vine-damaged"}};
    if (!*kept) return Lost{TextKey{"records.lost.vine"}};
    auto file = io::read_vine_file((*kept)->file, hash);
    if (!file || hash_text(vine_hash(file->vine)) != hash) return Lost{TextKey{"records.lost.vine-damaged"}};
    return std::move(file->vine);
}

// Its hash holds for the judge's version that it was kept with.
OrLost<rules::HouseRules> rules_kept(Store& store, const std::string& hash) {
    const auto kept = kept_rule_set(store, hash);
    if (!kept || !*kept) return Lost{TextKey{"records.lost.rules"}};
    std::vector<std::string> lines;
    for (std::size_t at = 0; at < (*kept)->lines.size();) {
        const std::size_t end = std::min((*kept)->lines.find('\n', at), (*kept)->lines.size());
        lines.push_back((*kept)->lines.substr(at, end - at));
        at = end + 1;
    }
    if (hash_text(rules::rule_set_hash(std::move(lines), (*kept)->judge_version)) != hash) return Lost{TextKey{"records.lost.rules-damaged"}};
    auto house = rules::read_rule_set((*kept)->lines);
    if (!house) return Lost{TextKey{"records.lost.rules-of-another"}};
    return *house;
}

struct AnswerBody {
    std::string vine_hash, rule_set_hash, plan;
    std::size_t given = 0;
    int judge_version = 0;
    std::int64_t marks = 0;
    std::optional<std::int64_t> best;
    std::string counted, better, equal; // as digits
};

std::optional<AnswerBody> read_answer(const std::string& body) {
    const auto json = io::read_json(body, "event");
    if (!json) return std::nullopt;
    io::Refusal refusal("event");
    io::Fields fields(refusal, *json);
    AnswerBody read;
    read.vine_hash = fields.text("vine_hash", 16);
    read.rule_set_hash = fields.text("rule_set_hash", 16);
    read.plan = fields.text("plan", longest_plan_text);
    read.given = static_cast<std::size_t>(fields.whole("plan_prefix", 0, 10'000));
    read.judge_version = static_cast<int>(fields.whole("judge_version", 1, 1'000'000));
    read.marks = fields.whole("marks_tenths", -10'000, 10'000);
    if (!fields.required("best_tenths").is(io::Json::Kind::null)) read.best = fields.whole("best_tenths", -10'000, 10'000);
    read.counted = fields.required("plans_counted").text;
    read.better = fields.required("plans_better").text;
    read.equal = fields.required("plans_equal").text;
    if (refusal.any()) return std::nullopt;
    return read;
}

std::string points(std::int64_t tenths) { return io::Json(Tenths{static_cast<std::int32_t>(tenths)}).text; }

std::string said(std::int64_t marks, std::optional<std::int64_t> best, const std::string& counted, const std::string& better, const std::string& equal) {
    return "marks " + points(marks) + ", best " + (best ? points(*best) : "-") + ", plans " + counted + "/" + better + "/" + equal;
}

// What the same vine, plan and rules come to now.
std::optional<std::string> judged_now(const Vine& vine, const Plan& plan, std::size_t given, const rules::HouseRules& house) {
    if (!commands::can_be_judged(vine, "event")) return std::nullopt;
    const auto after = prune(vine, plan);
    Plan begun;
    begun.edits.assign(plan.edits.begin(), plan.edits.begin() + static_cast<std::ptrdiff_t>(std::min(given, plan.edits.size())));
    const auto begun_vine = prune(vine, begun);
    if (!after || !begun_vine) return std::nullopt;
    const planning::Planning planning = given == 0 ? planning::Planning(vine, house) : planning::Planning(vine, house, *begun_vine);
    const rules::Judgement judgement = rules::judge(vine, *after, house);
    const auto best = planning.best();
    const planning::Tally tally = planning.count(judgement.points);
    return said(judgement.points.count, best ? std::optional<std::int64_t>(best->points.count) : std::nullopt, std::to_string(tally.counted), std::to_string(tally.better),
                std::to_string(tally.equal));
}

void replay_answer(Store& store, const Event& event, Replayed& replayed) {
    const auto unreadable = [&](TextKey why) {
        replayed.outcome = Outcome::unreadable;
        replayed.why = why;
    };
    const auto body = event.version == answer_version ? read_answer(event.body) : std::nullopt;
    if (!body) return unreadable(TextKey{"records.lost.body"});
    const auto vine = vine_kept(store, body->vine_hash);
    if (const auto* lost = std::get_if<Lost>(&vine)) return unreadable(lost->why);
    const auto house = rules_kept(store, body->rule_set_hash);
    if (const auto* lost = std::get_if<Lost>(&house)) return unreadable(lost->why);
    const auto plan = parse_plan(body->plan);
    if (!plan) return unreadable(TextKey{"records.lost.body"});
    const auto now = judged_now(std::get<Vine>(vine), *plan, body->given, std::get<rules::HouseRules>(house));
    if (!now) return unreadable(TextKey{"records.lost.plan"});
    replayed.was = said(body->marks, body->best, body->counted, body->better, body->equal);
    replayed.is = *now;
    replayed.outcome = body->judge_version != rules::judge_version ? Outcome::other_judge : replayed.was == replayed.is ? Outcome::same : Outcome::different;
}

// Questions made again from kind, seed and rules: "" where each is there with its vine and key, else the first that is not.
std::string made_otherwise(const KeptQuiz& kept, const rules::HouseRules& house, bool& same_vines) {
    quiz::Served served;
    const auto& gathered = kept.quiz.gathered();
    same_vines = gathered.items == kept.questions.size();
    if (!same_vines) return "";
    const std::vector<quiz::Item> items = quiz::make_items(gathered.kinds, gathered.items, gathered.seed, house, served);
    same_vines = items.size() == kept.questions.size();
    for (std::size_t i = 0; same_vines && i < items.size(); ++i) {
        if (hash_text(vine_hash(items[i].vine)) != kept.questions[i].vine_hash) same_vines = false;
        else if (items[i].accepted != kept.questions[i].accepted || items[i].scored != kept.questions[i].scored) return "key of question " + std::to_string(i + 1);
    }
    return "";
}

void replay_quiz(Store& store, const Event& event, Replayed& replayed) {
    const auto unreadable = [&](TextKey why) {
        replayed.outcome = Outcome::unreadable;
        replayed.why = why;
    };
    const auto kept = event.version == quiz_version ? read_kept_quiz(event.body, "event " + std::to_string(event.id)) : Result<KeptQuiz>(failure(Error{}));
    if (!kept) return unreadable(TextKey{"records.lost.body"});
    for (const KeptQuestion& question : kept->questions)
        if (const auto vine = vine_kept(store, question.vine_hash); lost_of(vine)) return unreadable(lost_of(vine)->why);
    const auto house = rules_kept(store, kept->rule_set_hash);
    if (const auto* lost = std::get_if<Lost>(&house)) return unreadable(lost->why);
    replayed.was = kept->results;
    replayed.is = io::print_json_line(results_object(quiz::results_of(kept->quiz)));
    replayed.outcome = replayed.was == replayed.is ? Outcome::same : Outcome::different;
    if (kept->judge_version != rules::judge_version) {
        replayed.outcome = Outcome::other_judge;
        return;
    }
    bool same_vines = false;
    const std::string otherwise = made_otherwise(*kept, std::get<rules::HouseRules>(house), same_vines);
    replayed.keys_proved = same_vines && otherwise.empty();
    if (otherwise.empty()) return;
    replayed.outcome = Outcome::different;
    replayed.is = otherwise;
}

// Weighed again: the same brush, the same deeds, the same paper.
void replay_weighing(Store& store, const Event& event, Replayed& replayed) {
    const auto unreadable = [&](TextKey why) {
        replayed.outcome = Outcome::unreadable;
        replayed.why = why;
    };
    const auto kept = event.version == weighing_version ? read_kept_weighing(event.body) : std::nullopt;
    if (!kept) return unreadable(TextKey{"records.lost.body"});
    const auto vine = vine_kept(store, kept->vine_hash);
    if (lost_of(vine)) return unreadable(lost_of(vine)->why);
    const auto house = rules_kept(store, kept->rule_set_hash);
    if (lost_of(house)) return unreadable(lost_of(house)->why);
    const auto plan = parse_plan(kept->plan);
    if (!plan) return unreadable(TextKey{"records.lost.body"});
    const auto now = weighed_again(std::get<Vine>(vine), *plan, std::get<rules::HouseRules>(house), *kept);
    if (!now) return unreadable(TextKey{"records.lost.plan"});
    replayed.was = kept->came;
    replayed.is = *now;
    replayed.outcome = kept->judge_version != rules::judge_version ? Outcome::other_judge : replayed.was == replayed.is ? Outcome::same : Outcome::different;
}

// Weighings of version 1 hold nothing to weigh again by.
bool is_kept_weighing(const Event& event) { return event.kind == weighing_kind && event.version >= weighing_version; }
// A vine of the ladder is judged again as an answer is; one that was only watched has no marks.
bool is_judged(const Event& event) { return event.kind == answer_kind || (event.kind == lesson_kind && read_answer(event.body)); }
bool holds_marks(const Event& event) { return is_judged(event) || event.kind == quiz_kind || is_kept_weighing(event); }

std::vector<std::string> hashes_named(const Event& event) {
    std::vector<std::string> hashes;
    if (is_judged(event))
        if (const auto body = read_answer(event.body)) hashes.push_back(body->vine_hash);
    if (event.kind == quiz_kind)
        if (const auto kept = read_kept_quiz(event.body, "event"))
            for (const KeptQuestion& question : kept->questions) hashes.push_back(question.vine_hash);
    if (is_kept_weighing(event))
        if (const auto kept = read_kept_weighing(event.body)) hashes.push_back(kept->vine_hash);
    return hashes;
}

std::optional<std::string> rules_named(const Event& event) {
    if (is_judged(event))
        if (const auto body = read_answer(event.body)) return body->rule_set_hash;
    if (event.kind == quiz_kind)
        if (const auto kept = read_kept_quiz(event.body, "event")) return kept->rule_set_hash;
    if (is_kept_weighing(event))
        if (const auto kept = read_kept_weighing(event.body)) return kept->rule_set_hash;
    return std::nullopt;
}

void check_event(const Event& event, Checked& checked, std::vector<std::pair<std::string, std::string>>& needed) {
    const std::string where = "event " + std::to_string(event.id);
    ++checked.events;
    const auto json = io::read_json(event.body, where);
    const auto rules = rules_named(event);
    if (!json || (holds_marks(event) && !rules)) return checked.damaged.push_back({where, TextKey{"records.lost.body"}});
    if (!rules) return;
    for (const std::string& hash : hashes_named(event)) needed.emplace_back("SELECT count(*) FROM kept_vine WHERE hash = ?1", hash);
    needed.emplace_back("SELECT count(*) FROM rule_set WHERE hash = ?1", *rules);
}

Result<std::vector<std::string>> all_texts(Store& store, std::string_view sql) {
    std::vector<std::string> all;
    auto read = store.each(sql, {}, 1, [&](const Row& row) { all.push_back(row.text(0)); });
    if (!read) return failure(read.error());
    return all;
}

} // namespace

Result<std::vector<Replayed>> replay(Store& store, std::optional<std::int64_t> id, const std::function<void(int, int)>& progress) {
    std::vector<Event> events;
    auto read = each_event(store, "", 0, [&](const Event& event) {
        if ((!id || event.id == *id) && holds_marks(event)) events.push_back(event);
    });
    if (!read) return failure(read.error());
    if (id && events.empty()) return failure({Fault::unknown_part, TextKey{"error.records.no-event"}, {{"n", std::to_string(*id)}}, {"records replay", 0, 0, 0}});
    std::vector<Replayed> all;
    for (const Event& event : events) {
        all.push_back({event.id, event.kind, event.when_utc, Outcome::same, "", "", {}, false});
        if (is_judged(event)) replay_answer(store, event, all.back());
        else if (event.kind == quiz_kind) replay_quiz(store, event, all.back());
        else replay_weighing(store, event, all.back());
        if (progress) progress(static_cast<int>(all.size()), static_cast<int>(events.size()));
    }
    return all;
}

Result<Checked> check_contents(Store& store) {
    Checked checked;
    if (auto sound = store.check(); !sound) checked.damaged.push_back({store.path(), sound.error().key});
    std::vector<std::pair<std::string, std::string>> needed;
    auto read = each_event(store, "", 0, [&](const Event& event) { check_event(event, checked, needed); });
    if (!read) return failure(read.error());
    for (const auto& [sql, hash] : needed) {
        const auto there = store.whole(sql, {hash});
        if (!there) return failure(there.error());
        if (there->value_or(0) == 0) checked.damaged.push_back({hash, TextKey{"records.lost.needed"}});
    }
    const auto vines = all_texts(store, "SELECT hash FROM kept_vine ORDER BY hash"), sets = all_texts(store, "SELECT hash FROM rule_set ORDER BY hash");
    if (!vines) return failure(vines.error());
    if (!sets) return failure(sets.error());
    for (const std::string& hash : *vines)
        if (const auto vine = vine_kept(store, hash); lost_of(vine)) checked.damaged.push_back({"vine " + hash, lost_of(vine)->why});
    for (const std::string& hash : *sets)
        if (const auto rules = rules_kept(store, hash); lost_of(rules) && lost_of(rules)->why.name != "records.lost.rules-of-another")
            checked.damaged.push_back({"rules " + hash, lost_of(rules)->why});
    checked.vines = static_cast<std::int64_t>(vines->size());
    checked.rule_sets = static_cast<std::int64_t>(sets->size());
    return checked;
}

Result<Checked> check_records(Store& store) {
    auto checked = check_contents(store);
    if (!checked) return checked;
    for (const std::string& copy : copies_of(store)) {
        ++checked->backups;
        auto opened = Store::open_to_read(copy);
        if (!opened || !*opened || !(*opened)->check()) checked->damaged.push_back({copy, TextKey{"records.lost.copy"}});
    }
    return checked;
}

} // namespace spurwright::records
