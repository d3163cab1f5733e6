#include "render/ui/row_parts.h"

namespace spurwright::ui {

Asked screen_row(const State& state, Views& views, Ui& ui) {
    if (!views.row.set) { // a small window begins with its cards folded
        views.row.set = true;
        views.row.card_open = !ui.narrow();
    }
    if (views.row.bar != Bar::none && ui.pressed({key::escape})) views.row.bar = Bar::none;
    Asked asked;
    float top = 0, foot = ImGui::GetIO().DisplaySize.y;
    take(asked, step_band(state, views, ui, top));
    const bool narrow = ui.narrow();
    if (narrow && (views.row.card_open || views.row.looks_open)) views.row.acts_open = false;
    // On a small window an open card takes the place of the tools until it is folded again.
    const bool near_open = views.row.card_open || views.row.looks_open,
               card_alone = narrow && (near_open || views.row.acts_open);
    if (!card_alone) take(asked, hand_tools(state, views, ui, foot));
    const bool told = state.shell.message || state.practice->waiting().has_value();
    const bool said = told || offers_anything(state);
    if (!said && (!narrow || !views.row.acts_open)) take(asked, vine_card(state, views, ui, top, foot));
    if (!said && (!narrow || !near_open)) take(asked, acts_card(state, views, ui, top, foot));
    if (!told) take(asked, offer_card(state, views, ui, top));
    take(asked, say_panel(state, ui, top));
    return asked;
}

} // namespace spurwright::ui
