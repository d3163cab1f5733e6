#include "scenarios/quiz/results.h"

#include <algorithm>

namespace spurwright::quiz {
namespace {

constexpr std::size_t most_to_show = 2;

void add_to(Share& share, bool right, int times) {
    share.of += times;
    if (right) share.right += times;
}

Share share_of(const ItemState& state, const Round& round) {
    Share share;
    for (const auto& [voter, answer] : round.voters) add_to(share, state.accepts(answer), 1);
    for (const auto& [answer, hands] : round.hands) add_to(share, state.accepts(answer), hands);
    return share;
}

void find_commonest_wrong(const ItemState& state, ItemResult& result) {
    std::map<Answer, int> wrong;
    for (const auto& [voter, answer] : state.last().voters)
        if (!state.accepts(answer)) ++wrong[answer];
    for (const auto& [answer, hands] : state.last().hands)
        if (!state.accepts(answer)) wrong[answer] += hands;
    for (const auto& [answer, count] : wrong)
        if (count > result.commonest_wrong_count) {
            result.commonest_wrong = answer;
            result.commonest_wrong_count = count;
        }
}

}  // namespace

std::optional<PerMille> Share::share() const {
    if (of == 0) return std::nullopt;
    return PerMille{static_cast<std::int32_t>(std::int64_t{right} * 1000 / of)};
}

Results results_of(const Quiz& quiz) {
    Results results;
    std::array<Share, rules::rule_count> by_rule{};
    for (std::size_t i = 0; i < quiz.items().size(); ++i) {
        const ItemState& state = quiz.states()[i];
        const Item& item = quiz.items()[i];
        if (!state.revealed) continue;
        ItemResult result{i, state.dropped, state.rekeyed, item.scored, share_of(state, state.rounds[0]), share_of(state, state.last()), {}, 0};
        find_commonest_wrong(state, result);
        results.items.push_back(result);
        if (!state.counts() || !item.scored) continue;
        Share& rule = by_rule[rules::index_of(item.rule)];
        rule.right += result.last.right;
        rule.of += result.last.of;
        results.all.right += result.last.right;
        results.all.of += result.last.of;
        for (const auto& [voter, answer] : state.last().voters) add_to(results.voters[voter], state.accepts(answer), 1);
    }
    std::vector<std::pair<int, rules::RuleName>> wrong;
    for (std::size_t i = 0; i < rules::rule_count; ++i) {
        if (by_rule[i].of == 0) continue;
        const auto name = static_cast<rules::RuleName>(i);
        results.rules.push_back({name, by_rule[i]});
        if (by_rule[i].of > by_rule[i].right) wrong.emplace_back(by_rule[i].right - by_rule[i].of, name);
    }
    std::stable_sort(wrong.begin(), wrong.end());
    for (std::size_t i = 0; i < wrong.size() && i < most_to_show; ++i) results.to_show.push_back(wrong[i].second);
    return results;
}

}  // namespace spurwright::quiz
