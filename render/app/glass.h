// A round piece of the picture three times as large, under the pointer: a small picture of its own, not the large one
// stretched, so that buds can be counted from where one stands. Must not know: screens, rules.
#pragma once

#include <cstdint>
#include <memory>

#include "render/gl/renderer.h"

namespace spurwright::app {

class Glass {
public:
    static constexpr float power = 3;  // our choice
    // Across, in pixels, on a picture this high: a third of it, at most 480 (our choice).
    static int size_on(float height);

    // What `list` shows about a place, x to the right and y down, of a picture of that size. `number` rises with whatever else changes what is seen; the
    // same twice draws nothing.
    void draw(gl::Renderer& renderer, const scene::DrawList& list, std::uint64_t number, int width, int height, float x, float y);
    GLuint texture() const { return canvas_ ? canvas_->texture() : 0; }

private:
    struct Shown {
        std::uint64_t number = 0;
        float x = 0, y = 0;
        bool operator==(const Shown&) const = default;
    } shown_;
    std::unique_ptr<gl::Canvas> canvas_;
};

}  // namespace spurwright::app
