#include "sim/rules/spur_place.h"

namespace spurwright::rules {
namespace {

PerMille by_height(const SpurPlaceFacts& place, const HouseRules::SpurPlace& house) {
    return mark_in(Band<Length>{house.below, {{0}, {open_end}}}, place.spur.below_wire);
}

// `ahead`: by how much the spur is lower, or nearer the head, than its cane.
PerMille by_order(Length ahead, const HouseRules::SpurPlace& house) {
    if (ahead > house.level) return full_mark;
    return ahead >= -house.level ? half_mark : no_mark;
}

Length lower_by(const SpurPlaceFacts& place) { return place.spur.below_wire - place.cane->below_wire; }
Length nearer_by(const SpurPlaceFacts& place) { return place.cane->distance_to_head - place.spur.distance_to_head; }

// The smallest of three: apart, climbed, above the lowest.
PerMille by_gap(const RowPlaceFacts& place, const HouseRules::SpurPlace& house) {
    if (!place.gap || (*place.gap > house.apart.full.high && !place.could_fill)) return full_mark;
    return mark_in(house.apart, *place.gap);
}
PerMille mark_up_to(Length measured, Length full, Length half) { return mark_in(Band<Length>{{{0}, full}, {{0}, half}}, measured); }

}  // namespace

PerMille mark_row_place(const RowPlaceFacts& place, const HouseRules& house) {
    const auto& asks = house.spur_place;
    return smaller(by_gap(place, asks), smaller(mark_up_to(place.climbed, asks.climbed_full, asks.climbed_half),
                                                mark_up_to(place.above_lowest, asks.above_full, asks.above_half)));
}

Said say_row_place(const RowPlaceFacts& place, AxisId spur, const HouseRules& house) {
    const auto& asks = house.spur_place;
    const PerMille mark = mark_row_place(place, house);
    const auto with = [&](std::string_view key, Length measured, Range<Length> full, Range<Length> half) {
        return measured_in(Unit::mm, measured, full, half, key,
                           {{"part", spur}, {"measured", measured}, {"low", full.low}, {"high", full.high}});
    };
    if (mark < full_mark && mark_up_to(place.above_lowest, asks.above_full, asks.above_half) == mark)
        return with("rule.spur-place.row-lower", place.above_lowest, {{0}, asks.above_full}, {{0}, asks.above_half});
    if (mark < full_mark && mark_up_to(place.climbed, asks.climbed_full, asks.climbed_half) == mark)
        return with("rule.spur-place.row-climbed", place.climbed, {{0}, asks.climbed_full}, {{0}, asks.climbed_half});
    if (!place.gap)
        return with("rule.spur-place.row-first", place.climbed, {{0}, asks.climbed_full}, {{0}, asks.climbed_half});
    if (mark < full_mark)
        return with(*place.gap < asks.apart.full.low ? "rule.spur-place.row-close" : "rule.spur-place.row-wide", *place.gap,
                    asks.apart.full, asks.apart.half);
    return with(*place.gap > asks.apart.full.high ? "rule.spur-place.row-no-wood" : "rule.spur-place.row-full", *place.gap,
                asks.apart.full, asks.apart.half);
}

PerMille mark_spur_place(const SpurPlaceFacts& place, const HouseRules& house) {
    PerMille mark = by_height(place, house.spur_place);
    if (place.cane)
        mark = smaller(
            mark, smaller(by_order(lower_by(place), house.spur_place), by_order(nearer_by(place), house.spur_place)));
    return mark;
}

Said say_spur_place(const SpurPlaceFacts& place, AxisId spur, const HouseRules& house) {
    const auto& asks = house.spur_place;
    const PerMille mark = mark_spur_place(place, house);
    const Length below = place.spur.below_wire;
    const bool above = below.count < 0;
    std::string_view key = place.cane ? "rule.spur-place.full" : "rule.spur-place.alone-full";
    Length by;
    if (mark < full_mark && by_height(place, asks) == mark) {
        key = above ? "rule.spur-place.above" : below < asks.below.low ? "rule.spur-place.near" : "rule.spur-place.low";
    } else if (mark < full_mark && by_order(lower_by(place), asks) == mark) {
        by = lower_by(place);
        key = mark == no_mark ? "rule.spur-place.higher" : "rule.spur-place.level";
    } else if (mark < full_mark) {
        by = nearer_by(place);
        key = mark == no_mark ? "rule.spur-place.farther" : "rule.spur-place.as-far";
    }
    return measured_in(Unit::mm, below, asks.below, Range<Length>{{0}, {open_end}}, key,
                       {{"part", spur},
                        {"measured", above ? -below : below},
                        {"low", asks.below.low},
                        {"high", asks.below.high},
                        {"by", by.count < 0 ? -by : by}});
}

const Rule spur_place{
    RuleName::spur_place, {"rule.spur-place.asks"},   Group::spurs, Step::choose, Per::spur, Status::choice,
    spur_place_claims,    {"rule.spur-place.missing"}};

}  // namespace spurwright::rules
