#include "scenarios/lessons/lesson_file.h"

#include <algorithm>

#include "scenarios/io/json_fields.h"
#include "scenarios/io/safe_file.h"

namespace spurwright::lessons {
namespace {

using rules::Step;

// What a file may hold: our choice.
constexpr std::size_t longest_word = 60, most_rungs = 12, most_lessons = 100;

constexpr std::array own_steps{Step::look, Step::choose, Step::clear, Step::spurs, Step::lengths, Step::lay_and_tie};

void read_lesson_head(io::Fields& fields, std::string_view wanted, int newest) {
    io::Refusal& refusal = fields.refusal();
    const std::string kind = fields.text("kind", longest_word);
    if (!refusal.any() && kind != wanted) refusal.add("error.file.kind", {{"wanted", std::string(wanted)}, {"found", kind}}, fields.object());
    const std::int64_t version = fields.whole("version", 1, 1'000'000);
    if (!refusal.any() && version > newest) refusal.add("error.file.newer", {{"found", Count{version}}, {"newest", Count{newest}}}, fields.object(), Fault::newer);
}

// A key of the word files or a name: small letters, digits, hyphens and points.
std::string lesson_word(io::Fields& fields, const io::Json& value, std::string_view key) {
    std::string word = fields.text_of(value, key, longest_word);
    const bool plain = !word.empty() && std::all_of(word.begin(), word.end(), [](char c) { return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '-' || c == '.'; });
    io::Refusal& refusal = fields.refusal();
    if (!plain && !refusal.any()) refusal.add("error.lesson.word", {{"key", std::string(key)}, {"text", word}}, value);
    return word;
}

Rung read_rung(io::Refusal& refusal, const io::Json& object) {
    io::Fields fields(refusal, object);
    Rung rung;
    rung.title_key = lesson_word(fields, fields.required("title"), "title");
    rung.says_key = lesson_word(fields, fields.required("says"), "says");
    for (const io::Json& one : fields.list("mine", true)) {
        const std::string word = fields.text_of(one, "mine", longest_word);
        const auto step = read_word<Step>(word);
        const bool own = step && std::find(own_steps.begin(), own_steps.end(), *step) != own_steps.end();
        if (!own) refusal.add("error.lesson.step", {{"text", word}}, one);
        else if (rung.is_mine(*step)) refusal.add("error.lesson.twice", {{"text", word}}, one);
        else rung.mine[static_cast<std::size_t>(*step)] = true;
    }
    rung.explained = fields.yes("explained");
    rung.feedback = fields.yes("feedback");
    fields.end();
    return rung;
}

bool holds_all_of(const Rung& upper, const Rung& lower) {
    for (std::size_t i = 0; i < lower.mine.size(); ++i)
        if (lower.mine[i] && !upper.mine[i]) return false;
    return true;
}

void read_rungs(io::Fields& fields, Ladder& ladder) {
    io::Refusal& refusal = fields.refusal();
    const auto& list = fields.list("rungs", true);
    if (!refusal.any() && (list.size() < 2 || list.size() > most_rungs))
        refusal.add("error.lesson.rungs", {{"n", Count{static_cast<std::int64_t>(list.size())}}, {"most", Count{most_rungs}}}, fields.object());
    for (const io::Json& one : list) {
        if (refusal.any()) return;
        Rung rung = read_rung(refusal, one);
        const bool first = ladder.rungs.empty();
        if (first && !rung.watched()) refusal.add("error.lesson.first-rung", {}, one);
        if (!first && (rung.watched() || !holds_all_of(rung, ladder.rungs.back()))) refusal.add("error.lesson.falls-back", {{"n", Count{static_cast<std::int64_t>(ladder.rungs.size())}}}, one);
        ladder.rungs.push_back(std::move(rung));
    }
    if (!refusal.any() && !ladder.rungs.back().whole()) refusal.add("error.lesson.last-rung", {}, fields.object());
}

}  // namespace

bool Rung::whole() const {
    return std::all_of(own_steps.begin(), own_steps.end(), [&](Step step) { return is_mine(step); });
}

Result<Ladder> read_ladder(std::string_view text, const std::string& source) {
    const auto root = io::read_json(text, source);
    if (!root) return failure(root.error());
    io::Refusal refusal(source);
    io::Fields fields(refusal, *root);
    Ladder ladder;
    read_lesson_head(fields, ladder_kind, ladder_version);
    read_rungs(fields, ladder);
    const auto& list = fields.list("lessons", true);
    if (!refusal.any() && (list.empty() || list.size() > most_lessons))
        refusal.add("error.lesson.lessons", {{"n", Count{static_cast<std::int64_t>(list.size())}}, {"most", Count{most_lessons}}}, *root);
    for (const io::Json& one : list) {
        if (refusal.any()) break;
        std::string name = lesson_word(fields, one, "lessons");
        if (std::find(ladder.lessons.begin(), ladder.lessons.end(), name) != ladder.lessons.end()) refusal.add("error.lesson.twice", {{"text", name}}, one);
        ladder.lessons.push_back(std::move(name));
    }
    fields.end();
    if (refusal.any()) return failure(refusal.take());
    return ladder;
}

Result<Lesson> read_lesson(std::string_view text, const std::string& source) {
    const auto root = io::read_json(text, source);
    if (!root) return failure(root.error());
    io::Refusal refusal(source);
    io::Fields fields(refusal, *root);
    Lesson lesson;
    read_lesson_head(fields, lesson_kind, lesson_version);
    lesson.name = lesson_word(fields, fields.required("name"), "name");
    lesson.scene = lesson_word(fields, fields.required("scene"), "scene");
    const io::Json& object = fields.required("says");
    io::Fields says(refusal, object);
    for (const Step step : own_steps) lesson.says[static_cast<std::size_t>(step)] = lesson_word(says, says.required(word_of(step)), word_of(step));
    says.end();
    fields.end();
    if (refusal.any()) return failure(refusal.take());
    return lesson;
}

const Lesson* Lessons::of_scene(std::string_view scene) const {
    const auto found = std::find_if(lessons.begin(), lessons.end(), [&](const Lesson& lesson) { return lesson.scene == scene; });
    return found == lessons.end() ? nullptr : &*found;
}

Result<Lessons> load_lessons(const io::Assets& assets) {
    const std::string path = assets.path("lessons", "ladder.json");
    const auto text = io::read_file(path, io::largest_json);
    if (!text) return failure(text.error());
    auto ladder = read_ladder(*text, path);
    if (!ladder) return failure(std::move(ladder.error()));
    Lessons all{*std::move(ladder), {}};
    for (const std::string& name : all.ladder.lessons) {
        const std::string file = assets.path("lessons", name + ".json");
        const auto here = io::read_file(file, io::largest_json);
        if (!here) return failure(here.error());
        auto lesson = read_lesson(*here, file);
        if (!lesson) return failure(std::move(lesson.error()));
        if (lesson->name != name) return failure({Fault::bad_file, {"error.lesson.name"}, {{"wanted", name}, {"found", lesson->name}}, {file, 1, 1, 0}});
        all.lessons.push_back(*std::move(lesson));
    }
    return all;
}

}  // namespace spurwright::lessons
