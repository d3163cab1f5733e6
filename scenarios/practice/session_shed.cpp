// The scale and the book of reference vines from the session: whose prunings are weighed, and where what was written goes.
#include "scenarios/io/json.h"
#include "scenarios/practice/session.h"
#include "scenarios/records/clock.h"
#include "scenarios/records/events.h"
#include "scenarios/scenes/beginner.h"
#include "sim/core/hash.h"
#include "sim/pruning/plan.h"
#include "sim/vine/canonical_text.h"

namespace spurwright::practice {

// Of the vine looked back on; else, or where one was just written down, of one more that a good pruner has pruned.
Result<void> Session::go_to_scale() {
    const bool again = shell_.screen == Screen::weigh;
    if (again || !practice_ || !practice_->finished() || shows_two()) return weigh_one_more();
    auto pieces = weighing::pieces_of(practice_->start(), practice_->now(), practice_->task().house);
    if (weighing::true_bundle(pieces).mass.count == 0) return failure({Fault::not_allowed, {"error.weigh.nothing-cut"}, {}, {}});
    const std::uint64_t hash = vine_hash(practice_->start());
    weighed_hash_ = hash_text(hash);
    weighing_.emplace(std::move(pieces), hash, practice_->task().house);
    weighing_own_ = true;
    shell_.screen = Screen::weigh;
    return {};
}

Result<void> Session::weigh_one_more() {
    const auto code = next_code(fresh_seed_);
    if (!code) return failure(code.error());
    const auto opened = open_code(assets_, *code, house_.name());
    if (!opened) return failure(opened.error());
    const Vine& vine = opened->task.vine;
    const auto pruned = prune(vine, scenes::beginners_plan(vine, {}));
    if (!pruned) return failure(pruned.error());
    const std::uint64_t hash = vine_hash(vine);
    weighed_hash_ = hash_text(hash);
    weighing_.emplace(weighing::pieces_of(vine, *pruned, opened->task.house), hash, opened->task.house);
    weighing_own_ = false;
    shell_.screen = Screen::weigh;
    return {};
}

void Session::leave_scale() {
    weighing_.reset();
    shell_.message.reset();
    if (shell_.screen == Screen::weigh) shell_.screen = weighing_own_ && practice_ ? Screen::row : Screen::home;
}

// An event in the records, as an answer is: what was written, what it should have been, what was wrong.
void Session::wrote_down(const Result<void>& written) {
    if (!written) return say(written.error());
    shell_.message.reset();
    const std::string& path = keeping_.store_file();
    if (path.empty()) return;
    const weighing::Verdict& verdict = *weighing_->verdict();
    io::Json body = io::Json::object(), slips = io::Json::list();
    body.set("vine_hash", weighed_hash_);
    body.set("house", house_.name());
    body.set("typed", weighing_->written()->typed);
    body.set("written_g", verdict.written);
    body.set("bundle_g", verdict.truly.mass);
    body.set("within", verdict.within);
    for (const weighing::FoundSlip& slip : verdict.slips) slips.push(std::string(word_of(slip.slip)));
    body.set("slips", std::move(slips));
    auto store = records::Store::open(path);
    if (!store) return say(store.error());
    const records::Event event{0, "weighing", 1, records::utc_now(), sitter(), io::print_json_line(body), std::nullopt};
    if (const auto kept = records::add_event(*store, event); !kept) say(kept.error());
}

void Session::go_to_book() {
    shell_.message.reset();
    shell_.screen = Screen::book;
    if (!book_) book_.emplace(keeping_.store_file(), records::today());  // several programs may write it
    if (const auto read = book_->read(); !read) say(read.error());
}

void Session::do_in_book(const BookAct& act) {
    if (!book_) return;
    const auto told = book_->take(act);
    if (!told) return say(told.error());
    shell_.message.reset();
    if (*told) shell_.message = Message{(*told)->key, (*told)->arguments};
}

bool Session::poll_book() {
    if (!book_ || !book_->poll()) return false;
    if (const auto fault = book_->fault()) say(*fault);
    return true;
}

}  // namespace spurwright::practice
