#include "render/ui/moved_cut_part.h"

#include <cstdlib>

#include "render/ui/asked.h"
#include "sim/rules/say.h"

namespace spurwright::ui {
namespace {

namespace ask = practice::ask;
using practice::MovedCut;

constexpr std::size_t most_told = 4; // sentences that read otherwise; the rest moved by less: our choice

std::string bud_text(const Ui& ui, int buds) { return ui.say("screen.cut.after", {{"n", Count{buds}}}); }

void worth(Ui& ui, const MovedCut& cut) {
    const Tenths gained = cut.gained(), size{std::abs(gained.count)};
    const char* key = cut.at == cut.mine ? "screen.cut.as-cut" : gained.count == 0 ? "screen.cut.same" : gained.count > 0 ? "screen.cut.more" : "screen.cut.fewer";
    // Under a cap neither moves the points: what the cuts earn is told then.
    const bool held = cut.at != cut.mine && cut.end().points == cut.ends[cut.mine].points && gained.count != 0;
    if (held) strong_text(ui, ui.say(gained.count > 0 ? "screen.cut.held-more" : "screen.cut.held-fewer", {{"points", cut.end().points}, {"before", cut.end().before_caps}, {"gained", size}}));
    else strong_text(ui, ui.say(key, {{"points", cut.end().points}, {"gained", size}}));
}

void says(Ui& ui, const MovedCut& cut) {
    for (std::size_t i = 0; i < std::min(most_told, cut.says.size()); ++i) {
        const practice::SaidAnew& said = cut.says[i];
        if (said.lost_before != said.lost)
            text(ui, ui.say("screen.cut.costs", {{"lost", said.lost}, {"before", said.lost_before}}), true);
        text(ui, ui.words.sentence(said.key, said.arguments));
    }
}

} // namespace

std::optional<Request> moved_cut_part(const State& state, Views& views, Ui& ui) {
    const MovedCut& cut = *state.practice->look()->moved;
    Asked asked;
    if (!views.look.cut_shown) ImGui::SetScrollY(0); // asked for further down
    strong_text(ui, ui.say("screen.cut.title"));
    text(ui, ui.say(cut.of().spur ? "screen.cut.of-spur" : "screen.cut.of-cane",
                    {{"part", cut.of().axis}, {"side", rules::side_key(cut.of().side)}, {"n", Count{cut.ends[cut.mine].buds}}}));
    int at = static_cast<int>(cut.at);
    if (slider(ui, "look.cut-at", bud_text(ui, cut.end().buds), at, 0, static_cast<int>(cut.ends.size()) - 1, 1))
        asked = ask::MoveCut{static_cast<std::size_t>(at)};
    worth(ui, cut);
    take(asked, command_button(ui, state, views, "look", "cut-shorter"));
    take(asked, command_button(ui, state, views, "look", "cut-longer", Weight::plain, true, true));
    take(asked, command_button(ui, state, views, "look", "cut-best", Weight::plain, true, true));
    if (cut.pieces.size() > 1) take(asked, command_button(ui, state, views, "look", "cut-next", Weight::plain, true, true));
    says(ui, cut);
    if (button(ui, "look.cut-leave", ui.say("screen.cut.leave"), {Weight::main, true, false, 0, ui.say("screen.key.escape")}))
        asked = ask::LeaveCut{};
    return asked;
}

} // namespace spurwright::ui
