// A choice as programs and people read it: canes by the node they are cut after, spurs with their buds.
#pragma once

#include "scenarios/io/json.h"
#include "scenarios/words/words.h"
#include "sim/planning/cordon.h"
#include "sim/planning/planning.h"

namespace spurwright::commands {

io::Json cane_name(NodeId cane);            // "a4.7"; null where there is none
io::Json spur_name(AxisId spur, int buds);  // "a6x2"
io::Json choice_object(const planning::Choice& choice);
io::Json choice_object(const planning::CordonChoice& choice); // spurs of each side, outward
io::Json plan_object(const planning::BestPlan& plan); // points, plan, choice
io::Json plan_object(const planning::BestCordon& plan);

// "cane a4 after node 7", "spur a6 with 2 buds", "no cane", "no spur".
std::string cane_words(NodeId cane, const words::Words& words);
std::string spur_words(AxisId spur, int buds, const words::Words& words);

} // namespace spurwright::commands
