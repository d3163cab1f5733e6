#include <algorithm>
#include <array>
#include <cmath>

#include "render/ui/panel.h"
#include "render/ui/row_parts.h"

namespace spurwright::ui {
namespace {

using ahead::Figure;
using practice::NextWinter;
using practice::TwoVines;

// In the order one asks: what grew, what cold took, what it bore, what can be laid now and where it stands.
constexpr std::array<Figure, 14> compared{Figure::shoots,      Figure::non_count_shoots, Figure::blind_nodes, Figure::buds_killed,
                                      Figure::frost_loss_share, Figure::yield_kg,    Figure::prunings_g,  Figure::crop_to_prunings,
                                      Figure::good_canes, Figure::good_left,   Figure::good_right,       Figure::thickness_mm, Figure::cane_distance_mm,
                                      Figure::creep_mm};

std::string head_key(std::size_t which) { return which == practice::mine ? "screen.two.mine" : "screen.two.better"; }
std::string_view command_of(std::size_t which) { return which == practice::mine ? "two-mine" : "two-better"; }

// What cold took is told where it took anything from either.
bool happened(const NextWinter& found, Figure figure) {
    if (figure != Figure::buds_killed && figure != Figure::frost_loss_share) return true;
    return std::any_of(found.lives.begin(), found.lives.end(), [&](const NextWinter::Life& life) { return life.told[figure].high > 0; });
}

Argument number_of(Figure figure, double value) {
    if (figure == Figure::frost_loss_share) return PerMille{static_cast<std::int32_t>(std::lround(value * 100) * 10)};
    const bool tenths = figure == Figure::yield_kg || figure == Figure::crop_to_prunings || figure == Figure::thickness_mm;
    if (tenths) return Ratio{std::round(value * 10) / 10};
    return Count{std::llround(value)};
}

std::string value_text(const Ui& ui, Figure figure, const NextWinter::Life& life) {
    const ahead::Spread& own = life.next->told[figure];
    const ahead::Spread& all = life.told[figure];
    if (!all.known) return ui.say("screen.two.none");
    return ui.say("screen.two.value", {{"own", number_of(figure, own.known ? own.median : all.median)},
                                       {"low", number_of(figure, all.low)},
                                       {"high", number_of(figure, all.high)}});
}

void cells(Ui& ui, const NextWinter& found, Figure figure) {
    ImGui::TableNextColumn();
    text(ui, ui.say("ahead.figure." + std::string(word_of(figure))), true);
    for (const NextWinter::Life& life : found.lives) {
        ImGui::TableNextColumn();
        text(ui, value_text(ui, figure, life));
    }
}

void heads(Ui& ui, int winter) {
    ImGui::TableNextColumn();
    text(ui, ui.say("screen.two.winter", {{"n", Count{winter}}}), true);
    for (const std::size_t which : {practice::mine, practice::better}) {
        ImGui::TableNextColumn();
        strong_text(ui, ui.say(which == practice::mine ? "screen.two.mine-short" : "screen.two.better-short"));
    }
}

// In two blocks beside each other where there is room: the picture keeps the height.
void figures_table(Ui& ui, const NextWinter& found, bool two_blocks) {
    std::vector<Figure> shown;
    for (const Figure figure : compared)
        if (happened(found, figure)) shown.push_back(figure);
    const std::size_t rows = two_blocks ? (shown.size() + 1) / 2 : shown.size();
    if (!ImGui::BeginTable("###two-figures", two_blocks ? 6 : 3, ImGuiTableFlags_SizingStretchProp)) return;
    for (int block = 0; block < (two_blocks ? 2 : 1); ++block) {
        ImGui::TableSetupColumn("", ImGuiTableColumnFlags_WidthStretch, 1.3f);
        for (int i = 0; i < 2; ++i) ImGui::TableSetupColumn("", ImGuiTableColumnFlags_WidthStretch, 1.0f);
    }
    ImGui::TableNextRow();
    for (int block = 0; block < (two_blocks ? 2 : 1); ++block) heads(ui, found.lives[0].told.winter);
    for (std::size_t row = 0; row < rows; ++row) {
        ImGui::TableNextRow();
        cells(ui, found, shown[row]);
        if (two_blocks && row + rows < shown.size()) cells(ui, found, shown[row + rows]);
    }
    ImGui::EndTable();
}

// Over the upper edge of one picture: whose vine it is, and the way to prune it.
Asked pane_head(const State& state, Views& views, Ui& ui, std::size_t which) {
    const float half = ImGui::GetIO().DisplaySize.x / 2;
    PanelPlace place;
    place.x = half * (static_cast<float>(which) + 0.5f);
    place.y = ui.grid.half();
    place.pivot_x = 0.5f;
    const std::string title = ui.say(head_key(which)), hint = ui.narrow() ? std::string() : key_text(ui, command_of(which));
    const float button = button_width(ui, ui.say("screen.do." + std::string(command_of(which))), hint) + 2 * ui.em(),
                words = text_size(ui, title, 0, true).x, room = half - 2 * ui.grid.half(), both = words + button + 4 * ui.grid.gap();
    place.width = std::min(both <= room ? both : std::max(words, button) + 3 * ui.grid.gap(), room);
    place.most_height = ImGui::GetIO().DisplaySize.y * 0.4f;
    place.keys_walk = false;
    panel_begin(ui, which == practice::mine ? "two.mine" : "two.better", place);
    if (both <= room)
        row_text(ui, title);
    else
        strong_text(ui, title);
    Asked asked = command_button(ui, state, views, "two", command_of(which), Weight::main, !ui.narrow(), true);
    panel_end(ui);
    return asked;
}

} // namespace

Asked screen_two(const State& state, Views& views, Ui& ui) {
    const TwoVines& two = *state.two;
    const ImVec2 screen = ImGui::GetIO().DisplaySize;
    Asked asked;
    PanelPlace place;
    place.x = 0;
    place.y = screen.y;
    place.pivot_y = 1;
    place.width = screen.x;
    place.most_height = screen.y * (ui.narrow() ? 0.6f : 0.5f);
    place.keys_walk = false;
    panel_begin(ui, "two", place);
    take(asked, command_button(ui, state, views, "two", "two-leave", Weight::plain, !ui.narrow()));
    for (const std::string_view name : {"home", "find", "keys"})
        take(asked, command_button(ui, state, views, "two", name, Weight::quiet, false, true));
    if (!two.found) {
        text(ui, ui.say("screen.two.living", {{"n", Count{*two.lived}}, {"of", Count{practice::lives_lived}}}));
    } else {
        if (two.found->alike) text(ui, ui.say("screen.two.alike"));
        figures_table(ui, *two.found, screen.x > ui.em() * 70);
        text(ui,
             ui.say("screen.two.how", {{"n", Count{ahead::weather_draws}},
                                       {"variety", two.found->variety},
                                       {"climate", ui.say("climate." + two.found->climate)}}),
             true);
    }
    unchecked_line(ui);
    views.two_foot = panel_end(ui).y0;
    if (two.found)
        for (const std::size_t which : {practice::mine, practice::better}) take(asked, pane_head(state, views, ui, which));
    take(asked, say_panel(state, ui, 0));
    return asked;
}

} // namespace spurwright::ui
