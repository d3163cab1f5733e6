// Every invariant of the vine tables, once, each with the key of its sentence. Tests call check_vine on every vine
// they touch; the file reader refuses a file by it.
#pragma once

#include <optional>

#include "sim/core/error.h"
#include "sim/vine/vine.h"

namespace spurwright {

inline constexpr std::size_t most_axes = 4'096;
inline constexpr std::size_t most_nodes = 65'536;

// The first broken invariant (Fault::bad_file, key "error.vine.<name>", argument "part"), or nothing.
std::optional<Error> check_vine(const Vine& vine);

}  // namespace spurwright
