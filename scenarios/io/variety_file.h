// A variety of one's own as a file ("kind": "spurwright-variety"): a shipped one to build on, and what is otherwise. Each
// value is a number, then our choice, or says its status and source beside it. A vine grown of one has no code.
// Schema: assets/schemas/variety-1.json. Must not know: what the model does with a value.
#pragma once

#include <memory>
#include <string>
#include <string_view>

#include "sim/core/error.h"
#include "sim/growth/variety.h"

namespace spurwright::io {

inline constexpr std::string_view variety_kind = "spurwright-variety";
inline constexpr int variety_version = 1;

// Faults: bad_file with line, column and key, also for a value outside its range in the constants' table; newer.
[[nodiscard]] Result<std::shared_ptr<const growth::Variety>> read_variety(std::string_view text,
                                                                          const std::string& source);

// NAME of a shipped one, or a path (anything with a slash or a dot). A name that is none: out_of_range, where `option`.
[[nodiscard]] Result<std::shared_ptr<const growth::Variety>> load_variety(const std::string& name_or_path,
                                                                          std::string_view option);

// Every value with its status, without a base. A shipped one prints under a name that may be read: "own-merlot".
std::string print_variety(const growth::Variety& variety);

} // namespace spurwright::io
