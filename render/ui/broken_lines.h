// Words broken into lines at spaces alone. Left to itself the library also breaks after a point, so that 1.49 kg ends a
// line with "1.".
#pragma once

#include <string>

#include <imgui.h>

namespace spurwright::ui {

std::string broken_lines(const ImFont& font, float height, const std::string& words, float wrap);

} // namespace spurwright::ui
