// The crew's quiz from the session: its other language, its house, its journal beside the work.
#include "scenarios/practice/session.h"
#include "scenarios/words/load_words.h"

namespace spurwright::practice {
namespace {

// English stands beside any other language, Spanish beside English.
std::string_view other_language(const std::string& language) { return language == "en" ? "es" : "en"; }

}  // namespace

void Session::go_to_wall() {
    shell_.message.reset();
    shell_.screen = Screen::wall;
    if (crew_) return;
    auto second = words::load_words(assets_, std::string(other_language(words_.language())));
    crew_.emplace(keeping_.path_beside("wall.journal"), second ? std::optional(*std::move(second)) : std::nullopt);
}

void Session::begin_quiz(bool from_before) {
    if (!crew_ || crew_->stage() == QuizStage::making) return;
    shell_.message.reset();
    records_.new_quiz();
    if (!from_before) return crew_->begin(fresh_seed_(), house_.name(), house_.rules(), words_.language());
    if (auto goes_on = crew_->go_on(house_.rules()); !goes_on) say(goes_on.error());
}

void Session::happen(const quiz::Event& event) {
    if (!crew_) return;
    if (auto kept = crew_->take(event); !kept) say(kept.error());
    else shell_.message.reset();
    keep_quiz();
}

void Session::keep_quiz() {
    if (!crew_ || shell_.read_only) return;
    if (auto kept = records_.keep(*crew_, house_.rules()); !kept) say(kept.error());
}

void Session::close_wall() {
    if (crew_ && records_.has_kept(*crew_)) crew_->settle();
    crew_.reset();
    shell_.message.reset();
    shell_.screen = Screen::home;
}

}  // namespace spurwright::practice
