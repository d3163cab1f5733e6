// The shed's lessons as files of assets/lessons. The ladder ("kind": "spurwright-ladder", ladder.json): its rungs, each a set
// of steps that are the trainee's own, and the lessons in the order a new crew walks them. A lesson ("spurwright-lesson"):
// the scene whose vines it takes, and the words that explain each step before it is done. Schemas: assets/schemas/ladder-1.json,
// lesson-1.json. Must not know: vines, who stands on which rung, screens.
#pragma once

#include <array>
#include <string>
#include <string_view>
#include <vector>

#include "scenarios/io/assets.h"
#include "sim/core/error.h"
#include "sim/rules/rule.h"

namespace spurwright::lessons {

inline constexpr std::string_view ladder_kind = "spurwright-ladder", lesson_kind = "spurwright-lesson";
inline constexpr int ladder_version = 1, lesson_version = 1;

// What is done by the trainee on a vine of this rung; the rest is done for them. The rung with nothing is watched.
struct Rung {
    std::string title_key, says_key;
    std::array<bool, 7> mine{};  // by rules::Step; the look back is nobody's
    bool explained = false;      // the lesson's words stand beside each step
    bool feedback = false;       // what was done is told when a step of one's own is left
    bool is_mine(rules::Step step) const { return mine[static_cast<std::size_t>(step)]; }
    bool watched() const { return mine == std::array<bool, 7>{}; }
    bool whole() const;  // nothing is done for the trainee
    bool operator==(const Rung&) const = default;
};

struct Ladder {
    std::vector<Rung> rungs;           // the first is watched; each holds the steps of the one before
    std::vector<std::string> lessons;  // names, each once
    bool operator==(const Ladder&) const = default;
};

struct Lesson {
    std::string name, scene;
    std::array<std::string, 7> says{};  // text key by rules::Step; empty of the look back
    const std::string& says_of(rules::Step step) const { return says[static_cast<std::size_t>(step)]; }
    bool operator==(const Lesson&) const = default;
};

// Faults: bad_file with line, column and key; newer.
[[nodiscard]] Result<Ladder> read_ladder(std::string_view text, const std::string& source);
[[nodiscard]] Result<Lesson> read_lesson(std::string_view text, const std::string& source);

// The whole of assets/lessons. Faults: also what a file cannot be opened for, a lesson under another name than its file's.
struct Lessons {
    Ladder ladder;
    std::vector<Lesson> lessons;  // as the ladder lists them
    const Lesson* of_scene(std::string_view scene) const;
};
[[nodiscard]] Result<Lessons> load_lessons(const io::Assets& assets);

}  // namespace spurwright::lessons
