#include "scenarios/records/crew_view.h"

#include <algorithm>
#include <set>

#include "scenarios/io/json_fields.h"
#include "scenarios/records/quiz_record.h"

namespace spurwright::records {
namespace {

using io::Json;

constexpr int fewest_to_say = 8, days_to_say = 2;
constexpr double sure_share = 0.9, weak_share = 0.5;

struct OneQuiz {
    std::int64_t person = 0;
    std::string quiz;
    Day day;
    quiz::Share all;
    std::map<rules::RuleName, quiz::Share> rules;
};

constexpr std::int64_t most_answers_told = 100'000; // of one person in one quiz; our choice

quiz::Share share_in(io::Refusal& refusal, const Json& object) {
    io::Fields fields(refusal, object);
    const auto of = fields.whole("of", 0, most_answers_told);
    return {static_cast<int>(fields.whole("right", 0, of)), static_cast<int>(of)};
}

std::optional<OneQuiz> read_one(const Event& event) {
    const auto json = io::read_json(event.body, "event");
    const auto day = read_day(event.when_utc.substr(0, 10));
    if (!json || !day || !event.person || *event.person < 0 || event.version != quiz_version) return std::nullopt;
    OneQuiz one;
    one.person = *event.person;
    one.day = *day;
    if (const Json* quiz = json->find("quiz")) one.quiz = quiz->text;
    io::Refusal refusal("event");
    io::Fields fields(refusal, *json);
    one.all = share_in(refusal, *json);
    for (const Json& rule : fields.list("rules", true)) {
        const Json* key = rule.find("rule");
        for (std::size_t i = 0; key && i < rules::rule_count; ++i)
            if (rules::key_of(static_cast<rules::RuleName>(i)) == key->text) one.rules[static_cast<rules::RuleName>(i)] = share_in(refusal, rule);
    }
    return refusal.any() ? std::nullopt : std::optional(one);
}

drill::Mastery crew_word(const quiz::Share& share, std::size_t days) {
    if (share.of == 0) return drill::Mastery::fresh;
    if (share.of >= fewest_to_say && share.right < weak_share * share.of) return drill::Mastery::needs_a_look;
    if (share.of >= fewest_to_say && share.right >= sure_share * share.of && static_cast<int>(days) >= days_to_say) return drill::Mastery::alone;
    return drill::Mastery::with_help;
}

void add_share(quiz::Share& to, const quiz::Share& more) {
    to.right += more.right;
    to.of += more.of;
}

} // namespace

Result<CrewView> crew_view(Store& store, const Day& today) {
    const auto people = people_of(store);
    if (!people) return failure(people.error());
    const auto signed_off = sign_offs(store);
    if (!signed_off) return failure(signed_off.error());
    // Of each quiz the last word about each person: a dispute recounts.
    std::map<std::pair<std::int64_t, std::string>, OneQuiz> last;
    auto read = each_event(store, quiz_answers_kind, 0, [&](const Event& event) {
        if (auto one = read_one(event)) {
            const auto key = std::pair(one->person, one->quiz);
            last.insert_or_assign(key, *std::move(one));
        }
    });
    if (!read) return failure(read.error());
    CrewView view;
    std::map<std::int64_t, CrewMember> members;
    for (const Person& person : *people) members[person.number].person = person;
    std::map<std::pair<std::int64_t, rules::RuleName>, std::set<Day>> days;
    std::set<std::string> quizzes;
    for (const auto& [key, one] : last) {
        CrewMember& member = members[one.person];
        member.person.number = one.person;
        add_share(member.all, one.all);
        ++member.quizzes;
        quizzes.insert(one.quiz);
        for (const auto& [rule, share] : one.rules) {
            add_share(member.rules[rule].answers, share);
            add_share(view.crew[rule], share);
            days[{one.person, rule}].insert(one.day);
        }
    }
    view.quizzes = static_cast<int>(quizzes.size());
    for (auto& [number, member] : members) {
        for (auto& [rule, cell] : member.rules) cell.word = crew_word(cell.answers, days[{number, rule}].size());
        for (const SignOff& sign : *signed_off)
            if (sign.person == number && sign.until >= today) member.signed_off.push_back(sign);
        view.members.push_back(std::move(member));
    }
    for (const auto& [rule, share] : view.crew) view.rules.push_back(rule);
    std::stable_sort(view.rules.begin(), view.rules.end(), [&](rules::RuleName a, rules::RuleName b) {
        const quiz::Share &x = view.crew[a], &y = view.crew[b];
        return x.of - x.right > y.of - y.right;
    });
    for (const rules::RuleName rule : view.rules)
        if (const quiz::Share& share = view.crew[rule]; share.of >= fewest_to_say && share.right < share.of) {
            view.most_wrong = rule;
            break;
        }
    if (view.rules.size() > most_rules_shown) view.rules.resize(most_rules_shown);
    return view;
}

} // namespace spurwright::records
