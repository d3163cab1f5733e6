// A PNG from pixels as OpenGL reads them: lowest row first. Bytes only; who asks writes the file.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

namespace spurwright::gl {

// RGBA in, RGB out. Needs width x height x 4 bytes. Empty only where memory runs out.
std::string png_bytes(const std::vector<std::uint8_t>& rgba, int width, int height);

} // namespace spurwright::gl
