#include "render/ui/grown_on.h"

#include "sim/rules/say.h"

namespace spurwright::ui {
namespace {

// To whole millimetres: nobody measures along wood finer than that.
std::string start_text(const Ui& ui, const std::optional<Length>& start) {
    if (!start) return ui.say("screen.grow.none");
    return ui.say("screen.grow.start", {{"measured", Length{(start->count + 500) / 1'000 * 1'000}}});
}

void side_table(Ui& ui, const practice::GrownOn& grown, Side side) {
    const std::size_t at = side == Side::right ? 1 : 0;
    strong_text(ui, ui.say("screen.grow.side", {{"side", rules::side_key(side)}}));
    if (!ImGui::BeginTable(side == Side::right ? "###grown-far" : "###grown-near", 3, ImGuiTableFlags_SizingStretchSame)) return;
    for (const char* head : {"screen.grow.winter-head", "screen.grow.near", "screen.grow.far"}) {
        ImGui::TableNextColumn();
        text(ui, ui.say(head), true);
    }
    for (const practice::GrownOn::Winter& winter : grown.winters) {
        ImGui::TableNextColumn();
        text(ui, ui.say("screen.grow.winter", {{"n", Count{winter.winter}}}));
        for (const practice::Starts* starts : {&winter.near, &winter.far}) {
            ImGui::TableNextColumn();
            text(ui, start_text(ui, (*starts)[at]));
        }
    }
    ImGui::EndTable();
}

} // namespace

std::optional<Request> grown_on_table(const State& state, Views& views, Ui& ui) {
    const practice::GrownOn& grown = *state.practice->grown_on();
    if (!views.look.grown_shown) ImGui::SetScrollY(0); // asked for at the foot of a long panel
    views.look.grown_shown = true;
    text(ui, ui.say("screen.grow.says"));
    side_table(ui, grown, grown.side);
    rule_line(ui);
    side_table(ui, grown, other(grown.side));
    text(ui, ui.say("screen.grow.how"), true);
    if (grown.own_near || grown.own_far)
        text(ui, ui.say(grown.own_near ? "screen.grow.own-near" : "screen.grow.own-far"), true);
    if (button(ui, "look.grown-close", ui.say("screen.grow.close"), {Weight::main, true, false, 0, {}}))
        return Request{practice::ask::GrowOn{false}};
    return {};
}

} // namespace spurwright::ui
