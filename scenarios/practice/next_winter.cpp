#include "scenarios/practice/next_winter.h"

#include "sim/vine/canonical_text.h"

namespace spurwright::practice {

NextWinter next_winter(const NextWinterWish& wish, std::atomic<int>& lived) {
    ahead::AheadWish seasons = ahead::usual_wish(wish.pruned[mine], wish.climate);
    seasons.kickers = wish.kickers_until > 0;
    seasons.late.upright_cut = wish.kickers_until;
    NextWinter found;
    found.variety = seasons.variety->shown;
    found.climate = seasons.climate->name;
    found.alike = vine_hash(wish.pruned[mine]) == vine_hash(wish.pruned[better]);
    for (const std::size_t which : {mine, better}) {
        if (which == better && found.alike) {
            found.lives[better] = found.lives[mine];
            lived = lives_lived;
            continue;
        }
        ahead::Ahead life = ahead::look_ahead(wish.pruned[which], wish.house, seasons, [&] { ++lived; });
        found.lives[which] = {std::move(life.next), life.winters.front()};
    }
    return found;
}

} // namespace spurwright::practice
