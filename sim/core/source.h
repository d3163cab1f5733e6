// The works the rules and the model lean on, and what each of them says. A claim is what a work says; it is never a
// threshold: thresholds are house rules (sim/rules/house_rules.h).
#pragma once

#include <string_view>

namespace spurwright {

enum class Status {
    read,             // the value stands in the cited source
    choice,           // the project's own decision
    house,            // set by the block's own house rules
    common_practice,  // a fact of the trade with no source
};

struct Source {
    std::string_view key;   // one a work, everywhere the same
    std::string_view cite;
    std::string_view url;   // "-": none recorded
    char weight;            // A university, extension, peer-reviewed; B trade, professional; C grower, newspaper, home page
};

struct Claim {
    const Source* source;
    std::string_view place;  // where in the work
    double low, high;        // equal for a single value; open ends are +-infinity
    std::string_view unit;   // "mm", "count", "per_m", "deg", "ratio", "share", "years", "g", ""
};

}  // namespace spurwright
