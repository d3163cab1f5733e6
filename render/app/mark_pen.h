// What marks on the vine are made with: wood set off, a bar across it, what a cut takes off; collected in an overlay that
// the screens draw. Must not know: why something is marked, OpenGL, ImGui's calls.
#pragma once

#include <optional>
#include <vector>

#include "render/app/place_on_vine.h"
#include "scenarios/practice/practice.h"

namespace spurwright::app {

struct Overlay {
    ui::Marks marks;
    std::vector<scene::Emphasis> emphases;
};

unsigned colour_of(Role role);  // 0: none
ui::At unit(ui::At from, ui::At to);  // the direction, one long

struct MarkPen {
    const practice::Practice& practice;
    const shape::VineShape& shape;
    const scene::Camera& camera;
    const ui::Ui& ui;
    Projection at;  // onto the window
    Overlay out{};

    // Pixels wide; `tint` is a share of the colour. `passing`: with the pointer, drawn over the picture that is kept.
    void outline(AxisId axis, unsigned colour, float px, float tint, bool passing = false);
    // Across the wood that goes `along`; `is_made`: a cut that was made, else one that would be.
    void bar(glm::vec3 place, glm::vec3 along, bool is_made);
    // What a cut would take off, tinted, and a bar where it goes through; there.
    std::optional<glm::vec3> goes(const practice::CutPreview& cut);
};

}  // namespace spurwright::app
