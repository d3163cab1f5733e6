// What a named person says of another: skills signed off and withdrawn, and a yes or no to the name being kept. What is
// signed stands in words before it is signed.
#include <algorithm>
#include <charconv>
#include <utility>

#include "render/ui/asked.h"
#include "render/ui/panel.h"
#include "render/ui/screens.h"
#include "sim/rules/rule_list.h"

namespace spurwright::ui {
namespace {

namespace ask = practice::ask;
using practice::SignDesk;
using practice::SignPage;

std::string person_words(const Ui& ui, const records::Person& person) {
    return ui.say(person.name.empty() ? "screen.sign.number" : "screen.sign.number-name", {{"n", Count{person.number}}, {"text", person.name}});
}

std::string skill_name(const Ui& ui, std::string_view skill) { return ui.say("rule." + std::string(skill) + ".name"); }

// Whoever has the number typed; null where it is none of the list.
const records::Person* typed_person(const SignDesk& desk, std::string_view typed) {
    while (!typed.empty() && typed.front() == ' ') typed.remove_prefix(1);
    while (!typed.empty() && typed.back() == ' ') typed.remove_suffix(1);
    std::int64_t number = 0;
    const auto read = std::from_chars(typed.data(), typed.data() + typed.size(), number);
    return read.ec == std::errc{} && read.ptr == typed.data() + typed.size() ? desk.find(number) : nullptr;
}

// A field with its name beside it, or below where there is no room; whether Enter was pressed in it.
bool named_field(Ui& ui, std::string_view name, std::string_view label, Field& field, float em) {
    const bool entered = text_field(ui, name, {}, field, ui.em() * em);
    const std::string words = ui.say(label);
    flow(ui, text_size(ui, words, 0).x);
    row_text(ui, words, true);
    return entered;
}

// The fields are of the page that lies open: another page, or something written, begins anew. Who signs stays typed.
void begin_page(const State& state, SignView& view) {
    const SignDesk& desk = *state.sign;
    const std::int64_t person = desk.page->person.number;
    if (view.person == person && view.written == desk.written) return;
    Field by = std::exchange(view.by, {});
    const auto& sits = state.shell.sits;
    if (by.text.empty() && sits && !sits->name.empty() && sits->number != person) by.text = std::to_string(sits->number);
    by.focus = false;
    view = {};
    view.by = std::move(by);
    view.person = person;
    view.written = desk.written;
    view.on.text = records::day_text(desk.today);
    view.until.text = records::day_text(records::days_after(desk.today, records::sign_off_days));
}

Asked whom(const State& state, Views& views, Ui& ui) {
    const SignDesk& desk = *state.sign;
    Asked asked;
    head_text(ui, ui.say("screen.sign.title"));
    text(ui, ui.say("screen.sign.says"));
    const std::string open = ui.say("screen.sign.open"), hint = ui.say("screen.sign.hint");
    const float beside = button_width(ui, open);
    const bool entered = text_field(ui, "sign.number", hint, views.sign.number, std::max(ImGui::GetContentRegionAvail().x - beside - ui.grid.gap(), text_size(ui, hint, 0).x + 3 * ui.grid.gap()));
    flow(ui, beside);
    const records::Person* typed = typed_person(desk, views.sign.number.text);
    if ((button(ui, "sign.open", open, {Weight::plain, typed != nullptr, false, 0, {}}) || entered) && typed) asked = ask::SignOf{typed->number};
    if (entered && !typed && !views.sign.number.text.empty()) views.sign.number.focus = true;
    take(asked, command_button(ui, state, views, "sign", "crew-page", Weight::plain, false));
    take(asked, command_button(ui, state, views, "sign", "home", Weight::quiet, false, true));
    take(asked, command_button(ui, state, views, "sign", "find", Weight::quiet, true, true));
    rule_line(ui);
    if (desk.people.empty()) text(ui, ui.say("crew.nobody"));
    for (const practice::SignPerson& one : desk.people)
        if (list_row(ui, "sign.person." + std::to_string(one.person.number), person_words(ui, one.person), false, one.holds ? ui.say("screen.sign.holds", {{"n", counted(one.holds)}}) : std::string()))
            asked = ask::SignOf{one.person.number};
    return asked;
}

Asked consent(const State& state, Views& views, Ui& ui) {
    const SignPage& page = *state.sign->page;
    Asked asked;
    strong_text(ui, ui.say("screen.sign.consent"));
    text(ui, page.notice);
    if (!page.unchecked.empty() && page.language != ui.words.language()) text(ui, page.unchecked, true);
    strong_text(ui, ui.say(!page.consent ? "crew.consent-none" : *page.consent ? "crew.consent-yes" : "crew.consent-no"));
    take(asked, command_button(ui, state, views, "sign", "sign-yes"));
    take(asked, command_button(ui, state, views, "sign", "sign-no", Weight::plain, true, true));
    return asked;
}

std::string signed_words(const Ui& ui, const SignDesk& desk, const records::SignOff& sign) {
    const records::Person* by = desk.find(sign.by);
    const std::string who = by ? person_words(ui, *by) : ui.say("screen.sign.nobody-now"), until = records::day_text(sign.until);
    return ui.say(sign.until < desk.today ? "screen.sign.lapsed" : "screen.sign.until", {{"by", who}, {"on", records::day_text(sign.on)}, {"until", until}});
}

// One that stands, opened: what was seen, and the way to take it back.
Asked withdrawal(const State& state, SignView& view, const records::SignOff& sign, Ui& ui) {
    text(ui, ui.say("screen.sign.was-seen", {{"text", sign.saw}}));
    bool entered = named_field(ui, "sign.withdraw-by", "screen.sign.by", view.by, 8);
    entered |= named_field(ui, "sign.reason", "screen.sign.reason", view.reason, 24);
    const bool typed = !view.by.text.empty() && !view.reason.text.empty();
    if (entered && !typed) (view.by.text.empty() ? view.by : view.reason).focus = true;
    const bool pressed = button(ui, "sign.withdraw", ui.say("screen.sign.withdraw"), {Weight::main, typed && !state.shell.read_only, false, 0, {}});
    if (!typed || state.shell.read_only || !(pressed || entered)) return {};
    return ask::WithdrawSign{sign.id, view.by.text, view.reason.text};
}

Asked standing(const State& state, SignView& view, Ui& ui) {
    const SignDesk& desk = *state.sign;
    Asked asked;
    strong_text(ui, ui.say("screen.sign.standing"));
    if (desk.page->signed_off.empty()) text(ui, ui.say("screen.sign.none"), true);
    for (const records::SignOff& sign : desk.page->signed_off) {
        const bool opened = view.withdraws == sign.id;
        if (list_row(ui, "sign.standing." + std::to_string(sign.id), skill_name(ui, sign.skill), opened, signed_words(ui, desk, sign), 0, true)) {
            view.withdraws = opened ? std::nullopt : std::optional(sign.id);
            view.skill.reset();
            (view.by.text.empty() ? view.by : view.reason).focus = !opened;
        }
        if (view.withdraws == sign.id && opened) take(asked, withdrawal(state, view, sign, ui));
    }
    return asked;
}

// What the program has seen of it; it reports, a person signs.
std::string seen_by_program(const Ui& ui, const SignPage& page, rules::RuleName skill) {
    const auto met = page.met.find(skill);
    if (met == page.met.end()) return ui.say("screen.sign.not-met");
    return ui.say("screen.sign.met", {{"n", Count{met->second.answers.right}}, {"of", Count{met->second.answers.of}}, {"text", ui.say("drill.mastery." + std::string(word_of(met->second.word)))}});
}

void choose_skill(const SignPage& page, SignView& view, Ui& ui) {
    if (!fold(ui, "sign.skills", ui.say("screen.sign.skills"), view.skills_open)) return;
    for (const rules::Rule* rule : rules::all_rules) {
        if (!list_row(ui, "sign.skill." + std::string(rule->key()), skill_name(ui, rule->key()), view.skill == rule->name, seen_by_program(ui, page, rule->name))) continue;
        view.skill = rule->name;
        view.withdraws.reset();
        view.skills_open = false;
        (view.by.text.empty() ? view.by : view.saw).focus = true;
    }
}

// What would be signed, as it is kept.
void statement(const SignDesk& desk, const SignView& view, Ui& ui) {
    const records::Person* by = typed_person(desk, view.by.text);
    const std::string skill = skill_name(ui, rules::key_of(*view.skill));
    strong_text(ui, ui.say("screen.sign.statement", {{"person", person_words(ui, desk.page->person)}, {"skill", skill}}));
    text(ui, ui.say("rule." + std::string(rules::key_of(*view.skill)) + ".asks"), true);
    text(ui, ui.say("screen.sign.quiz-says", {{"text", seen_by_program(ui, *desk.page, *view.skill)}}), true);
    text(ui, by && !by->name.empty() ? ui.say("screen.sign.signed-by", {{"by", person_words(ui, *by)}, {"on", view.on.text}, {"until", view.until.text}}) : ui.say("screen.sign.by-whom"));
    text(ui, ui.say("crew.no-permit"));
}

Asked signing(const State& state, Views& views, Ui& ui) {
    SignView& view = views.sign;
    if (!view.skill) return {};
    bool entered = named_field(ui, "sign.by", "screen.sign.by", view.by, 8);
    entered |= named_field(ui, "sign.saw", "screen.sign.saw", view.saw, 24);
    entered |= named_field(ui, "sign.on", "screen.sign.on", view.on, 8);
    entered |= named_field(ui, "sign.until", "screen.sign.until-field", view.until, 8);
    statement(*state.sign, view, ui);
    const bool typed = !view.by.text.empty() && !view.saw.text.empty();
    if (entered && !typed) (view.by.text.empty() ? view.by : view.saw).focus = true;
    const bool pressed = button(ui, "sign.sign-off", ui.say("screen.do.sign-off"), {Weight::main, typed && !state.shell.read_only, false, 0, ui.narrow() ? std::string() : key_text(ui, "sign-off")});
    return pressed ? find_command("sign-off")->ask(state, views) : std::nullopt;
}

Asked page_of(const State& state, Views& views, Ui& ui) {
    begin_page(state, views.sign);
    Asked asked;
    head_text(ui, person_words(ui, state.sign->page->person));
    take(asked, command_button(ui, state, views, "sign", "sign-list", Weight::plain, true));
    take(asked, command_button(ui, state, views, "sign", "crew-page", Weight::plain, false, true));
    take(asked, command_button(ui, state, views, "sign", "home", Weight::quiet, false, true));
    take(asked, command_button(ui, state, views, "sign", "find", Weight::quiet, true, true));
    if (state.shell.read_only) text(ui, ui.say("screen.sign.not-kept"));
    rule_line(ui);
    take(asked, standing(state, views.sign, ui));
    choose_skill(*state.sign->page, views.sign, ui);
    take(asked, signing(state, views, ui));
    rule_line(ui);
    take(asked, consent(state, views, ui));
    return asked;
}

} // namespace

Asked screen_sign(const State& state, Views& views, Ui& ui) {
    Asked asked;
    panel_begin(ui, "sign", middle_panel(ui, 54));
    take(asked, state.sign->page ? page_of(state, views, ui) : whom(state, views, ui));
    unchecked_line(ui);
    panel_end(ui);
    take(asked, say_panel(state, ui, ui.em() * 2));
    return asked;
}

} // namespace spurwright::ui
