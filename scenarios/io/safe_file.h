// Whole files in and out: read up to a limit; written beside and renamed, so that a file is the old one or the new
// one and never half of either. Must not know what is in them.
#pragma once

#include <string>
#include <string_view>

#include "sim/core/error.h"

namespace spurwright::io {

// Whether anything stands at this path, a link followed.
[[nodiscard]] bool is_there(const std::string& path);

// Every byte of a file. Fails (Fault::bad_file) where there is no such file, it is a folder, may not be read, or is
// larger than `largest` bytes.
[[nodiscard]] Result<std::string> read_file(const std::string& path, std::size_t largest);

// Writes beside, syncs, renames. Fails (Fault::cannot_write) with the old file, if there was one, as it was. What is
// there and no plain file (a folder, a device) is refused.
[[nodiscard]] Result<void> write_file(const std::string& path, std::string_view bytes);

} // namespace spurwright::io
