#include "sim/core/hash.h"

namespace spurwright {

std::string hash_text(std::uint64_t hash) {
    std::string text(16, '0');
    for (std::size_t i = 16; i-- > 0; hash >>= 4) text[i] = "0123456789abcdef"[hash & 15];
    return text;
}

}  // namespace spurwright
