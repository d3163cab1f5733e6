#include "render/ui/commands.h"

#include <algorithm>
#include <array>

#include "render/ui/charge_words.h"
#include "render/ui/command_asks.h"

namespace spurwright::ui {
namespace {

namespace ask = practice::ask;
using practice::HandTool;
using namespace asks;

constexpr unsigned home = static_cast<unsigned>(Place::home), row = static_cast<unsigned>(Place::row),
                   look = static_cast<unsigned>(Place::look), watch = static_cast<unsigned>(Place::watch),
                   drill = static_cast<unsigned>(Place::drill), two = static_cast<unsigned>(Place::two), buds = static_cast<unsigned>(Place::buds), questions = static_cast<unsigned>(Place::questions), picture = row | look | watch | drill | buds | questions, wall = static_cast<unsigned>(Place::wall), seen = picture | two,
                   weigh = static_cast<unsigned>(Place::weigh), book = static_cast<unsigned>(Place::book),
                   looks = static_cast<unsigned>(Place::looks), way = static_cast<unsigned>(Place::way), crew = static_cast<unsigned>(Place::crew), seat = static_cast<unsigned>(Place::seat), ladder = static_cast<unsigned>(Place::ladder), sign = static_cast<unsigned>(Place::sign);

constexpr KeyPress ctrl(int k) { return {k, true, false, false}; }
constexpr KeyPress shift(int k) { return {k, false, true, false}; }

const std::array table{
    // ---- the way through
    Command{"next-step", row | look, ctrl(key::enter), {}, in_hand, plain<ask::NextStep>},
    Command{"undo",
            row,
            ctrl('Z'),
            {},
            [](const State& s) { return unfinished(s) && s.practice->can_undo(); },
            plain<ask::Undo>},
    Command{"redo",
            row,
            ctrl('Y'),
            {},
            [](const State& s) { return unfinished(s) && s.practice->can_redo(); },
            plain<ask::Redo>},
    Command{"growing-leave", static_cast<unsigned>(Place::growing), {key::escape}, {}, nullptr, plain<ask::StopGrowing>},
    // ---- the hand
    Command{"walk-canes", row | look, {key::tab}, {}, in_hand, walk_canes<1>},
    Command{"walk-canes-back", row | look, shift(key::tab), {}, in_hand, walk_canes<-1>},
    Command{"walk-buds", row | look, {key::period}, {}, chosen, walk_buds<1>},
    Command{"walk-buds-back", row | look, {key::comma}, {}, chosen, walk_buds<-1>},
    Command{"enter", row | look, {key::enter}, {key::pad_enter}, in_hand, enter},
    Command{"take-back", row | look, {key::escape}, {}, in_hand, plain<ask::TakeBack>},
    Command{"point", row, {}, {}, unfinished, take<HandTool::none>},
    Command{"tape", row, {'M'}, {}, unfinished, take<HandTool::tape>},
    Command{"shears", row, {'1'}, {}, unfinished, take<HandTool::shears>},
    Command{"loppers", row, {'2'}, {}, unfinished, take<HandTool::loppers>},
    Command{"saw", row, {'3'}, {}, unfinished, take<HandTool::saw>},
    Command{"hands", row, {'4'}, {}, unfinished, take<HandTool::hands>},
    Command{"ties", row, {'5'}, {}, unfinished, take<HandTool::ties>},
    Command{"calliper", row, {'K'}, {}, unfinished, take<HandTool::calliper>},
    Command{"cut", row, {'C'}, {}, unfinished, cut},
    Command{"lay", row, {'L'}, {}, unfinished, lay},
    Command{"tie", row, {'T'}, {}, unfinished, plain<ask::TieHere>},
    // ---- the look back
    Command{"next-piece", look, {'N'}, {}, in_hand, next_piece<1>},
    Command{"previous-piece", look, {'P'}, {}, in_hand, next_piece<-1>},
    Command{"go-there", look, {}, {}, in_hand, plain<ask::LookAtPiece>},
    Command{"twin",
            look,
            {'B'},
            {},
            in_hand,
            [](const State& s, Views&) { return Asked{ask::ShowTwin{!s.practice->look()->twin_shown}}; }},
    Command{"as-good", look, {'A'}, {}, in_hand, plain<ask::NextAsGood>},
    Command{"before-act", look, {'J'}, {}, [](const State& s) { return charged_act(*s.practice).has_value(); },
            [](const State& s, Views&) { return Asked{ask::JumpTo{*charged_act(*s.practice)}}; }},
    Command{"what-if", look, {'I'}, {}, [](const State& s) { return !moved_cut(s); }, plain<ask::TakeCut>},
    Command{"cut-shorter", look, {'K'}, {}, may_move_cut<-1>, move_cut<-1>},
    Command{"cut-longer", look, {'L'}, {}, may_move_cut<1>, move_cut<1>},
    Command{"cut-best", look, {'T'}, {}, [](const State& s) { return moved_cut(s) && moved_cut(s)->at != moved_cut(s)->best(); },
            [](const State& s, Views&) { return Asked{ask::MoveCut{moved_cut(s)->best()}}; }},
    Command{"cut-next", look, {'O'}, {}, [](const State& s) { return moved_cut(s) && moved_cut(s)->pieces.size() > 1; }, next_cut<1>},
    Command{"cut-previous", look, shift('O'), {}, [](const State& s) { return moved_cut(s) && moved_cut(s)->pieces.size() > 1; }, next_cut<-1>},
    Command{"cut-again", look, {'R'}, {}, in_hand, plain<ask::CutAgain>},
    Command{"go-on-pruning", look, ctrl('Z'), {}, in_hand, plain<ask::GoOnPruning>},
    Command{"disagree",
            look,
            {'D'},
            {},
            in_hand,
            [](const State&, Views& v) {
                v.look.noting = true;
                v.look.note = {{}, true, false};
                return Asked{};
            }},
    Command{"grow-on",
            look,
            {'G'},
            {},
            [](const State& s) { return in_hand(s) && s.practice->may_grow_on(); },
            [](const State& s, Views&) { return Asked{ask::GrowOn{!s.practice->grown_on()}}; }},
    // ---- the next winter
    Command{"next-winter",
            look,
            {'S'},
            {},
            [](const State& s) { return in_hand(s) && s.practice->may_live_on(); },
            plain<ask::NextWinter>},
    Command{"two-mine", two, {'1'}, {}, two_found, prune_of_two<practice::mine>},
    Command{"two-better", two, {'2'}, {}, two_found, prune_of_two<practice::better>},
    Command{"two-leave", two, {key::escape}, {key::backspace}, in_hand, plain<ask::LeaveTwo>},
    Command{"two-back",
            row | look,
            {'X'},
            {},
            [](const State& s) { return s.two && s.two->in_hand; },
            plain<ask::BackToTwo>},
    Command{"spring",
            look,
            {'F'},
            {},
            [](const State& s) { return in_hand(s) && s.practice->may_visit_in_spring(); },
            [](const State& s, Views&) {
                return Asked{ask::SpringVisit{!s.practice->spring() && !s.practice->spring_lived()}};
            }},
    Command{"next-vine", home | row | look, {}, {}, past_safety, plain<ask::NextVine>},
    // ---- shown on the vine
    Command{"watch", row | look, {'W'}, {}, in_hand, [](const State&, Views&) { return Asked{ask::Watch{true}}; }},
    Command{"watch-next", watch, {key::space}, {key::right}, watched_on, plain<ask::WatchNext>},
    Command{"watch-back", watch, {key::backspace}, {key::left}, watched_back, plain<ask::WatchBack>},
    Command{"watch-rest", watch, {key::end}, {'A'}, watched_on, plain<ask::WatchRest>},
    Command{"ladder-on", watch, {'N'}, {}, ladder_watched, plain<ask::NextVine>},
    Command{"watch-own", watch, {key::enter}, {key::escape}, in_hand, plain<ask::WatchOwn>},
    Command{"drill", row, {'O'}, {}, unfinished, plain<ask::Drill>},
    Command{"drill-one-year", drill, {'1'}, {key::left}, unanswered, answer<false>},
    Command{"drill-older", drill, {'2'}, {key::right}, unanswered, answer<true>},
    Command{"drill-next",
            drill,
            {key::space},
            {key::enter},
            [](const State& s) { return !unanswered(s); },
            plain<ask::DrillNext>},
    Command{"drill-end", drill, {key::escape}, {}, in_hand, plain<ask::DrillEnd>},
    Command{"questions", row, {'Q'}, {}, [](const State& s) { return unfinished(s) && !s.practice->task().asks.empty(); }, plain<ask::Questions>},
    Command{"question-1", questions, {'1'}, {}, question_takes<0>, say_answer<0>},
    Command{"question-2", questions, {'2'}, {}, question_takes<1>, say_answer<1>},
    Command{"question-3", questions, {'3'}, {}, question_takes<2>, say_answer<2>},
    Command{"question-4", questions, {'4'}, {}, question_takes<3>, say_answer<3>},
    Command{"question-next", questions, {key::space}, {key::enter}, [](const State& s) { return !s.practice->questions()->here() || s.practice->questions()->answered(); }, plain<ask::QuestionNext>},
    Command{"question-end", questions, {key::escape}, {}, in_hand, plain<ask::DrillEnd>},
    Command{"buds", row, {'I'}, {}, unfinished, plain<ask::BudSampling>},
    Command{"buds-next",
            buds,
            {key::space},
            {key::enter},
            [](const State& s) { return !s.practice->buds()->here() || s.practice->buds()->answered(); },
            plain<ask::BudsNext>},
    Command{"buds-end", buds, {key::escape}, {}, in_hand, plain<ask::DrillEnd>},
    // ---- the crew's quiz
    Command{"wall", everywhere & ~wall, {}, {}, past_safety, plain<ask::Wall>},
    Command{"wall-on", wall, {key::space}, {}, quiz_goes_on, go_on_quiz},
    Command{"wall-back", wall, {key::page_up}, {}, [](const State& s) { return quiz_may<quiz::event::Back>(s) && !quiz_ended(s); }, quiz_event<quiz::event::Back>},
    Command{"wall-reopen", wall, {}, {}, [](const State& s) { return quiz_may<quiz::event::Back>(s) && quiz_ended(s); }, quiz_event<quiz::event::Back>},
    Command{"scroll", wall | crew, {}, {}, nullptr, nullptr}, // carried out where the panel is
    Command{"wall-talk", wall, {'A'}, {}, quiz_may<quiz::event::Talk>, quiz_event<quiz::event::Talk>},
    Command{"wall-end", wall, {}, {}, quiz_may<quiz::event::Ended>, quiz_event<quiz::event::Ended>},
    Command{"wall-way", wall, {'M'}, {}, quiz_answers, [](const State&, Views& v) { v.wall.next_way(); return Asked{}; }},
    Command{"wall-disagree", wall, {'D'}, {}, quiz_revealed, [](const State&, Views& v) { v.wall.disagrees = !v.wall.disagrees; v.wall.typed.clear(); return Asked{}; }},
    Command{"wall-close", wall, {}, {}, nullptr, plain<ask::WallClose>},
    // ---- the scale
    Command{"weigh", home | look, {'E'}, {}, past_safety, plain<ask::Weigh>},
    Command{"weigh-next", weigh, {key::right}, {key::period}, has_piece, walk_pieces<1>},
    Command{"weigh-previous", weigh, {key::left}, {key::comma}, has_piece, walk_pieces<-1>},
    Command{"weigh-take", weigh, {key::enter}, {key::space}, has_piece, take_piece},
    Command{"weigh-strip", weigh, {'S'}, {}, has_piece, strip_piece},
    Command{"weigh-shorten", weigh, {'C'}, {}, [](const State& s) { return sorting(s) && !s.weighing->tied(); }, do_deed<Deed::shorten>},
    Command{"weigh-tie", weigh, {'T'}, {}, [](const State& s) { return sorting(s) && !s.weighing->tied(); }, do_deed<Deed::tie>},
    Command{"weigh-untie", weigh, {'T', false, true}, {}, [](const State& s) { return sorting(s) && s.weighing->tied() && !s.weighing->hangs(); }, do_deed<Deed::untie>},
    Command{"weigh-dry", weigh, {'D'}, {}, [](const State& s) { return sorting(s) && s.weighing->wet() && !s.weighing->hangs(); }, do_deed<Deed::let_dry>},
    Command{"weigh-hang", weigh, {'H'}, {}, [](const State& s) { return sorting(s) && !s.weighing->hangs(); }, do_deed<Deed::hang>},
    Command{"weigh-down", weigh, {'H', false, true}, {}, [](const State& s) { return sorting(s) && s.weighing->hangs(); }, do_deed<Deed::take_down>},
    Command{"weigh-zero", weigh, {'0'}, {}, sorting, do_deed<Deed::zero>},
    Command{"weigh-unit", weigh, {'K'}, {}, sorting, do_deed<Deed::turn_unit>},
    Command{"weigh-write", weigh, {'W'}, {}, [](const State& s) { return sorting(s) && s.weighing->hangs(); },
            [](const State&, Views& v) {
                v.weigh.weight.focus = true;
                return Asked{};
            }},
    Command{"weigh-written", weigh, {}, {}, [](const State& s) { return sorting(s) && s.weighing->hangs(); }, write_weight},
    Command{"weigh-undo", weigh, ctrl('Z'), {}, [](const State& s) { return s.weighing && s.weighing->can_undo(); }, plain<ask::WeighUndo>},
    Command{"weigh-redo", weigh, ctrl('Y'), {}, [](const State& s) { return s.weighing && s.weighing->can_redo(); }, [](const State&, Views&) { return Asked{ask::WeighUndo{-1}}; }},
    Command{"weigh-say", weigh, {'B'}, {}, asks_next,
            [](const State&, Views& v) {
                v.weigh.by_weight.focus = true;
                return Asked{};
            }},
    Command{"weigh-said", weigh, {}, {}, asks_next, [](const State&, Views& v) { return Asked{ask::SayNext{v.weigh.by_weight.text, v.weigh.by_space.text, v.weigh.keep.text}}; }},
    Command{"weigh-log-1", weigh, {'1'}, {}, in_log<0>, leave_out<0>},
    Command{"weigh-log-2", weigh, {'2'}, {}, in_log<1>, leave_out<1>},
    Command{"weigh-log-3", weigh, {'3'}, {}, in_log<2>, leave_out<2>},
    Command{"weigh-log-4", weigh, {'4'}, {}, in_log<3>, leave_out<3>},
    Command{"weigh-log-5", weigh, {'5'}, {}, in_log<4>, leave_out<4>},
    Command{"weigh-again", weigh, {'R'}, {}, weighed, [](const State&, Views& v) { v.weigh = {}; return Asked{ask::WeighAgain{}}; }},
    Command{"weigh-next-vine", weigh, {'N'}, {}, weighed, [](const State&, Views& v) { v.weigh = {}; return Asked{ask::Weigh{}}; }},
    Command{"weigh-close", weigh, {key::escape}, {}, nullptr, [](const State&, Views& v) { v.weigh = {}; return Asked{ask::WeighClose{}}; }},
    // ---- the book
    Command{"book", everywhere & ~book, {}, {}, past_safety, plain<ask::Book>},
    Command{"book-blocks", book, {key::f2}, {}, nullptr, book_page<practice::BookPage::blocks>},
    Command{"book-entry", book, {key::f3}, {}, has_block, book_page<practice::BookPage::entry>},
    Command{"book-compare", book, {key::f4}, {}, has_block, book_page<practice::BookPage::compare>},
    Command{"book-map", book, {key::f5}, {}, has_block, book_page<practice::BookPage::map>},
    Command{"book-later", book, ctrl(key::page_up), {}, has_block, book_winter<1>},
    Command{"book-earlier", book, ctrl(key::page_down), {}, has_block, book_winter<-1>},
    Command{"book-next", book, {key::down, true}, {}, has_block, book_walk<1>},
    Command{"book-previous", book, {key::up, true}, {}, has_block, book_walk<-1>},
    Command{"book-north", book, {key::up, false, false, true}, {}, on_map, nudge<1, 0>},
    Command{"book-south", book, {key::down, false, false, true}, {}, on_map, nudge<-1, 0>},
    Command{"book-east", book, {key::right, false, false, true}, {}, on_map, nudge<0, 1>},
    Command{"book-west", book, {key::left, false, false, true}, {}, on_map, nudge<0, -1>},
    Command{"book-practise", book, {key::f7}, {}, has_vine, plain<ask::PractiseLike>},
    Command{"book-undo", book, {key::f6}, {}, [](const State& s) { return s.book && s.book->can_take_back(); }, [](const State&, Views&) { return Asked{ask::BookDo{practice::desk::TakeBack{}}}; }},
    Command{"book-demo", book, {}, {}, [](const State& s) { return s.book && !s.book->making_demo(); }, [](const State&, Views&) { return Asked{ask::BookDo{practice::desk::Demo{}}}; }},
    Command{"crew-page", everywhere & ~crew, {}, {}, past_safety, plain<ask::CrewPage>},
    // ---- what a named person says of another
    Command{"sign", everywhere & ~sign, {}, {}, past_safety, [](const State&, Views& v) { v.sign = {}; v.sign.number.focus = true; return Asked{ask::Sign{}}; }},
    Command{"sign-list", sign, {key::escape}, {}, [](const State& s) { return sign_page(s) && !s.shell.message; }, [](const State&, Views& v) { v.sign.number = {{}, true, false}; return Asked{ask::SignOf{}}; }},
    Command{"sign-yes", sign, {'Y'}, {}, sign_page, say_consent<true>},
    Command{"sign-no", sign, {'N'}, {}, sign_page, say_consent<false>},
    Command{"sign-off", sign, ctrl(key::enter), {}, sign_page, sign_off},
    // ---- who sits here
    Command{"seat", everywhere & ~seat, {}, {}, past_safety, [](const State&, Views& v) { v.seat.number = {{}, true, false}; return Asked{ask::Seat{}}; }},
    Command{"seat-new", seat, {}, {}, [](const State& s) { return !s.shell.read_only; }, plain<ask::SitsNew>},
    Command{"seat-nobody", seat, {}, {}, nullptr, plain<ask::Sits>},
    // ---- the ladder
    Command{"ladder", everywhere & ~ladder, {}, {}, past_safety, [](const State&, Views& v) { v.ladder = {}; return Asked{ask::Ladder{}}; }},
    Command{"ladder-take", ladder, {'G'}, {}, nullptr, [](const State&, Views& v) { return Asked{ask::LadderVine{std::nullopt, v.ladder.rung}}; }},
    Command{"ladder-lower", ladder, {key::comma}, {key::minus}, has_ladder, change_rung<-1>},
    Command{"ladder-higher", ladder, {key::period}, {}, has_ladder, change_rung<1>},
    // ---- the way on
    Command{"way", everywhere & ~way, {}, {}, past_safety, plain<ask::Way>},
    Command{"way-take", way, {'G'}, {}, nullptr, plain<ask::TakeWay>},
    // ---- look and say
    Command{"looks", everywhere & ~looks, {}, {}, past_safety, plain<ask::Looks>},
    Command{"looks-begin", looks, {'G'}, {}, looks_at_rest, plain<ask::LooksBegin>},
    Command{"look-1", looks, {'1'}, {}, look_takes<0>, say_look<0>},
    Command{"look-2", looks, {'2'}, {}, look_takes<1>, say_look<1>},
    Command{"look-3", looks, {'3'}, {}, look_takes<2>, say_look<2>},
    Command{"look-4", looks, {'4'}, {}, look_takes<3>, say_look<3>},
    Command{"look-next", looks, {key::space}, {key::enter}, [](const State& s) { return s.looks->stage() == practice::LookStage::told; }, plain<ask::LookNext>},
    Command{"looks-end", looks, {key::escape}, {}, [](const State& s) { return !looks_at_rest(s); }, plain<ask::LooksEnd>},
    Command{"looks-close", looks, {}, {}, looks_at_rest, plain<ask::LooksClose>},
    // ---- looking
    Command{"view-row", seen, {key::f2}, {key::home}, in_hand, [](const State&, Views&) { return view("row"); }},
    Command{
        "view-other-side", seen, {key::f3}, {}, in_hand, [](const State&, Views&) { return view("other-side"); }},
    Command{"view-along", seen, {key::f4}, {}, in_hand, [](const State&, Views&) { return view("along"); }},
    Command{"view-head", seen, {key::f5}, {}, in_hand, [](const State&, Views&) { return view("head"); }},
    Command{"view-cane", picture, {key::f6}, {}, in_hand, [](const State&, Views&) { return view("cane"); }},
    Command{"view-above", seen, {key::f7}, {}, in_hand, [](const State&, Views&) { return view("above"); }},
    Command{"look-at", picture, {'V'}, {}, chosen, plain<ask::LookAtChosen>},
    Command{"glass", picture, {'Z'}, {}, in_hand, [](const State&, Views& v) { v.glass = !v.glass; return Asked{}; }},
    Command{"turn-head", seen, {}, {}, nullptr, nullptr},
    Command{"lean", seen, {}, {}, nullptr, nullptr},
    Command{"closer", seen, {}, {}, nullptr, nullptr},
    Command{"hatch",
            row | look | watch,
            {'H'},
            {},
            in_hand,
            [](const State& s, Views&) { return Asked{ask::Hatch{!s.shell.hatch}}; }},
    Command{
        "orbit", seen, {}, {}, in_hand, [](const State& s, Views&) { return Asked{ask::Orbit{!s.shell.orbit}}; }},
    // ---- the shell
    Command{"find", everywhere, ctrl('F'), ctrl('K'), nullptr, open<Sheet::find>},
    Command{"keys", everywhere, {key::f1}, {}, nullptr, open<Sheet::keys>},
    Command{"words", everywhere, {key::f8}, {}, nullptr, open<Sheet::words>},
    Command{"home", everywhere, {}, {}, past_safety, go<practice::Screen::home>},
    Command{"to-vine",
            home | static_cast<unsigned>(Place::settings) | static_cast<unsigned>(Place::safety) | static_cast<unsigned>(Place::house),
            {},
            {},
            [](const State& s) { return in_hand(s) && past_safety(s); },
            go<practice::Screen::row>},
    Command{"settings", everywhere, {}, {}, past_safety, go<practice::Screen::settings>},
    Command{"house-rules", everywhere & ~(weigh | book), {'U'}, {}, past_safety, go<practice::Screen::house>},
    Command{"safety", everywhere, {}, {}, nullptr, go<practice::Screen::safety>},
    Command{"theme", everywhere, {}, {}, nullptr, other_theme},
    Command{"text-larger",
            everywhere,
            {},
            {},
            [](const State& s) { return s.shell.settings.text_percent < settings::most_text_percent; },
            text_scale<25>},
    Command{"text-smaller",
            everywhere,
            {},
            {},
            [](const State& s) { return s.shell.settings.text_percent > settings::least_text_percent; },
            text_scale<-25>},
    Command{"leave", everywhere, {}, {}, nullptr, plain<ask::Leave>},
};

} // namespace

Place place_of(const State& state) {
    if (state.shell.growing) return Place::growing;
    switch (state.shell.screen) {
    case practice::Screen::safety: return Place::safety;
    case practice::Screen::home: return Place::home;
    case practice::Screen::settings: return Place::settings;
    case practice::Screen::house: return Place::house;
    case practice::Screen::wall: return state.crew ? Place::wall : Place::home;
    case practice::Screen::weigh: return state.weighing ? Place::weigh : Place::home;
    case practice::Screen::book: return state.book ? Place::book : Place::home;
    case practice::Screen::crew: return state.crew_page ? Place::crew : Place::home;
    case practice::Screen::way: return state.way ? Place::way : Place::home;
    case practice::Screen::looks: return state.looks ? Place::looks : Place::home;
    case practice::Screen::seat: return Place::seat;
    case practice::Screen::ladder: return state.ladder ? Place::ladder : Place::home;
    case practice::Screen::sign: return state.sign ? Place::sign : Place::home;
    case practice::Screen::row: break;
    }
    if (!state.practice) return Place::home;
    if (state.two && !state.two->in_hand) return Place::two;
    if (state.practice->drill()) return Place::drill;
    if (state.practice->buds()) return Place::buds;
    if (state.practice->questions()) return Place::questions;
    if (state.practice->hand_rests()) return Place::watch;
    return state.practice->finished() ? Place::look : Place::row;
}

std::span<const Command> commands() { return table; }

const Command* find_command(std::string_view name) {
    for (const Command& command : table)
        if (command.name == name) return &command;
    return nullptr;
}

std::optional<Request> asked_by_keys(const State& state, Views& views, Ui& ui) {
    for (const KeyPress& press : ui.keys) {
        const bool typed = !press.ctrl && !(press.key >= key::f1 && press.key < key::f1 + 12);
        if (typed && (!ui.free_keys || views.sheet != Sheet::none)) continue;
        if (!ui.free_keys && press.ctrl && (press.key == 'Z' || press.key == 'Y')) continue; // of the text being typed
        for (const Command& command : table) {
            if (!(press == command.key || (command.second.key && press == command.second)) || !command.possible(state))
                continue;
            if (auto asked = command.ask(state, views)) return asked;
            break;
        }
    }
    return {};
}

} // namespace spurwright::ui
