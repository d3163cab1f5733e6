// OpenGL names that delete themselves. Nothing else here.
#pragma once

#include <utility>

#include <glad/gl.h>

namespace spurwright::gl {

// `Free` is called with a name that is not 0.
template <void (*Free)(GLuint)>
class Name {
public:
    Name() = default;
    explicit Name(GLuint name) : name_(name) {}
    Name(Name&& other) noexcept : name_(std::exchange(other.name_, 0)) {}
    Name& operator=(Name&& other) noexcept {
        std::swap(name_, other.name_);
        return *this;
    }
    Name(const Name&) = delete;
    Name& operator=(const Name&) = delete;
    ~Name() {
        if (name_) Free(name_);
    }
    GLuint get() const { return name_; }
    explicit operator bool() const { return name_ != 0; }

private:
    GLuint name_ = 0;
};

inline void free_buffer(GLuint n) { glDeleteBuffers(1, &n); }
inline void free_array(GLuint n) { glDeleteVertexArrays(1, &n); }
inline void free_texture(GLuint n) { glDeleteTextures(1, &n); }
inline void free_framebuffer(GLuint n) { glDeleteFramebuffers(1, &n); }
inline void free_renderbuffer(GLuint n) { glDeleteRenderbuffers(1, &n); }
inline void free_program(GLuint n) { glDeleteProgram(n); }

using Buffer = Name<free_buffer>;
using VertexArray = Name<free_array>;
using Texture = Name<free_texture>;
using Framebuffer = Name<free_framebuffer>;
using Renderbuffer = Name<free_renderbuffer>;
using Program = Name<free_program>;

inline Buffer new_buffer() {
    GLuint n = 0;
    glGenBuffers(1, &n);
    return Buffer(n);
}
inline VertexArray new_array() {
    GLuint n = 0;
    glGenVertexArrays(1, &n);
    return VertexArray(n);
}
inline Texture new_texture() {
    GLuint n = 0;
    glGenTextures(1, &n);
    return Texture(n);
}
inline Framebuffer new_framebuffer() {
    GLuint n = 0;
    glGenFramebuffers(1, &n);
    return Framebuffer(n);
}
inline Renderbuffer new_renderbuffer() {
    GLuint n = 0;
    glGenRenderbuffers(1, &n);
    return Renderbuffer(n);
}

} // namespace spurwright::gl
