#include "render/scene/sight.h"

#include <algorithm>
#include <cmath>

namespace spurwright::scene {
namespace {

using Matrix = std::array<std::array<float, 3>, 3>;

constexpr Matrix matrix_of(Sight sight) {
    switch (sight) {
    case Sight::grey: return {{{0.2126f, 0.7152f, 0.0722f}, {0.2126f, 0.7152f, 0.0722f}, {0.2126f, 0.7152f, 0.0722f}}};
    case Sight::protanopia: return {{{0.152286f, 1.052583f, -0.204868f}, {0.114503f, 0.786281f, 0.099216f}, {-0.003882f, -0.048116f, 1.051998f}}};
    case Sight::deuteranopia: return {{{0.367322f, 0.860646f, -0.227968f}, {0.280085f, 0.672501f, 0.047413f}, {-0.011820f, 0.042940f, 0.968881f}}};
    case Sight::tritanopia: return {{{1.255528f, -0.076749f, -0.178779f}, {-0.078411f, 0.930809f, 0.147602f}, {0.004733f, 0.691367f, 0.303900f}}};
    case Sight::full: break;
    }
    return {{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}};
}

std::array<float, 256> linear_table() {
    std::array<float, 256> table{};
    for (std::size_t i = 0; i < table.size(); ++i) {
        const float c = static_cast<float>(i) / 255;
        table[i] = c <= 0.04045f ? c / 12.92f : std::pow((c + 0.055f) / 1.055f, 2.4f);
    }
    return table;
}

std::uint8_t coded(float linear) {
    const float c = std::clamp(linear, 0.0f, 1.0f);
    const float s = c <= 0.0031308f ? 12.92f * c : 1.055f * std::pow(c, 1 / 2.4f) - 0.055f;
    return static_cast<std::uint8_t>(std::lround(255 * s));
}

} // namespace

void see_as(std::vector<std::uint8_t>& rgba, Sight sight) {
    if (sight == Sight::full) return;
    const Matrix m = matrix_of(sight);
    const auto linear = linear_table();
    for (std::size_t i = 0; i + 3 < rgba.size(); i += 4) {
        const float rgb[3] = {linear[rgba[i]], linear[rgba[i + 1]], linear[rgba[i + 2]]};
        for (std::size_t k = 0; k < 3; ++k) rgba[i + k] = coded(m[k][0] * rgb[0] + m[k][1] * rgb[1] + m[k][2] * rgb[2]);
    }
}

} // namespace spurwright::scene
