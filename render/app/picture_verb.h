// The verb `picture` with its answer: a vine, a plan where one is given, one PNG.
#pragma once

#include "scenarios/commands/verb.h"

namespace spurwright::app {

// Every verb that this program answers.
const std::vector<commands::Verb>& drawing_verbs();

// "1280x720"; refused (bad_text) where it is none, (out_of_range) where it cannot be drawn.
struct Size { int width = 1280, height = 720; };
[[nodiscard]] Result<Size> read_size(const std::string& text);

}  // namespace spurwright::app
