#include "sim/rules/house_rules.h"

#include <algorithm>

#include "sim/core/hash.h"

namespace spurwright::rules {
namespace {

void add_rule(std::vector<Parameter>& all, HouseRules& house, RuleName name, std::initializer_list<Parameter> own) {
    const std::string_view key = key_of(name);
    Weighed& weighed = house.weighed[index_of(name)];
    all.push_back({key, "weight", &weighed.weight});
    all.push_back({key, "on", &weighed.on});
    for (const Parameter& parameter : own) all.push_back({key, parameter.name, parameter.at});
}

// One line of the text that is hashed; a range is two lines.
struct Lines {
    std::string key;
    std::vector<std::string>& lines;

    void put(std::string_view suffix, std::string_view value) {
        lines.push_back(key + std::string(suffix) + "=" + std::string(value));
    }
    void number(std::string_view suffix, std::int32_t value) {
        put(suffix, value == open_end ? "-" : std::to_string(value));
    }

    void operator()(const bool* v) { put("", *v ? "1" : "0"); }
    void operator()(const std::int32_t* v) { number("", *v); }
    void operator()(const std::optional<std::int32_t>* v) { number("", v->value_or(open_end)); }
    void operator()(const std::optional<Length>* v) { number("", v->value_or(Length{open_end}).count); }
    void operator()(const OriginMeasure* v) { put("", word_of(*v)); }
    void operator()(const FirstBud* v) { put("", word_of(*v)); }
    void operator()(const NoNeighbour* v) { put("", word_of(*v)); }
    template <class Tag>
    void operator()(const Measure<Tag>* v) {
        number("", v->count);
    }
    template <class M>
    void operator()(const Range<M>* v) {
        number(".low", v->low.count);
        number(".high", v->high.count);
    }
};

std::vector<std::string> lines_of(const HouseRules& house) {
    HouseRules copy = house;
    std::vector<std::string> lines;
    for (const Parameter& parameter : parameters(copy))
        std::visit(Lines{std::string(parameter.rule) + "." + std::string(parameter.name), lines}, parameter.at);
    std::stable_sort(lines.begin(), lines.end());
    return lines;
}

// Whether a value lies where it can mean something: nothing below zero, shares and counts in their bounds.
struct BelowZero {
    bool operator()(const bool*) const { return false; }
    bool operator()(const OriginMeasure*) const { return false; }
    bool operator()(const FirstBud*) const { return false; }
    bool operator()(const NoNeighbour*) const { return false; }
    bool operator()(const std::int32_t* v) const { return *v < 0; }
    bool operator()(const std::optional<std::int32_t>* v) const { return *v && **v < 0; }
    bool operator()(const std::optional<Length>* v) const { return *v && v->value().count < 0; }
    template <class Tag>
    bool operator()(const Measure<Tag>* v) const {
        return v->count < 0;
    }
    template <class M>
    bool operator()(const Range<M>* v) const {
        return v->low.count < 0 || v->high.count < 0;
    }
};

template <class M>
bool crossed(const Range<M>& full, const Range<M>& half) {
    return !(half.low <= full.low && full.low <= full.high && full.high <= half.high);
}
template <class M>
bool crossed(const Band<M>& band) {
    return crossed(band.full, band.half);
}
bool crossed(const HouseRules::AtLeast& a) { return a.half_from > a.full_from; }

}  // namespace

std::vector<Parameter> parameters(HouseRules& h) {
    std::vector<Parameter> all;
    all.reserve(140);
    const auto rule = [&](RuleName name, std::initializer_list<Parameter> own) { add_rule(all, h, name, own); };
    using enum RuleName;
    rule(cane_diameter, {{"", "full", &h.cane_diameter.band.full},
                         {"", "half", &h.cane_diameter.band.half},
                         {"", "bull_above", &h.cane_diameter.bull_above},
                         {"", "bull_joint", &h.cane_diameter.bull_joint},
                         {"", "oval", &h.cane_diameter.oval}});
    rule(cane_end_diameter,
         {{"", "full_from", &h.cane_end_diameter.full_from}, {"", "half_from", &h.cane_end_diameter.half_from}});
    rule(internode_length, {{"", "full", &h.internode_length.full}, {"", "half", &h.internode_length.half}});
    rule(internode_evenness,
         {{"", "full_to", &h.internode_evenness.full_to}, {"", "half_to", &h.internode_evenness.half_to}});
    rule(origin_distance, {{"", "measure", &h.origin_distance.measure},
                           {"", "full_to", &h.origin_distance.full_to},
                           {"", "half_to", &h.origin_distance.half_to},
                           {"", "arm_to", &h.origin_distance.arm_to}});
    rule(origin_height, {{"", "full", &h.origin_height.band.full},
                         {"", "half", &h.origin_height.band.half},
                         {"", "low_from", &h.origin_height.low_from}});
    rule(cane_side, {{"", "full_to", &h.cane_side.full_to},
                     {"", "half_to", &h.cane_side.half_to},
                     {"", "over_by", &h.cane_side.over_by},
                     {"", "over_the_head", &h.cane_side.over_the_head}});
    rule(wood_age, {});
    rule(cane_health, {{"", "ripe_share", &h.cane_health.ripe_share}});
    rule(bud_load, {{"", "per_metre", &h.bud_load.per_metre},
                    {"", "target", &h.bud_load.target},
                    {"", "full_off", &h.bud_load.full_off},
                    {"", "half_off", &h.bud_load.half_off},
                    {"", "density_full", &h.bud_load.density.full},
                    {"", "density_half", &h.bud_load.density.half}});
    rule(cane_reach, {{"", "full", &h.cane_reach.free_wire.full},
                      {"", "half", &h.cane_reach.free_wire.half},
                      {"", "short_from", &h.cane_reach.short_from},
                      {"", "no_neighbour", &h.cane_reach.no_neighbour}});
    rule(cane_count, {{"", "wanted", &h.cane_count.wanted}, {"", "floor_buds", &h.cane_count.floor_buds}});
    rule(spur_count, {{"", "wanted", &h.spur_count.wanted}, {"", "floor_buds", &h.spur_count.floor_buds}});
    rule(spur_buds, {{"", "full", &h.spur_buds.full}, {"", "half", &h.spur_buds.half}});
    rule(spur_place, {{"", "below", &h.spur_place.below}, {"", "level", &h.spur_place.level},
                      {"", "apart_full", &h.spur_place.apart.full},
                      {"", "apart_half", &h.spur_place.apart.half},
                      {"", "climbed_full_to", &h.spur_place.climbed_full},
                      {"", "climbed_half_to", &h.spur_place.climbed_half},
                      {"", "above_full_to", &h.spur_place.above_full},
                      {"", "above_half_to", &h.spur_place.above_half}});
    rule(spur_size, {{"", "full_from", &h.spur_size.full_from}, {"", "half_from", &h.spur_size.half_from}});
    rule(spur_direction, {{"", "full_to", &h.spur_direction.full_to}, {"", "first_bud", &h.spur_direction.first_bud},
                          {"", "upright", &h.spur_direction.upright}});
    rule(end_cut, {{"", "full_from", &h.end_cut.full_from},
                   {"", "half_from", &h.end_cut.half_from},
                   {"", "node_slack", &h.end_cut.node_slack},
                   {"", "weight_canes", &h.end_cut.weight_canes},
                   {"", "weight_spurs", &h.end_cut.weight_spurs}});
    rule(old_wood_stub, {{"", "full", &h.old_wood_stub.band.full},
                         {"", "half", &h.old_wood_stub.band.half},
                         {"", "short_of_node", &h.old_wood_stub.short_of_node}});
    rule(wound_size, {{"", "half_from", &h.wound_size.half_from},
                      {"", "none_from", &h.wound_size.none_from},
                      {"", "needed_within", &h.wound_size.needed_within}});
    rule(tool_choice, {{"", "shears_one_year", &h.tool_choice.shears_one_year},
                       {"", "shears_old", &h.tool_choice.shears_old},
                       {"", "loppers", &h.tool_choice.loppers}});
    rule(wood_left_behind, {{"", "stub_to", &h.wood_left_behind.stub_to}});
    rule(suckers,
         {{"", "zone", &h.suckers.zone}, {"", "left_to", &h.suckers.left_to}, {"", "renewal", &h.suckers.renewal}});
    rule(tying, {{"", "wraps", &h.tying.wraps},
                 {"", "sag_full", &h.tying.sag_full},
                 {"", "sag_half", &h.tying.sag_half},
                 {"", "bud_clear", &h.tying.bud_clear},
                 {"", "end_nodes", &h.tying.end_nodes}});
    rule(kicker_kept, {});
    rule(kicker_absent, {});
    rule(bud_kill_adjust,
         {{"", "killed", &h.bud_kill.killed}, {"", "from", &h.bud_kill.from}, {"", "up_to", &h.bud_kill.up_to}});
    rule(prunings_weighed, {{"", "asked", &h.prunings_weighed.asked},
                            {"", "suckers", &h.prunings_weighed.suckers},
                            {"", "full_off", &h.prunings_weighed.full_off},
                            {"", "half_off", &h.prunings_weighed.half_off}});
    all.push_back({"kicker", "wanted", &h.standing.kickers});
    all.push_back({"kicker", "frost_over", &h.standing.frost_over});
    all.push_back({"spare", "wanted", &h.standing.spares});
    all.push_back({"first_pass", "full", &h.first_pass.band.full});
    all.push_back({"first_pass", "half", &h.first_pass.band.half});
    all.push_back({"count_bud", "clear_joint", &h.clear_joint});
    all.push_back({"caps", "hard", &h.caps.hard});
    all.push_back({"caps", "soft", &h.caps.soft});
    all.push_back({"caps", "over_target", &h.caps.over_target});
    all.push_back({"acceptable", "within", &h.acceptable.within});
    all.push_back({"acceptable", "see_diameter", &h.acceptable.see_diameter});
    all.push_back({"acceptable", "see_length", &h.acceptable.see_length});
    all.push_back({"acceptable", "see_angle", &h.acceptable.see_angle});
    return all;
}

std::string rule_set_text(const HouseRules& house) {
    std::string text;
    for (const std::string& line : lines_of(house)) text += line + "\n";
    return text;
}

std::uint64_t rule_set_hash(std::vector<std::string> lines, int version) {
    std::stable_sort(lines.begin(), lines.end());
    Hash hash;
    for (const std::string& line : lines) hash.add(line + "\n");
    hash.add("judge_version=" + std::to_string(version) + "\n");
    return hash.value();
}

std::uint64_t rule_set_hash(const HouseRules& house) { return rule_set_hash(lines_of(house), judge_version); }

std::optional<HouseFault> first_fault(const HouseRules& house) {
    HouseRules copy = house;
    for (const Parameter& parameter : parameters(copy))
        if (std::visit(BelowZero{}, parameter.at))
            return HouseFault{parameter.rule, parameter.name, {"error.house-rules.below-zero"}};
    const HouseRules& h = house;
    struct Check {
        bool fault;
        std::string_view rule, parameter;
    };
    const Range<Length> place{{0}, {open_end}};
    for (const Check& c : {
             Check{crossed(h.cane_diameter.band), "cane-diameter", "full"},
             Check{crossed(h.cane_end_diameter), "cane-end-diameter", "full_from"},
             Check{crossed(h.internode_length), "internode-length", "full"},
             Check{h.internode_evenness.full_to > h.internode_evenness.half_to, "internode-evenness", "full_to"},
             Check{h.origin_distance.full_to > h.origin_distance.half_to, "origin-distance", "full_to"},
             Check{crossed(h.origin_height.band), "origin-height", "full"},
             Check{h.cane_side.full_to > h.cane_side.half_to, "cane-side", "full_to"},
             Check{h.bud_load.full_off > h.bud_load.half_off, "bud-load", "full_off"},
             Check{crossed(h.bud_load.density), "bud-load", "density_full"},
             Check{crossed(h.cane_reach.free_wire), "cane-reach", "full"},
             Check{crossed(h.spur_buds.full, h.spur_buds.half), "spur-buds", "full"},
             Check{crossed(h.spur_place.below, place), "spur-place", "below"},
             Check{crossed(h.spur_place.apart), "spur-place", "apart_full"},
             Check{h.spur_place.climbed_full > h.spur_place.climbed_half, "spur-place", "climbed_full_to"},
             Check{h.spur_place.above_full > h.spur_place.above_half, "spur-place", "above_full_to"},
             Check{crossed(h.first_pass.band), "first_pass", "full"},
             Check{crossed(h.spur_size), "spur-size", "full_from"},
             Check{h.end_cut.half_from > h.end_cut.full_from, "end-cut", "full_from"},
             Check{crossed(h.old_wood_stub.band), "old-wood-stub", "full"},
             Check{h.wound_size.half_from > h.wound_size.none_from, "wound-size", "half_from"},
             Check{h.tying.wraps.low > h.tying.wraps.high, "tying", "wraps"},
             Check{h.tying.sag_full > h.tying.sag_half, "tying", "sag_full"},
             Check{h.bud_kill.from > h.bud_kill.up_to, "bud-kill-adjust", "from"},
             Check{h.prunings_weighed.full_off > h.prunings_weighed.half_off, "prunings-weighed", "full_off"},
         })
        if (c.fault) return HouseFault{c.rule, c.parameter, {"error.house-rules.crossed"}};
    if (h.cane_health.ripe_share > whole)
        return HouseFault{"cane-health", "ripe_share", {"error.house-rules.over-one"}};
    if (h.bud_load.half_off > whole) return HouseFault{"bud-load", "half_off", {"error.house-rules.over-one"}};
    if (h.prunings_weighed.half_off > whole)
        return HouseFault{"prunings-weighed", "half_off", {"error.house-rules.over-one"}};
    if (h.bud_kill.killed > h.bud_kill.up_to)
        return HouseFault{"bud-kill-adjust", "killed", {"error.house-rules.too-much-killed"}};
    if (h.standing.kickers > 2) return HouseFault{"kicker", "wanted", {"error.house-rules.two-at-most"}};
    if (h.standing.spares > 2) return HouseFault{"spare", "wanted", {"error.house-rules.two-at-most"}};
    if (h.cane_count.wanted != 2) return HouseFault{"cane-count", "wanted", {"error.house-rules.only-two"}};
    if (h.spur_count.wanted != 2) return HouseFault{"spur-count", "wanted", {"error.house-rules.only-two"}};
    if (h.cane_count.floor_buds < 4) return HouseFault{"cane-count", "floor_buds", {"error.house-rules.floor"}};
    if (h.spur_count.floor_buds != 1) return HouseFault{"spur-count", "floor_buds", {"error.house-rules.floor"}};
    if (h.bud_load.target && *h.bud_load.target < 1)
        return HouseFault{"bud-load", "target", {"error.house-rules.target"}};
    if (!h.bud_load.target && h.bud_load.per_metre < 1)
        return HouseFault{"bud-load", "per_metre", {"error.house-rules.target"}};
    if (h.weight(RuleName::end_cut) && h.end_cut.weight_canes + h.end_cut.weight_spurs != h.weight(RuleName::end_cut))
        return HouseFault{"end-cut", "weight_canes", {"error.house-rules.end-cut-weights"}};
    // What is left of 1000 after rounding goes to rules judged once a vine and asked of every vine: one has to weigh.
    if (h.weight(RuleName::bud_load) + h.weight(RuleName::wound_size) + h.weight(RuleName::tool_choice) +
            h.weight(RuleName::wood_left_behind) <
        100)
        return HouseFault{"bud-load", "weight", {"error.house-rules.no-vine-weight"}};
    return std::nullopt;
}

}  // namespace spurwright::rules
