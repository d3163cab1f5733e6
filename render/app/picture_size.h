// A size of a picture as a person writes it.
#pragma once

#include <string>

#include "sim/core/error.h"

namespace spurwright::app {

// "1280x720"; refused (bad_text) where it is none, (out_of_range) where it cannot be drawn.
struct Size { int width = 1280, height = 720; };
[[nodiscard]] Result<Size> read_size(const std::string& text);

}  // namespace spurwright::app
