// A file that another library writes, beside the place where it is to stand: filled under a name nobody has, then synced
// and renamed, so that at its place there is all of it or what stood there before. Must not know what is in it.
#pragma once

#include <string>

#include "sim/core/error.h"

namespace spurwright::io {

// An empty file beside `path`, readable by its owner alone. Fault::cannot_write.
[[nodiscard]] Result<std::string> empty_beside(const std::string& path);

// Fails (Fault::cannot_write) with what stood at `path` as it was; then the file beside is gone.
[[nodiscard]] Result<void> put_in_place(const std::string& beside, const std::string& path);

} // namespace spurwright::io
