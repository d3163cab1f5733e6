#include "scenarios/commands/cite.h"

#include "sim/core/model_source_list.h"

namespace spurwright::commands {

io::Json cite_json(std::string_view key) {
    const Source* work = sources::find_source(key);
    return work ? io::Json(work->cite) : io::Json();
}

std::string cite_text(std::string_view key) {
    const Source* work = sources::find_source(key);
    return std::string(key) + (work ? ": " + std::string(work->cite) : "");
}

} // namespace spurwright::commands
