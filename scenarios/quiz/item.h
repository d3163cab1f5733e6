// One question for the crew about one vine, with every answer that is right. The same kind, seed and house rules make
// the same item, so that a record need keep no more than those. Must not know: how answers come in, screens, sentences.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "sim/core/text_key.h"
#include "sim/core/units.h"
#include "sim/pruning/plan.h"
#include "sim/rules/rule.h"
#include "sim/vine/vine.h"

namespace spurwright::quiz {

enum class Kind : unsigned char {
    pick_two,        // which two canes are kept?
    pick_one,        // which is the best cane towards that post?
    never,           // which must not be laid?
    spur,            // where is the renewal spur on that side?
    where_to_cut,    // where is this cane cut?
    count,           // how many count buds up to the tape?
    wood_age,        // one year, two years, or older?
    which_rule,      // why is this pruning not as good?
    find_the_fault,  // somebody pruned this: on which piece is the mistake?
    which_job,       // which job is this vine?
};
constexpr auto words_of(Kind) {
    return std::to_array<std::string_view>({"pick-two", "pick-one", "never", "spur", "where-to-cut", "count", "wood-age",
                                            "which-rule", "find-the-fault", "which-job"});
}
inline constexpr std::size_t kind_count = 10;
inline constexpr std::array<Kind, kind_count> all_kinds{Kind::pick_two,  Kind::pick_one,   Kind::never,          Kind::spur,
                                                        Kind::where_to_cut, Kind::count,   Kind::wood_age,       Kind::which_rule,
                                                        Kind::find_the_fault, Kind::which_job};

// A tape hung on the wood: so far past a node.
struct TapedPlace {
    NodeId node;
    Length beyond;
    bool operator==(const TapedPlace&) const = default;
};

// Digits, ascending: one place or word, two places of pick_two; of count the number itself.
using Answer = std::vector<std::uint8_t>;

inline constexpr std::size_t most_places_shown = 6;  // as many tapes as can be told apart
inline constexpr int most_counted = 15;

// One sentence: its key and what fills it.
struct Told {
    TextKey key;
    Arguments arguments;
};

struct Item {
    Kind kind{};
    std::uint64_t seed = 0;
    std::string code;                // of the uncut vine; empty where no code names it
    Vine vine;                       // as it is shown: worked on where somebody's pruning is asked about
    Side side{};                     // asked about; none: the whole vine
    rules::RuleName rule{};          // that the question turns on
    std::vector<TapedPlace> places;  // the place of digit 1 first: along the row from the near post
    std::vector<TextKey> words;      // or answers in words, in drawn order
    std::vector<Answer> accepted;    // every right answer, ascending
    bool scored = true;              // false: the last right place and the first wrong one are too near: for talk only
    Tenths margin;                   // points of the worst right place less those of the best wrong one; 0 where places are facts
    Told reveal;                     // what is right
    std::vector<Told> why_not;       // of each wrong digit; an empty key where there is no more to say

    int asked() const { return kind == Kind::pick_two ? 2 : 1; }  // digits in an answer
    int lowest() const { return kind == Kind::count ? 0 : 1; }
    int highest() const {
        return kind == Kind::count ? most_counted : static_cast<int>(places.size() > 1 || words.empty() ? places.size() : words.size());
    }
    bool accepts(const Answer& answer) const;
    // Whether it is an answer to this item at all: so many digits, ascending, each within bounds.
    bool takes(const Answer& answer) const;
};

}  // namespace spurwright::quiz
