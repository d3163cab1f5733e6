// The program `spurwright`: every verb that draws nothing. Links no GL, X, GLFW or cairo.
#include <cstdio>

#include "scenarios/commands/command.h"
#include "scenarios/commands/drawn_verbs.h"

int main(int argc, char** argv) {
    const std::vector<std::string> arguments(argv + (argc > 0 ? 1 : 0), argv + argc);
    spurwright::commands::hand_over_drawing(arguments);
    const auto printed = spurwright::commands::run_command(arguments);
    std::fputs(printed.err.c_str(), stderr);
    const bool whole = std::fwrite(printed.out.data(), 1, printed.out.size(), stdout) == printed.out.size() &&
                       std::fflush(stdout) == 0;
    if (whole) return printed.status;
    std::fputs("spurwright: standard output cannot be written.\n", stderr);
    return 2;
}
