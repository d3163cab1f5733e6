// The ladder as its screen shows it: where somebody stands and why, the lessons, what comes next. Of a number of the crew's list
// from the records; of nobody from this sitting. Must not know: screens, the vine in hand.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "scenarios/learning/ladder.h"
#include "scenarios/lessons/lesson_file.h"
#include "scenarios/practice/open_vine.h"

namespace spurwright::practice {

struct LadderDesk {
    lessons::Lessons lessons;
    std::vector<records::LadderVine> walked;
    int from = 0;  // the rung that nobody's work was taken up on
    learning::Standing standing;
    std::vector<learning::LessonProgress> progress;  // beside lessons.lessons
    std::size_t next = 0;                            // of the lessons

    int top() const { return static_cast<int>(lessons.ladder.rungs.size()) - 1; }
    const lessons::Rung& rung(int number) const { return lessons.ladder.rungs[static_cast<std::size_t>(number)]; }
    std::size_t at_of(const std::string& scene) const;  // lessons.size(): none
    void reckon();                                      // from what was walked
};

// `person`: none reads nothing, so that nobody's begins anew. Faults: what the lessons or the store are refused for.
[[nodiscard]] Result<LadderDesk> ladder_desk(const io::Assets& assets, const std::string& store_file, std::optional<std::int64_t> person);

// A lesson's vine on a rung.
void put_on_rung(Opened& opened, const LadderDesk& desk, std::size_t lesson, int rung);

// A vine of a scene on a rung. Faults: as open_scene.
[[nodiscard]] Result<Opened> open_on_rung(const io::Assets& assets, const LadderDesk& desk, std::size_t lesson, std::size_t number, int rung);

}  // namespace spurwright::practice
