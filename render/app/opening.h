// What stands after `spurwright-window` where no verb does: how the window is opened. Tests use most of it.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "scenarios/practice/session.h"

namespace spurwright::app {

struct WindowWish {
    practice::Opening opening;
    int width = 1280, height = 720;
    std::optional<std::uint64_t> seed;  // of the vines after the scene's; none: a fresh one each start
    std::string probe_file;             // written after each frame: what stands where
    std::string script_file;            // no window: events from a file, drawn offscreen
    bool help = false;
};

// Whether these arguments open the window: none, or options of the window alone.
bool opens_window(const std::vector<std::string>& arguments);

// --size WxH --language L --code CODE --scene NAME --seed N --probe FILE --script FILE --help. Fault::bad_text, out_of_range.
[[nodiscard]] Result<WindowWish> read_window_wish(const std::vector<std::string>& arguments);

}  // namespace spurwright::app
