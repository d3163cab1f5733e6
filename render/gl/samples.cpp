#include "render/gl/samples.h"

namespace spurwright::gl {

bool Samples::fit(int w, int h, int samples) {
    if (w == width_ && h == height_ && samples == count_) return true;
    colour_ = new_renderbuffer();
    depth_ = new_renderbuffer();
    framebuffer_ = new_framebuffer();
    glBindRenderbuffer(GL_RENDERBUFFER, colour_.get());
    glRenderbufferStorageMultisample(GL_RENDERBUFFER, samples, GL_RGBA8, w, h);
    glBindRenderbuffer(GL_RENDERBUFFER, depth_.get());
    glRenderbufferStorageMultisample(GL_RENDERBUFFER, samples, GL_DEPTH24_STENCIL8, w, h);
    glBindFramebuffer(GL_FRAMEBUFFER, framebuffer_.get());
    glFramebufferRenderbuffer(GL_FRAMEBUFFER, GL_COLOR_ATTACHMENT0, GL_RENDERBUFFER, colour_.get());
    glFramebufferRenderbuffer(GL_FRAMEBUFFER, GL_DEPTH_STENCIL_ATTACHMENT, GL_RENDERBUFFER, depth_.get());
    const bool complete = glCheckFramebufferStatus(GL_FRAMEBUFFER) == GL_FRAMEBUFFER_COMPLETE;
    width_ = complete ? w : 0;
    height_ = h;
    count_ = samples;
    return complete;
}

} // namespace spurwright::gl
