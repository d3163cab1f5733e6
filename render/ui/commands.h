// Every command of the window in one table: its words, its key, where it holds and what it asks. Buttons, keys, the
// Find field and the sheet of keys read the same rows, so that none is missing in one of them. Must not know: how a
// command is drawn or carried out.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "render/ui/ui.h"
#include "render/ui/views.h"
#include "scenarios/practice/book_desk.h"
#include "scenarios/practice/crew_quiz.h"
#include "scenarios/practice/ladder_desk.h"
#include "scenarios/practice/look_drill.h"
#include "scenarios/practice/shell.h"
#include "scenarios/practice/sign_desk.h"
#include "scenarios/practice/two_vines.h"
#include "scenarios/practice/way_ahead.h"
#include "scenarios/records/crew_view.h"
#include "scenarios/weighing/next_buds.h"

namespace spurwright::ui {

using practice::Practice;
using practice::Request;
using practice::Shell;

// What the screens are drawn from. `practice`: none before the first vine.
struct State {
    const Shell& shell;
    const Practice* practice = nullptr;
    const practice::TwoVines* two = nullptr; // next winter's, shown or one of them in hand; none: not grown on
    const practice::CrewQuiz* crew = nullptr; // none: the wall was not gone to
    const weighing::Exercise* weighing = nullptr; // none: the scale was not gone to
    const practice::BookDesk* book = nullptr; // none: the book was not gone to
    const practice::LookDrill* looks = nullptr; // none: look and say was not gone to
    const practice::WayAhead* way = nullptr; // none: it was not gone to
    const records::CrewView* crew_page = nullptr; // none: it was not gone to
    const weighing::NextBuds* next_buds = nullptr; // none: nobody asks for the coming winter's buds
    const practice::LadderDesk* ladder = nullptr; // none: it was not gone to
    const practice::SignDesk* sign = nullptr; // none: it was not gone to
};

enum class Place : unsigned { safety = 1, home = 2, row = 4, look = 8, settings = 16, watch = 32, drill = 64, two = 128, buds = 256, house = 512, wall = 1024, weigh = 2048, book = 4096, looks = 8192, way = 16384, crew = 32768, seat = 65536, questions = 131072, ladder = 262144, sign = 524288, growing = 1048576 };
Place place_of(const State& state);
inline constexpr unsigned everywhere = 1048575; // but while a vine is sought: nothing else can be done then
// Whether the screen there lies over the picture of the vine.
constexpr bool over_picture(Place place) {
    return place == Place::row || place == Place::look || place == Place::watch || place == Place::drill ||
           place == Place::two || place == Place::buds || place == Place::questions || place == Place::house || place == Place::wall || place == Place::looks;
}

struct Command {
    std::string_view name; // "undo": its words are screen.do.<name>
    unsigned places = everywhere;
    KeyPress key, second;                // key 0: none
    bool (*can)(const State&) = nullptr; // none: always
    // What to ask; nothing where only the view changed, or where the key is the picture's own (turning the head).
    std::optional<Request> (*ask)(const State&, Views&) = nullptr;
    bool holds(const State& state) const { return (places & static_cast<unsigned>(place_of(state))) != 0; }
    bool possible(const State& state) const { return holds(state) && ask && (!can || can(state)); }
};

std::span<const Command> commands();
const Command* find_command(std::string_view name);

// "Ctrl+Z" in the language of the screen; empty where there is none.
std::string key_text(const Ui& ui, const KeyPress& key);
std::string key_text(const Ui& ui, std::string_view command);

// The first command whose key was pressed, carried out on the view. While text is typed only those with Ctrl or an F
// key.
std::optional<Request> asked_by_keys(const State& state, Views& views, Ui& ui);

// Commands whose name has words that begin with the words typed, in any order; all for none. Accents may be left out.
bool found_by(const std::string& name, const std::string& typed);

} // namespace spurwright::ui
