// The scale and the book of reference vines from the session: whose prunings are weighed, and where what was written goes.
#include "scenarios/commands/formula_option.h"
#include "scenarios/practice/session.h"
#include "scenarios/records/clock.h"
#include "scenarios/scenes/beginner.h"
#include "scenarios/scenes/vine_log.h"
#include "sim/pruning/plan.h"
#include "sim/vine/canonical_text.h"

namespace spurwright::practice {

// Of the vine looked back on; else, or where one was just written down, of one more that a good pruner has pruned.
Result<void> Session::go_to_scale() {
    const bool again = shell_.screen == Screen::weigh;
    tell_look_back();
    if (again || !practice_ || !practice_->finished() || shows_two()) return weigh_one_more();
    const Task& task = practice_->task();
    auto pieces = weighing::pieces_of(practice_->start(), practice_->now(), task.house);
    if (weighing::true_bundle(pieces).mass.count == 0) return failure({Fault::not_allowed, {"error.weigh.nothing-cut"}, {}, {}});
    weighed_ = {task.vine, task.code, practice_->done(), task.house, task.house_name};
    weighing_own_ = true;
    begin_weighing(std::move(pieces));
    return {};
}

Result<void> Session::weigh_one_more() {
    const auto code = next_code(fresh_seed_);
    if (!code) return failure(code.error());
    auto opened = open_code(assets_, *code, house_.name());
    if (!opened) return failure(opened.error());
    Task& task = opened->task;
    const Plan plan = scenes::beginners_plan(task.vine, {});
    const auto pruned = prune(task.vine, plan);
    if (!pruned) return failure(pruned.error());
    auto pieces = weighing::pieces_of(task.vine, *pruned, task.house);
    weighed_ = {std::move(task.vine), task.code, plan, task.house, house_.name()};
    weighing_own_ = false;
    begin_weighing(std::move(pieces));
    return {};
}

void Session::begin_weighing(std::vector<weighing::Piece> pieces) {
    weighing_.emplace(std::move(pieces), vine_hash(weighed_.vine), weighed_.house);
    next_buds_.reset();
    weight_kept_.reset();
    shell_.screen = Screen::weigh;
}

// What was written, of the vine that it was cut from.
void Session::tell_look_back() {
    if (weighing_own_ && weighing_ && practice_ && practice_->look()) practice_->look()->weighed = weighing_->verdict();
}

void Session::leave_scale() {
    tell_look_back();
    weighing_.reset();
    next_buds_.reset();
    shell_.message.reset();
    if (shell_.screen == Screen::weigh) shell_.screen = weighing_own_ && practice_ ? Screen::row : Screen::home;
}

void Session::wrote_down(const Result<void>& written) {
    if (!written) return say(written.error());
    shell_.message.reset();
    weight_kept_.reset();
    next_buds_.reset();
    keep_weight();
    ask_next();
}

// Where the scene's vine is weighed each winter.
void Session::ask_next() {
    if (!weighing_->written() || !weighing_own_ || !practice_->task().weigh) return;
    const scenes::WeighAsked& asked = *practice_->task().weigh;
    const auto formula = commands::read_formula(asked.formula);
    auto log = scenes::vine_log(weighed_.code, weighed_.house, asked.winters, reference_vines::winter_of(records::today()));
    if (!formula) return say(formula.error());
    if (!log) return say(log.error());
    next_buds_.emplace(weighing::NextBudsTask{asked.formula, *formula, weighed_.vine.spacing, *std::move(log)}, *weighing_->verdict());
}

// What was said goes first, then the weight, then deed by deed.
void Session::take_weighing_back() {
    if (next_buds_ && next_buds_->verdict()) return next_buds_->unsay();
    weighing_->undo();
    if (!weighing_->written()) next_buds_.reset();
}

void Session::do_weighing_again() {
    weighing_->redo();
    if (!next_buds_) ask_next();
}

void Session::said_next(const Result<void>& said) {
    if (!said) return say(said.error());
    shell_.message.reset();
    keep_weight();
}

// An event in the records, as an answer is; with the buds said it corrects the weight's alone.
void Session::keep_weight() {
    const std::string& path = keeping_.store_file();
    if (path.empty()) return;
    auto store = records::Store::open(path);
    if (!store) return say(store.error());
    const auto kept = records::keep_weighing(*store, weighed_, *weighing_, next_buds(), sitter(), weight_kept_, records::utc_now());
    if (!kept) return say(kept.error());
    weight_kept_ = *kept;
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

// Of the vine at hand in the book.
Result<void> Session::practise_like() {
    if (!book_ || !book_->vine()) return failure({Fault::not_allowed, {"error.book.no-vine-at-hand"}, {}, {}});
    const auto target = reference_vines::target_of(book_->open()->block, *book_->vine());
    if (!target) return failure({Fault::not_allowed, {"error.book.never-weighed"}, {{"text", book_->vine()->tag}}, {}});
    auto opened = open_like(assets_, *target, house_.name(), fresh_seed_);
    if (opened) scene_.reset();  // the row goes on with the house's vines
    return open(std::move(opened));
}

// Made by the program of papers, beside the window.
Result<void> Session::set_on_paper(const ask::BookPaper& wish) {
    if (!book_ || !book_->open()) return failure({Fault::not_allowed, {"error.book.no-vine-at-hand"}, {}, {}});
    if (paper_worker_) return failure({Fault::not_allowed, {"error.book.paper-on"}, {}, {}});
    const std::string& block = book_->open()->block.name;
    const bool sheet = wish.kind == ask::PaperKind::sheet;
    paper_file_ = paper_path(wish.path, block + "-" + std::to_string(book_->winter()), sheet ? ".pdf" : ".png");
    std::vector<std::string> words{"book", sheet ? "sheet" : "plot", block, "-o", paper_file_, "--language", words_.language()};
    if (const auto& row = book_->compared_row(); row && book_->page() == BookPage::compare) words.insert(words.end(), {"--row", *row});
    paper_worker_ = std::make_unique<Worker<PaperAnswer>>();
    paper_worker_->ask([words] { return run_paper(words); });
    return {};
}

void Session::came_from_paper(const PaperAnswer& answer) {
    paper_worker_.reset();
    if (answer.no_program) say({Fault::missing, {"error.paper.no-program"}, {}, {}});
    else shell_.message = Message{{answer.done ? "screen.book.paper-done" : "screen.book.paper-not"}, {{"file", paper_file_}, {"text", answer.said}}};
}

bool Session::poll_book() {
    if (paper_worker_)
        if (const auto answer = paper_worker_->take()) {
            came_from_paper(*answer);
            return true;
        }
    if (!book_ || !book_->poll()) return false;
    if (const auto said = book_->said()) {
        if (!*said) say(said->error());
        else shell_.message = Message{(*said)->key, (*said)->arguments};
    }
    return true;
}

}  // namespace spurwright::practice
