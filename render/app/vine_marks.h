// What is drawn on the vine besides its wood: tapes, ticks, cut places, twin lines, labels, and which parts are set off.
// Puts places of the vine onto the window; the screens draw. Must not know: OpenGL, ImGui's calls.
#pragma once

#include <optional>

#include "render/app/mark_pen.h"
#include "scenarios/practice/shell.h"

namespace spurwright::app {

// `would_cut`: what the hand would cut now, worked out once a frame. `pointer`: where labels of what is pointed at stand.
Overlay overlay_of(const practice::Practice& practice, const practice::Shell& shell, const shape::VineShape& shape, const scene::Camera& camera,
                   const std::optional<practice::CutPreview>& would_cut, std::optional<ui::At> pointer, const ui::Ui& ui, float width, float height);

}  // namespace spurwright::app
