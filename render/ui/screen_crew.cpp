// The crew on one page: a line a person, a column a rule, by number and never in order of merit; what to show in the row.
#include <algorithm>

#include "render/ui/asked.h"
#include "render/ui/panel.h"
#include "render/ui/screens.h"

namespace spurwright::ui {
namespace {

std::string crew_cell(const records::CrewMember& member, rules::RuleName rule) {
    const bool holds = std::any_of(member.signed_off.begin(), member.signed_off.end(), [&](const records::SignOff& sign) { return sign.skill == rules::key_of(rule); });
    const std::string signed_off = holds ? " •" : "";
    const auto found = member.rules.find(rule);
    if (found == member.rules.end()) return "–" + signed_off;
    const char* sign = found->second.word == drill::Mastery::alone ? " ✓" : found->second.word == drill::Mastery::needs_a_look ? " !" : "";
    return std::to_string(found->second.answers.right) + "/" + std::to_string(found->second.answers.of) + sign + signed_off;
}

// One line of the page: its cells where the columns stand, no higher than its letters need, so that thirty fit.
void crew_line(const Ui& ui, ImFont* font, float size, const std::vector<std::string>& cells, const std::vector<float>& lefts) {
    const ImVec2 from = ImGui::GetCursorScreenPos();
    ImDrawList& draw = *ImGui::GetWindowDrawList();
    for (std::size_t i = 0; i < cells.size(); ++i) {
        const float right = i + 1 < lefts.size() ? lefts[i + 1] - size * 0.3f : 1e6f;
        draw.PushClipRect({from.x + lefts[i], from.y}, {from.x + right, from.y + size * 1.4f}, true);
        draw.AddText(font, size, {from.x + lefts[i], from.y}, ui.colours().ink, cells[i].c_str());
        draw.PopClipRect();
    }
    ImGui::Dummy({0, size * 1.12f - ImGui::GetStyle().ItemSpacing.y});
}

void crew_table(const records::CrewView& view, Ui& ui) {
    std::string legend;
    for (std::size_t i = 0; i < view.rules.size(); ++i) legend += (i ? "   " : "") + std::to_string(i + 1) + " " + ui.say("rule." + std::string(rules::key_of(view.rules[i])) + ".name");
    text(ui, legend);
    text(ui, ui.say("screen.crew.signs"), true);
    const float wide = ImGui::GetContentRegionAvail().x, size = ui.em() * 0.86f;
    const std::size_t columns = view.rules.size();
    const float number = size * 2.6f, name = std::min(wide * 0.3f, size * 11), each = columns ? (wide - number - name) / static_cast<float>(columns) : 0;
    std::vector<float> lefts{0, number};
    std::vector<std::string> head{"#", ui.say("crew.name")};
    for (std::size_t i = 0; i < columns; ++i) {
        lefts.push_back(number + name + each * static_cast<float>(i));
        head.push_back(std::to_string(i + 1));
    }
    crew_line(ui, ui.fonts.strong, size, head, lefts);
    for (const records::CrewMember& member : view.members) {
        std::vector<std::string> cells{std::to_string(member.person.number), member.person.name};
        for (const rules::RuleName rule : view.rules) cells.push_back(crew_cell(member, rule));
        crew_line(ui, ui.fonts.body, size, cells, lefts);
    }
    ImGui::Dummy({0, ui.grid.half()});
}

} // namespace

Asked screen_crew(const State& state, Views& views, Ui& ui) {
    const records::CrewView& view = *state.crew_page;
    const ImVec2 screen = ImGui::GetIO().DisplaySize;
    Asked asked;
    PanelPlace place = middle_panel(ui, 62);
    place.most_height = screen.y - ui.grid.gap();
    place.keys_scroll = true;
    panel_begin(ui, "crew", place);
    strong_text(ui, ui.say("screen.crew.title", {{"n", Count{view.quizzes}}}));
    take(asked, command_button(ui, state, views, "crew", "wall", Weight::plain, false));
    take(asked, command_button(ui, state, views, "crew", "sign", Weight::plain, false, true));
    take(asked, command_button(ui, state, views, "crew", "home", Weight::quiet, false, true));
    take(asked, command_button(ui, state, views, "crew", "find", Weight::quiet, true, true));
    if (view.most_wrong) text(ui, ui.say("crew.most-wrong", {{"text", ui.say("rule." + std::string(rules::key_of(*view.most_wrong)) + ".asks")}}));
    if (view.members.empty()) text(ui, ui.say("crew.nobody"));
    else crew_table(view, ui);
    text(ui, ui.say("screen.wall.not-for-pay"), true);
    unchecked_line(ui);
    panel_end(ui);
    take(asked, say_panel(state, ui, ui.em() * 2));
    return asked;
}

} // namespace spurwright::ui
