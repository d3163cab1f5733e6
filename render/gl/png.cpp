#include "render/gl/png.h"

#include <cstring>

#include <png.h>

namespace spurwright::gl {

std::string png_bytes(const std::vector<std::uint8_t>& rgba, int width, int height) {
    std::vector<std::uint8_t> rgb(static_cast<std::size_t>(width) * static_cast<std::size_t>(height) * 3);
    for (std::size_t i = 0, n = rgb.size() / 3; i < n; ++i) std::memcpy(&rgb[3 * i], &rgba[4 * i], 3);
    png_image image{};
    image.version = PNG_IMAGE_VERSION;
    image.width = static_cast<png_uint_32>(width);
    image.height = static_cast<png_uint_32>(height);
    image.format = PNG_FORMAT_RGB;
    // A negative stride turns the picture over. The first call asks for room.
    png_alloc_size_t size = 0;
    if (!png_image_write_to_memory(&image, nullptr, &size, 0, rgb.data(), -3 * width, nullptr)) return {};
    std::string bytes(size, '\0');
    if (!png_image_write_to_memory(&image, bytes.data(), &size, 0, rgb.data(), -3 * width, nullptr)) return {};
    bytes.resize(size);
    return bytes;
}

} // namespace spurwright::gl
