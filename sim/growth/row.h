// A row of vines: strong and weak places that change slowly along it, gaps, replants and dead vines, and what each vine
// has beside it.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "sim/growth/growth_constants.h"
#include "sim/growth/site.h"
#include "sim/vine/vine.h"

namespace spurwright::growth {

// Share of the site's capacity that each place of a row has, besides the vine's own: ln is an AR(1) along the row plus
// what is each place's alone. Sizes our choice, so that prunings spread and neighbours are alike as in weighed vines
// [coombe-2019, taylor-2012]. Drawn by place: a longer row begins with the same places.
std::vector<double> row_patches(std::uint64_t row_seed, int vines, const Constants& c);

// What stands at a place. replanted: 1 to 3 winters old among older vines; dead: it grew nothing last season.
enum class PlaceState : unsigned char { growing, replanted, dead, missing };
constexpr auto words_of(PlaceState) {
    return std::to_array<std::string_view>({"growing", "replanted", "dead", "missing"});
}

struct RowPlace {
    int number = 1; // from the near post
    PlaceState state{};
    double patch = 1; // of the site's capacity, besides the vine's own share
    Site site;        // the row's, with this place's seed, age and capacity share
    std::array<NeighbourKind, 2> beside{NeighbourKind::vine, NeighbourKind::vine}; // left, right: no canes come from a
                                                                                   // gap or a dead vine; end posts
};

inline constexpr int most_places = 1'000;

// The places of a row between two end posts, drawn by place from the row's seed: a longer row begins with the same
// places (but for the last one's post). Needs a site that check() passes and 1 to most_places vines. Shares of gaps,
// replants and dead vines: our choice.
std::vector<RowPlace> row_places(const Site& site, std::uint64_t row_seed, int vines, const Constants& c = {});

// The vine of a place, uncut; nothing where none stands. Refused like grow_vine.
[[nodiscard]] Result<std::optional<Vine>> grow_place(const RowPlace& place);

} // namespace spurwright::growth
