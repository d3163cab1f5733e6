// Events of a quiz as JSON, one line each: what the journal keeps and records read.
#pragma once

#include "scenarios/io/json.h"
#include "scenarios/quiz/quiz.h"

namespace spurwright::quiz {

std::string print_event(const Event& event);
// Faults: bad_file with `source`: not JSON, a kind or key nobody knows, a value out of bounds.
[[nodiscard]] Result<Event> read_event(std::string_view line, const std::string& source);

}  // namespace spurwright::quiz
