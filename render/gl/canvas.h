// A picture to draw into: one colour texture with depth, optionally with more samples a pixel. The window shows its
// texture; offscreen reads it back.
#pragma once

#include <cstdint>
#include <vector>

#include "render/gl/gl_objects.h"

namespace spurwright::gl {

// Where a frame goes. 0 is the window's own framebuffer; offscreen there is none of that name.
struct Target {
    GLuint framebuffer = 0;
    int width = 0, height = 0;
    // It may be one tile of a larger picture: that one's size, and where in it the tile's lower corner lies.
    int whole_width = width, whole_height = height, left = 0, low = 0;
};

class Canvas {
public:
    Canvas(int width, int height);
    Target target() const { return {framebuffer_.get(), width_, height_}; }
    GLuint texture() const { return colour_.get(); }
    int width() const { return width_; }
    int height() const { return height_; }
    bool complete() const { return complete_; }
    std::vector<std::uint8_t> pixels() const; // RGBA, lowest row first
    // Takes colour and depth over from a canvas of the same size.
    void copy(const Canvas& from);

private:
    int width_, height_;
    Texture colour_;
    Renderbuffer depth_;
    Framebuffer framebuffer_;
    bool complete_ = false;
};

} // namespace spurwright::gl
