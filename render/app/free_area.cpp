#include "render/app/free_area.h"

#include <algorithm>

namespace spurwright::app {
namespace {

// The views are composed for this part of a window with text at 100 %; beside it stand the neighbours. Our choice.
constexpr FreeArea composed{.x0 = 0.2f, .x1 = 0.8f};
constexpr float least_free = 0.2f;  // of the window each way: below it a picture that small would show nothing
constexpr float touches_px = 14;    // a panel this near an edge stands along it

}  // namespace

FreeArea free_area(const std::vector<ui::Box>& panels, float width, float height) {
    FreeArea area{0, 0, 1, 1};
    for (const ui::Box& p : panels) {
        const float wide = (p.x1 - p.x0) / width, high = (p.y1 - p.y0) / height;
        if (wide > 0.6f && p.y0 < touches_px && high < 0.6f) area.y0 = std::max(area.y0, p.y1 / height);
        else if (wide > 0.25f && p.y1 > height - touches_px && high < 0.6f) area.y1 = std::min(area.y1, p.y0 / height);
        else if (high > 0.6f && p.x1 > width - touches_px && wide < 0.8f) area.x1 = std::min(area.x1, p.x0 / width);
    }
    if (area.y1 - area.y0 < least_free) area.y0 = 0, area.y1 = 1;
    if (area.x1 - area.x0 < least_free) area.x1 = 1;
    return area;
}

scene::Camera in_free_area(scene::Camera camera, const FreeArea& area) {
    camera.shown = std::min({1.0f, (area.x1 - area.x0) / (composed.x1 - composed.x0), (area.y1 - area.y0) / (composed.y1 - composed.y0)});
    const auto place = [&](float from, float to, float own_from, float own_to) { return (from + to) - 1 - camera.shown * ((own_from + own_to) - 1); };
    camera.shift = {place(area.x0, area.x1, composed.x0, composed.x1), -place(area.y0, area.y1, composed.y0, composed.y1)};
    return camera;
}

}  // namespace spurwright::app
