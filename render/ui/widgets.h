// The widgets of the window, drawn by us over Dear ImGui's ids, focus and input. Each is at least a finger high, shows
// its focus, records itself in the probe and keeps its id through a change of language: the id is `name` alone.
// Must not know: the vine, screens.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "render/ui/ui.h"

namespace spurwright::ui {

enum class Weight : unsigned char { plain, main, quiet }; // main: what is to be done next; quiet: no border

struct ButtonLook {
    Weight weight{};
    bool enabled = true;
    bool chosen = false;     // stands pressed: an edge and a mark, not a colour alone
    float width = 0;         // 0: as wide as its text, at most what is there
    std::string_view hint{}; // key beside the label, in soft text
    float before = 0;        // kept free before the label, for what is drawn there
};

// True in the frame it is pressed. `name` is unique on the screen.
bool button(Ui& ui, std::string_view name, const std::string& label, const ButtonLook& look = {});
// One of several: a ring with a dot when chosen.
bool choice(Ui& ui, std::string_view name, const std::string& label, bool chosen, bool enabled = true);
// On or off: a box with a tick.
bool toggle(Ui& ui, std::string_view name, const std::string& label, bool on);
// As wide as the panel, text from its edge, wrapped; `second`: in soft text at the other edge where it fits, else
// below. `stands_out`: on the ground of a button, where the row is a way to somewhere.
bool list_row(Ui& ui, std::string_view name, const std::string& label, bool chosen, const std::string& second = {},
              float before = 0, bool stands_out = false);
// A head that opens and closes what follows; changes `open`, returns it.
bool fold(Ui& ui, std::string_view name, const std::string& label, bool& open);
// Moves by whole steps from low to high: two buttons and a track that can be clicked, with the value in words.
bool slider(Ui& ui, std::string_view name, const std::string& shown, int& value, int low, int high, int step);
// What is typed; true when Enter is pressed in it. `hint` stands in it while empty. `focus`: begin typing now.
// `over_list`: up and down walk what stands below it while it is typed in, and do not leave it.
struct Field {
    std::string text;
    bool focus = false;
    bool active = false; // being typed in
};
bool text_field(Ui& ui, std::string_view name, const std::string& hint, Field& field, float width,
                bool over_list = false);

// Text, wrapped at the panel's edge.
void text(Ui& ui, const std::string& words, bool soft = false);
void strong_text(Ui& ui, const std::string& words);
void head_text(Ui& ui, const std::string& words);
// In the middle of a widget's height, so that it stands level with the buttons beside it.
void row_text(Ui& ui, const std::string& words, bool soft = false);
// A thin line across the panel.
void rule_line(Ui& ui);

// The next widget stands beside the last where `width` pixels fit there, else below.
void flow(Ui& ui, float width);
float button_width(const Ui& ui, const std::string& label, std::string_view hint = {});
float choice_width(const Ui& ui, const std::string& label);

// Widest line and height of `words` wrapped at `width`.
ImVec2 text_size(const Ui& ui, const std::string& words, float width, bool strong = false);

// Records what was drawn by hand (a label on the picture, a door) in the probe.
void record(Ui& ui, std::string_view name, const std::string& label, ImVec2 from, ImVec2 to, float text_width,
            bool target, bool enabled = true);

} // namespace spurwright::ui
