// A folder to write a numbered series of files into: made where it is missing, with those above it.
#pragma once

#include <string>

#include "sim/core/error.h"

namespace spurwright::io {

// Fails (Fault::cannot_write) where it cannot be made or something else stands there.
[[nodiscard]] Result<void> make_folder(const std::string& path);

} // namespace spurwright::io
