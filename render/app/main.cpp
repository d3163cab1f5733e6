// The program `spurwright-window`: the window where no verb stands, and the verbs that draw. Sibling of `spurwright`,
// which hands those over.
#include <cstdio>

#include "render/app/drawing_verbs.h"
#include "render/app/memory.h"
#include "scenarios/commands/write_out.h"

#ifdef SPURWRIGHT_HAS_WINDOW
#include "render/app/opening.h"
#include "render/app/script.h"
#include "render/app/window.h"
#include "scenarios/commands/error_text.h"
#include "scenarios/words/load_words.h"

namespace {

using namespace spurwright;

Result<void> opened(const std::vector<std::string>& arguments) {
    const auto wish = app::read_window_wish(arguments);
    if (!wish) return failure(wish.error());
    static const auto assets = io::find_assets();
    if (!assets) return failure(assets.error());
    return wish->script_file.empty() ? app::run_window(*assets, *wish) : app::run_script(*assets, *wish);
}

int open_window(const std::vector<std::string>& arguments) {
    const auto done = opened(arguments);
    if (done) return 0;
    const auto assets = io::find_assets();
    const auto wish = app::read_window_wish(arguments);
    const std::string language = wish && wish->opening.language ? *wish->opening.language : "en";
    auto words = assets ? words::load_words(*assets, language) : Result<words::Words>(words::bare_words());
    if (!words && assets) words = words::load_words(*assets, "en");
    if (!words) words = words::bare_words();
    std::fputs(commands::error_line(done.error(), *words).c_str(), stderr);
    return commands::exit_status(done.error());
}

}  // namespace
#endif

int main(int argc, char** argv) {
    spurwright::app::keep_freed_memory();
    const std::vector<std::string> arguments(argv + (argc > 0 ? 1 : 0), argv + argc);
#ifdef SPURWRIGHT_HAS_WINDOW
    if (spurwright::app::opens_window(arguments)) return open_window(arguments);
#endif
    return spurwright::commands::write_out(spurwright::commands::run_command(arguments, spurwright::app::drawing_verbs(), spurwright::commands::show_progress));
}
