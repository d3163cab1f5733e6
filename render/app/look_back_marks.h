// Marks on the vine in the look back: a tape on each piece, the one at hand set off, what would have been better beside
// it. Must not know: OpenGL, how pieces were judged.
#pragma once

#include "render/app/mark_pen.h"

namespace spurwright::app {

void mark_look_back(MarkPen& pen, const practice::LookBack& look);

}  // namespace spurwright::app
