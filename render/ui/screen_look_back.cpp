#include <algorithm>

#include "render/ui/asked.h"
#include "render/ui/charge_words.h"
#include "render/ui/from_book.h"
#include "render/ui/grown_on.h"
#include "render/ui/ladder_part.h"
#include "render/ui/moved_cut_part.h"
#include "render/ui/panel.h"
#include "render/ui/screens.h"
#include "render/ui/shown_parts.h"
#include "render/ui/spring_visit.h"
#include "render/ui/weighed_part.h"
#include "sim/rules/findings.h"

namespace spurwright::ui {
namespace {

namespace ask = practice::ask;
using practice::LookBack;
using practice::Stop;
using practice::Walked;

const rules::Finding* finding_of(const LookBack& look, const Walked& piece) {
    if (piece.stop == Stop::finding) return &look.mine.findings[piece.at];
    if (piece.stop == Stop::remark) return &look.mine.remarks[piece.at];
    return nullptr;
}

std::string sentence(const Ui& ui, const Walked& piece) { return ui.words.sentence(piece.key, piece.arguments); }
std::string mend_word(const Ui& ui, const Walked& piece) {
    if (piece.stop == Stop::cap) return ui.say("screen.look.held");
    if (piece.stop == Stop::remark) return ui.say("screen.look.remark");
    return ui.say("mend." + std::string(word_of(piece.mend)));
}

Tape tape_of(const Walked& piece) { return ui::tape_of(piece.mend); }

// How it went as a whole: points as they are, held ones apart, and where it stands among all ways.
void heading(Ui& ui, const State& state, const LookBack& look) {
    const std::size_t mendable = static_cast<std::size_t>(
        std::count_if(look.walk.begin(), look.walk.end(), [](const Walked& w) { return !w.folded; }));
    text(ui, mendable == 0 ? ui.say("screen.look.nothing") : ui.say("screen.look.pieces", {{"n", counted(mendable)}}));
    if (!look.mine.caps.empty() && look.mine.points < look.mine.points_before_caps)
        text(ui,
             ui.say("screen.look.held-at", {{"before", look.mine.points_before_caps}, {"points", look.mine.points}}));
    else
        text(ui, ui.say("screen.look.points", {{"points", look.mine.points}}));
    if (look.best) text(ui, ui.say("screen.look.best-of-vine", {{"points", look.best->points}}));
    if (!look.plans) {
        text(ui, ui.say(state.shell.searching ? "screen.look.counting" : "screen.look.not-counted"), true);
        return;
    }
    if (look.plans->none()) return;
    text(ui, ui.say("screen.look.as-good", {{"n", counted(look.plans->as_good_count)}}));
    text(ui, look.mine_as_good ? ui.say("screen.look.yours-as-good")
                               : ui.say("screen.look.better",
                                        {{"n", counted(look.tally.better)}, {"counted", counted(look.tally.counted)}}));
}

// What the scene is for, once its vine is done.
void learned(Ui& ui, const State& state) {
    for (const std::string& key : state.practice->task().learn_keys) {
        if (&key == &state.practice->task().learn_keys.front()) strong_text(ui, ui.say("screen.look.learn"));
        text(ui, ui.say(key));
    }
}

// Where a sentence comes from, one press down.
void where_from(Ui& ui, const rules::Finding& finding) {
    text(ui, ui.say("rule." + std::string(finding.rule->key()) + ".asks"));
    if (!finding.is_remark())
        text(ui, ui.say("screen.look.of-points", {{"points", finding.points}, {"out_of", finding.out_of}}), true);
    shown_who_says(ui, *finding.rule, finding.status);
}

Asked piece_card(const State& state, Views& views, Ui& ui, const LookBack& look) {
    const Walked& piece = look.walk[look.current];
    const auto spoken = [](const Walked& w) { return !w.folded; };
    const auto here = look.walk.begin() + static_cast<std::ptrdiff_t>(look.current);
    const auto before = std::count_if(look.walk.begin(), here, spoken),
               all = std::count_if(look.walk.begin(), look.walk.end(), spoken);
    text(ui,
         piece.folded ? ui.say(piece.lost.count > 0 ? "screen.look.folded-little" : "screen.look.folded")
                      : ui.say("screen.look.piece", {{"n", Count{before + 1}}, {"of", Count{all}}}),
         true);
    const std::string mend = mend_word(ui, piece);
    tape_word(ui, "look.tape", tape_of(piece), piece.lost.count > 0 ? ui.say("screen.look.lost", {{"text", mend}, {"points", piece.lost}}) : mend);
    text(ui, sentence(ui, piece));
    Asked asked;
    if (const std::string charged = charge_words(ui, *state.practice, piece); !charged.empty()) text(ui, charged);
    for (const std::string& line : season_words(ui, *state.practice, piece)) text(ui, line, true);
    if (charged_act(*state.practice)) asked = command_button(ui, state, views, "look", "before-act");
    if (!piece.with.empty()) {
        if (fold(ui, "look.why", ui.say("screen.look.why"), views.look.why_open)) text(ui, ui.say("screen.look.who-says", {{"text", ui.say("review.missing-source")}}), true);
    } else if (const rules::Finding* finding = finding_of(look, piece))
        if (fold(ui, "look.why", ui.say("screen.look.why"), views.look.why_open)) where_from(ui, *finding);
    return asked;
}

// Where the points went, act by act.
void charged_list(Ui& ui, const State& state, LookView& view) {
    const std::vector<review::Told::Act> told = all_charge_words(ui, *state.practice);
    if (told.empty() || !fold(ui, "look.charges", ui.say("screen.look.charges", {{"n", counted(told.size())}}), view.charges_open)) return;
    bool seasons = false;
    for (const review::Told::Act& act : told) {
        text(ui, act.text);
        for (const std::string& line : act.season) text(ui, line, true);
        seasons = seasons || !act.season.empty();
    }
    if (seasons) text(ui, ui.say("review.season.how", {{"n", Count{ahead::weather_draws}}}), true);
}

Asked walk_buttons(const State& state, Views& views, Ui& ui, const LookBack& look) {
    Asked asked;
    take(asked, command_button(ui, state, views, "look", "previous-piece"));
    take(asked, command_button(ui, state, views, "look", "next-piece", Weight::main, true, true));
    take(asked, command_button(ui, state, views, "look", "go-there", Weight::plain, false, true));
    if (!look.moved && !state.practice->grown_on()) take(asked, command_button(ui, state, views, "look", "what-if", Weight::plain, true, true));
    const bool any = look.plans && !look.plans->none();
    if (any) {
        if (toggle(ui, "look.twin", ui.say("screen.do.twin"), look.twin_shown)) asked = ask::ShowTwin{!look.twin_shown};
        const std::size_t listed = look.plans->as_good.size();
        if (listed > 1) {
            const std::string label = ui.say("screen.look.next-as-good",
                                             {{"n", counted(look.as_good_shown + 1)}, {"of", counted(listed)}}),
                              hint = key_text(ui, "as-good");
            flow(ui, button_width(ui, label, hint));
            if (button(ui, "look.as-good", label, {Weight::plain, true, false, 0, hint})) asked = ask::NextAsGood{};
        }
    }
    return asked;
}

// The same pieces in the same order, for those who read; what cost nothing apart.
Asked piece_list(Ui& ui, const LookBack& look, bool folded, bool& open) {
    Asked asked;
    const auto count =
        std::count_if(look.walk.begin(), look.walk.end(), [&](const Walked& w) { return w.folded == folded; });
    const char* key = folded ? "screen.look.list-nothing" : "screen.look.list-to-see";
    Tenths lost; // small losses are told together, so that the points add up
    for (const Walked& w : look.walk)
        if (w.folded == folded) lost += w.lost;
    const std::string head = ui.say(key, {{"n", Count{count}}, {"points", lost}});
    if (count == 0 || !fold(ui, folded ? "look.list-nothing" : "look.list", head, open))
        return {};
    for (std::size_t i = 0; i < look.walk.size(); ++i) {
        const Walked& piece = look.walk[i];
        if (piece.folded != folded) continue;
        std::string label = mend_word(ui, piece);
        if (piece.lost.count > 0) label = ui.say("screen.look.lost", {{"text", label}, {"points", piece.lost}});
        if (list_row(ui, "look.piece." + std::to_string(i), label, i == look.current, sentence(ui, piece),
                     ui.em() * 1.4f))
            asked = ask::ShowPiece{i}, ImGui::SetScrollY(0);  // to where it is told
        const ImVec2 from = ImGui::GetItemRectMin();
        hang_tape(*ImGui::GetWindowDrawList(), {from.x + ui.em(), from.y + ui.em() * 0.5f}, ui.em() * 1.7f,
                  ui.em() * 0.32f, tape_of(piece), ui.face);
    }
    return asked;
}

Asked onward(const State& state, Views& views, Ui& ui) {
    Asked asked;
    const Practice& practice = *state.practice;
    take(asked, command_button(ui, state, views, "look", "cut-again"));
    take(asked, command_button(ui, state, views, "look", "go-on-pruning", Weight::plain, true, true));
    if (practice.may_visit_in_spring())
        take(asked, command_button(ui, state, views, "look", "spring", Weight::main, true, true));
    take(asked, command_button(ui, state, views, "look", "next-winter", practice.task().weigh ? Weight::plain : Weight::main, true, true));
    take(asked, command_button(ui, state, views, "look", "weigh", practice.task().weigh && !practice.look()->weighed ? Weight::main : Weight::plain, true, true));
    if (state.two) take(asked, command_button(ui, state, views, "look", "two-back", Weight::plain, true, true));
    if (practice.may_grow_on()) take(asked, command_button(ui, state, views, "look", "grow-on", Weight::plain, true, true));
    take(asked, command_button(ui, state, views, "look", "next-vine", Weight::plain, false, true));
    take(asked, command_button(ui, state, views, "look", "disagree", Weight::quiet, true, true));
    if (views.look.noting) {
        text(ui, ui.say("screen.look.disagree-says"), true);
        const bool entered = text_field(ui, "look.note", ui.say("screen.look.note-hint"), views.look.note,
                                        ImGui::GetContentRegionAvail().x);
        if (button(ui, "look.note-keep", ui.say("screen.look.note-keep"),
                   {Weight::plain, !views.look.note.text.empty(), false, 0, {}}) ||
            (entered && !views.look.note.text.empty())) {
            asked = ask::Disagree{views.look.note.text};
            views.look.noting = false;
        }
    }
    return asked;
}

// The code of this vine, to hand on, and a field for another's.
Asked codes(const State& state, Views& views, Ui& ui) {
    Asked asked;
    const std::string& code = state.practice->task().code;
    if (!code.empty()) {
        text(ui, ui.say("screen.look.code"), true);
        strong_text(ui, code);
        if (button(ui, "look.copy-code", ui.say("screen.look.copy-code"))) ImGui::SetClipboardText(code.c_str());
    }
    const std::string open = ui.say("screen.home.open-code"), hint = ui.say("screen.home.code-hint");
    const bool entered = text_field(ui, "look.code", hint, views.look.code, ImGui::GetContentRegionAvail().x);
    const bool typed = !views.look.code.text.empty();
    if ((button(ui, "look.open-code", open, {Weight::plain, typed, false, 0, {}}) || entered) && typed)
        asked = ask::OpenCode{views.look.code.text};
    return asked;
}

} // namespace

Asked screen_look_back(const State& state, Views& views, Ui& ui) {
    const LookBack& look = *state.practice->look();
    const ImVec2 screen = ImGui::GetIO().DisplaySize;
    Asked asked;
    if (views.look.noting && ui.pressed({key::escape})) views.look.noting = false;
    PanelPlace place;
    place.x = screen.x - ui.grid.half();
    place.y = ui.grid.half();
    place.pivot_x = 1;
    place.width = std::min(ui.em() * 25, screen.x * 0.66f);
    place.most_height = screen.y - 2 * ui.grid.half();
    place.keys_walk = false;
    panel_begin(ui, "look", place);
    take(asked, command_button(ui, state, views, "look", "home", Weight::quiet, false));
    take(asked, command_button(ui, state, views, "look", "find", Weight::quiet, true, true));
    take(asked, command_button(ui, state, views, "look", "keys", Weight::quiet, true, true));
    if (!ui.narrow()) head_text(ui, ui.say("screen.look.title"));
    if (state.practice->grown_on()) {
        take(asked, grown_on_table(state, views, ui));
        rule_line(ui);
    }
    views.look.grown_shown = state.practice->grown_on().has_value();
    if (look.moved) {
        take(asked, moved_cut_part(state, views, ui));
        rule_line(ui);
    }
    views.look.cut_shown = look.moved.has_value();
    if (state.practice->spring() || state.practice->spring_lived()) {
        take(asked, spring_visit_part(state, views, ui));
        rule_line(ui);
    }
    views.look.spring_shown = state.practice->spring().has_value();
    if (look.current < look.walk.size()) {
        take(asked, piece_card(state, views, ui, look));
    } else {
        ladder_after(state, ui);
        const auto& ladder = state.practice->task().ladder; // where the words explain each step points are one press down
        if (!ladder || !ladder->rung.explained || ladder->rung.watched() || fold(ui, "look.whole", ui.say("screen.look.whole"), views.look.points_open)) heading(ui, state, look);
        from_book(ui, state);
        learned(ui, state);
        if (look.weighed) {
            rule_line(ui);
            strong_text(ui, ui.say("screen.look.weighed"));
            weighed_part(ui, *look.weighed);
        }
    }
    take(asked, walk_buttons(state, views, ui, look));
    rule_line(ui);
    take(asked, onward(state, views, ui)); // before the folds, which may run past the window's foot
    rule_line(ui);
    if (look.current < look.walk.size() && fold(ui, "look.whole", ui.say("screen.look.whole"), views.look.points_open))
        heading(ui, state, look);
    charged_list(ui, state, views.look);
    take(asked, piece_list(ui, look, false, views.look.list_open));
    take(asked, piece_list(ui, look, true, views.look.nothing_open));
    take(asked, looks_fold(ui, state, views, "look"));
    rule_line(ui);
    take(asked, codes(state, views, ui));
    unchecked_line(ui);
    panel_end(ui);
    take(asked, say_panel(state, ui, 0));
    return asked;
}

} // namespace spurwright::ui
