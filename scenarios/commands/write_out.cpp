#include "scenarios/commands/write_out.h"

#include <chrono>
#include <cstdio>

namespace spurwright::commands {

int write_out(const Printed& printed) {
    std::fputs(printed.err.c_str(), stderr);
    const bool whole = std::fwrite(printed.out.data(), 1, printed.out.size(), stdout) == printed.out.size() &&
                       std::fflush(stdout) == 0;
    if (whole) return printed.status;
    std::fputs("spurwright: standard output cannot be written.\n", stderr);
    return 2;
}

void show_progress(int done, int of) {
    static const auto begun = std::chrono::steady_clock::now();
    if (std::chrono::steady_clock::now() - begun < std::chrono::milliseconds(500)) return;
    std::fprintf(stderr, done < of ? "\r%d/%d" : "\r%d/%d\n", done, of);
}

} // namespace spurwright::commands
