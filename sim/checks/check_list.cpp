// The published checks by number: source, status of what is expected, what a pass means, and where one is known to fail.
#include "sim/checks/compared.h"

namespace spurwright::checks {
namespace {

using growth::ValueStatus;
constexpr auto read = ValueStatus::read, computed = ValueStatus::computed, choice = ValueStatus::choice,
               memory = ValueStatus::memory;

constexpr auto list = std::to_array<Check>({
    {1, "bisshopp-drucker", computed, Group::independent, "0.002", elastica_up},
    {2, "bisshopp-drucker", computed, Group::independent, "0.002", elastica_along},
    {3, "exact", computed, Group::independent, "0.002", sag},
    {4, "exact", computed, Group::independent, "0.001", ring},
    {5, "formula", computed, Group::independent, "1e-9", skin},
    {6, "wang-2008", computed, Group::independent, "order 3.9-4.1", helix_frames},
    {7, "ferguson-2014", computed, Group::independent, "0.0001", hardiness_steps},
    {8, "ferguson-2014", read, Group::parameters, "0.3 °C", hardiest_bud},
    {9, "ferguson-2014", read, Group::parameters, "rank", budbreak_order},
    {10, "ferguson-2014", read, Group::parameters, "14 d", budbreak_day},
    {11, "ferguson-2014", read, Group::independent, "exact", frost_at_burst},
    {12, "eltom-2015", read, Group::own_table, "0.01", thin_parent},
    {13, "eltom-2015", read, Group::own_table, "0.01", fat_parent},
    {14, "ajev-6021", read, Group::fitted, "20 %, 35 %", oakville_single},
    {15, "ajev-6006", read, Group::fitted, "20 %, 35 %", oakville_quad},
    {16, "ajev-6034", read, Group::fitted, "5, 5, 20, 10 %", shoot_geometry},
    {17, "ajev-6034", computed, Group::fitted, "in range", leaf_area},
    {18, "epee-2022", read, Group::fitted, "3.0, 1.9", non_count_at_loads},
    {19, "epee-2022", read, Group::fitted, "1.5", blind_nodes},
    {20, "greven-2014", read, Group::fitted, "20", first_year_yield},
    {21, "greven-2014", read, Group::fitted, "15 %", later_yields},
    {22, "epee-2024", read, Group::fitted, "0.60-0.80", overload_memory},
    {23, "sunmuscat-2023", read, Group::fitted, "0.05", sunmuscat_shoots},
    {24, "sunmuscat-2023", read, Group::fitted_one, "0.07", sunmuscat_bunches},
    {25, "antcliff-1965", read, Group::fitted_one, "0.1", sultana_canes},
    {26, "bates-2021", read, Group::weak, "2", concord_balance},
    {27, "antcliff-1955", read, Group::independent, "1e-9", cut_reach},
    {28, "gatti-2016", read, Group::fitted, "5 d", cutting_delay},
    {29, "wineskills-factors", read, Group::weak, "in range", ideal_cane},
    {30, "ozdemir-cutting", computed, Group::independent, "0.3 mm", cutting_force},
    {31, "pratt-coombe", read, Group::weak, "in range", nodes_at_bloom},
    {32, "smith-2023", read, Group::independent, "exact", balanced_buds},
    {33, "trought-2017", read, Group::independent, "exact", effective_shoots},
    {35, "spinelli-2012", computed, Group::fitted, "in range", dry_share},
    {36, "greven-2014", read, Group::independent, "strict", more_nodes_thinner},
    {37, "-", memory, Group::independent, "1e-6", area_rule},
    {38, "-", computed, Group::independent, "1e-9", weight_conserved},
    {39, "weinplus-tendrils", read, Group::independent, "exact", tendril_pattern},
    {40, "-", choice, Group::independent, "exact", history_true},
    {41, "-", choice, Group::own, "in range", default_vines},
    {42, "-", memory, Group::own, "in range", cane_count},
    {43, "-", choice, Group::independent, "exact", rules_unheard},
    {44, "-", choice, Group::independent, "exact", kicker_delays_nothing},
    {45, "-", choice, Group::own, "0.3", laid_default_cane},
    {46, "-", computed, Group::independent, "1e-9", summer_conserved},
    {47, "eltom-2015", read, Group::weak, "in range", studied_diameters},
    {48, "taylor-2012", read, Group::weak, "0.45-0.70", row_variance},
    {49, "-", choice, Group::own, "in range", head_held},
});

} // namespace

std::span<const Check> all_checks() { return list; }

} // namespace spurwright::checks
