// A source's key, for people and for programs, with the work it stands for.
#pragma once

#include <string>
#include <string_view>

#include "scenarios/io/json.h"

namespace spurwright::commands {

// The work of a key; null where there is none ("-").
io::Json cite_json(std::string_view key);

// "smith-2023: M. Smith ...", or the key alone.
std::string cite_text(std::string_view key);

} // namespace spurwright::commands
