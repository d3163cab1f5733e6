// Marks on the vine of a question: its tapes with their digits and, once revealed, what is right and who chose what.
// Nothing here differs with the key before the reveal. Must not know: OpenGL, ImGui's calls.
#pragma once

#include "render/app/mark_pen.h"
#include "scenarios/practice/look_drill.h"
#include "scenarios/quiz/quiz.h"

namespace spurwright::app {

Overlay wall_overlay(const quiz::Quiz& quiz, const shape::VineShape& shape, const scene::Camera& camera, const ui::Ui& ui, float width, float height);

// The ring of a look, or the two tapes of a pair; once answered which of them was meant.
Overlay look_overlay(const practice::LookDrill& looks, const shape::VineShape& shape, const scene::Camera& camera, float width, float height);

}  // namespace spurwright::app
