// Whether bytes are text.
#pragma once

#include <string_view>

namespace spurwright::io {

// Well-formed UTF-8: lengths, continuations, no overlong form, no surrogate, nothing past U+10FFFF.
bool is_utf8(std::string_view text);

} // namespace spurwright::io
