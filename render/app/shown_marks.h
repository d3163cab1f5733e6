// Marks on the vine while something is shown on it: the act watched, the place touched. Must not know: OpenGL, what the
// hand does.
#pragma once

#include "render/app/mark_pen.h"

namespace spurwright::app {

// The act spoken of: its piece set off, what it would take off, its place ringed.
void mark_act(MarkPen& pen, const practice::Watching& watching);
// A ring and nothing else before the answer: no name, no outline tells the wood.
// The wood a question is about, and the two canes it names.
void mark_question(MarkPen& pen, const practice::SceneQuestions& questions);
void mark_touch(MarkPen& pen, const practice::TouchDrill& drill);

}  // namespace spurwright::app
