// More buds where winter killed some: four published schools, which differ; each by its name.
#pragma once

#include <array>
#include <string_view>

#include "sim/core/source.h"

namespace spurwright::balance {

enum class InjuryMethod : unsigned char { cornell, msu, purdue, ohio_penn };
constexpr auto words_of(InjuryMethod) { return std::to_array<std::string_view>({"cornell", "msu", "purdue", "ohio-penn"}); }

enum class Advice : unsigned char { as_usual, leave_more, minimal, wait };
constexpr auto words_of(Advice) { return std::to_array<std::string_view>({"as-usual", "leave-more", "minimal", "wait"}); }

struct InjuryAnswer {
    double killed_share = 0;
    double buds = 0;      // to leave; the target itself where the advice is no number
    double live_buds = 0; // of those, at this share of dead ones
    Advice advice{};
    std::string_view source; // a source's key, or "-"
    bool remembered = false; // the number is from memory
};

// cornell: the same share more, from 20 to 80 % dead, then wait for budburst [cornell-nny-2014; above 80 % from memory].
// msu: canes for the share lost, from 20 to 50 %, then only what cannot be managed is cleared [zabadal-2002].
// purdue: 35 % more from 15 %, 50 % more from 35 % (printed overlapping from 25), minimal from 50 % [purdue-double].
// ohio-penn: 35 % more from 15 %, double from 35 %, minimal above 50 % (from memory).
// Needs 0 <= share <= 1 and target >= 0.
InjuryAnswer more_for_killed(InjuryMethod method, double killed_share, double target);

// The other arithmetic, which keeps as many live buds as the target: N / (1 - k). Needs killed_share < 1.
double buds_by_division(double killed_share, double target);

} // namespace spurwright::balance
