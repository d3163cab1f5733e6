#include "scenarios/practice/crew_quiz.h"

#include <algorithm>
#include <cstdio>

#include "scenarios/io/safe_file.h"
#include "scenarios/quiz/event_text.h"
#include "scenarios/quiz/item_maker.h"
#include "scenarios/settings/folders.h"
#include "sim/core/hash.h"

namespace spurwright::practice {

bool QuizSetup::has(quiz::Kind kind) const { return std::find(kinds.begin(), kinds.end(), kind) != kinds.end(); }

void QuizSetup::turn(quiz::Kind kind) {
    const auto found = std::find(kinds.begin(), kinds.end(), kind);
    if (found == kinds.end()) kinds.push_back(kind);
    else if (kinds.size() > 1) kinds.erase(found);
}

CrewQuiz::CrewQuiz(std::string journal, std::optional<words::Words> second) : path_(std::move(journal)), second_(std::move(second)) { look_for_one(); }

// What lies there from before, where it can be read at all; opening the journal for writing waits until one begins.
void CrewQuiz::look_for_one() {
    if (path_.empty() || !io::is_there(path_)) return;
    const auto bytes = io::read_file(path_, io::largest_journal);
    if (!bytes) return;
    std::vector<quiz::Event> events;
    for (const std::string& entry : io::read_entries(*bytes).entries) {
        auto event = quiz::read_event(entry, path_);
        if (!event) break;
        events.push_back(*std::move(event));
    }
    if (!events.empty() && std::holds_alternative<quiz::event::Gathered>(events.front())) offered_ = std::move(events);
}

const quiz::Item* CrewQuiz::item() const {
    if (!quiz_ || quiz_->phase() == quiz::Phase::gathered || quiz_->phase() == quiz::Phase::ended) return nullptr;
    return &quiz_->item();
}

// Under a name of its own: nothing is deleted.
void CrewQuiz::set_aside() const {
    if (path_.empty() || !io::is_there(path_)) return;
    const auto bytes = io::read_file(path_, io::largest_journal);
    if (!bytes || bytes->empty()) return;
    const auto dot = path_.rfind('.');
    (void)std::rename(path_.c_str(), (path_.substr(0, dot) + "-" + hash_text(hash_of(*bytes)) + path_.substr(dot)).c_str());
}

void CrewQuiz::begin(std::uint64_t seed, std::string house, const rules::HouseRules& rules, std::string language) {
    set_aside();
    offered_.reset();
    replay_.clear();
    quiz_.reset();
    journal_.reset();
    unkept_.clear();
    gathered_ = quiz::event::Gathered{seed,
                                      setup.kinds,
                                      static_cast<std::size_t>(setup.questions),
                                      std::move(house),
                                      hash_text(rules::rule_set_hash(rules)),
                                      std::move(language),
                                      std::vector<int>(static_cast<std::size_t>(setup.posts), 0)};
    make_questions(rules);
}

Result<void> CrewQuiz::go_on(const rules::HouseRules& rules) {
    if (!offered_) return {};
    std::vector<quiz::Event> events = *std::exchange(offered_, std::nullopt);
    gathered_ = std::get<quiz::event::Gathered>(events.front());
    if (gathered_->rule_set != hash_text(rules::rule_set_hash(rules))) {
        set_aside();
        return failure({Fault::not_allowed, {"error.quiz.other-rules"}, {}, {}});
    }
    events.erase(events.begin());
    replay_ = std::move(events);
    setup.kinds = gathered_->kinds;
    setup.questions = static_cast<int>(gathered_->items);
    setup.posts = static_cast<int>(gathered_->posts.size());
    make_questions(rules);
    return {};
}

void CrewQuiz::make_questions(const rules::HouseRules& rules) {
    made_ = std::make_shared<std::atomic<int>>(0);
    if (!worker_) worker_ = std::make_unique<Worker<std::vector<quiz::Item>>>();
    worker_->ask([rules, gathered = *gathered_, made = made_] {
        quiz::Served served;
        return quiz::make_items(gathered.kinds, gathered.items, gathered.seed, rules, served, [&](std::size_t n) { *made = static_cast<int>(n); });
    });
}

bool CrewQuiz::poll() {
    if (!worker_) return false;
    auto items = worker_->take();
    if (!items) return false;
    made_.reset();
    worker_.reset();
    if (items->empty()) return true;
    quiz_.emplace(*gathered_, *std::move(items));
    happened_.clear();
    for (const quiz::Event& event : replay_)
        if (quiz_->take(event)) happened_.push_back(event);
    ++shown_;
    if (replay_.empty()) (void)keep(*gathered_);
    replay_.clear();
    return true;
}

Result<void> CrewQuiz::take(const quiz::Event& event) {
    if (!quiz_) return {};
    const quiz::Item* before = item();
    if (!quiz_->take(event)) return {};
    happened_.push_back(event);
    if (item() != before) ++shown_;
    return keep(event);
}

void CrewQuiz::settle() {
    journal_.reset();
    if (!path_.empty()) (void)std::remove(path_.c_str());
}

Result<void> CrewQuiz::keep(const quiz::Event& event) {
    if (path_.empty()) return {};
    unkept_.push_back(quiz::print_event(event));
    if (!journal_) {
        if (auto folder = settings::make_folder(settings::folder_of(path_)); !folder) return folder;
        auto opened = io::Journal::open(path_);
        if (!opened) return failure(std::move(opened.error()));
        journal_ = *std::move(opened);
    }
    while (!unkept_.empty()) {
        if (auto kept = journal_->append(unkept_.front()); !kept) return kept;
        unkept_.erase(unkept_.begin());
    }
    return {};
}

}  // namespace spurwright::practice
