#include "render/gl/offscreen_context.h"

#include <EGL/egl.h>
#include <EGL/eglext.h>
#include <glad/gl.h>

namespace spurwright::gl {
namespace {

Error lacking(TextKey key) { return {Fault::missing, key, {}, {}}; }

EGLDisplay display_without_surface() {
    const auto get = reinterpret_cast<PFNEGLGETPLATFORMDISPLAYEXTPROC>(eglGetProcAddress("eglGetPlatformDisplayEXT"));
    if (get) {
        if (const EGLDisplay d = get(EGL_PLATFORM_SURFACELESS_MESA, EGL_DEFAULT_DISPLAY, nullptr); d != EGL_NO_DISPLAY)
            return d;
        // A machine with a card and another driver: the first device it lists.
        const auto list = reinterpret_cast<PFNEGLQUERYDEVICESEXTPROC>(eglGetProcAddress("eglQueryDevicesEXT"));
        EGLDeviceEXT device = nullptr;
        EGLint count = 0;
        if (list && list(1, &device, &count) && count > 0) return get(EGL_PLATFORM_DEVICE_EXT, device, nullptr);
    }
    return EGL_NO_DISPLAY;
}

} // namespace

Result<std::unique_ptr<OffscreenContext>> OffscreenContext::make() {
    const EGLDisplay display = display_without_surface();
    if (display == EGL_NO_DISPLAY || !eglInitialize(display, nullptr, nullptr))
        return failure(lacking({"error.picture.no-egl"}));
    std::unique_ptr<OffscreenContext> made(new OffscreenContext);
    made->display_ = display;
    eglBindAPI(EGL_OPENGL_API);
    const EGLint wanted[] = {EGL_SURFACE_TYPE,
                             EGL_PBUFFER_BIT,
                             EGL_RENDERABLE_TYPE,
                             EGL_OPENGL_BIT,
                             EGL_RED_SIZE,
                             8,
                             EGL_GREEN_SIZE,
                             8,
                             EGL_BLUE_SIZE,
                             8,
                             EGL_NONE};
    EGLConfig config = nullptr;
    EGLint count = 0;
    if (!eglChooseConfig(display, wanted, &config, 1, &count) || count < 1)
        return failure(lacking({"error.picture.no-gl"}));
    const EGLint version[] = {
        EGL_CONTEXT_MAJOR_VERSION,           3,       EGL_CONTEXT_MINOR_VERSION, 3, EGL_CONTEXT_OPENGL_PROFILE_MASK,
        EGL_CONTEXT_OPENGL_CORE_PROFILE_BIT, EGL_NONE};
    made->context_ = eglCreateContext(display, config, EGL_NO_CONTEXT, version);
    if (made->context_ == EGL_NO_CONTEXT || !eglMakeCurrent(display, EGL_NO_SURFACE, EGL_NO_SURFACE, made->context_))
        return failure(lacking({"error.picture.no-gl"}));
    if (!gladLoadGL(reinterpret_cast<GLADloadfunc>(eglGetProcAddress)))
        return failure(lacking({"error.picture.no-gl"}));
    return made;
}

OffscreenContext::~OffscreenContext() {
    if (!display_) return;
    eglMakeCurrent(display_, EGL_NO_SURFACE, EGL_NO_SURFACE, EGL_NO_CONTEXT);
    if (context_) eglDestroyContext(display_, context_);
#ifndef SPURWRIGHT_SANITIZED // the driver would be unloaded before leaks are looked for
    eglTerminate(display_);
#endif
}

} // namespace spurwright::gl
