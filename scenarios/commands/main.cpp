// The program `spurwright`: every verb that draws nothing. Links no GL, X, GLFW or cairo.
#include <chrono>
#include <cstdio>

#include "scenarios/commands/drawn_verbs.h"
#include "scenarios/commands/write_out.h"

namespace {

// On standard error, on one line that is written over, from half a second on.
void show_progress(int done, int of) {
    static const auto begun = std::chrono::steady_clock::now();
    if (std::chrono::steady_clock::now() - begun < std::chrono::milliseconds(500)) return;
    std::fprintf(stderr, done < of ? "\r%d/%d" : "\r%d/%d\n", done, of);
}

} // namespace

int main(int argc, char** argv) {
    const std::vector<std::string> arguments(argv + (argc > 0 ? 1 : 0), argv + argc);
    spurwright::commands::hand_over_drawing(arguments);
    return spurwright::commands::write_out(
        spurwright::commands::run_command(arguments, spurwright::commands::all_verbs(), show_progress));
}
