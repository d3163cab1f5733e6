#include "scenarios/records/quiz_record.h"

#include <algorithm>
#include <random>

#include "scenarios/io/json_fields.h"
#include "scenarios/quiz/event_text.h"
#include "scenarios/records/act.h"
#include "scenarios/records/answer.h"
#include "scenarios/records/readable_body.h"
#include "sim/core/hash.h"
#include "sim/rules/judge.h"
#include "sim/vine/canonical_text.h"

namespace spurwright::records {
namespace {

using io::Json;
using quiz::Answer;

constexpr std::size_t longest_line = 4096, most_answers = 400;

// Persons in the quiz by numbers of its own, in an order that says nothing.
using Aliases = std::map<int, int>;

Aliases drawn_aliases(const std::vector<quiz::Event>& happened) {
    Aliases aliases;
    for (const quiz::Event& event : happened)
        if (const auto* answered = std::get_if<quiz::event::Answered>(&event); answered && answered->voter.way == quiz::Way::person) aliases.emplace(answered->voter.number, 0);
    std::vector<int> numbers(aliases.size());
    for (std::size_t i = 0; i < numbers.size(); ++i) numbers[i] = static_cast<int>(i) + 1;
    std::random_device device;
    std::shuffle(numbers.begin(), numbers.end(), device);
    std::size_t next = 0;
    for (auto& [number, alias] : aliases) alias = numbers[next++];
    return aliases;
}

quiz::Event under_alias(quiz::Event event, const Aliases& aliases) {
    if (auto* answered = std::get_if<quiz::event::Answered>(&event); answered && answered->voter.way == quiz::Way::person) answered->voter.number = aliases.at(answered->voter.number);
    return event;
}

Json answers_list(const std::vector<Answer>& answers) {
    Json list = Json::list();
    for (const Answer& answer : answers) {
        Json digits = Json::list();
        for (const std::uint8_t digit : answer) digits.push(int{digit});
        list.push(std::move(digits));
    }
    return list;
}

Json share_object(const quiz::Share& share) {
    Json o = Json::object();
    o.set("right", share.right);
    o.set("of", share.of);
    return o;
}

Json questions_list(const std::vector<quiz::Item>& items) {
    Json list = Json::list();
    for (const quiz::Item& item : items) {
        Json o = Json::object();
        o.set("kind", word_of(item.kind));
        o.set("seed", std::to_string(item.seed));
        o.set("vine_hash", hash_text(vine_hash(item.vine)));
        o.set("vine_code", item.code.empty() ? Json() : Json(item.code));
        o.set("rule", rules::key_of(item.rule));
        o.set("choices", item.highest());
        o.set("accepted", answers_list(item.accepted));
        o.set("scored", item.scored);
        list.push(std::move(o));
    }
    return list;
}

Json event_object(const quiz::Event& event) { return *io::read_json(quiz::print_event(event), "event"); }

Json quiz_body(const FinishedQuiz& f, const Aliases& aliases) {
    const quiz::event::Gathered& gathered = f.quiz.gathered();
    quiz::Quiz renamed(gathered, f.quiz.items());
    Json events = Json::list();
    for (const quiz::Event& event : f.happened) {
        const quiz::Event other = under_alias(event, aliases);
        (void)renamed.take(other);
        events.push(event_object(other));
    }
    Json o = Json::object();
    o.set("quiz", quiz_name(gathered));
    o.set("gathered", event_object(gathered));
    o.set("rule_set_hash", hash_text(rules::rule_set_hash(f.house)));
    o.set("rule_set_name", gathered.house);
    o.set("judge_version", rules::judge_version);
    o.set("program_version", program_version());
    o.set("language", gathered.language);
    o.set("questions", questions_list(f.quiz.items()));
    o.set("events", std::move(events));
    o.set("results", results_object(quiz::results_of(renamed)));
    return o;
}

// One person's own: right of asked, in all and by rule.
Json person_body(const FinishedQuiz& f, int number, int alias) {
    const quiz::Voter voter{quiz::Way::person, number};
    quiz::Share all;
    std::array<quiz::Share, rules::rule_count> by_rule{};
    for (std::size_t i = 0; i < f.quiz.items().size(); ++i) {
        const quiz::ItemState& state = f.quiz.states()[i];
        const quiz::Item& item = f.quiz.items()[i];
        const auto said = state.last().voters.find(voter);
        if (!state.counts() || !item.scored || said == state.last().voters.end()) continue;
        const int right = state.accepts(said->second) ? 1 : 0;
        for (quiz::Share* share : {&all, &by_rule[rules::index_of(item.rule)]}) {
            ++share->of;
            share->right += right;
        }
    }
    Json rules_list = Json::list();
    for (std::size_t i = 0; i < rules::rule_count; ++i) {
        if (by_rule[i].of == 0) continue;
        Json o = share_object(by_rule[i]);
        o.set("rule", rules::key_of(static_cast<rules::RuleName>(i)));
        rules_list.push(std::move(o));
    }
    Json o = Json::object();
    o.set("quiz", quiz_name(f.quiz.gathered()));
    o.set("as", alias);
    o.set("language", f.quiz.gathered().language);
    o.set("right", all.right);
    o.set("of", all.of);
    o.set("rules", std::move(rules_list));
    return o;
}

struct Before {
    std::optional<std::int64_t> id;
    std::int64_t events = 0;
};

Result<Before> kept_before(Store& store, const std::string& name) {
    Before before;
    auto read = store.each("SELECT id, json_array_length(" + in_body("events") + ") FROM event WHERE kind = 'quiz' AND " + in_body("quiz") + " = ?1 ORDER BY id DESC LIMIT 1", {name}, 2,
                           [&](const Row& row) { before = {row.whole(0), row.whole(1)}; });
    if (!read) return failure(read.error());
    return before;
}

Result<std::optional<std::int64_t>> person_event_before(Store& store, const std::string& name, int number) {
    return store.whole("SELECT id FROM event WHERE kind = 'quiz-answers' AND person = ?2 AND " + in_body("quiz") + " = ?1 ORDER BY id DESC LIMIT 1", {name, std::int64_t{number}});
}

Error no_such_body(const std::string& source) { return {Fault::bad_file, TextKey{"error.records.body"}, {}, {source, 0, 0, 0}}; }

// Reads one question; it takes the same answers as the one that was asked.
quiz::Item asked_again(io::Refusal& refusal, const Json& object, KeptQuestion& kept) {
    io::Fields fields(refusal, object);
    quiz::Item item;
    item.kind = fields.word<quiz::Kind>("kind");
    (void)fields.required("seed");
    kept.vine_hash = fields.text("vine_hash", 16);
    (void)fields.optional("vine_code");
    const std::string rule = fields.text("rule", 60);
    for (std::size_t i = 0; i < rules::rule_count; ++i)
        if (rules::key_of(static_cast<rules::RuleName>(i)) == rule) item.rule = static_cast<rules::RuleName>(i);
    item.places.resize(static_cast<std::size_t>(fields.whole("choices", 0, quiz::most_counted)));
    for (const Json& answer : fields.list("accepted", true)) {
        Answer digits;
        for (const Json& digit : answer.items) digits.push_back(static_cast<std::uint8_t>(std::clamp(fields.decimal_of(digit, "accepted", 0), 0, int{UINT8_MAX})));
        if (item.takes(digits) && item.accepted.size() < most_answers) item.accepted.push_back(std::move(digits));
        else if (!refusal.any()) refusal.add(no_such_body(refusal.source()));
    }
    kept.accepted = item.accepted;
    kept.scored = item.scored = fields.yes("scored");
    fields.end();
    return item;
}

} // namespace

std::string quiz_name(const quiz::event::Gathered& gathered) { return hash_text(hash_of(quiz::print_event(gathered))); }

Json results_object(const quiz::Results& results) {
    Json items = Json::list(), rules_list = Json::list(), voters = Json::list();
    for (const quiz::ItemResult& item : results.items) {
        Json o = Json::object();
        o.set("question", static_cast<std::int64_t>(item.item) + 1);
        o.set("dropped", item.dropped);
        o.set("rekeyed", item.rekeyed);
        o.set("scored", item.scored);
        o.set("first", share_object(item.first));
        o.set("last", share_object(item.last));
        o.set("commonest_wrong", item.commonest_wrong ? answers_list({*item.commonest_wrong}) : Json());
        items.push(std::move(o));
    }
    for (const quiz::RuleResult& rule : results.rules) {
        Json o = share_object(rule.answers);
        o.set("rule", rules::key_of(rule.rule));
        rules_list.push(std::move(o));
    }
    for (const auto& [voter, share] : results.voters) {
        Json o = share_object(share);
        o.set("way", word_of(voter.way));
        o.set("number", voter.number);
        voters.push(std::move(o));
    }
    Json o = Json::object();
    o.set("all", share_object(results.all));
    o.set("questions", std::move(items));
    o.set("rules", std::move(rules_list));
    o.set("voters", std::move(voters));
    return o;
}

Result<std::optional<std::int64_t>> keep_quiz(Store& store, const FinishedQuiz& f, const std::string& when_utc) {
    const auto act = Act::begin(store, "quiz", when_utc);
    if (!act) return failure(act.error());
    const std::string name = quiz_name(f.quiz.gathered());
    const auto before = kept_before(store, name);
    if (!before) return failure(before.error());
    if (before->id && before->events >= static_cast<std::int64_t>(f.happened.size())) return std::optional<std::int64_t>();
    for (const quiz::Item& item : f.quiz.items())
        if (auto kept = keep_what_it_needs(store, item.vine, item.code, f.house, f.quiz.gathered().house); !kept) return failure(kept.error());
    const Aliases aliases = drawn_aliases(f.happened);
    const auto id = add_event(store, {0, std::string(quiz_kind), quiz_version, when_utc, std::nullopt, io::print_json_line(quiz_body(f, aliases)), before->id});
    if (!id) return failure(id.error());
    for (const auto& [number, alias] : aliases) {
        const auto own = person_event_before(store, name, number);
        if (!own) return failure(own.error());
        const auto added = add_event(store, {0, std::string(quiz_answers_kind), quiz_version, when_utc, std::int64_t{number}, io::print_json_line(person_body(f, number, alias)), *own});
        if (!added) return failure(added.error());
    }
    if (auto done = (*act)->commit(); !done) return failure(done.error());
    return std::optional(*id);
}

Result<KeptQuiz> read_kept_quiz(const std::string& body, const std::string& source) {
    const auto json = io::read_json(body, source);
    if (!json) return failure(json.error());
    io::Refusal refusal(source);
    io::Fields fields(refusal, *json);
    std::vector<KeptQuestion> kept;
    std::vector<quiz::Item> items;
    for (const Json& question : fields.list("questions", true)) {
        kept.emplace_back();
        items.push_back(asked_again(refusal, question, kept.back()));
    }
    const auto gathered = quiz::read_event(io::print_json_line(fields.required("gathered")), source);
    const std::string rule_set = fields.text("rule_set_hash", 16);
    const int judge_version = static_cast<int>(fields.whole("judge_version", 1, 1'000'000));
    const std::string results = io::print_json_line(fields.required("results"));
    if (refusal.any()) return failure(refusal.take());
    if (!gathered) return failure(gathered.error());
    const auto* first = std::get_if<quiz::event::Gathered>(&*gathered);
    if (!first || items.empty()) return failure(no_such_body(source));
    KeptQuiz read{quiz::Quiz(*first, std::move(items)), std::move(kept), rule_set, results, judge_version};
    for (const Json& line : fields.list("events", true)) {
        const auto event = quiz::read_event(io::print_json_line(line).substr(0, longest_line), source);
        if (!event) return failure(event.error());
        if (!read.quiz.take(*event)) return failure(no_such_body(source));
    }
    return read;
}

} // namespace spurwright::records
