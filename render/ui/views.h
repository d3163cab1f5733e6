// What each screen remembers between frames and nobody else needs: what is folded open, what is typed. Never saved,
// never part of a vine. Must not know: how it is drawn.
#pragma once

#include <cstdint>
#include <optional>
#include <string>

#include "render/ui/widgets.h"
#include "scenarios/quiz/quiz.h"
#include "sim/core/ids.h"
#include "sim/rules/rule.h"
#include "sim/vine/words_of.h"

namespace spurwright::ui {

enum class Sheet : unsigned char { none, find, keys, words };
enum class Bar : unsigned char { none, tape, lay }; // the small bar above the hand tools

struct HomeView {
    Field code;
};
struct SeatView {
    Field number;
};
struct LadderChoice { // of the ladder's screen
    std::optional<int> rung; // none: the one suggested
};
// What is being signed or withdrawn, of the page that lies open.
struct SignView {
    Field number, by, saw, on, until, reason;
    std::optional<rules::RuleName> skill;
    std::optional<std::int64_t> withdraws;  // the sign-off
    std::optional<std::int64_t> person;     // whose page the fields are of
    std::uint64_t written = 0;              // as the desk counted when they were filled
    bool skills_open = false;
};
struct RowView {
    bool card_open = true, acts_open = false, looks_open = false;
    bool set = false; // folded by the width of the window once
    Bar bar{};
    int bar_at = 0; // walked to by arrows
    bool bar_shown = false; // above the row of tools, in the frame before
};
struct LookView {
    bool list_open = false, nothing_open = false, why_open = false, points_open = false, charges_open = false, noting = false;
    bool spring_shown = false; // the visit in spring, in the frame before
    bool cut_shown = false; // a cut tried elsewhere, in the frame before
    bool grown_shown = false; // the table of winters was there in the frame before
    Field code, note;
};

struct ShownView {  // watching, touching
    bool why_open = false;
};

struct HouseView {
    std::string group; // opened; empty: the list of all
    bool works_open = false, files_open = false;
    Field path;
};

// The answer being typed on the wall: whose, and what so far.
struct WallView {
    quiz::Way way = quiz::Way::post;
    int voter = 1;            // the post whose answer comes next
    std::string typed;        // digits so far
    std::string person;       // the number said before a person's answer
    std::optional<quiz::Answer> counting; // hands: the answer whose hands are counted
    bool disagrees = false;   // the house's own key is being typed
    float foot_height = 0;    // of the panel of acts, in the frame before
    void begin_entry() {
        typed.clear();
        person.clear();
        counting.reset();
        voter = 1;
        disagrees = false;
    }
    void next_way() {
        const int last_voter = voter;
        begin_entry();
        voter = last_voter;
        way = way == quiz::Way::post ? quiz::Way::hands : way == quiz::Way::hands ? quiz::Way::person : quiz::Way::post;
    }
};

// The scale: the piece at hand, the weight being written.
struct WeighView {
    std::size_t at = 0;
    bool walked = false;   // to it by keys, to be brought into sight
    bool noted_wet = false;
    Field weight;
    Field by_weight, by_space, keep;  // the coming winter's buds
};

// The book: what is being keyed.
struct BookView {
    Field weight, canes, buds, crop, note, tag;        // of the vine at hand
    Field new_tag, new_row, new_place, name, spacing, path;
    std::size_t keyed_at = ~std::size_t{0};            // whose fields these are
    std::size_t listed_at = ~std::size_t{0};           // brought into sight in the list
    std::int64_t entered = 0;                          // as the book counted when they were filled
    int winter = 0;
    bool more_open = false, files_open = false, new_open = false, suggested_open = false;
    Field row, place, latitude, longitude, paper;
    std::string place_shown;                           // what fills these fields
    bool place_open = false, history_open = false, papers_open = false, puts_points = false;
    bool told = false;                                 // something was said, in the frame before
};

struct Views {
    Sheet sheet{};
    bool glass = false; // a piece of the picture larger, under the pointer
    Field find;
    int find_at = 0;
    std::vector<Box> panels; // of the frame before: labels on the picture keep clear of them
    HomeView home;
    SeatView seat;
    LadderChoice ladder;
    SignView sign;
    RowView row;
    LookView look;
    ShownView shown;
    HouseView house;
    WallView wall;
    WeighView weigh;
    BookView book;
    float two_foot = 0; // where the panel under the two vines begins, in pixels
    // While true, arrows and Enter belong to a bar or sheet: the picture leaves them alone.
    bool takes_arrows() const { return sheet != Sheet::none || row.bar != Bar::none; }
};

} // namespace spurwright::ui
