// What the screens share that show something on the vine, watched or touched: a panel at the foot of the picture; and where
// a sentence comes from, which others tell too. Must not know: the picture.
#pragma once

#include "render/ui/panel.h"
#include "render/ui/row_parts.h"
#include "sim/rules/rule.h"

namespace spurwright::ui {

// The panel, begun; to be ended with panel_end().
void shown_panel(Ui& ui, std::string_view screen);
// The way out of the vine, Find and the keys: after the screen's own buttons, in their line.
Asked shown_ways(const State& state, Views& views, Ui& ui, std::string_view screen);
// One press down: what the rule asks and who says so.
void shown_sources(Ui& ui, const rules::Rule& rule, Status status);
// The second of these alone.
void shown_who_says(Ui& ui, const rules::Rule& rule, Status status);

} // namespace spurwright::ui
