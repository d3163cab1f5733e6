// The shed's lessons: a ladder whose rungs leave more and more to the trainee, a lesson with words for every step, or a refusal
// with its place. Each text is read as either.
#include "scenarios/lessons/lesson_file.h"
#include "sim/core/check.h"
#include "tests/fuzz/fuzz.h"

using namespace spurwright;

namespace {

void check_ladder(const Result<lessons::Ladder>& ladder) {
    if (!ladder) {
        SPURWRIGHT_CHECK(ladder.error().where.source, ==, std::string("lesson.json"));
        return;
    }
    SPURWRIGHT_CHECK(ladder->rungs.front().watched(), ==, true);
    SPURWRIGHT_CHECK(ladder->rungs.back().whole(), ==, true);
    SPURWRIGHT_CHECK(ladder->lessons.empty(), ==, false);
    for (std::size_t i = 1; i < ladder->rungs.size(); ++i)
        for (std::size_t step = 0; step < ladder->rungs[i].mine.size(); ++step) SPURWRIGHT_CHECK(ladder->rungs[i].mine[step], >=, ladder->rungs[i - 1].mine[step]);
}

void check_lesson(const Result<lessons::Lesson>& lesson) {
    if (!lesson) {
        SPURWRIGHT_CHECK(lesson.error().where.source, ==, std::string("lesson.json"));
        return;
    }
    for (std::size_t step = 0; step + 1 < lesson->says.size(); ++step) SPURWRIGHT_CHECK(lesson->says[step].empty(), ==, false);
    SPURWRIGHT_CHECK(lesson->name.find('/'), ==, std::string::npos);
    SPURWRIGHT_CHECK(lesson->scene.find('/'), ==, std::string::npos);
}

}  // namespace

int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::string_view text = fuzz::text(data, size);
    check_ladder(lessons::read_ladder(text, "lesson.json"));
    check_lesson(lessons::read_lesson(text, "lesson.json"));
    return 0;
}
