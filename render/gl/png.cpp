#include "render/gl/png.h"

#include <cstdio>
#include <cstring>

#include <png.h>
#include <unistd.h>

namespace spurwright::gl {

Result<void> write_png(const std::string& path, const std::vector<std::uint8_t>& rgba, int width, int height) {
    const auto refuse = [&] { return failure(Error{Fault::cannot_write, {"error.picture.cannot-write"}, {{"path", path}}, {path, 0, 0, 0}}); };
    std::vector<std::uint8_t> rgb(static_cast<std::size_t>(width) * static_cast<std::size_t>(height) * 3);
    for (std::size_t i = 0, n = rgb.size() / 3; i < n; ++i) std::memcpy(&rgb[3 * i], &rgba[4 * i], 3);
    png_image image{};
    image.version = PNG_IMAGE_VERSION;
    image.width = static_cast<png_uint_32>(width);
    image.height = static_cast<png_uint_32>(height);
    image.format = PNG_FORMAT_RGB;
    const std::string beside = path + ".part" + std::to_string(getpid());
    std::FILE* file = std::fopen(beside.c_str(), "wb");
    if (!file) return refuse();
    // A negative stride turns the picture over.
    const bool written = png_image_write_to_stdio(&image, file, 0, rgb.data(), -3 * width, nullptr) != 0;
    const bool closed = std::fclose(file) == 0;
    if (!written || !closed || std::rename(beside.c_str(), path.c_str()) != 0) {
        std::remove(beside.c_str());
        return refuse();
    }
    return {};
}

}  // namespace spurwright::gl
