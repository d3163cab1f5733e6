// A vine to prune with all that belongs to it, from where it is named: a code, a scene, work kept from before, or the
// next in the row. Must not know: the vine in hand, screens, where work is kept.
#pragma once

#include <atomic>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "scenarios/io/assets.h"
#include "scenarios/practice/shell.h"
#include "scenarios/scenes/scene_file.h"
#include "scenarios/settings/work_file.h"

namespace spurwright::practice {

inline constexpr std::string_view usual_house = "general", cordon_house = "spur-cordon";

// The scene where a scene names the vine.
struct Opened {
    Task task;
    std::optional<scenes::Scene> scene;
};

// A cordon under a shipped set for canes is judged by the one for cordons.
// Faults: what the code or file is refused for, a vine that was worked on this winter, a house that cannot be read.
[[nodiscard]] Result<Opened> open_code(const io::Assets& assets, const std::string& code, const std::string& house_name);
// A vine of about the reference vine's weight, and the number of buds that this weight asks for. Faults: as open_code.
[[nodiscard]] Result<Opened> open_like(const io::Assets& assets, const reference_vines::VineTarget& target, const std::string& house_name,
                                       const std::function<std::uint64_t()>& fresh_seed);
// The number that stands in for the house's own.
void ask_for(Task& task, const reference_vines::VineTarget& target);
// `number` of the scene's vines, from 0; past those of its file one grown as the scene asks (scenes/drawn_vine.h).
// `tried`: as drawn_vine.
[[nodiscard]] Result<Opened> open_scene(const io::Assets& assets, const std::string& name, std::size_t number, std::atomic<int>* tried = nullptr);
// The vine that work was done on: a scene's by name and number, a code's, or the one in `vine_path`.
[[nodiscard]] Result<Opened> open_work(const io::Assets& assets, const settings::Work& work, const std::string& vine_path);

// The code of a grown vine of the system with canes enough to choose among. `fresh_seed` gives the seed of each try.
[[nodiscard]] Result<std::string> next_code(const std::function<std::uint64_t()>& fresh_seed, System system = System::two_cane);

// As the shed lists them.
[[nodiscard]] Result<std::vector<SceneLine>> scene_lines(const io::Assets& assets);

}  // namespace spurwright::practice
