// The one text of a vine from which its hash is made: a line a row, tables and fields in the order of vine.h, whole
// numbers in table units, words as they stand. Not a file format: the vine file is JSON (scenarios/io).
#pragma once

#include <cstdint>
#include <string>

#include "sim/vine/vine.h"

namespace spurwright {

std::string canonical_text(const Vine& vine);
std::uint64_t vine_hash(const Vine& vine);  // hash_of(canonical_text), without building the text twice

}  // namespace spurwright
