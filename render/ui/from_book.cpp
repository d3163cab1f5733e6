#include "render/ui/from_book.h"

#include "render/ui/widgets.h"

namespace spurwright::ui {

void from_book(Ui& ui, const State& state) {
    const auto& target = state.practice->task().from_book;
    if (!target) return;
    const reference_vines::AskedBuds asked = reference_vines::asked_buds(*target);
    const auto whole = [](double n) { return Count{balance::whole_buds(n)}; };
    const std::string block = target->invented ? ui.say("book.invented", {{"block", target->block}}) : target->block;
    text(ui, ui.say("screen.row.from-book", {{"tag", target->tag}, {"block", block}, {"winter", std::to_string(target->winter)}, {"weight", target->prunings}}), true);
    text(ui, ui.say("screen.row.from-book-buds", {{"formula", target->formula}, {"by_weight", whole(asked.buds.by_weight)}, {"low", whole(asked.buds.by_space.low)}, {"high", whole(asked.buds.by_space.high)}, {"n", Count{asked.number}}}), true);
}

} // namespace spurwright::ui
