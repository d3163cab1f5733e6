// A table of texts on a panel: columns as wide as their widest; where they do not fit beside each other, each row as one
// line of heads and values. Must not know: what the numbers are.
#pragma once

#include <string>
#include <vector>

#include "render/ui/widgets.h"

namespace spurwright::ui {

// The first row is the head; the first `texts` columns stand to the left, the others, numbers, to the right.
void text_table(Ui& ui, const std::vector<std::vector<std::string>>& rows, std::size_t texts);

} // namespace spurwright::ui
