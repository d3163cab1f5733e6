// A judgement that explains itself: one finding a rule and piece, whose points add up exactly, and caps stated apart.
// Names text keys and typed arguments; the sentence is made elsewhere.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "sim/core/text_key.h"
#include "sim/rules/rule.h"

namespace spurwright::rules {

enum class Unit : unsigned char { none, mm, deg, count, per_m, share, ratio, years, g };
constexpr auto words_of(Unit) {
    return std::to_array<std::string_view>({"", "mm", "deg", "count", "per_m", "share", "ratio", "years", "g"});
}

// In thousandths of the unit (12 mm: 12000; 18 buds: 18000; a share of one half: 500). An end left out is open.
struct Wanted {
    std::optional<std::int64_t> low, high;
    bool operator==(const Wanted&) const = default;
};

// What a rule says of one piece.
struct Said {
    std::optional<std::int64_t> measured;  // thousandths of the unit
    std::string_view measured_word;        // where the measure is no number: "bull", "two-year", "none"
    Unit unit = Unit::none;
    std::optional<Wanted> full, half;
    TextKey key;
    Arguments arguments;
    Mend if_lost = Mend::next_winter;  // what can be done where points were lost
};

struct Finding {
    const Rule* rule = nullptr;
    std::string on;          // part name; "" for totals
    Side side = Side::none;  // of the piece, or of the one missing
    Tenths points, out_of;   // out_of 0: a remark
    Said said;
    Status status{};  // of the threshold in force
    Mend mend{};
    Step step{};
    Tenths lost() const { return out_of - points; }
    bool is_remark() const { return out_of.count == 0; }
};

// Keys of the works behind a rule, each once; none where the rule is our choice alone.
std::vector<std::string_view> source_keys(const Rule& rule);
// The line of sources for people: "our choice, from {sources}", "our choice", "house rule".
TextKey source_line(const Rule& rule, Status status);

struct Cap {
    std::string_view cap;  // "two-year-laid"
    Tenths limit;
    std::string on;  // part name; "" where none
    TextKey key;
    Arguments arguments;
};

struct Judgement {
    Tenths points;                  // points_before_caps, held under the lowest cap
    Tenths points_before_caps;      // == the sum of findings[i].points
    std::vector<Finding> findings;  // in the order of the rule list, then left cane, right cane, left spur, right spur
    std::vector<Finding> remarks;   // out_of 0
    std::vector<Cap> caps;          // every one that applies
};

}  // namespace spurwright::rules
