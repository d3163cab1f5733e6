// One number, word or yes of a house set as a hand changes it: a step more, a step less. Goes by the list of parameters
// that sim/rules publishes, so a new parameter can be changed as soon as it is there. Must not know: files, screens.
#pragma once

#include <string_view>
#include <vector>

#include "sim/rules/house_rules.h"

namespace spurwright::house {

// A value of a rule, or one end of a range.
struct Part {
    std::string_view rule, name;  // "cane-diameter", "full"
    bool upper = false;           // the far end of a range
    bool operator==(const Part&) const = default;
};

enum class Measured : unsigned char { yes, word, count, mm, deg, share, points, per_metre, turns };

struct Value {
    Measured measured{};
    bool open = false;            // no end, none asked
    std::int64_t thousandths = 0; // of the unit; a yes: 1000
    std::string_view word;        // of Measured::word
    bool ranged = false;          // one end of two
};

// The groups of parameters in the order of the files: the rules, then what belongs to none of them ("caps").
std::vector<std::string_view> groups();
// Of one group, in the order of the files; weight and on first where it is a rule.
std::vector<Part> parts_of(std::string_view group);

// `part` is one of parts_of.
Value value_of(const rules::HouseRules& house, const Part& part);

// So many steps more or less: a number by what is worth a change to a supervisor (our choice), never below nothing; a
// yes or a word goes on to the next one; an open end stepped down begins at a usual number (our choice).
void step(rules::HouseRules& house, const Part& part, int steps);

} // namespace spurwright::house
