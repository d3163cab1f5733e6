#include "render/app/glass.h"

#include <algorithm>
#include <cmath>

namespace spurwright::app {

int Glass::size_on(float height) { return static_cast<int>(std::clamp(height / 3, 60.0f, 480.0f)); }

void Glass::draw(gl::Renderer& renderer, const scene::DrawList& list, std::uint64_t number, int width, int height, float x, float y) {
    const int size = size_on(static_cast<float>(height));
    const bool fits = canvas_ && canvas_->width() == size;
    const Shown wanted{number, x, y};
    if (fits && wanted == shown_) return;
    if (!fits) canvas_ = std::make_unique<gl::Canvas>(size, size);
    if (!canvas_->complete()) return canvas_.reset();
    gl::Target tile = canvas_->target();
    tile.whole_width = static_cast<int>(power * static_cast<float>(width));
    tile.whole_height = static_cast<int>(power * static_cast<float>(height));
    tile.left = static_cast<int>(std::lround(power * x)) - size / 2;
    tile.low = static_cast<int>(std::lround(power * (static_cast<float>(height) - y))) - size / 2;
    renderer.draw(list, tile);
    shown_ = wanted;
}

}  // namespace spurwright::app
