#include "scenarios/quiz/quiz.h"

#include <algorithm>

#include "sim/core/check.h"

namespace spurwright::quiz {
namespace {

constexpr PerMille talk_from{300}, talk_to{700};
constexpr int most_hands = 999, most_number = 9'999;

}  // namespace

int Round::answers() const {
    int all = static_cast<int>(voters.size());
    for (const auto& [answer, count] : hands) all += count;
    return all;
}

int Round::of(const Answer& answer) const {
    int all = 0;
    for (const auto& [voter, said] : voters) all += said == answer;
    const auto found = hands.find(answer);
    return all + (found == hands.end() ? 0 : found->second);
}

bool ItemState::accepts(const Answer& answer) const { return std::find(accepted.begin(), accepted.end(), answer) != accepted.end(); }

Quiz::Quiz(event::Gathered gathered, std::vector<Item> items) : gathered_(std::move(gathered)), items_(std::move(items)) {
    SPURWRIGHT_CHECK(items_.size(), >, std::size_t{0});
    for (const Item& item : items_) {
        ItemState state;
        state.accepted = item.accepted;
        states_.push_back(std::move(state));
    }
}

void Quiz::go_to(std::size_t item) {
    if (phase_ != Phase::gathered && phase_ != Phase::ended) states_[at_].phase = phase_;
    at_ = item;
    phase_ = states_[at_].phase;
}

struct Quiz::May {
    const Quiz& q;
    bool operator()(const event::Gathered&) const { return false; }
    bool operator()(const event::Answered& e) const {
        return q.answering() && q.item().takes(e.answer) && e.voter.way != Way::hands && e.voter.number >= 1 && e.voter.number <= most_number;
    }
    bool operator()(const event::Counted& e) const { return q.answering() && q.item().takes(e.answer) && e.hands >= 0 && e.hands <= most_hands; }
    bool operator()(const event::Locked&) const { return q.answering(); }
    bool operator()(const event::Talk&) const { return q.phase_ == Phase::locked; }
    bool operator()(const event::Revealed&) const { return q.phase_ == Phase::locked || q.phase_ == Phase::locked_again; }
    bool operator()(const event::Next&) const { return q.phase_ == Phase::gathered || q.phase_ == Phase::revealed; }
    bool operator()(const event::Back&) const { return q.phase_ == Phase::ended || (q.phase_ != Phase::gathered && q.at_ > 0); }
    bool operator()(const event::Ended&) const { return q.phase_ != Phase::ended; }
    bool operator()(const event::Dropped& e) const { return e.item < q.items_.size() && q.states_[e.item].revealed; }
    bool operator()(const event::Rekeyed& e) const {
        if (e.item >= q.items_.size() || !q.states_[e.item].revealed || e.accepted.empty()) return false;
        return std::all_of(e.accepted.begin(), e.accepted.end(), [&](const Answer& a) { return q.items_[e.item].takes(a); });
    }
};

struct Quiz::Do {
    Quiz& q;
    void operator()(const event::Gathered&) const {}
    void operator()(const event::Answered& e) const { q.round().voters[e.voter] = e.answer; }
    void operator()(const event::Counted& e) const {
        if (e.hands == 0) q.round().hands.erase(e.answer);
        else q.round().hands[e.answer] = e.hands;
    }
    void operator()(const event::Locked&) const { q.phase_ = q.phase_ == Phase::talking ? Phase::locked_again : Phase::locked; }
    void operator()(const event::Talk&) const {
        q.states_[q.at_].talked = true;
        q.phase_ = Phase::talking;
    }
    void operator()(const event::Revealed&) const {
        q.states_[q.at_].revealed = true;
        q.phase_ = Phase::revealed;
    }
    void operator()(const event::Next&) const {
        if (q.phase_ == Phase::gathered) q.go_to(0);
        else if (q.at_ + 1 < q.items_.size()) q.go_to(q.at_ + 1);
        else operator()(event::Ended{});
    }
    void operator()(const event::Back&) const { q.go_to(q.phase_ == Phase::ended ? q.at_ : q.at_ - 1); }
    void operator()(const event::Ended&) const {
        if (q.phase_ != Phase::gathered) q.states_[q.at_].phase = q.phase_;
        q.phase_ = Phase::ended;
    }
    void operator()(const event::Dropped& e) const { q.states_[e.item].dropped = !q.states_[e.item].dropped; }
    void operator()(const event::Rekeyed& e) const {
        q.states_[e.item].accepted = e.accepted;
        q.states_[e.item].rekeyed = e.accepted != q.items_[e.item].accepted;
    }
};

bool Quiz::allows(const Event& event) const { return std::visit(May{*this}, event); }

bool Quiz::take(const Event& event) {
    if (!allows(event)) return false;
    std::visit(Do{*this}, event);
    return true;
}

std::optional<PerMille> Quiz::share_right(std::size_t item, std::size_t round) const {
    const ItemState& state = states_[item];
    const Round& answers = state.rounds[round];
    const int all = answers.answers();
    if (all == 0) return std::nullopt;
    int right = 0;
    for (const Answer& answer : state.accepted) right += answers.of(answer);
    return PerMille{static_cast<std::int32_t>(std::int64_t{right} * 1000 / all)};
}

bool Quiz::talk_proposed() const {
    if (phase_ != Phase::locked) return false;
    const auto share = share_right(at_, 0);
    return share && *share >= talk_from && *share <= talk_to;
}

}  // namespace spurwright::quiz
