// The body of an event as SQL may look into it. One damaged body must not stop the answers about all others, and SQLite's
// functions of JSON refuse the whole statement for it.
#pragma once

#include <string>
#include <string_view>

namespace spurwright::records {

// SQL of the value at a key of the body; null where the body is no JSON or has no such key.
inline std::string in_body(std::string_view key) { return "json_extract(CASE WHEN json_valid(body) THEN body END, '$." + std::string(key) + "')"; }

} // namespace spurwright::records
