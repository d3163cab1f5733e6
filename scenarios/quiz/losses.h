// The sentence that tells best why a plan lost points: of one piece, or of the vine. For whoever answers a wrong place.
#pragma once

#include <string>

#include "scenarios/quiz/item.h"
#include "sim/rules/findings.h"
#include "sim/rules/house_rules.h"

namespace spurwright::quiz {

// What a plan on this vine lost most by; on this part where a name is given. An empty key where it lost nothing.
const rules::Finding* largest_loss(const rules::Judgement& judgement, const std::string& on);
Told told(const rules::Finding* finding);
rules::Judgement judged(const Vine& vine, const Plan& plan, const rules::HouseRules& house);

}  // namespace spurwright::quiz
