// What Dear ImGui would draw, as pixels, without OpenGL: triangles with the font's texture. For looking at screens.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include <imgui.h>

namespace spurwright::test {

struct Page {
    int width = 0, height = 0;
    std::vector<std::uint8_t> rgb; // uppermost row first
};

// A sky over soil, so that marks are seen on light and dark.
Page plain_ground(int width, int height);
// Over what the page holds. The font atlas of the current context must be built.
void draw_on(Page& page, const ImDrawData& data);
void save_png(const Page& page, const std::string& path);

} // namespace spurwright::test
