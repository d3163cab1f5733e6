// A look's answer as the records keep it.
#pragma once

#include <optional>

#include "scenarios/drill/progress.h"
#include "scenarios/records/events.h"

namespace spurwright::practice {

// The answer of an event of kind "look"; nothing where its body is another's or damaged.
std::optional<drill::LookAnswer> read_look(const records::Event& event);

} // namespace spurwright::practice
