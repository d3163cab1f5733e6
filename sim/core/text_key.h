// What a sentence is made from: the key of a text in the word files and typed arguments. `sim` names keys and
// arguments only; scenarios/words makes the sentence in the language asked.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "sim/core/ids.h"
#include "sim/core/units.h"

namespace spurwright {

// "error.plan.already-gone". Every key used is in every complete word file (test). Must outlive the value: a literal.
struct TextKey {
    std::string_view name;
    constexpr auto operator<=>(const TextKey&) const = default;
};

struct Count { std::int64_t value = 0; auto operator<=>(const Count&) const = default; };
struct Ratio { double value = 0; auto operator<=>(const Ratio&) const = default; };  // a plain number, at most 3 decimals shown

using Argument = std::variant<Count, Ratio, Length, Mass, Angle, Tenths, PerMille, Strain, TextKey, AxisId, NodeId, std::string>;

struct Named {
    std::string_view gap;  // the {name} it fills
    Argument value;
    bool operator==(const Named&) const = default;
};
using Arguments = std::vector<Named>;

}  // namespace spurwright
