#include "sim/growth/row.h"

#include <cmath>

#include "sim/core/check.h"
#include "sim/growth/history.h"
#include "sim/growth/traits.h"

namespace spurwright::growth {
namespace {

constexpr std::uint32_t state_draw = 0, age_draw = 1, seed_draw = 2;
constexpr int oldest_replant = 3, seed_bits = 40;

PlaceState drawn_state(const Draws& draws, std::uint32_t place, const Constants& c) {
    const double share = draws.share(Trait::row_place, place, state_draw);
    if (share < c.row_missing) return PlaceState::missing;
    if (share < c.row_missing + c.row_replanted) return PlaceState::replanted;
    return share < c.row_missing + c.row_replanted + c.row_dead ? PlaceState::dead : PlaceState::growing;
}

bool bears(PlaceState state) { return state == PlaceState::growing || state == PlaceState::replanted; }

} // namespace

std::vector<double> row_patches(std::uint64_t row_seed, int vines, const Constants& c) {
    const Draws draws(row_seed);
    const double fresh = std::sqrt(1.0 - c.row_corr * c.row_corr);
    std::vector<double> shares;
    double z = 0;
    for (int place = 0; place < vines; ++place) {
        const double drawn = draws.normal(Trait::patch, static_cast<std::uint32_t>(place));
        z = place == 0 ? drawn : c.row_corr * z + fresh * drawn;
        const double alone = draws.normal(Trait::place_share, static_cast<std::uint32_t>(place));
        shares.push_back(numeric::exp(c.row_patch_sd * z + c.row_place_sd * alone));
    }
    return shares;
}

std::vector<RowPlace> row_places(const Site& site, std::uint64_t row_seed, int vines, const Constants& c) {
    SPURWRIGHT_CHECK(vines, >=, 1);
    SPURWRIGHT_CHECK(vines, <=, most_places);
    const Draws draws(row_seed);
    const std::vector<double> patches = row_patches(row_seed, vines, c);
    std::vector<RowPlace> places;
    for (std::uint32_t i = 0; i < static_cast<std::uint32_t>(vines); ++i) {
        RowPlace place;
        place.number = static_cast<int>(i) + 1;
        place.state = drawn_state(draws, i, c);
        place.patch = patches[i];
        place.site = site;
        place.site.capacity_share = site.capacity_share * place.patch;
        place.site.seed = draws.bits(Trait::row_place, i, seed_draw) >> (64 - seed_bits);
        if (place.state == PlaceState::replanted)
            place.site.age = draws.between(Trait::row_place, i, age_draw, 1, std::min(oldest_replant, site.age - 1));
        places.push_back(std::move(place));
    }
    for (std::size_t i = 0; i < places.size(); ++i) {
        const auto beside = [&](bool is_post, std::size_t other) {
            if (is_post) return NeighbourKind::end_post;
            return bears(places[other].state) ? NeighbourKind::vine : NeighbourKind::none;
        };
        places[i].beside = {beside(i == 0, i - 1), beside(i + 1 == places.size(), i + 1)};
    }
    return places;
}

Result<std::optional<Vine>> grow_place(const RowPlace& place) {
    if (place.state == PlaceState::missing) return std::optional<Vine>{};
    auto vine = place.state == PlaceState::dead ? grow_dead_vine(place.site) : grow_vine_of_any_age(place.site);
    if (!vine) return failure(std::move(vine.error()));
    for (std::size_t i = 0; i < 2; ++i) vine->neighbours[i].kind = place.beside[i];
    return std::optional<Vine>(*std::move(vine));
}

} // namespace spurwright::growth
