#include "scenarios/scenes/beginner.h"

namespace spurwright::scenes {
namespace {

template <class T>
void take(T& into, const T& flawed, const T& good) {
    if (flawed != good) into = flawed;
}

} // namespace

growth::PrunerHabits habits_together(const std::vector<Pruner>& characters) {
    const growth::PrunerHabits good;
    growth::PrunerHabits together;
    for (const Pruner character : characters) {
        const growth::PrunerHabits flawed = growth::habits_of(character);
        take(together.wanted_mm, flawed.wanted_mm, good.wanted_mm);
        take(together.from_last_origin, flawed.from_last_origin, good.from_last_origin);
        take(together.thin_mm, flawed.thin_mm, good.thin_mm);
        take(together.fat_mm, flawed.fat_mm, good.fat_mm);
        take(together.spurs, flawed.spurs, good.spurs);
        take(together.load, flawed.load, good.load);
        take(together.end_mm, flawed.end_mm, good.end_mm);
        take(together.stub_low, flawed.stub_low, good.stub_low);
        take(together.stub_high, flawed.stub_high, good.stub_high);
        take(together.cuts_nothing, flawed.cuts_nothing, good.cuts_nothing);
        take(together.buds_a_cane, flawed.buds_a_cane, good.buds_a_cane);
    }
    return together;
}

Plan beginners_plan(const Vine& vine, const std::vector<Pruner>& characters) {
    return growth::history_plan(vine, habits_together(characters));
}

} // namespace spurwright::scenes
