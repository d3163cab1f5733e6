#include "tests/render/stored_picture.h"

#include <algorithm>
#include <cmath>
#include <cstring>

#include <png.h>

namespace spurwright::test {
namespace {

double brightness(const std::uint8_t* rgb) { return 0.2126 * rgb[0] + 0.7152 * rgb[1] + 0.0722 * rgb[2]; }

png_image rgb_image() {
    png_image image;
    std::memset(&image, 0, sizeof image);
    image.version = PNG_IMAGE_VERSION;
    return image;
}

} // namespace

std::optional<StoredPicture> read_picture(const std::string& path) {
    png_image image = rgb_image();
    if (!png_image_begin_read_from_file(&image, path.c_str())) return std::nullopt;
    image.format = PNG_FORMAT_RGB;
    StoredPicture picture{static_cast<int>(image.width), static_cast<int>(image.height), {}};
    picture.rgb.resize(PNG_IMAGE_SIZE(image));
    if (!png_image_finish_read(&image, nullptr, picture.rgb.data(), 0, nullptr)) return std::nullopt;
    return picture;
}

bool write_picture(const std::string& path, const StoredPicture& picture) {
    png_image image = rgb_image();
    image.width = static_cast<png_uint_32>(picture.width);
    image.height = static_cast<png_uint_32>(picture.height);
    image.format = PNG_FORMAT_RGB;
    return png_image_write_to_file(&image, path.c_str(), 0, picture.rgb.data(), 0, nullptr) != 0;
}

StoredPicture picture_of(const std::vector<std::uint8_t>& rgba, int width, int height) {
    StoredPicture picture{width, height, {}};
    picture.rgb.reserve(static_cast<std::size_t>(width * height) * 3);
    for (int y = height - 1; y >= 0; --y)
        for (int x = 0; x < width; ++x)
            for (int k = 0; k < 3; ++k) picture.rgb.push_back(rgba[4 * static_cast<std::size_t>(y * width + x) + static_cast<std::size_t>(k)]);
    return picture;
}

Apart apart(const StoredPicture& a, const StoredPicture& b) {
    std::vector<double> all;
    double sum = 0;
    for (std::size_t i = 0; i + 2 < a.rgb.size() && i + 2 < b.rgb.size(); i += 3) {
        all.push_back(std::fabs(brightness(&a.rgb[i]) - brightness(&b.rgb[i])));
        sum += all.back();
    }
    if (all.empty()) return {255, 255};
    const auto at = static_cast<std::ptrdiff_t>(all.size() * 99 / 100);
    std::nth_element(all.begin(), all.begin() + at, all.end());
    return {sum / static_cast<double>(all.size()), all[static_cast<std::size_t>(at)]};
}

StoredPicture difference(const StoredPicture& a, const StoredPicture& b) {
    StoredPicture out = a;
    for (std::size_t i = 0; i < out.rgb.size() && i < b.rgb.size(); ++i)
        out.rgb[i] = static_cast<std::uint8_t>(std::clamp(128 + 8 * (int{a.rgb[i]} - int{b.rgb[i]}), 0, 255));
    return out;
}

} // namespace spurwright::test
