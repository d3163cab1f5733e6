// What the commands ask and when they can be given: one small function each, read by the table alone. Must not know: keys,
// words, places.
#pragma once

#include <algorithm>

#include "render/ui/asked.h"
#include "render/ui/commands.h"

namespace spurwright::ui::asks {

namespace ask = practice::ask;
using practice::HandTool;

inline bool in_hand(const State& s) { return s.practice != nullptr; }
inline bool chosen(const State& s) { return in_hand(s) && s.practice->chosen; }
inline bool unfinished(const State& s) { return in_hand(s) && !s.practice->finished(); }
inline bool looks_at_rest(const State& s) { return s.looks->stage() == practice::LookStage::setting_up || s.looks->stage() == practice::LookStage::over; }

// How many words it has; of a pair the two places.
template <std::size_t said>
bool look_takes(const State& s) {
    if (s.looks->stage() != practice::LookStage::asking) return false;
    return said < (s.looks->look()->pair() ? std::size_t{2} : s.looks->look()->item.words.size());
}
template <std::size_t said>
Asked say_look(const State&, Views&) {
    return Request{ask::LookSaid{said}};
}
inline bool past_safety(const State& s) { return s.shell.settings.safety_seen; }

inline HandTool cutting_tool(const State& s) {
    return s.practice && practice::cuts(s.practice->tool) ? s.practice->tool : HandTool::shears;
}

template <HandTool tool>
Asked take(const State&, Views& views) {
    views.row.bar = tool == HandTool::tape ? Bar::tape : Bar::none;
    views.row.bar_at = 0;
    return Request{ask::TakeTool{tool}};
}

// C with nothing to cut at takes the tool in hand; else it cuts where the hand points or walked to.
inline Asked cut(const State& s, Views& views) {
    views.row.bar = Bar::none;
    if (!s.practice->chosen && !s.practice->hover) return Request{ask::TakeTool{cutting_tool(s)}};
    return Request{ask::CutHere{{}, cutting_tool(s)}};
}

inline Asked lay(const State&, Views& views) {
    views.row.bar = Bar::lay;
    views.row.bar_at = 0;
    return {};
}

template <class R>
Asked plain(const State&, Views&) {
    return Request{R{}};
}
template <int step>
Asked walk_canes(const State&, Views&) {
    return Request{ask::WalkCanes{step}};
}
template <int step>
Asked walk_buds(const State&, Views&) {
    return Request{ask::WalkBuds{step}};
}
template <int step>
Asked next_piece(const State&, Views&) {
    return Request{ask::NextPiece{step}};
}
template <practice::Screen screen>
Asked go(const State&, Views&) {
    return Request{ask::GoTo{screen}};
}
template <Sheet sheet>
Asked open(const State&, Views& views) {
    views.sheet = views.sheet == sheet ? Sheet::none : sheet;
    views.find = {};
    views.find.focus = views.sheet == Sheet::find;
    views.find_at = 0;
    return {};
}

inline bool watched_on(const State& s) { return s.practice->watching() && s.practice->watching()->shown(); }
inline bool watched_back(const State& s) { return s.practice->watching() && s.practice->watching()->at() > 0; }
// Watched to the end on the ladder: the next vine is the trainee's.
inline bool ladder_watched(const State& s) { return s.practice->on_ladder() && s.practice->watching() && !s.practice->watching()->shown(); }
inline bool has_ladder(const State& s) { return s.ladder != nullptr; }
template <int step>
Asked change_rung(const State& s, Views& views) {
    views.ladder.rung = std::clamp(views.ladder.rung.value_or(s.ladder->standing.rung) + step, 0, s.ladder->top());
    return {};
}
inline bool sign_page(const State& s) { return s.sign && s.sign->page; }
template <bool yes>
Asked say_consent(const State&, Views&) {
    return Request{ask::SayConsent{yes}};
}
// Nothing before all of it is typed.
inline Asked sign_off(const State&, Views& views) {
    const SignView& view = views.sign;
    if (!view.skill || view.by.text.empty() || view.saw.text.empty()) return {};
    return Request{ask::SignOff{*view.skill, view.by.text, view.saw.text, view.on.text, view.until.text}};
}
inline bool unanswered(const State& s) { return s.practice->drill()->here() && !s.practice->drill()->answered(); }
inline bool two_found(const State& s) { return s.two && s.two->found; }
template <std::size_t which>
Asked prune_of_two(const State&, Views&) {
    return Request{ask::PruneOfTwo{which}};
}
template <bool older>
Asked answer(const State&, Views&) {
    return Request{ask::DrillAnswer{older}};
}

inline const quiz::Quiz* quiz_of(const State& s) { return s.crew ? s.crew->quiz() : nullptr; }
template <class Event>
bool quiz_may(const State& s) {
    return quiz_of(s) && quiz_of(s)->allows(Event{});
}
inline bool quiz_ended(const State& s) { return quiz_of(s) && quiz_of(s)->phase() == quiz::Phase::ended; }
template <class Event>
Asked quiz_event(const State&, Views&) {
    return Request{ask::WallDo{Event{}}};
}
// The space bar alone takes a quiz through: locked, revealed, the next.
inline bool quiz_goes_on(const State& s) { return quiz_may<quiz::event::Locked>(s) || quiz_may<quiz::event::Revealed>(s) || quiz_may<quiz::event::Next>(s); }
inline Asked go_on_quiz(const State& s, Views& views) {
    views.wall.begin_entry();
    if (quiz_may<quiz::event::Locked>(s)) return Request{ask::WallDo{quiz::event::Locked{}}};
    if (quiz_may<quiz::event::Revealed>(s)) return Request{ask::WallDo{quiz::event::Revealed{}}};
    return Request{ask::WallDo{quiz::event::Next{}}};
}
using weighing::Deed;
inline bool sorting(const State& s) { return s.weighing && !s.weighing->written(); }
inline bool weighed(const State& s) { return s.weighing && s.weighing->written(); }
template <Deed deed>
Asked do_deed(const State&, Views&) {
    return Request{ask::WeighDo{{deed, 0}}};
}
// The next piece of what lies there, in the bundle too; round again at the end.
template <int step>
Asked walk_pieces(const State& s, Views& views) {
    const auto n = static_cast<int>(s.weighing->pieces().size());
    auto at = static_cast<int>(std::min(views.weigh.at, s.weighing->pieces().size() - 1));
    do at = (at + step + n) % n;
    while (s.weighing->still_on(static_cast<std::size_t>(at)) && at != static_cast<int>(views.weigh.at));
    views.weigh.at = static_cast<std::size_t>(at);
    views.weigh.walked = true;
    return {};
}
inline bool has_piece(const State& s) { return sorting(s) && !s.weighing->pieces().empty(); }
// Into the bundle, or out of it again; then on to the next that is not in it.
inline Asked take_piece(const State& s, Views& views) {
    const weighing::Exercise& exercise = *s.weighing;
    const std::size_t at = std::min(views.weigh.at, exercise.pieces().size() - 1);
    const bool out = exercise.lies(at) == weighing::Lies::bundle;
    if (!out && !exercise.tied())
        for (std::size_t i = 1; i < exercise.pieces().size(); ++i) {
            const std::size_t next = (at + i) % exercise.pieces().size();
            if (exercise.lies(next) == weighing::Lies::bundle || exercise.still_on(next)) continue;
            views.weigh.at = next;
            views.weigh.walked = true;
            break;
        }
    return Request{ask::WeighDo{{out ? Deed::put_back : Deed::take, at}}};
}
inline Asked strip_piece(const State& s, Views& views) {
    return Request{ask::WeighDo{{Deed::strip, std::min(views.weigh.at, s.weighing->pieces().size() - 1)}}};
}
inline Asked write_weight(const State&, Views& views) {
    return Request{ask::WeighWrite{views.weigh.weight.text, views.weigh.noted_wet}};
}
inline bool asks_next(const State& s) { return s.next_buds && !s.next_buds->verdict(); }
template <std::size_t winter>
bool in_log(const State& s) {
    return asks_next(s) && winter < s.next_buds->task().log.size();
}
template <std::size_t winter>
Asked leave_out(const State& s, Views&) {
    return Request{ask::LeaveOut{winter, !s.next_buds->left_out(winter)}};
}
inline bool has_block(const State& s) { return s.book && s.book->open(); }
inline bool has_vine(const State& s) { return has_block(s) && s.book->page() == practice::BookPage::entry && s.book->vine() && !s.book->vine()->winters.empty(); }
template <practice::BookPage page>
Asked book_page(const State&, Views&) {
    return Request{ask::BookDo{practice::desk::Page{page}}};
}
inline bool on_map(const State& s) { return has_block(s) && s.book->page() == practice::BookPage::map && s.book->vine(); }
constexpr double nudge_m = 0.5; // our choice
template <int north, int east>
Asked nudge(const State&, Views&) {
    return Request{ask::BookDo{practice::desk::Nudge{north * nudge_m, east * nudge_m}}};
}
template <int step>
Asked book_winter(const State&, Views&) {
    return Request{ask::BookDo{practice::desk::Winter{step}}};
}
template <int step>
Asked book_walk(const State&, Views&) {
    return Request{ask::BookDo{practice::desk::Walk{step}}};
}

inline bool quiz_answers(const State& s) { return quiz_may<quiz::event::Locked>(s); }
inline bool quiz_revealed(const State& s) { return quiz_of(s) && quiz_of(s)->phase() == quiz::Phase::revealed; }

template <std::size_t which>
bool question_takes(const State& s) {
    const practice::Question* here = s.practice->questions()->here();
    return here && !here->said && which < here->answers.size();
}
template <std::size_t which>
Asked say_answer(const State&, Views&) {
    return Request{ask::SayAnswer{which}};
}
inline const practice::MovedCut* moved_cut(const State& s) {
    return s.practice && s.practice->look() && s.practice->look()->moved ? &*s.practice->look()->moved : nullptr;
}
template <int step>
bool may_move_cut(const State& s) {
    const practice::MovedCut* cut = moved_cut(s);
    return cut && (step < 0 ? cut->at > 0 : cut->at + 1 < cut->ends.size());
}
template <int step>
Asked move_cut(const State& s, Views&) {
    return Request{ask::MoveCut{step < 0 ? moved_cut(s)->at - 1 : moved_cut(s)->at + 1}};
}
template <int step>
Asked next_cut(const State&, Views&) {
    return Request{ask::NextCut{step}};
}

inline Asked enter(const State& s, Views&) {
    if (s.practice->waiting()) return Request{ask::Confirm{}};
    if (s.shell.offers_watch) return Request{ask::Watch{}};
    if (s.shell.offers_questions) return Request{ask::Questions{}};
    if (s.practice->finished()) return Request{ask::LookAtPiece{}};
    return {};
}

inline Asked view(std::string_view name) { return Request{ask::LookFrom{std::string(name)}}; }

inline Asked other_theme(const State& s, Views&) {
    return Request{ask::Theme{s.shell.settings.theme == settings::ThemeName::paper ? "dusk" : "paper"}};
}

template <int change>
Asked text_scale(const State& s, Views&) {
    const int percent =
        std::clamp(s.shell.settings.text_percent + change, settings::least_text_percent, settings::most_text_percent);
    return Request{ask::TextScale{percent}};
}

} // namespace spurwright::ui::asks
