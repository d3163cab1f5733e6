// The window without a window: events from a text file, drawn offscreen, whole frames saved as PNG. What a person sees can
// be looked at on a machine with no display.
#pragma once

#include "render/app/opening.h"
#include "scenarios/io/assets.h"

namespace spurwright::app {

// One act a line, `#` begins a remark:
//   resize W H (0 0: nothing to draw on) · scale F · wait N · settle
//   move X Y · press [BUTTON] · release [BUTTON] · wheel N · click NAME · click-part a12.4 · drag-part a12.4 DX DY
//   key Ctrl+Z · type TEXT · shot FILE.png · report FILE
//   frames N (so many after each act from here, 0: until all is done) · glance FILE.png (as it is right now)
// Fault::bad_text names the line; Fault::bad_file a widget or part that is not on the screen.
[[nodiscard]] Result<void> run_script(const io::Assets& assets, const WindowWish& wish);

}  // namespace spurwright::app
