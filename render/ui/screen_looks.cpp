// Look and say: what is asked, one look at a time under its picture, and what came of it in the crew's words.
#include <algorithm>

#include "render/ui/asked.h"
#include "render/ui/panel.h"
#include "render/ui/screens.h"
#include "render/ui/shown_parts.h"

namespace spurwright::ui {
namespace {

namespace ask = practice::ask;
using drill::Skill;
using practice::LookDrill;
using practice::LookStage;

std::string skill_words(const Ui& ui, Skill skill) { return ui.say("drill.skill." + std::string(word_of(skill))); }

std::string look_word(const Ui& ui, const drill::Look& look, std::size_t word) { return ui.words.sentence(drill::words_of_skill(look.skill)[word]); }

// ---- accuracy against time: each block of ten a point, joined in order; the last one filled
void looks_plot(Ui& ui, const std::vector<drill::PlotPoint>& points) {
    if (points.empty()) return text(ui, ui.say("screen.looks.no-plot"), true);
    strong_text(ui, ui.say("screen.looks.plot"));
    const float wide = std::min(ImGui::GetContentRegionAvail().x, ui.em() * 24), high = ui.em() * 8, size = ui.em() * 0.8f;
    const ImVec2 from = ImGui::GetCursorScreenPos();
    ImGui::Dummy({wide, high});
    ImDrawList& draw = *ImGui::GetWindowDrawList();
    double slowest = 5;
    for (const drill::PlotPoint& point : points) slowest = std::max(slowest, point.seconds);
    const float left = from.x + size * 3, right = from.x + wide - size, top = from.y + size * 0.7f, foot = from.y + high - size * 1.6f;
    const auto at = [&](const drill::PlotPoint& point) {
        return ImVec2{left + (right - left) * static_cast<float>(point.seconds / slowest), foot - (foot - top) * static_cast<float>(point.share)};
    };
    draw.AddLine({left, top}, {left, foot}, ui.colours().ink, 1);
    for (const int percent : {0, 50, 90, 100}) { // 90 is where it is sure
        const float y = foot - (foot - top) * static_cast<float>(percent) / 100;
        draw.AddLine({left, y}, {right, y}, ui.colours().line, percent == 90 ? 2.0f : 1.0f);
        if (percent == 90) continue; // its line says it; the figure would lie on the next
        const std::string said = ui.words.measure(PerMille{percent * 10});
        draw.AddText(ui.fonts.body, size, {left - size * 0.4f - ui.fonts.body->CalcTextSizeA(size, 1e6f, 0, said.c_str()).x, y - size / 2}, ui.colours().ink, said.c_str());
    }
    for (int second = 0; second <= static_cast<int>(slowest); second += slowest > 12 ? 5 : slowest > 6 ? 2 : 1) {
        const float x = left + (right - left) * static_cast<float>(second / slowest);
        draw.AddLine({x, foot}, {x, foot + size * 0.2f}, ui.colours().ink, 1);
        const std::string said = std::to_string(second) + " s";
        draw.AddText(ui.fonts.body, size, {x - ui.fonts.body->CalcTextSizeA(size, 1e6f, 0, said.c_str()).x / 2, foot + size * 0.3f}, ui.colours().ink, said.c_str());
    }
    for (std::size_t i = 0; i < points.size(); ++i) {
        if (i > 0) draw.AddLine(at(points[i - 1]), at(points[i]), ui.colours().ink, 1.5f);
        if (i + 1 == points.size()) draw.AddCircleFilled(at(points[i]), size * 0.4f, ui.colours().ink, 16);
        else draw.AddCircle(at(points[i]), size * 0.3f, ui.colours().ink, 16, 2);
    }
    text(ui, ui.say("screen.looks.plot-says"), true);
}

// ---- how far each skill is
std::string mastery_line(const Ui& ui, const LookDrill& looks, Skill skill) {
    const drill::SkillProgress p = drill::progress_of(looks.answers(), skill, looks.today());
    const std::string word = ui.say("drill.mastery." + std::string(word_of(p.mastery)));
    if (p.answers == 0) return word;
    return ui.say("screen.looks.mastery", {{"text", word}, {"n", Count{p.last.right}}, {"of", Count{p.last.of}}, {"seconds", Ratio{static_cast<double>((*p.median_ms + 50) / 100) / 10}}});
}

void confusions(const LookDrill& looks, Ui& ui) {
    bool any = false;
    for (const Skill skill : drill::all_skills)
        for (const drill::Confused& mixed : drill::progress_of(looks.answers(), skill, looks.today()).confused) {
            if (mixed.times < 2) continue;
            if (!any) strong_text(ui, ui.say("screen.looks.mixed"));
            any = true;
            const auto& words = drill::words_of_skill(skill);
            text(ui, ui.say("screen.looks.mixed-line", {{"one", TextKey{words[mixed.a]}}, {"other", TextKey{words[mixed.b]}}, {"n", Count{mixed.times}}}));
        }
}

Asked looks_setup(const State& state, Views& views, Ui& ui) {
    const LookDrill& looks = *state.looks;
    Asked asked;
    panel_begin(ui, "looks", middle_panel(ui, 52));
    const bool over = looks.stage() == LookStage::over;
    head_text(ui, ui.say("screen.looks.title"));
    if (over && looks.asked() > 0) strong_text(ui, ui.say("screen.looks.result", {{"n", Count{looks.right()}}, {"of", Count{looks.asked()}}}));
    else text(ui, ui.say("screen.looks.says", {{"n", Count{practice::looks_a_sitting}}}));
    take(asked, command_button(ui, state, views, "looks", "looks-begin", Weight::main));
    take(asked, command_button(ui, state, views, "looks", "looks-close", Weight::quiet, false, true));
    take(asked, command_button(ui, state, views, "looks", "find", Weight::quiet, true, true));
    rule_line(ui);
    strong_text(ui, ui.say("screen.looks.skills"));
    for (const Skill skill : drill::all_skills)
        if (list_row(ui, "looks.skill." + std::string(word_of(skill)), (looks.has(skill) ? "✓  " : "–  ") + skill_words(ui, skill), looks.has(skill), mastery_line(ui, looks, skill), 0, true))
            asked = ask::LooksSkill{skill};
    rule_line(ui);
    confusions(looks, ui);
    looks_plot(ui, drill::plot_of(looks.answers(), std::nullopt));
    text(ui, ui.say("screen.looks.alone-so-far"), true);
    unchecked_line(ui);
    panel_end(ui);
    return asked;
}

Asked look_answers(const State& state, Views& views, Ui& ui) {
    const drill::Look& look = *state.looks->look();
    Asked asked;
    const std::size_t choices = look.pair() ? 2 : look.item.words.size();
    for (std::size_t i = 0; i < choices; ++i) {
        const std::string digit = std::to_string(i + 1), label = look.pair() ? digit : digit + "  " + look_word(ui, look, i);
        if (i > 0) flow(ui, button_width(ui, label));
        if (button(ui, "looks.said-" + digit, label, {Weight::main})) asked = ask::LookSaid{i};
    }
    take(asked, command_button(ui, state, views, "looks", "looks-end", Weight::quiet, !ui.narrow(), true));
    return asked;
}

void look_told(const State& state, Ui& ui) {
    const LookDrill& looks = *state.looks;
    const drill::Look& look = *looks.look();
    strong_text(ui, ui.say(looks.was_right() ? "screen.looks.right" : "screen.looks.wrong", {{"text", TextKey{drill::words_of_skill(look.skill)[look.right]}}}));
    text(ui, ui.words.sentence(look.item.reveal.key, look.item.reveal.arguments));
}

Asked look_shown(const State& state, Views& views, Ui& ui) {
    const LookDrill& looks = *state.looks;
    Asked asked;
    shown_panel(ui, "looks");
    const drill::Look* look = looks.look();
    if (!look) {
        strong_text(ui, ui.say("screen.looks.making"));
        take(asked, command_button(ui, state, views, "looks", "looks-end", Weight::quiet));
        panel_end(ui);
        return asked;
    }
    const bool asks = looks.stage() == LookStage::asking;
    const std::string count = ui.say("screen.looks.count", {{"n", Count{looks.asked() + (asks ? 1 : 0)}}, {"of", Count{practice::looks_a_sitting}}});
    const bool told_why = looks.why() == drill::Why::again || looks.why() == drill::Why::side_by_side;
    if (asks) {
        strong_text(ui, look->pair() ? ui.say("drill.ask.pair", {{"text", TextKey{drill::words_of_skill(look->skill)[look->right]}}}) : ui.say("drill.ask." + std::string(word_of(look->skill))));
        take(asked, look_answers(state, views, ui));
        text(ui, told_why ? count + "  " + ui.say("screen.looks.why." + std::string(word_of(looks.why()))) : count, true);
    } else {
        take(asked, command_button(ui, state, views, "looks", "look-next", Weight::main, !ui.narrow()));
        take(asked, command_button(ui, state, views, "looks", "looks-end", Weight::quiet, !ui.narrow(), true));
        look_told(state, ui);
        text(ui, count, true);
    }
    unchecked_line(ui);
    panel_end(ui);
    return asked;
}

} // namespace

Asked screen_looks(const State& state, Views& views, Ui& ui) {
    const LookStage stage = state.looks->stage();
    Asked asked = stage == LookStage::setting_up || stage == LookStage::over ? looks_setup(state, views, ui) : look_shown(state, views, ui);
    take(asked, say_panel(state, ui, ui.em() * 2));
    return asked;
}

} // namespace spurwright::ui
