// A context of OpenGL 3.3 without a window, by EGL with no surface: there is no framebuffer 0, so every frame names its
// own. Works with no display and no graphics card.
#pragma once

#include <memory>

#include "sim/core/error.h"

namespace spurwright::gl {

class OffscreenContext {
public:
    // Current on this thread until destroyed. Fails (Fault::missing) where there is no EGL or no OpenGL 3.3.
    [[nodiscard]] static Result<std::unique_ptr<OffscreenContext>> make();
    ~OffscreenContext();

private:
    OffscreenContext() = default;
    void* display_ = nullptr;
    void* context_ = nullptr;
};

} // namespace spurwright::gl
