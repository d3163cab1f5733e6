// PNG files from pixels as OpenGL reads them: lowest row first. Written beside and renamed: never half.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "sim/core/error.h"

namespace spurwright::gl {

// RGBA in, RGB written. Fails (Fault::cannot_write) naming the path.
[[nodiscard]] Result<void> write_png(const std::string& path, const std::vector<std::uint8_t>& rgba, int width, int height);

}  // namespace spurwright::gl
