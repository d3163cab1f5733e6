// Many samples a pixel, in a framebuffer of its own: one in the window's would cost every start. Made when first
// needed.
#pragma once

#include "render/gl/gl_objects.h"

namespace spurwright::gl {

class Samples {
public:
    // Makes it this large; false where the driver cannot.
    bool fit(int width, int height, int samples);
    GLuint framebuffer() const { return framebuffer_.get(); }

private:
    int width_ = 0, height_ = 0, count_ = 0;
    Renderbuffer colour_, depth_;
    Framebuffer framebuffer_;
};

} // namespace spurwright::gl
