#include "tests/ui/page.h"

#include <algorithm>
#include <cmath>
#include <cstring>

#include <doctest/doctest.h>
#include <png.h>

namespace spurwright::test {
namespace {

struct Texture {
    const unsigned char* alpha;
    int width, height;
    float at(float u, float v) const { // the atlas is white: only its alpha matters
        const float x = std::clamp(u * static_cast<float>(width) - 0.5f, 0.0f, static_cast<float>(width - 1));
        const float y = std::clamp(v * static_cast<float>(height) - 0.5f, 0.0f, static_cast<float>(height - 1));
        const int x0 = static_cast<int>(x), y0 = static_cast<int>(y), x1 = std::min(x0 + 1, width - 1),
                  y1 = std::min(y0 + 1, height - 1);
        const float fx = x - static_cast<float>(x0), fy = y - static_cast<float>(y0);
        const auto texel = [&](int tx, int ty) { return static_cast<float>(alpha[ty * width + tx]) / 255; };
        return (texel(x0, y0) * (1 - fx) + texel(x1, y0) * fx) * (1 - fy) +
               (texel(x0, y1) * (1 - fx) + texel(x1, y1) * fx) * fy;
    }
};

struct Canvas {
    Page& page;
    Texture texture;
    ImVec4 clip;

    void triangle(const ImDrawVert& a, const ImDrawVert& b, const ImDrawVert& c) {
        const float area = (b.pos.x - a.pos.x) * (c.pos.y - a.pos.y) - (b.pos.y - a.pos.y) * (c.pos.x - a.pos.x);
        if (area == 0) return;
        const auto low = [](float p, float q, float r, float bound) {
            return static_cast<int>(std::floor(std::max(std::min({p, q, r}), bound)));
        };
        const auto high = [](float p, float q, float r, float bound) {
            return static_cast<int>(std::ceil(std::min(std::max({p, q, r}), bound)));
        };
        const int x0 = std::max(low(a.pos.x, b.pos.x, c.pos.x, clip.x), 0),
                  x1 = std::min(high(a.pos.x, b.pos.x, c.pos.x, clip.z), page.width);
        const int y0 = std::max(low(a.pos.y, b.pos.y, c.pos.y, clip.y), 0),
                  y1 = std::min(high(a.pos.y, b.pos.y, c.pos.y, clip.w), page.height);
        for (int y = y0; y < y1; ++y)
            for (int x = x0; x < x1; ++x) {
                const float px = static_cast<float>(x) + 0.5f, py = static_cast<float>(y) + 0.5f;
                const float wb = ((px - a.pos.x) * (c.pos.y - a.pos.y) - (py - a.pos.y) * (c.pos.x - a.pos.x)) / area;
                const float wc = ((b.pos.x - a.pos.x) * (py - a.pos.y) - (b.pos.y - a.pos.y) * (px - a.pos.x)) / area;
                const float wa = 1 - wb - wc;
                if (wa < 0 || wb < 0 || wc < 0) continue;
                blend(x, y, a, b, c, wa, wb, wc);
            }
    }

    void blend(int x, int y, const ImDrawVert& a, const ImDrawVert& b, const ImDrawVert& c, float wa, float wb,
               float wc) {
        const auto part = [&](int shift) {
            const auto channel = [&](ImU32 colour) { return static_cast<float>((colour >> shift) & 255u); };
            return channel(a.col) * wa + channel(b.col) * wb + channel(c.col) * wc;
        };
        const float alpha =
            part(24) / 255 *
            texture.at(a.uv.x * wa + b.uv.x * wb + c.uv.x * wc, a.uv.y * wa + b.uv.y * wb + c.uv.y * wc);
        std::uint8_t* pixel = &page.rgb[static_cast<std::size_t>(y * page.width + x) * 3];
        for (int i = 0; i < 3; ++i)
            pixel[i] =
                static_cast<std::uint8_t>(static_cast<float>(pixel[i]) * (1 - alpha) + part(i * 8) * alpha + 0.5f);
    }
};

} // namespace

Page plain_ground(int width, int height) {
    Page page{width, height, std::vector<std::uint8_t>(static_cast<std::size_t>(width * height) * 3)};
    for (int y = 0; y < height; ++y)
        for (int x = 0; x < width; ++x) {
            const bool sky = y < height * 2 / 3;
            std::uint8_t* pixel = &page.rgb[static_cast<std::size_t>(y * width + x) * 3];
            pixel[0] = sky ? 150 : 122;
            pixel[1] = sky ? 155 : 106;
            pixel[2] = sky ? 163 : 86;
        }
    return page;
}

void draw_on(Page& page, const ImDrawData& data) {
    Canvas canvas{page, {}, {}};
    unsigned char* alpha = nullptr;
    ImGui::GetIO().Fonts->GetTexDataAsAlpha8(&alpha, &canvas.texture.width, &canvas.texture.height);
    canvas.texture.alpha = alpha;
    for (int n = 0; n < data.CmdListsCount; ++n) {
        const ImDrawList& list = *data.CmdLists[n];
        for (const ImDrawCmd& command : list.CmdBuffer) {
            if (command.UserCallback) continue;
            canvas.clip = command.ClipRect;
            for (unsigned i = 0; i + 2 < command.ElemCount; i += 3) {
                const auto vertex = [&](unsigned k) -> const ImDrawVert& {
                    return list.VtxBuffer[static_cast<int>(command.VtxOffset) +
                                          list.IdxBuffer[static_cast<int>(command.IdxOffset + i + k)]];
                };
                canvas.triangle(vertex(0), vertex(1), vertex(2));
            }
        }
    }
}

void save_png(const Page& page, const std::string& path) {
    png_image image;
    std::memset(&image, 0, sizeof image);
    image.version = PNG_IMAGE_VERSION;
    image.width = static_cast<png_uint_32>(page.width);
    image.height = static_cast<png_uint_32>(page.height);
    image.format = PNG_FORMAT_RGB;
    REQUIRE(png_image_write_to_file(&image, path.c_str(), 0, page.rgb.data(), 0, nullptr) != 0);
}

} // namespace spurwright::test
