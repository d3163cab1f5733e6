// What a whole room reads from six metres, line after line: as large as the rule of the wall says, and where a question
// or its answer would be higher than its place, smaller until all of it stands there at once, since nobody in the room
// can scroll. A heading is then still as high as all else is by the rule. Must not know: quizzes.
#pragma once

#include <string>
#include <vector>

#include "render/ui/ui.h"

namespace spurwright::ui {

enum class RoomLook : unsigned char { plain, soft, strong, head };
struct RoomLine {
    std::string words;
    RoomLook look{};
};
using RoomLines = std::vector<RoomLine>;

// At the wall's size a capital is 13.1 minutes of arc high on a 55-inch screen (0.685 m) seen from 6 m; 10 is the least
// that can be read (memory), and nothing for the room is smaller.
inline constexpr float least_room_share = 10.0f / 13.1f;

// The largest share of the wall's size, 1 and less in steps, at which all of it stands in `room`; the least one where none does.
float room_share(const Ui& ui, const RoomLines& lines, const ImVec2& room);
float room_height(const Ui& ui, const RoomLines& lines, float wrap, float share); // pixels

// Into the panel at hand, from where it stands.
void draw_room(Ui& ui, const RoomLines& lines, float share);

} // namespace spurwright::ui
