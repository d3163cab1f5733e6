// How every file of something of one's own begins: its kind and version, a name that nothing of ours has, how people write
// it, and the shipped one that says what the file leaves out.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "scenarios/io/json_fields.h"

namespace spurwright::io {

inline constexpr std::size_t longest_own_name = 40; // as a vine file holds it

struct NamedFile {
    std::string name;  // "our-red": small letters, digits and hyphens
    std::string shown; // as people write it; where left out, the name
    std::string base;  // a shipped one; empty: the file says all itself
};

// Reads "kind", "version", "name", "shown" and "base". `shipped`: the names that are taken, and those to build on.
NamedFile read_named(Fields& fields, std::string_view kind, int newest, const std::vector<std::string_view>& shipped);

// A value with decimals in [low, high], in whole 1/10,000; `other` after a refusal.
double value_between(Fields& fields, const Json& value, std::string_view key, double low, double high, double other);

// A path has a slash or a dot; anything else is a name.
bool is_path(std::string_view name_or_path);

} // namespace spurwright::io
