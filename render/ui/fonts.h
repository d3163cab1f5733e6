// The two fonts of the window, found on the machine; none is shipped. Must not know: screens, OpenGL.
#pragma once

#include <string>
#include <vector>

#include "render/ui/theme.h"
#include "sim/core/error.h"

namespace spurwright::ui {

struct FontFiles {
    std::string body, strong; // paths
};

// DejaVu Sans in two weights, through fontconfig. Fault::missing names the package where they are not there: Dear ImGui
// itself would end the program on a missing file.
[[nodiscard]] Result<FontFiles> find_fonts();

// Letters and signs that every text of `texts` and everything a person may type in our languages needs.
std::vector<ImWchar> glyph_ranges(const std::vector<std::string>& texts);

// Empties the atlas of the current context and fills it for a text `em` pixels high. `ranges` outlives the atlas'
// build, which happens here. The texture must be made anew by whoever draws.
[[nodiscard]] Result<Fonts> build_fonts(const FontFiles& files, const std::vector<ImWchar>& ranges, float em);

} // namespace spurwright::ui
