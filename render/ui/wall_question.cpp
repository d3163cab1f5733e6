// One question as the room sees it: above the vine what is asked, in two languages; below it the answers coming in.
// Before the reveal nothing shows which answer was given, nor by how many.
#include <algorithm>
#include <utility>

#include "render/ui/panel.h"
#include "render/ui/room_text.h"
#include "render/ui/wall_parts.h"
#include "scenarios/quiz/item_words.h"

namespace spurwright::ui {
namespace {

namespace ask = practice::ask;
namespace event = quiz::event;
using quiz::Phase;
using quiz::Quiz;
using quiz::Way;

constexpr std::size_t longest_number = 4;

Asked happens(quiz::Event event) { return practice::Request{ask::WallDo{std::move(event)}}; }

// ---- what is typed

// The next post without an answer, else the one after this.
int next_post(const Quiz& quiz, int from) {
    const int posts = static_cast<int>(quiz.gathered().posts.size());
    for (int step = 1; step <= posts; ++step) {
        const int post = (from - 1 + step) % posts + 1;
        if (quiz.state().last().voters.count({Way::post, post}) == 0) return post;
    }
    return from % std::max(1, posts) + 1;
}

Asked enter_answer(const Quiz& quiz, WallView& view, const quiz::Answer& answer) {
    view.typed.clear();
    if (view.disagrees) {
        view.disagrees = false;
        return happens(event::Rekeyed{quiz.at(), {answer}});
    }
    if (view.way == Way::hands) {
        view.counting = answer;
        return {};
    }
    if (view.way == Way::person) {
        const quiz::Voter voter{Way::person, std::stoi(view.person)};
        view.person.clear();
        return happens(event::Answered{voter, answer});
    }
    const quiz::Voter voter{Way::post, view.voter};
    view.voter = next_post(quiz, view.voter);
    return happens(event::Answered{voter, answer});
}

// Digits, Enter and Backspace, in the order typed. Hands: an answer, then how many; a person: the number, then the answer.
Asked entered(const Quiz& quiz, WallView& view, char key) {
    const bool number_first = !view.disagrees && view.way == Way::person && view.person.empty();
    if (key == '\b') {
        if (!view.typed.empty()) view.typed.pop_back();
        else view.counting.reset();
        return {};
    }
    if (key != '\n') {
        if (view.typed.size() >= longest_number) return {};
        view.typed += key;
    }
    const bool enter = key == '\n';
    if (view.counting || number_first) {
        if (!enter || view.typed.empty()) return {};
        const std::string number = std::exchange(view.typed, {});
        if (number_first) {
            if (std::stoi(number) > 0) view.person = number;
            return {};
        }
        const quiz::Answer answer = *std::exchange(view.counting, std::nullopt);
        return happens(event::Counted{answer, std::min(999, std::stoi(number))});
    }
    if (const auto answer = typed_answer(quiz.item(), view.typed, enter)) return enter_answer(quiz, view, *answer);
    const std::size_t most = quiz.item().kind == quiz::Kind::count ? 2u : static_cast<std::size_t>(quiz.item().asked());
    if (enter || view.typed.size() >= most) view.typed.clear(); // no answer to this question: typed anew
    return {};
}

Asked typed_keys(const Quiz& quiz, WallView& view, Ui& ui) {
    Asked asked;
    if (!ui.free_keys) return asked;
    for (const KeyPress& press : ui.keys) {
        if (press.ctrl || press.alt) continue;
        if (press.key >= '0' && press.key <= '9') take(asked, entered(quiz, view, static_cast<char>(press.key)));
        else if (press.key == key::enter || press.key == key::pad_enter) take(asked, entered(quiz, view, '\n'));
        else if (press.key == key::backspace) take(asked, entered(quiz, view, '\b'));
        else if (press.key == key::tab && view.way == Way::post && !quiz.gathered().posts.empty()) {
            const int posts = static_cast<int>(quiz.gathered().posts.size());
            view.voter = (view.voter - 1 + (press.shift ? posts - 1 : 1)) % posts + 1;
            view.typed.clear();
        }
    }
    return asked;
}

Asked digit_buttons(const Quiz& quiz, WallView& view, Ui& ui) {
    Asked asked;
    const bool numbers = view.counting || (view.way == Way::person && view.person.empty() && !view.disagrees) || quiz.item().kind == quiz::Kind::count;
    const int low = numbers ? 0 : quiz.item().lowest(), high = numbers ? 9 : quiz.item().highest();
    for (int digit = low; digit <= high; ++digit) {
        const std::string label = std::to_string(digit);
        flow(ui, button_width(ui, label));
        if (button(ui, "wall.digit-" + label, label)) take(asked, entered(quiz, view, static_cast<char>('0' + digit)));
    }
    if (!numbers) return asked;
    const std::string label = ui.say("screen.key.enter");
    flow(ui, button_width(ui, label));
    if (button(ui, "wall.enter", label)) take(asked, entered(quiz, view, '\n'));
    return asked;
}

std::string digits_text(const quiz::Answer& answer) {
    std::string text;
    for (const std::uint8_t digit : answer) text += (text.empty() ? "" : "+") + std::to_string(int{digit});
    return text;
}

// Whose answer is awaited, and what is typed of it; what one person types stays hidden.
std::string entry_text(const Ui& ui, const WallView& view) {
    const bool hidden = view.way == Way::person && !view.person.empty() && !view.disagrees;
    const std::string typed = (hidden ? std::string(view.typed.size(), '*') : view.typed) + "_";
    if (view.disagrees) return ui.say("screen.wall.key-anew", {{"text", typed}});
    if (view.way == Way::hands)
        return view.counting ? ui.say("screen.wall.hands-for", {{"answer", digits_text(*view.counting)},
                                                                {"text", typed}})
                             : ui.say("screen.wall.hands", {{"text", typed}});
    if (view.way == Way::person)
        return view.person.empty() ? ui.say("screen.wall.person", {{"text", typed}}) : ui.say("screen.wall.person-answers", {{"number", view.person}, {"text", typed}});
    return ui.say("screen.wall.post-answers", {{"n", Count{view.voter}}, {"text", typed}});
}

// How many have answered and which posts, never what.
void answers_in(const Quiz& quiz, const Ui& ui, RoomLines& lines) {
    std::string line = ui.say("screen.wall.answered", {{"n", Count{quiz.state().last().answers()}}});
    for (std::size_t i = 0; i < quiz.gathered().posts.size(); ++i) {
        const int post = static_cast<int>(i) + 1;
        if (quiz.state().last().voters.count({Way::post, post}) > 0) line += "   " + ui.say("screen.wall.post-in", {{"n", Count{post}}});
    }
    lines.push_back({line, RoomLook::soft});
}

// ---- the faces of a question

void word_answers(const State& state, const Quiz& quiz, const Ui& ui, RoomLines& lines) {
    const quiz::Item& item = quiz.item();
    const bool shown = quiz.phase() == Phase::revealed;
    std::string others;
    for (std::size_t i = 0; i < item.words.size(); ++i) {
        const quiz::Answer answer{static_cast<std::uint8_t>(i + 1)};
        const bool right = shown && quiz.state().accepts(answer);
        std::string line = std::to_string(i + 1) + "  " + ui.words.sentence(item.words[i]);
        const words::Words* second = state.crew->second();
        if (second && !shown) line += "  ·  " + second->sentence(item.words[i]);
        if (shown) line += "  (" + std::to_string(quiz.state().last().of(answer)) + ")";
        if (right) lines.push_back({ui.say("screen.wall.right-word", {{"text", line}}), RoomLook::strong});
        else if (!shown) lines.push_back({line, {}});
        else others += (others.empty() ? "" : "  ·  ") + line; // one after another: what is right has their room
    }
    if (!others.empty()) lines.push_back({others, RoomLook::soft});
}

void told_line(const State& state, const quiz::Told& told, const Ui& ui, RoomLines& lines) {
    if (told.key.name.empty()) return;
    lines.push_back({ui.words.sentence(told.key, told.arguments), RoomLook::strong});
    if (const words::Words* second = state.crew->second()) lines.push_back({second->sentence(told.key, told.arguments), {}});
}

// What is right, and why the commonest wrong answer is not.
void revealed(const State& state, const Quiz& quiz, const Ui& ui, RoomLines& lines) {
    const quiz::Item& item = quiz.item();
    const auto share = quiz.share_right(quiz.at(), quiz.state().talked ? 1 : 0);
    if (quiz.state().dropped) lines.push_back({ui.say("screen.wall.dropped"), RoomLook::strong});
    std::string right;
    for (const quiz::Answer& answer : quiz.state().accepted) right += (right.empty() ? "" : ", ") + quiz::answer_text(ui.words, item, answer);
    const Count asked{quiz.state().last().answers()};
    std::string counted = item.words.empty() ? ui.say("screen.wall.right", {{"text", right}}) : std::string();
    if (share) counted += (counted.empty() ? "" : " · ") + ui.say("screen.wall.share", {{"n", Count{(std::int64_t{share->count} * asked.value + 500) / 1000}}, {"of", asked}});
    if (!counted.empty()) lines.push_back({counted, RoomLook::strong});
    told_line(state, item.reveal, ui, lines);
    std::optional<quiz::Answer> wrong;
    int most = 0;
    for (std::uint8_t digit = 1; digit <= item.why_not.size(); ++digit) {
        const int votes = quiz.state().last().of({digit});
        if (votes > most && !quiz.state().accepts({digit}) && !item.why_not[digit - 1u].key.name.empty()) {
            most = votes;
            wrong = quiz::Answer{digit};
        }
    }
    if (wrong) {
        const quiz::Told& why = item.why_not[(*wrong)[0] - 1u];
        lines.push_back({ui.say("screen.wall.commonest-wrong", {{"answer", std::to_string(int{(*wrong)[0]})}, {"text", ui.words.sentence(why.key, why.arguments)}}), {}});
    }
    if (!item.scored) lines.push_back({ui.say("screen.wall.talk-only"), {}});
}

// A column down the far side: the vine keeps the height of the screen. Answers in words, and what is
// right, take more of it.
void column(Ui& ui, const ImVec2& screen, bool words) {
    PanelPlace place;
    place.width = std::min(screen.x * (words || screen.x < screen.y * 1.5f ? 0.52f : 0.44f), ui.em() * 30);
    place.x = screen.x - place.width;
    place.most_height = screen.y;
    place.full_height = true;
    place.keys_walk = false;
    panel_begin(ui, "wall", place);
}

// What the room reads: as high as the acts at the column's foot leave it, scrolled beyond that.
void told_begin(Ui& ui, float foot_height) {
    ImGui::BeginChild("###wall-told", {0, std::max(ui.em() * 4, ImGui::GetContentRegionAvail().y - foot_height)}, false, ImGuiWindowFlags_NoNavInputs);
}

// The supervisor's own acts are not for the room, so they may be smaller than what it reads.
constexpr float acts_share = 0.45f;
Ui for_acts(const Ui& ui) {
    Ui small = ui;
    small.grid.em = std::max(em_at_one, Grid::snapped(ui.em() * acts_share));
    return small;
}

// What the space bar does now.
Asked on_button(const State& state, Views& views, const Quiz& quiz, Ui& ui) {
    const std::string_view name = quiz.phase() == Phase::gathered    ? "screen.wall.on-begin"
                                  : quiz.allows(event::Locked{})     ? "screen.wall.on-close"
                                  : quiz.allows(event::Revealed{})   ? "screen.wall.on-reveal"
                                  : quiz.at() + 1 < quiz.items().size() ? "screen.wall.on-next"
                                                                        : "screen.wall.on-results";
    const Command* command = find_command("wall-on");
    const bool pressed = button(ui, "wall.wall-on", ui.say(name), {Weight::main, command->possible(state), false, 0, key_text(ui, "wall-on")});
    return pressed ? command->ask(state, views) : std::nullopt;
}

// Typing an answer, and what takes the quiz on.
Asked acts(const State& state, Views& views, const Quiz& quiz, bool answering, const Ui& room) {
    Ui ui = for_acts(room);
    WallView& view = views.wall;
    Asked asked;
    if (answering || view.disagrees) {
        row_text(ui, entry_text(ui, view));
        take(asked, digit_buttons(quiz, view, ui));
    }
    if (view.disagrees) {
        const std::string drop = ui.say(quiz.state().dropped ? "screen.wall.undrop" : "screen.wall.drop");
        if (button(ui, "wall.drop", drop)) {
            view.disagrees = false;
            asked = happens(event::Dropped{quiz.at()});
        }
    }
    take(asked, on_button(state, views, quiz, ui));
    if (quiz.phase() == Phase::locked) take(asked, command_button(ui, state, views, "wall", "wall-talk", Weight::plain, true, true));
    if (answering) {
        const std::string label = ui.say("screen.wall.way-" + std::string(word_of(view.way))), hint = key_text(ui, "wall-way");
        flow(ui, button_width(ui, label, hint));
        if (button(ui, "wall.way", label, {Weight::quiet, true, false, 0, hint})) view.next_way();
    }
    if (quiz.phase() == Phase::revealed) take(asked, command_button(ui, state, views, "wall", "wall-disagree", Weight::quiet, true, true));
    if (quiz.phase() != Phase::gathered) take(asked, command_button(ui, state, views, "wall", "wall-back", Weight::quiet, false, true));
    take(asked, command_button(ui, state, views, "wall", "wall-end", Weight::quiet, false, true));
    unchecked_line(ui);
    return asked;
}

void question(const State& state, const Quiz& quiz, const Ui& ui, RoomLines& lines) {
    const words::Words* second = state.crew->second();
    const Count all{static_cast<std::int64_t>(quiz.items().size())};
    if (quiz.phase() == Phase::gathered) {
        lines.push_back({ui.say("screen.wall.row-today", {{"text", quiz.gathered().house}}), RoomLook::head});
        lines.push_back({ui.say("screen.wall.gather", {{"n", all}}), {}});
        if (second) lines.push_back({(*second)("screen.wall.gather", {{"n", all}}), {}});
        return;
    }
    const words::Words* first = &ui.words;
    if (second && quiz.at() % 2 == 1) std::swap(first, second); // neither language always stands first
    const std::string number = ui.say("screen.wall.number", {{"n", Count{static_cast<std::int64_t>(quiz.at()) + 1}}, {"of", all}});
    if (quiz.phase() == Phase::revealed) return lines.push_back({number + " · " + quiz::question_text(*first, quiz.item()), RoomLook::soft}); // the answer takes its room
    lines.push_back({number, RoomLook::soft});
    lines.push_back({quiz::question_text(*first, quiz.item()), RoomLook::head});
    if (second) lines.push_back({quiz::question_text(*second, quiz.item()), {}});
}

} // namespace

Asked wall_question(const State& state, Views& views, Ui& ui) {
    const ImVec2 screen = ImGui::GetIO().DisplaySize;
    const Quiz& quiz = *state.crew->quiz();
    WallView& view = views.wall;
    if (quiz.gathered().posts.empty() && view.way == Way::post) view.way = Way::hands;
    const bool answering = quiz.phase() == Phase::open || quiz.phase() == Phase::talking;
    Asked asked;
    if (answering || view.disagrees) take(asked, typed_keys(quiz, view, ui));

    column(ui, screen, quiz.phase() == Phase::revealed || (quiz.phase() != Phase::gathered && !quiz.item().words.empty()));
    told_begin(ui, view.foot_height);
    RoomLines lines;
    question(state, quiz, ui, lines);
    if (quiz.phase() != Phase::gathered) {
        word_answers(state, quiz, ui, lines);
        if (answering) answers_in(quiz, ui, lines);
        else if (quiz.phase() == Phase::revealed) revealed(state, quiz, ui, lines);
        else lines.push_back({ui.say(quiz.talk_proposed() ? "screen.wall.talk-proposed" : "screen.wall.locked", {{"n", Count{quiz.state().last().answers()}}}), RoomLook::strong});
    }
    draw_room(ui, lines, room_share(ui, lines, ImGui::GetContentRegionAvail()));
    ImGui::EndChild();
    const float foot_from = ImGui::GetCursorPosY();
    take(asked, acts(state, views, quiz, answering, ui));
    view.foot_height = ImGui::GetCursorPosY() - foot_from + ui.grid.gap();
    panel_end(ui);
    return asked;
}

} // namespace spurwright::ui
