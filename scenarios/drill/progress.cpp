#include "scenarios/drill/progress.h"

#include <algorithm>
#include <map>
#include <set>

#include "scenarios/learning/success.h"
#include "sim/core/random.h"

namespace spurwright::drill {
namespace {

constexpr std::size_t looked_back = 20, mixed_in = 30, block_of_plot = 10, fewest_in_block = 5;
constexpr int fewest_to_master = 8, days_to_master = 2, days_forgotten = 14, mixed_often = 3;
constexpr double share_to_master = 0.9;
constexpr double never_never = 0.1; // so that what is known comes too
constexpr std::size_t first_block = 6, others_between = 4, most_returns = 3, looks_between_pairs = 8;

LookAnswers of_skill(const LookAnswers& answers, Skill skill) {
    LookAnswers own;
    for (const LookAnswer& answer : answers)
        if (answer.skill == skill) own.push_back(answer);
    return own;
}

std::size_t from_last(const LookAnswers& answers, std::size_t count) { return answers.size() - std::min(answers.size(), count); }

std::optional<std::int64_t> median_of(std::vector<std::int64_t> values) {
    if (values.empty()) return std::nullopt;
    std::stable_sort(values.begin(), values.end());
    const std::size_t middle = values.size() / 2;
    return values.size() % 2 ? values[middle] : (values[middle - 1] + values[middle]) / 2;
}

Mastery mastery_of(const SkillProgress& p, const LookAnswers& own, Skill skill, std::int32_t today) {
    if (own.empty()) return Mastery::fresh;
    int wrong = 0;
    for (std::size_t i = from_last(own, 5); i < own.size(); ++i) wrong += !own[i].good();
    const bool enough = p.answers >= fewest_to_master;
    if (enough && (wrong >= 2 || today - own.back().day >= days_forgotten)) return Mastery::needs_a_look;
    const bool sure = p.last.right >= share_to_master * p.last.of, quick = *p.median_ms <= 1000 * target_seconds(skill);
    return enough && sure && quick && p.days >= days_to_master ? Mastery::alone : Mastery::with_help;
}

enum class NextDraw : std::uint32_t { skill = 61, word };

// A word other than the one that was right twice running.
std::size_t drawn_word(const LookAnswers& own, Skill skill, std::uint64_t seed) {
    const std::size_t words = words_of_skill(skill).size();
    std::size_t word = static_cast<std::size_t>(draw(seed, static_cast<std::uint32_t>(NextDraw::word), static_cast<std::uint32_t>(own.size())) % words);
    const std::size_t n = own.size();
    if (n >= 2 && own[n - 1].right == word && own[n - 2].right == word) word = (word + 1) % words;
    return word;
}

// The last wrong answer of the sitting with enough others after it, that has not come back yet.
std::optional<NextLook> returning(const LookAnswers& answers, std::size_t from, const std::vector<Skill>& on) {
    std::size_t returns = 0;
    std::set<std::size_t> back; // wrong answers that came back
    for (std::size_t i = from; i < answers.size(); ++i)
        for (std::size_t j = from; j + others_between < i; ++j) // the same word of the same skill, after enough others
            if (!answers[j].good() && answers[i].skill == answers[j].skill && answers[i].right == answers[j].right && back.insert(j).second) {
                ++returns;
                break;
            }
    if (returns >= most_returns) return std::nullopt;
    for (std::size_t j = from; j + others_between < answers.size(); ++j)
        if (!answers[j].good() && !back.count(j) && std::find(on.begin(), on.end(), answers[j].skill) != on.end()) return NextLook{answers[j].skill, answers[j].right, {}, Why::again};
    return std::nullopt;
}

} // namespace

SkillProgress progress_of(const LookAnswers& answers, Skill skill, std::int32_t today) {
    const LookAnswers own = of_skill(answers, skill);
    SkillProgress p;
    p.answers = static_cast<int>(own.size());
    std::vector<std::int64_t> times;
    std::set<std::int32_t> days;
    for (std::size_t i = from_last(own, looked_back); i < own.size(); ++i) {
        ++p.last.of;
        p.last.right += own[i].good();
        times.push_back(own[i].ms);
    }
    for (const LookAnswer& answer : own) days.insert(answer.day);
    p.days = static_cast<int>(days.size());
    p.median_ms = median_of(std::move(times));
    std::map<std::pair<std::size_t, std::size_t>, int> mixed;
    for (std::size_t i = from_last(own, mixed_in); i < own.size(); ++i)
        if (!own[i].good()) ++mixed[std::minmax(own[i].right, own[i].said)];
    for (const auto& [pair, times_mixed] : mixed) p.confused.push_back({pair.first, pair.second, times_mixed});
    std::stable_sort(p.confused.begin(), p.confused.end(), [](const Confused& x, const Confused& y) { return x.times > y.times; });
    p.mastery = mastery_of(p, own, skill, today);
    return p;
}

std::vector<PlotPoint> plot_of(const LookAnswers& answers, std::optional<Skill> skill) {
    const LookAnswers own = skill ? of_skill(answers, *skill) : answers;
    std::vector<PlotPoint> points;
    for (std::size_t at = 0; at < own.size(); at += block_of_plot) {
        const std::size_t end = std::min(own.size(), at + block_of_plot);
        if (end - at < fewest_in_block) break;
        std::vector<std::int64_t> times;
        double right = 0;
        for (std::size_t i = at; i < end; ++i) {
            right += own[i].good();
            times.push_back(own[i].ms);
        }
        points.push_back({right / static_cast<double>(end - at), static_cast<double>(*median_of(std::move(times))) / 1000});
    }
    return points;
}

double expected_right(const LookAnswers& answers, Skill skill) {
    const int words = static_cast<int>(words_of_skill(skill).size());
    const learning::Strength item = learning::strength_of_item(0);
    learning::Strength strength;
    std::vector<learning::Met> day;
    std::int32_t of_day = 0;
    for (const LookAnswer& answer : of_skill(answers, skill)) {
        if (answer.day != of_day && !day.empty()) strength = learning::after_period(strength, std::exchange(day, {}));
        of_day = answer.day;
        day.push_back({item, answer.good() ? 1.0 : 0.0});
    }
    if (!day.empty()) strength = learning::after_period(strength, day);
    return learning::with_guessing(learning::expected_score(strength, item), words);
}

NextLook next_look(const LookAnswers& answers, std::size_t sitting, const std::vector<Skill>& on, std::uint64_t seed) {
    const std::size_t from = answers.size() - std::min(sitting, answers.size());
    for (const Skill skill : on) { // one new skill at a time, begun with a short block of its own
        const LookAnswers own = of_skill(answers, skill);
        if (own.size() < first_block && !answers.empty() && !own.empty() && answers.back().skill == skill) return {skill, drawn_word(own, skill, seed), {}, Why::first_block};
    }
    if (const auto again = returning(answers, from, on)) return *again;
    for (const Skill skill : on) {
        if (!has_pairs(skill)) continue;
        const SkillProgress p = progress_of(answers, skill, 0);
        const bool often = !p.confused.empty() && p.confused.front().times >= mixed_often;
        bool lately = false;
        for (std::size_t i = from_last(answers, looks_between_pairs); i < answers.size(); ++i) lately = lately || answers[i].skill == skill;
        if (!often || lately) continue;
        const Confused& pair = p.confused.front();
        const bool turned = draw(seed, static_cast<std::uint32_t>(NextDraw::word), 1) % 2 == 0;
        return {skill, turned ? pair.a : pair.b, turned ? pair.b : pair.a, Why::side_by_side};
    }
    // The chance of being wrong, each with a draw: the weakest comes most often, none never.
    double best = -1;
    Skill chosen = on.empty() ? Skill::wood_age : on.front();
    for (const Skill skill : on) {
        const double wrong = never_never + 1 - expected_right(answers, skill), drawn = static_cast<double>(draw(seed, static_cast<std::uint32_t>(NextDraw::skill), static_cast<std::uint32_t>(skill)) >> 11) / 9007199254740992.0;
        if (wrong * drawn > best) {
            best = wrong * drawn;
            chosen = skill;
        }
    }
    const LookAnswers own = of_skill(answers, chosen);
    return {chosen, drawn_word(own, chosen, seed), {}, own.empty() ? Why::first_block : Why::weakest};
}

} // namespace spurwright::drill
