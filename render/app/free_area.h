// The part of the window that panels leave free, and the picture composed into it: with large text, or beside the look
// back, the vine still stands where it can be seen. Must not know: which panels there are.
#pragma once

#include <vector>

#include "render/scene/camera.h"
#include "render/ui/probe.h"

namespace spurwright::app {

// Fractions of the window, from its upper corner towards the near post. As it comes: what the views are composed for.
struct FreeArea {
    float x0 = 0, y0 = 0.122f, x1 = 1, y1 = 0.924f;
    bool operator==(const FreeArea&) const = default;
};

// What bands across the top, panels along the bottom and panels down the far side leave. Small panels over the picture
// take nothing away. `width`, `height`: of the window, in pixels.
FreeArea free_area(const std::vector<ui::Box>& panels, float width, float height);

// The same eye, with what it was composed for shown inside the free area.
scene::Camera in_free_area(scene::Camera camera, const FreeArea& area);

}  // namespace spurwright::app
