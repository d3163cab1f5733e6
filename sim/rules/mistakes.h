// The common mistakes of the trade as conditions on a pruned vine: each is found by its own numbers, apart from marks, so
// that a trainer can say "that is the usual slip" and count it. Conditions and limits are our choice after what teachers
// of pruning write; each names the rule that gives it points. Must not know: plans, sentences.
#pragma once

#include "sim/rules/measure_plan.h"
#include "sim/rules/rule.h"

namespace spurwright::rules {

// In the order of the work.
enum class MistakeName : unsigned char {
    thin_wood_kept,
    bull_cane_laid,
    two_year_wood_laid,
    cane_from_too_far_out,
    piece_above_the_wire,
    bent_over_the_head,
    gap_over_the_head,
    crowded_head,
    base_bud_counted,
    no_renewal_spur,
    spur_chosen_last,
    spur_above_or_outside,
    three_bud_spur,
    sucker_kept,
    sucker_stub,
    old_cane_left,
    flush_cut,
    needless_wound,
    wrong_tool,
    too_many_buds,
    weak_vine_stretched,
    cut_where_thin,
    cut_too_close,
    dead_peg,
    overlap,
    cane_snapped,
    wrapped_too_often,
    tie_girdles,
    spare_forgotten,
    kicker_forgotten,
    not_adjusted_for_bud_kill,
    old_wood_weighed,
    ends_not_weighed,
    thickness_alone,   // found beside the best plan (sim/planning)
    wrong_cane_cut,    // likewise
};
constexpr auto words_of(MistakeName) {
    return std::to_array<std::string_view>(
        {"thin-wood-kept",     "bull-cane-laid",   "two-year-wood-laid", "cane-from-too-far-out", "piece-above-the-wire",
         "bent-over-the-head", "gap-over-the-head", "crowded-head",      "base-bud-counted",      "no-renewal-spur",
         "spur-chosen-last",   "spur-above-or-outside", "three-bud-spur", "sucker-kept",          "sucker-stub",
         "old-cane-left",      "flush-cut",        "needless-wound",     "wrong-tool",            "too-many-buds",
         "weak-vine-stretched", "cut-where-thin",  "cut-too-close",      "dead-peg",              "overlap",
         "cane-snapped",       "wrapped-too-often", "tie-girdles",       "spare-forgotten",
         "kicker-forgotten",   "not-adjusted-for-bud-kill", "old-wood-weighed", "ends-not-weighed", "thickness-alone",       "wrong-cane-cut"});
}
inline constexpr std::size_t mistake_count = 35;

struct Mistake {
    MistakeName name{};
    RuleName rule{};  // that gives it points
    AxisId on;        // none: the vine as a whole
    Side side = Side::none;
    Arguments arguments;  // of the sentence "mistake.NAME"
};

// Limits that are no house rule.
struct MistakeLimits {
    PerMille load_over{1'200};                 // of the target
    BudsPerMetre weak_below{12'000};           // a target under this is a weak vine's
    PerMille stretched_over{1'100};            // of it
    Length crowded_within{80'000};             // of the crown point
    int crowded_over = 2;                      // pieces a side: a cane and its spur
    PerMille as_usual{50};                     // within this of the usual target nothing was adjusted
};

// What is wrong with the wood kept and the cuts made. Each mistake once a piece, in the order of MistakeName. `plan` are
// the facts of a plan on `before`.
std::vector<Mistake> mistakes(const Vine& before, const PlanFacts& plan, const Offers& offers, const Asked& asked, const HouseRules& house,
                              const MistakeLimits& limits = {});

}  // namespace spurwright::rules
