// Looking up what a work says of a rule, so that a test by source reads the claim, never the threshold.
#pragma once

#include <doctest/doctest.h>

#include <cmath>

#include "sim/rules/rule_list.h"

namespace spurwright::test {

// The nth claim (from 0) of a work under a rule; the test fails where there is none.
inline const Claim& claim_of(rules::RuleName rule, std::string_view key, int nth = 0) {
    static const Claim none{};
    for (const Claim& claim : rules::rule_of(rule).claims)
        if (claim.source->key == key && nth-- == 0) return claim;
    FAIL_CHECK("no claim of ", std::string(key), " under ", std::string(rules::key_of(rule)));
    return none;
}

// A claim in words carries no number.
inline bool in_words(const Claim& claim) {
    return std::isinf(claim.low) && std::isinf(claim.high) && claim.unit.empty();
}

inline double mm(Length l) { return in_mm(l); }

inline constexpr double inch = 25.4, foot_per_metre = 1 / 0.3048;

}  // namespace spurwright::test
