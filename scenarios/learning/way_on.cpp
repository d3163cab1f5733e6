#include "scenarios/learning/way_on.h"

#include <algorithm>
#include <chrono>
#include <cmath>
#include <map>
#include <set>

namespace spurwright::learning {
namespace {

using records::PastVine;

constexpr std::size_t looked_at = 5, lately = 10, enough_to_step = 10;
constexpr double harder = 0.25, easier = 0.35; // on the scale of answers; our choice
constexpr double many_good = 0.9, few_good = 0.8;

std::size_t last_of(std::size_t size, std::size_t count) { return size - std::min(size, count); }

// The last time each vine was done.
std::map<std::string, std::size_t> last_times(const std::vector<PastVine>& past) {
    std::map<std::string, std::size_t> last;
    for (std::size_t i = 0; i < past.size(); ++i) last[past[i].vine_hash] = i;
    return last;
}

TextKey rule_name_key(rules::RuleName rule) {
    static const std::vector<std::string> keys = [] {
        std::vector<std::string> all;
        for (std::size_t i = 0; i < rules::rule_count; ++i) all.push_back("rule." + std::string(rules::key_of(static_cast<rules::RuleName>(i))) + ".name");
        return all;
    }();
    return TextKey{keys[rules::index_of(rule)]};
}

Returning why_returning(const std::vector<PastVine>& past, std::size_t at, const records::Day& today) {
    const PastVine& vine = past[at];
    const int days = std::max(0, days_between(vine.day, today)); // a clock put back
    Returning returning{at, TextKey{days == 0 ? "way.lost-today" : "way.lost"}, {{"points", vine.lost()}, {"n", Count{days}}}};
    if (vine.worst) {
        returning.why = TextKey{days == 0 ? "way.lost-by-today" : "way.lost-by"};
        returning.arguments.push_back({"rule", rule_name_key(*vine.worst)});
    }
    return returning;
}

} // namespace

int days_between(const records::Day& from, const records::Day& to) {
    using namespace std::chrono;
    const auto count = [](const records::Day& d) { return sys_days(year{d.year} / month{static_cast<unsigned>(d.month)} / day{static_cast<unsigned>(d.day)}).time_since_epoch().count(); };
    return static_cast<int>(count(to) - count(from));
}

std::vector<Returning> returning_vines(const std::vector<PastVine>& past, const records::Day& today) {
    std::vector<Returning> all;
    for (const auto& [hash, at] : last_times(past)) {
        const bool just_done = at + 1 == past.size() && past[at].day == today; // not "since": a clock put back would keep it away
        if (!past[at].as_good() && !just_done) all.push_back(why_returning(past, at, today));
    }
    std::stable_sort(all.begin(), all.end(), [&](const Returning& a, const Returning& b) { return past[a.at].lost() > past[b.at].lost(); });
    if (all.size() > most_returning) all.resize(most_returning);
    return all;
}

std::vector<RuleProgress> rules_to_look_at(const std::vector<PastVine>& past) {
    std::set<rules::RuleName> lost_lately;
    for (std::size_t i = last_of(past.size(), lately); i < past.size(); ++i) lost_lately.insert(past[i].lost_by.begin(), past[i].lost_by.end());
    std::vector<RuleProgress> all;
    for (const rules::RuleName rule : lost_lately) {
        RuleProgress p{rule, drill::Mastery::with_help, 0, 0};
        std::set<records::Day> days;
        for (std::size_t i = last_of(past.size(), looked_at); i < past.size(); ++i) {
            ++p.vines;
            p.lost += static_cast<int>(std::count(past[i].lost_by.begin(), past[i].lost_by.end(), rule));
            days.insert(past[i].day);
        }
        if (p.vines == static_cast<int>(looked_at) && p.lost >= 2) p.mastery = drill::Mastery::needs_a_look;
        if (p.vines == static_cast<int>(looked_at) && p.lost <= 1 && days.size() >= 2) p.mastery = drill::Mastery::alone;
        all.push_back(p);
    }
    std::stable_sort(all.begin(), all.end(), [](const RuleProgress& a, const RuleProgress& b) { return a.lost > b.lost; });
    return all;
}

Strength strength_on_vines(const std::vector<PastVine>& past) {
    Strength strength;
    std::vector<Met> day;
    for (std::size_t i = 0; i < past.size(); ++i) {
        if (i > 0 && past[i].day != past[i - 1].day) strength = after_period(strength, std::exchange(day, {}));
        if (!past[i].best) continue;
        const double b = past[i].difficulty ? *past[i].difficulty / 1000.0 : 0;
        day.push_back({strength_of_item(b), past[i].as_good() ? 1 : graded_outcome(past[i].lost())});
    }
    return day.empty() ? strength : after_period(strength, day);
}

double wanted_vine_difficulty(const std::vector<PastVine>& past) {
    double wanted = wanted_difficulty(ability_of(strength_on_vines(past)), wanted_success);
    if (past.size() < enough_to_step) return wanted;
    int good = 0;
    for (std::size_t i = last_of(past.size(), lately); i < past.size(); ++i) good += past[i].as_good();
    const double share = static_cast<double>(good) / static_cast<double>(lately);
    if (share > many_good) wanted += harder;
    if (share < few_good) wanted -= easier;
    return wanted;
}

double expected_success(const std::vector<PastVine>& past, double difficulty) { return two_pl(ability_of(strength_on_vines(past)), 1, difficulty); }

WayOn way_on(const std::vector<PastVine>& past, const drill::LookAnswers& looks, const records::Day& today, std::int32_t day_number) {
    if (past.empty()) return {NextThing::first_scene, 0, 0, TextKey{"way.first"}, {}};
    for (const drill::Skill skill : drill::all_skills)
        if (drill::progress_of(looks, skill, day_number).mastery == drill::Mastery::needs_a_look) {
            static const std::array<TextKey, drill::skill_count> keys{TextKey{"drill.skill.wood-age"}, TextKey{"drill.skill.bud-counts"}, TextKey{"drill.skill.cane-size"},
                                                                      TextKey{"drill.skill.joints"},   TextKey{"drill.skill.wire-side"},  TextKey{"drill.skill.cut-made"},
                                                                      TextKey{"drill.skill.live-wood"}, TextKey{"drill.skill.which-job"}};
            return {NextThing::looks, 0, 0, TextKey{"way.looks"}, {{"text", keys[static_cast<std::size_t>(skill)]}}};
        }
    // A vine met before and a new one in turn.
    const auto returning = returning_vines(past, today);
    const bool last_was_met = past.size() > 1 && std::any_of(past.begin(), past.end() - 1, [&](const PastVine& vine) { return vine.vine_hash == past.back().vine_hash; });
    if (!returning.empty() && !last_was_met) return {NextThing::met_vine, returning.front().at, 0, returning.front().why, returning.front().arguments};
    const double wanted = wanted_vine_difficulty(past);
    const auto tens = std::int64_t{std::lround(10 * expected_success(past, wanted))};
    return {NextThing::new_vine, 0, wanted, TextKey{"way.new"}, {{"n", Count{tens}}}};
}

} // namespace spurwright::learning
