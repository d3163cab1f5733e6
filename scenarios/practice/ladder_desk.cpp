#include "scenarios/practice/ladder_desk.h"

#include <algorithm>

namespace spurwright::practice {

std::size_t LadderDesk::at_of(const std::string& scene) const {
    const auto found = std::find_if(lessons.lessons.begin(), lessons.lessons.end(), [&](const lessons::Lesson& lesson) { return lesson.scene == scene; });
    return static_cast<std::size_t>(found - lessons.lessons.begin());
}

void LadderDesk::reckon() {
    std::vector<std::string> scenes;
    progress.clear();
    for (const lessons::Lesson& lesson : lessons.lessons) {
        scenes.push_back(lesson.scene);
        progress.push_back(learning::progress_of(walked, lesson.scene));
    }
    standing = learning::standing(walked, top(), from);
    next = learning::next_lesson(walked, scenes);
}

Result<LadderDesk> ladder_desk(const io::Assets& assets, const std::string& store_file, std::optional<std::int64_t> person) {
    auto lessons = lessons::load_lessons(assets);
    if (!lessons) return failure(std::move(lessons.error()));
    LadderDesk desk;
    desk.lessons = *std::move(lessons);
    if (person && !store_file.empty()) {
        auto store = records::Store::open_to_read(store_file);
        if (!store) return failure(std::move(store.error()));
        if (*store) {
            auto walked = records::lessons_of(**store, *person);
            if (!walked) return failure(std::move(walked.error()));
            desk.walked = *std::move(walked);
        }
    }
    desk.reckon();
    return desk;
}

void put_on_rung(Opened& opened, const LadderDesk& desk, std::size_t lesson, int rung) {
    const int on = std::clamp(rung, 0, desk.top());
    opened.task.ladder = OnRung{on, desk.rung(on), desk.lessons.lessons[lesson]};
}

Result<Opened> open_on_rung(const io::Assets& assets, const LadderDesk& desk, std::size_t lesson, std::size_t number, int rung) {
    const std::size_t at = std::min(lesson, desk.lessons.lessons.size() - 1);
    auto opened = open_scene(assets, desk.lessons.lessons[at].scene, number);
    if (opened) put_on_rung(*opened, desk, at, rung);
    return opened;
}

}  // namespace spurwright::practice
