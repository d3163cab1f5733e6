// The program `spurwright`: every verb that draws nothing. Links no GL, X, GLFW or cairo.
#include "scenarios/commands/drawn_verbs.h"
#include "scenarios/commands/write_out.h"

int main(int argc, char** argv) {
    const std::vector<std::string> arguments(argv + (argc > 0 ? 1 : 0), argv + argc);
    spurwright::commands::hand_over_drawing(arguments);
    return spurwright::commands::write_out(
        spurwright::commands::run_command(arguments, spurwright::commands::all_verbs(), spurwright::commands::show_progress));
}
