// House rules: every number the judge uses, as plain data. The shipped values are the general set; all of them are our
// choice, built from the works each rule names. A block's own sheet changes them. Must not know: files, sentences.
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "sim/core/text_key.h"
#include "sim/rules/band.h"
#include "sim/rules/rule.h"
#include "sim/vine/vine_query.h"

namespace spurwright::rules {

// Raised whenever a mark can change for the same vine, plan and house rules.
inline constexpr int judge_version = 1;

using BudsPerMetre = Measure<struct thousandths_of_a_bud_per_metre>;

enum class OriginMeasure : unsigned char { distance, creep };
constexpr auto words_of(OriginMeasure) { return std::to_array<std::string_view>({"distance", "creep"}); }
enum class FirstBud : unsigned char { out_or_down, up };
constexpr auto words_of(FirstBud) { return std::to_array<std::string_view>({"out-or-down", "up"}); }
enum class NoNeighbour : unsigned char { stop, run_on };
constexpr auto words_of(NoNeighbour) { return std::to_array<std::string_view>({"stop", "run-on"}); }

struct Weighed {
    std::int32_t weight = 0;  // tenths of a point; the rules that are on weigh 1000 together
    bool on = true;
    bool operator==(const Weighed&) const = default;
};

struct HouseRules {
    std::array<Weighed, rule_count> weighed{{
        {50},  {20}, {40}, {0},  {80}, {40}, {40}, {30}, {50},  // cane choice (with the end thickness)
        {100}, {60}, {40},                                      // load, reach, number of canes
        {60},  {50}, {60}, {30}, {0, false},                    // spurs; their direction: a house's choice
        {50},  {40}, {30}, {30},                                // cuts
        {50},  {20}, {30},                                      // tidiness and tying
        {60},  {20}, {0},  {100},                               // only where asked: kickers, spares, bud kill, weighing
    }};

    struct CaneDiameter {
        Band<Length> band{{{8'000}, {12'000}}, {{6'400}, {14'000}}};
        Length bull_above{12'700}, bull_joint{127'000};
        PerMille oval{1'250};  // major / minor above this is not round
        bool operator==(const CaneDiameter&) const = default;
    } cane_diameter;
    struct AtLeast {
        Length full_from, half_from;
        bool operator==(const AtLeast&) const = default;
    };
    AtLeast cane_end_diameter{{6'000}, {5'000}};
    Band<Length> internode_length{{{55'000}, {95'000}}, {{45'000}, {127'000}}};
    struct InternodeEvenness {
        PerMille full_to{250}, half_to{400};  // standard deviation / mean
        bool operator==(const InternodeEvenness&) const = default;
    } internode_evenness;
    struct OriginDistance {
        OriginMeasure measure = OriginMeasure::distance;
        Length full_to{80'000}, half_to{160'000};
        std::optional<Length> arm_to;  // with creep: nothing farther from the crown point than this
        bool operator==(const OriginDistance&) const = default;
    } origin_distance;
    struct OriginHeight {
        Band<Length> band{{{50'000}, {200'000}}, {{0}, {open_end}}};  // below the wire
        Length low_from{250'000};                                     // so low that it brings the head down: the remark
        bool operator==(const OriginHeight&) const = default;
    } origin_height;
    struct CaneSide {
        Angle full_to{60'000}, half_to{90'000};
        Length over_by{60'000};      // a base farther over on the other side crosses the head
        bool over_the_head = false;  // crossing allowed
        bool operator==(const CaneSide&) const = default;
    } cane_side;
    struct CaneHealth {
        PerMille ripe_share{800};  // below it: none
        bool operator==(const CaneHealth&) const = default;
    } cane_health;
    struct BudLoad {
        std::int32_t per_metre = 15;
        std::optional<std::int32_t> target;  // none: per_metre x spacing
        PerMille full_off{100}, half_off{200};
        Band<BudsPerMetre> density{{{12'000}, {17'000}}, {{10'000}, {20'000}}};
        bool operator==(const BudLoad&) const = default;
    } bud_load;
    struct CaneReach {
        Band<Length> free_wire{{{50'000}, {150'000}}, {{0}, {300'000}}};
        PerMille short_from{900};  // a load under this share of the target is short
        NoNeighbour no_neighbour = NoNeighbour::stop;
        bool operator==(const CaneReach&) const = default;
    } cane_reach;
    struct CaneCount {
        std::int32_t wanted = 2, floor_buds = 4;  // fewer count buds are no cane
        bool operator==(const CaneCount&) const = default;
    } cane_count;
    struct SpurCount {
        std::int32_t wanted = 2, floor_buds = 1;
        bool operator==(const SpurCount&) const = default;
    } spur_count;
    struct SpurBuds {
        Range<Measure<struct number_of_buds>> full{{1}, {2}}, half{{1}, {3}};
        bool operator==(const SpurBuds&) const = default;
    } spur_buds;
    struct SpurPlace {
        Range<Length> below{{100'000}, {250'000}};  // the wire
        Length level{10'000};                       // closer than this to its cane is level with it
        // On a cordon: along the arm from spur to spur; from the arm up to the spur, along older wood; and higher than the
        // lowest good cane of its place.
        Band<Length> apart{{{76'000}, {152'000}}, {{50'000}, {203'000}}};
        Length climbed_full{150'000}, climbed_half{300'000};
        Length above_full{10'000}, above_half{100'000};
        bool operator==(const SpurPlace&) const = default;
    } spur_place;
    AtLeast spur_size{{6'400}, {5'000}};
    struct SpurDirection {
        Angle full_to{45'000};  // off the row plane
        FirstBud first_bud = FirstBud::out_or_down;
        bool upright = false;  // spurs stand up, as on a cordon: within full_to of upright, none beyond twice that
        bool operator==(const SpurDirection&) const = default;
    } spur_direction;
    struct EndCut {
        Length full_from{10'000}, half_from{5'000};
        Length node_slack{1'000};  // a cut this near the next node goes through it
        std::int32_t weight_canes = 26, weight_spurs = 24;
        bool operator==(const EndCut&) const = default;
    } end_cut;
    struct OldWoodStub {
        Band<PerMille> band{{{1'000}, {2'000}}, {{500}, {3'000}}};  // stub / diameter
        Length short_of_node{5'000};                                // as near the next node as a stub may go
        bool operator==(const OldWoodStub&) const = default;
    } old_wood_stub;
    struct WoundSize {
        Length half_from{15'000}, none_from{30'000};
        PerMille needed_within{2'000};  // x diameter along the wood from the cut that is needed
        bool operator==(const WoundSize&) const = default;
    } wound_size;
    struct ToolChoice {
        Length shears_one_year{18'000}, shears_old{15'000}, loppers{32'000};
        bool operator==(const ToolChoice&) const = default;
    } tool_choice;
    struct WoodLeftBehind {
        Length stub_to{200'000};  // two-year wood standing farther than this past its place was not taken off
        bool operator==(const WoodLeftBehind&) const = default;
    } wood_left_behind;
    struct Suckers {
        Length zone{250'000};   // a cane on the trunk farther than this below the head
        Length left_to{3'000};  // wood left at its origin
        bool renewal = false;   // one shoot from above the graft stays to renew the trunk
        bool operator==(const Suckers&) const = default;
    } suckers;
    struct Tying {
        Range<Measure<struct half_turns>> wraps{{0}, {3}};
        Length sag_full{20'000}, sag_half{50'000};
        Length bud_clear{5'000};     // a tie nearer than this lies over the bud
        std::int32_t end_nodes = 2;  // the end tie stands at most this many nodes inside the last one kept
        bool operator==(const Tying&) const = default;
    } tying;

    // Canes left standing on purpose: kickers until spring frost is over, spares until the laid canes are tied.
    struct Standing {
        std::int32_t kickers = 0, spares = 0;  // wanted, 0 to 2 each
        bool frost_over = false;               // then kickers come off where the laid canes are sound
        bool operator==(const Standing&) const = default;
    } standing;
    // The first pass of double pruning: wood left of each cane, from its base (250 to 450 from the works of first_pass.h; the
    // part band our choice).
    struct FirstPass {
        Band<Length> band{{{250'000}, {450'000}}, {{150'000}, {600'000}}};
        bool operator==(const FirstPass&) const = default;
    } first_pass;
    struct BudKill {
        PerMille killed{0};  // share of primary buds found dead; 0: not sampled
        PerMille from{200};  // from this share on more buds are left
        PerMille up_to{800}; // beyond it no number can be given: wait until budburst
        bool operator==(const BudKill&) const = default;
    } bud_kill;
    struct PruningsWeighed {
        bool asked = false;           // a weight is to be reported
        bool suckers = true;          // they belong to the bundle
        PerMille full_off{50}, half_off{100};
        bool operator==(const PruningsWeighed&) const = default;
    } prunings_weighed;

    Length clear_joint{6'000};  // below a bud, for it to count
    struct Caps {
        Tenths hard{400}, soft{600};
        PerMille over_target{1'500};
        bool operator==(const Caps&) const = default;
    } caps;
    struct Acceptable {
        Tenths within{20};  // points under the best that are as good
        Length see_diameter{1'000}, see_length{20'000};
        Angle see_angle{15'000};
        bool operator==(const Acceptable&) const = default;
    } acceptable;

    // Rules of which the house's own file set a value: their findings then say so. No part of the hash.
    std::array<bool, rule_count> set_by_house{};

    const Weighed& of(RuleName name) const { return weighed[index_of(name)]; }
    std::int32_t weight(RuleName name) const { return of(name).on ? of(name).weight : 0; }
    CountingHabits habits() const { return {clear_joint, suckers.zone}; }
    bool operator==(const HouseRules&) const = default;
};

// One parameter of a house set: its rule and name as in the files, and where it stands. The type says its unit:
// Length mm, Angle degrees, PerMille a ratio or share, Tenths points, BudsPerMetre, numbers counts; half turns are
// written as turns. A range is a list of two; an open end is null.
using CountRange = Range<Measure<struct number_of_buds>>;
using TurnRange = Range<Measure<struct half_turns>>;
using Slot = std::variant<bool*, std::int32_t*, std::optional<std::int32_t>*, Length*, std::optional<Length>*, Angle*,
                          PerMille*, Tenths*, Range<Length>*, Range<PerMille>*, Range<BudsPerMetre>*, CountRange*,
                          TurnRange*, OriginMeasure*, FirstBud*, NoNeighbour*>;
struct Parameter {
    std::string_view rule, name;  // "cane-diameter", "full"
    Slot at;
};
// Every parameter once, in the order of the rule list; the pointers live as long as `house`.
std::vector<Parameter> parameters(HouseRules& house);

// "cane-diameter.full.high=12000": values in table units, words as they stand, yes 1, none "-", an open end "-"; sorted
// by byte, LF after each.
std::string rule_set_text(const HouseRules& house);
// Hash of lines and the judge's version: names the rules a mark was given under. rule_set_hash(lines) is for a list
// of lines already made.
std::uint64_t rule_set_hash(const HouseRules& house);
std::uint64_t rule_set_hash(std::vector<std::string> lines, int version);

// What a file may get wrong though every value can be read: bands that cross, weights that do not add up, numbers below
// zero. Nothing: the set can be used.
struct HouseFault {
    std::string_view rule, parameter;
    TextKey key;
};
std::optional<HouseFault> first_fault(const HouseRules& house);

}  // namespace spurwright::rules
