// The crew's quiz in the window: set up, its vines made beside the picture, played, kept as it happens. Everything that
// was acknowledged is in the journal; a quiz found there from before goes on where it stood. Must not know: screens,
// pictures, names of people.
#pragma once

#include <atomic>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "scenarios/io/journal.h"
#include "scenarios/practice/worker.h"
#include "scenarios/quiz/quiz.h"
#include "scenarios/words/words.h"
#include "sim/rules/house_rules.h"

namespace spurwright::practice {

inline constexpr int fewest_questions = 3, most_questions = 20, most_posts = 6;

struct QuizSetup {
    std::vector<quiz::Kind> kinds{quiz::Kind::which_job, quiz::Kind::wood_age, quiz::Kind::pick_one, quiz::Kind::never,
                                  quiz::Kind::pick_two,  quiz::Kind::spur,     quiz::Kind::where_to_cut, quiz::Kind::count};
    int questions = 8;
    int posts = 3;            // groups; 0: none
    bool two_languages = true;
    bool has(quiz::Kind kind) const;
    void turn(quiz::Kind kind);  // on or off; the last one stays on
};

enum class QuizStage : unsigned char { setting_up, making, on };
constexpr auto words_of(QuizStage) { return std::to_array<std::string_view>({"setting-up", "making", "on"}); }

class CrewQuiz {
public:
    // `journal`: the file it is kept in; empty: nowhere. `second`: the other language of the wall.
    CrewQuiz(std::string journal, std::optional<words::Words> second);

    QuizSetup setup;
    QuizStage stage() const { return quiz_ ? QuizStage::on : made_ ? QuizStage::making : QuizStage::setting_up; }
    const quiz::Quiz* quiz() const { return quiz_ ? &*quiz_ : nullptr; }
    const words::Words* second() const { return setup.two_languages && second_ ? &*second_ : nullptr; }
    bool has_second() const { return second_.has_value(); }
    int made() const { return made_ ? made_->load() : 0; }  // questions of setup.questions, while making
    bool offered() const { return offered_.has_value(); }   // one from before lies there
    std::size_t shown() const { return shown_; }            // rises when another vine comes before the eye
    const std::vector<quiz::Event>& happened() const { return happened_; }  // since it was gathered
    // The vine of the question at hand; null before the first and after the last.
    const quiz::Item* item() const;

    void begin(std::uint64_t seed, std::string house, const rules::HouseRules& rules, std::string language);
    // With the one offered. Fault: it was begun under other rules, or cannot be read; then it is set aside.
    [[nodiscard]] Result<void> go_on(const rules::HouseRules& rules);
    // Questions made; true where anything changed.
    bool poll();
    // Nothing where it may not happen now. Fault::cannot_write: it happened and is kept in memory; the next one tries again.
    [[nodiscard]] Result<void> take(const quiz::Event& event);
    // It is in the records: its journal, which names people by number, goes.
    void settle();

private:
    std::string path_;
    std::optional<words::Words> second_;
    std::optional<std::vector<quiz::Event>> offered_;
    std::unique_ptr<Worker<std::vector<quiz::Item>>> worker_;
    std::shared_ptr<std::atomic<int>> made_;
    std::optional<quiz::event::Gathered> gathered_;
    std::vector<quiz::Event> replay_;  // of the one that goes on, once its questions are made again
    std::vector<quiz::Event> happened_;
    std::optional<quiz::Quiz> quiz_;
    std::optional<io::Journal> journal_;
    std::vector<std::string> unkept_;
    std::size_t shown_ = 1;

    void look_for_one();
    void make_questions(const rules::HouseRules& rules);
    [[nodiscard]] Result<void> keep(const quiz::Event& event);
    void set_aside() const;
};

}  // namespace spurwright::practice
