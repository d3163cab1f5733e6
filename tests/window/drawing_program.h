// The drawing program as a person starts it: software drawing, and settings and work in folders of the test's own.
#pragma once

#include "tests/cli/program.h"

namespace spurwright::test {

inline const std::string drawing_program = SPURWRIGHT_WINDOW;
inline const std::string little_file = SPURWRIGHT_SOURCE "/assets/vines/little.json";

inline std::vector<std::string> kept_in(const Folder& home) {
    return {"XDG_CONFIG_HOME=" + home.file("config"), "XDG_DATA_HOME=" + home.file("data"), "LIBGL_ALWAYS_SOFTWARE=1",
            "LP_NATIVE_VECTOR_WIDTH=256", "DISPLAY", "WAYLAND_DISPLAY"};
}

// Whether this machine draws without a window at all; asked once.
inline bool draws_offscreen() {
    static const bool draws = [] {
        const Folder folder;
        const Ran ran = run_program_of(drawing_program, {"picture", little_file, "--size", "16x16", "-o", folder.file("x.png")});
        return ran.status != 3;
    }();
    return draws;
}

#define NEED_OFFSCREEN                                                                                                  \
    if (!spurwright::test::draws_offscreen()) {                                                                         \
        MESSAGE("skipped: no EGL or no OpenGL 3.3 on this machine");                                                    \
        return;                                                                                                         \
    }

}  // namespace spurwright::test
