// The second visit to a frost scene's vine: what one drawn spring did to it as pruned by hand, what is to be done about
// the cane that was left standing, and what other ways bring over all draws. Pure: any thread, own copies.
// Must not know: screens, sentences.
#pragma once

#include <array>
#include <atomic>
#include <optional>
#include <string>
#include <vector>

#include "scenarios/ahead/look_ahead.h"
#include "scenarios/scenes/scene_file.h"

namespace spurwright::practice {

// As pruned, the cane that stands left out; laid late, at the day when frost is over; cut and laid then; as pruned with
// the cane that stands, looked at then.
enum class FrostWay : unsigned char { winter, laid_late, cut_late, kicker };
constexpr auto words_of(FrostWay) {
    return std::to_array<std::string_view>({"winter", "laid-late", "cut-late", "kicker"});
}
inline constexpr std::size_t frost_way_count = 4;

struct SpringVisit {
    struct Wood {
        int buds = 0, open = 0, dead = 0; // live before spring; open by the visit; their shoots or primaries dead by then
    };
    int day = 0;                // of the visit, of the year
    int open_day = 0;           // on which the laid canes' buds opened: their mean
    int frost_day = 0;          // the coldest night from budbreak on, and how cold at the wire's height
    double frost_c = 0;
    Wood laid, spurs, standing;
    std::vector<AxisId> kickers; // that stand upright and uncut
    bool laid_sound = true;
    bool said_off = false, said = false; // what was decided about the standing cane, once it was
    bool right() const { return said && said_off == laid_sound; }

    struct Way {
        ahead::AheadWinter told;
        int kickers_laid = 0; // draws
    };
    std::array<std::optional<Way>, frost_way_count> ways; // none: no cane stands, or none is laid
};

struct SpringVisitWish {
    Vine pruned; // as pruned by hand, this winter
    rules::HouseRules house;
    scenes::Frost frost;
    int draw = 1;
};

inline constexpr int springs_lived = static_cast<int>(frost_way_count) * ahead::weather_draws;

SpringVisit spring_visit(const SpringVisitWish& wish, std::atomic<int>& lived);

// Canes that stand upright, untied and uncut, with ripe buds: what may be meant as a kicker. The one nearest the head
// first.
std::vector<AxisId> standing_canes(const Vine& uncut, const Vine& pruned);
// The vine without it.
Vine without_standing(const Vine& pruned, const std::vector<AxisId>& standing);

} // namespace spurwright::practice
