// A spur must be sound and thick enough to grow a cane.
#pragma once

#include "sim/core/source_list.h"
#include "sim/rules/say.h"

namespace spurwright::rules {

// The thin limit is said of canes; its use for spurs, and the outer limit, are our choice.
inline constexpr std::array spur_size_claims{
    Claim{&sources::hellman_2019, "list of desirable fruiting cane characteristics, item 2 (of canes)", 6.35, no_number,
          "mm"},
    says(sources::westover_2016, "pp 28-29: thin wood is the commonest mistake"),
};

PerMille mark_spur_size(const SpurFacts& spur, const HouseRules& house);
Said say_spur_size(const SpurFacts& spur, const HouseRules& house);
extern const Rule spur_size;

}  // namespace spurwright::rules
