// A quiz of the crew as what happened, in order: every state of it, and every result, is worked out from these events
// alone. So a crash loses nothing that was kept, and a question dropped or keyed anew counts everything again.
//   gathered -> open -> locked -> { revealed | talking -> locked -> revealed } -> the next, or the end
// Must not know: files, screens, how vines are drawn.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "scenarios/quiz/item.h"

namespace spurwright::quiz {

// Who answers: a group at its post, a person by number, or hands counted without a name.
enum class Way : unsigned char { hands, post, person };
constexpr auto words_of(Way) { return std::to_array<std::string_view>({"hands", "post", "person"}); }

struct Voter {
    Way way{};
    int number = 0;  // of the post or the person; 0 for hands
    auto operator<=>(const Voter&) const = default;
};

namespace event {
struct Gathered {            // the quiz begins
    std::uint64_t seed = 0;  // with kinds, count and the house's rules it makes the same items
    std::vector<Kind> kinds;
    std::size_t items = 0;
    std::string house, rule_set;  // name; hash as text
    std::string language;
    std::vector<int> posts;  // how many stand at each post, the first post first; 0: not said
    bool operator==(const Gathered&) const = default;
};
struct Answered {  // one voter's answer, in place of an earlier one of the same round
    Voter voter;
    Answer answer;
    bool operator==(const Answered&) const = default;
};
struct Counted {  // hands for one answer, in place of an earlier count of the same round
    Answer answer;
    int hands = 0;
    bool operator==(const Counted&) const = default;
};
struct Locked { bool operator==(const Locked&) const = default; };
struct Talk { bool operator==(const Talk&) const = default; };      // a second round
struct Revealed { bool operator==(const Revealed&) const = default; };
struct Next { bool operator==(const Next&) const = default; };      // the next item, or past the last the end
struct Back { bool operator==(const Back&) const = default; };      // to the item before, as it was left
struct Ended { bool operator==(const Ended&) const = default; };
struct Dropped { std::size_t item = 0; bool operator==(const Dropped&) const = default; };  // the house disagrees: it counts for nobody
struct Rekeyed {             // the house disagrees: these answers are right instead
    std::size_t item = 0;
    std::vector<Answer> accepted;
    bool operator==(const Rekeyed&) const = default;
};
}  // namespace event

using Event = std::variant<event::Gathered, event::Answered, event::Counted, event::Locked, event::Talk, event::Revealed, event::Next,
                           event::Back, event::Ended, event::Dropped, event::Rekeyed>;

enum class Phase : unsigned char { gathered, open, locked, talking, locked_again, revealed, ended };
constexpr auto words_of(Phase) {
    return std::to_array<std::string_view>({"gathered", "open", "locked", "talking", "locked-again", "revealed", "ended"});
}

// Answers of one round.
struct Round {
    std::map<Voter, Answer> voters;
    std::map<Answer, int> hands;
    int answers() const;              // people or posts that have answered
    int of(const Answer& answer) const;
    bool operator==(const Round&) const = default;
};

struct ItemState {
    std::vector<Answer> accepted;  // as made, or as keyed anew
    bool dropped = false, rekeyed = false, revealed = false;
    std::array<Round, 2> rounds;   // the first answers, and those after talking
    bool talked = false;
    Phase phase = Phase::open;     // where it was left
    bool operator==(const ItemState&) const = default;
    bool counts() const { return revealed && !dropped; }
    const Round& last() const { return rounds[talked ? 1 : 0]; }
    bool accepts(const Answer& answer) const;
};

class Quiz {
public:
    // The items as made from the first event; `gathered` is that event.
    Quiz(event::Gathered gathered, std::vector<Item> items);

    const event::Gathered& gathered() const { return gathered_; }
    const std::vector<Item>& items() const { return items_; }
    const std::vector<ItemState>& states() const { return states_; }
    Phase phase() const { return phase_; }
    std::size_t at() const { return at_; }
    const Item& item() const { return items_[at_]; }
    const ItemState& state() const { return states_[at_]; }

    // Whether it may happen now: answers only while open or talking, each of its item's kind; the rest in the order above.
    bool allows(const Event& event) const;
    // Refused (false, nothing changed) where allows() says no.
    bool take(const Event& event);

    // Of the last answers of the item at hand that are right; thousandths. Nothing where nobody answered.
    std::optional<PerMille> share_right(std::size_t item, std::size_t round) const;
    // Talking is worth it where between 3 and 7 of 10 were right (memory: peer instruction's band).
    bool talk_proposed() const;

private:
    event::Gathered gathered_;
    std::vector<Item> items_;
    std::vector<ItemState> states_;
    Phase phase_ = Phase::gathered;
    std::size_t at_ = 0;

    bool answering() const { return phase_ == Phase::open || phase_ == Phase::talking; }
    Round& round() { return states_[at_].rounds[phase_ == Phase::talking ? 1 : 0]; }
    void go_to(std::size_t item);
    struct May;
    struct Do;
};

}  // namespace spurwright::quiz
