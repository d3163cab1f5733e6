// Panels: fixed places on the screen that hold widgets. No title bars, nothing floats or docks. Must not know: what is
// in them.
#pragma once

#include <string_view>

#include "render/ui/ui.h"

namespace spurwright::ui {

struct PanelPlace {
    float x = 0, y = 0, width = 0;
    float most_height = 0;          // as high as its content, scrolled beyond this
    bool full_height = false;       // exactly most_height
    float pivot_x = 0, pivot_y = 0; // the share of the panel that stands at x, y: 1, 1 is its far lower corner
    bool bare = false;              // without ground and border
    bool keys_walk = true;          // arrows and Tab move between its widgets
    bool keys_scroll = false;       // up, down and the page keys move what it holds; its widgets stand side by side
};

// Of a card that lies over the picture, below `top`, in the middle.
PanelPlace upper_middle(const Ui& ui, float top);

// In the middle of the screen, so many letters' heights wide, as high as its content.
PanelPlace middle_panel(const Ui& ui, float width_em);

// Always followed by panel_end(), which answers the box the panel took.
void panel_begin(Ui& ui, std::string_view name, const PanelPlace& place);
Box panel_end(Ui& ui);

// A sheet over a darkened screen, closed by Esc or its button; false once it is to close.
bool sheet_begin(Ui& ui, std::string_view name, const std::string& title, float width_em);
void sheet_end(Ui& ui);

} // namespace spurwright::ui
