// The screens of the window. Each draws one frame and says what the person asked for; it changes nothing but its own
// view. What was asked is carried out elsewhere. Must not know: OpenGL, files, threads.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "render/ui/commands.h"
#include "render/ui/marks.h"

namespace spurwright::ui {

// A language by its own name, as word files tell it.
struct Spoken {
    std::string code, name;
};

// The safety card: at the first start, with the choice of language before it, and whenever it is asked for.
std::optional<Request> screen_safety(const State& state, Views& views, const std::vector<Spoken>& spoken, Ui& ui);
// The doors that there are: the row and the shed.
std::optional<Request> screen_home(const State& state, Views& views, Ui& ui);
// Over the picture: card of the vine, steps, hand tools, acts. Needs state.practice.
std::optional<Request> screen_row(const State& state, Views& views, Ui& ui);
// Over the picture: one piece at a time. Needs state.practice, finished.
std::optional<Request> screen_look_back(const State& state, Views& views, Ui& ui);
// Over the picture: the best plan, one act at a time. Needs state.practice, watching or waiting for the plans.
std::optional<Request> screen_watch(const State& state, Views& views, Ui& ui);
// Over the picture: one place to touch at a time. Needs state.practice->drill().
std::optional<Request> screen_drill(const State& state, Views& views, Ui& ui);
// Over the picture: six buds cut open at a time. Needs state.practice->buds().
std::optional<Request> screen_buds(const State& state, Views& views, Ui& ui);
// Over the picture: what the scene asks, one at a time. Needs state.practice->questions().
std::optional<Request> screen_questions(const State& state, Views& views, Ui& ui);
// Under the pictures of next winter's two vines: what came of each. Needs state.two, none of them in hand.
std::optional<Request> screen_two(const State& state, Views& views, Ui& ui);
std::optional<Request> screen_settings(const State& state, Views& views, const std::vector<Spoken>& spoken, Ui& ui);
// The house's own rules beside the vine in hand, which is judged anew with each change.
std::optional<Request> screen_house(const State& state, Views& views, Ui& ui);
// The crew's quiz: set up, played under the picture of each vine, its results. Needs state.crew.
std::optional<Request> screen_wall(const State& state, Views& views, Ui& ui);
// The brush sorted, bundled, hung on the scale and written down. Needs state.weighing.
std::optional<Request> screen_weigh(const State& state, Views& views, Ui& ui);
// The reference vines: blocks, quick entry, comparison, map. Needs state.book.
std::optional<Request> screen_book(const State& state, Views& views, Ui& ui);
// The crew by its quizzes, on one page. Needs state.crew_page.
std::optional<Request> screen_crew(const State& state, Views& views, Ui& ui);
// Who sits at this window: the crew's numbers, a new one, nobody.
std::optional<Request> screen_seat(const State& state, Views& views, Ui& ui);
// What a named person says of another: skills signed off and withdrawn, a yes or no to the name being kept. Needs state.sign.
std::optional<Request> screen_sign(const State& state, Views& views, Ui& ui);
// What to do next and why, and vines met before. Needs state.way.
std::optional<Request> screen_way(const State& state, Views& views, Ui& ui);
// The ladder: where one stands, what is theirs on the next vine, every lesson on every rung. Needs state.ladder.
std::optional<Request> screen_ladder(const State& state, Views& views, Ui& ui);
// Look and say: set up, one look at a time under its picture, what came of it. Needs state.looks.
std::optional<Request> screen_looks(const State& state, Views& views, Ui& ui);
// A vine is sought: how far that is, and the way back. Needs state.shell.growing.
std::optional<Request> screen_growing(const State& state, Views& views, Ui& ui);
// Sheets over any of them.
std::optional<Request> sheet_find(const State& state, Views& views, Ui& ui);
void sheet_keys(const State& state, Views& views, Ui& ui);
void sheet_words(Views& views, Ui& ui);

// One frame of whatever the shell says is on: marks first, then the screen or the sheet over it, then the keys.
std::optional<Request> draw_screens(const State& state, Views& views, const std::vector<Spoken>& spoken,
                                    const Marks& marks, Ui& ui);

// Parts that several screens share.
// A button of a command: its words, its key as a hint where there is room, greyed where it cannot be.
std::optional<Request> command_button(Ui& ui, const State& state, Views& views, std::string_view screen,
                                      std::string_view command, Weight weight = Weight::plain, bool with_key = true,
                                      bool beside = false);
// A fold with the views by their words, the hatch and the free walk.
std::optional<Request> looks_fold(Ui& ui, const State& state, Views& views, std::string_view screen);
// "wording not yet checked by a native pruner", where due.
void unchecked_line(Ui& ui);
// What has to be said (a refusal, a cut that waits for a word), with its ways out. Drawn as a panel at the
// upper middle, below `top`.
std::optional<Request> say_panel(const State& state, Ui& ui, float top);

} // namespace spurwright::ui
