// The window of the system, by GLFW: events into the desk's queue, a frame when there is something to draw. Closes only
// when a person asks. Everything drawn is the desk's.
#pragma once

#include "render/app/opening.h"
#include "scenarios/io/assets.h"

namespace spurwright::app {

// Until the window is closed. Fault::missing with no display, no OpenGL 3.3, no font.
[[nodiscard]] Result<void> run_window(const io::Assets& assets, const WindowWish& wish);

// Seeds for next vines: counted on from the one given, else from the system's noise.
std::function<std::uint64_t()> seeds(const WindowWish& wish);

}  // namespace spurwright::app
