#include "render/gl/detail_texture.h"

#include <algorithm>
#include <cmath>

#include "sim/core/random.h"

namespace spurwright::gl {
namespace {

// Smooth noise of `columns` x `rows` cells that repeats after one tile; about 0 to 1.
class Tile {
public:
    Tile(int columns, int rows, std::uint32_t layer)
        : columns_(columns), rows_(rows), cells_(static_cast<std::size_t>(columns * rows)) {
        for (std::size_t i = 0; i < cells_.size(); ++i)
            cells_[i] = static_cast<float>(unit(draw(0xba4c, layer, static_cast<std::uint32_t>(i))));
    }
    float at(float u, float v) const {
        const float x = u * static_cast<float>(columns_), y = v * static_cast<float>(rows_);
        const float fx = std::floor(x), fy = std::floor(y);
        float tx = x - fx, ty = y - fy;
        tx = tx * tx * (3 - 2 * tx);
        ty = ty * ty * (3 - 2 * ty);
        const int x0 = wrap(static_cast<int>(fx), columns_), x1 = x0 + 1 == columns_ ? 0 : x0 + 1;
        const int y0 = wrap(static_cast<int>(fy), rows_), y1 = y0 + 1 == rows_ ? 0 : y0 + 1;
        const float a = cell(x0, y0) + tx * (cell(x1, y0) - cell(x0, y0)),
                    b = cell(x0, y1) + tx * (cell(x1, y1) - cell(x0, y1));
        return a + ty * (b - a);
    }

private:
    static int wrap(int i, int n) { return ((i % n) + n) % n; }
    float cell(int x, int y) const { return cells_[static_cast<std::size_t>(y * columns_ + x)]; }
    int columns_, rows_;
    std::vector<float> cells_;
};

std::uint8_t byte(float share) { return static_cast<std::uint8_t>(std::clamp(share, 0.0f, 1.0f) * 255 + 0.5f); }

} // namespace

std::vector<std::uint8_t> detail_pixels() {
    const Tile warp(5, 3, 1), ridge(9, 2, 2), ridge2(18, 5, 3), fibre(48, 5, 4), phase(3, 4, 5), streak(32, 6, 6),
        peel(6, 1, 7), peel_warp(8, 5, 8);
    const Tile b1(3, 5, 9), b2(7, 11, 10), b3(15, 23, 11), b4(31, 47, 12), b5(63, 95, 13);
    std::vector<std::uint8_t> pixels(static_cast<std::size_t>(detail_width * detail_height * 4));
    std::size_t at = 0;
    for (int y = 0; y < detail_height; ++y)
        for (int x = 0; x < detail_width; ++x) {
            const float u = static_cast<float>(x) / detail_width, v = static_cast<float>(y) / detail_height;
            const float w = 0.09f * (warp.at(u, v) - 0.5f);
            const float r1 = 1 - std::fabs(2 * ridge.at(u + w, v) - 1),
                        r2 = 1 - std::fabs(2 * ridge2.at(u - w, v + 0.3f) - 1);
            const float old = 1 - std::pow(0.65f * r1 + 0.35f * r2, 1.6f);
            const float bark = 0.75f * old + 0.25f * fibre.at(u + w, v);
            const float ribs = 0.5f + 0.5f * std::sin(6.2831853f * (18 * u + 0.35f * (phase.at(u, v) - 0.5f) * 4));
            const float rib = 0.65f * ribs + 0.35f * streak.at(u, v);
            const float peels = std::clamp(0.5f + 3 * (0.7f * peel.at(u + 0.05f * (peel_warp.at(u, v) - 0.5f), v) +
                                                       0.3f * peel_warp.at(u, v) - 0.47f),
                                           0.0f, 1.0f);
            const float broad = 0.36f * b1.at(u, v) + 0.26f * b2.at(u, v) + 0.18f * b3.at(u, v) + 0.12f * b4.at(u, v) +
                                0.08f * b5.at(u, v);
            pixels[at++] = byte(bark);
            pixels[at++] = byte(rib);
            pixels[at++] = byte(peels);
            pixels[at++] = byte(0.5f + 1.6f * (broad - 0.5f));
        }
    return pixels;
}

Texture detail_texture() {
    const auto pixels = detail_pixels();
    Texture texture = new_texture();
    glBindTexture(GL_TEXTURE_2D, texture.get());
    glTexImage2D(GL_TEXTURE_2D, 0, GL_RGBA8, detail_width, detail_height, 0, GL_RGBA, GL_UNSIGNED_BYTE, pixels.data());
    glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MIN_FILTER, GL_LINEAR_MIPMAP_LINEAR);
    glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MAG_FILTER, GL_LINEAR);
    glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_WRAP_S, GL_REPEAT);
    glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_WRAP_T, GL_REPEAT);
    glGenerateMipmap(GL_TEXTURE_2D);
    return texture;
}

} // namespace spurwright::gl
