// Every constant of the growth model, once: value, unit, range, status, source. The code reads them by name; the
// table below describes each field, so that the program can print them all. Practice values; trials change a few.
#pragma once

#include <array>
#include <span>
#include <string_view>

namespace spurwright::growth {

struct Constants {
    // budburst (G3-G5)
    double budburst_b0 = 0.55;
    double budburst_lambda = 3;
    double budburst_load_cap = 1.0;
    double budburst_terminal_p = 0.98;
    double noncount_slope = 0.667;
    double noncount_place_crown = 0.6;
    double head_shoot_on_top = 0.12;
    double double_share = 0.10;
    double bud_loss_handling = 0.06;
    double base_buds_per_axis = 2;
    double burst_per_capacity = 8;
    double suckers_scion_mean = 0.6;
    double suckers_rootstock_mean = 0.3;
    // capacity
    double capacity_per_m_low = 20, capacity_per_m_moderate = 25, capacity_per_m_high = 32;
    double row_own_sd = 0.20;
    double young_share_3 = 0.20, young_share_4 = 0.40, young_share_5 = 0.65, young_share_6 = 0.85;
    // summer acts (S1-S3)
    double wanted_per_side = 2;
    double wanted_keep = 0.95, unwanted_keep = 0.15, double_off = 0.80, sucker_off = 0.80;
    double cordon_base_keep = 0.05, cordon_renewal_keep = 0.80, cordon_gap_mm = 100, cordon_climbed_mm = 80;
    double wanted_distance_mm = 80, wanted_below_mm = 50, wanted_azimuth_deg = 60;
    double thinned_at_cm = 12.5;
    double leaf_removal_p = 0.8, leaf_removal_nodes = 5, leaf_removal_above_mm = 300;
    double hedge_spread_mm = 20, hedge_side_mm = 200;
    double hedge_laterals_low = 1, hedge_laterals_high = 4;
    // length (G6)
    double length_exponent = 0.55;
    double length_ref_low = 85, length_ref_moderate = 110, length_ref_high = 130;
    double length_sd = 0.30;
    double length_pos_proximal = 0.8, length_pos_distal = 1.2, length_pos_twin = 0.85;
    double length_low_cm = 6, length_high_cm = 450;
    // joints (G7)
    double internode_ref = 6.0, internode_length_ref = 125, internode_exponent = 0.35;
    double internode_sd = 0.15, internode_noise = 0.18;
    double internode_clip_low = 3, internode_clip_high = 18;
    double internode_base_rate = 2.5, internode_tip_drop = 0.45, internode_tip_from = 0.6;
    double redraw_low_mm = 4, redraw_high_mm = 10;
    // mass and thickness (G8)
    double mass_coeff = 0.0405, mass_exponent = 1.48;
    double mass_scale_low = 0.85, mass_scale_moderate = 1.0, mass_scale_high = 1.15;
    double mass_sd = 0.40;
    double taper_a = 0.55, taper_p = 0.8, taper_integral = 0.6116;
    double density_fresh = 0.95;
    double flattening_low = 1.05, flattening_high = 1.15;
    double flattening_shaded_low = 1.12, flattening_shaded_high = 1.22;
    double flattening_bull_low = 1.25, flattening_bull_high = 1.45;
    double collar_low_mm = 3, collar_high_mm = 5;
    // classes and flags
    double bull_share_low = 0.01, bull_share_moderate = 0.04, bull_share_high = 0.10;
    double bull_place_ordinary = 0.75, bull_place_noncount = 2.5, bull_place_bend = 3;
    double bull_mass = 2.2, bull_internode = 1.8;
    double shaded_share = 0.08, shaded_mass = 0.5, shaded_internode = 1.2;
    double poorly_ripe_share = 0.03, poorly_ripe_low_mm = 200, poorly_ripe_high_mm = 400;
    double spot_share = 0.03, scar_share = 0.03, crack_share = 0.01;
    double ripe_share_low = 0.80, ripe_share_high = 0.90;
    // leaves and fruit (G9, G10)
    double leaf_area_per_cm = 24.7;
    double fruit_a2 = -2.29e-5, fruit_a1 = 0.0098, fruit_c = 1.22;
    double fruit_area_low = 48, fruit_area_high = 210;
    double fruit_first_node = 0.70, fruit_second_node = 0.85;
    double secondary_f = 0.4, noncount_f = 0.15;
    double mummy_share = 0.02;
    // laterals and tendrils
    double lateral_p = 0.15, lateral_bull = 2, lateral_drop = 0.7;
    double lateral_low_mm = 50, lateral_high_mm = 300, lateral_thin_mm = 3, lateral_thick_mm = 6, lateral_joint_mm = 45;
    double tendril_grip = 0.7, tendril_broken = 0.7, tendril_zone_mm = 200;
    // posture
    double elbow_deg = 45, elbow_sd_deg = 10, elbow_low_deg = 30, elbow_high_deg = 60, elbow_length_mm = 40;
    double lean_deg = 72, lean_sd_deg = 6, lean_length_mm = 300;
    double lean_laid_deg = 86, lean_laid_sd_deg = 4;
    double upright_low_deg = 85, upright_high_deg = 90;
    double azimuth_node_sd_deg = 33, azimuth_head_sd_deg = 50, azimuth_base_sd_deg = 45;
    double hang_share = 0.07;
    double zigzag_low_deg = 5, zigzag_high_deg = 15;
    double lean_laid_length_mm = 80;
    double led_out_deg = 20, led_out_mm = 600, led_out_short_mm = 120; // the last shoot of a cordon's new arm
    double cordon_spur_steeper_deg = 25;
    double hang_from_mm = 200, hang_deg_per_mm = 0.4, hang_lowest_deg = -75;
    double hang_azimuth_low_deg = 60, hang_azimuth_high_deg = 90;
    double arch_above_wire_mm = 100, arch_deg_per_mm = 0.12, arch_most_deg = 120;
    double steer_mm = 120, steer_most = 0.6, place_across_most = 0.75;
    double trunk_azimuth_most_deg = 80;
    double lateral_rise = 0.7, lateral_taper_to = 0.6, lateral_of_bearer = 0.7;
    // trunk and head
    double head_reach_mm = 60, head_zone_mm = 60;
    double head_below_sd_mm = 15;
    double graft_height_mm = 100;
    double trunk_lean_sd_deg = 2, trunk_lean_most_deg = 6;
    double kink_low_mm = 10, kink_high_mm = 30;
    double trunks_apart_low_mm = 60, trunks_apart_high_mm = 150, two_trunks_ring_share = 0.71;
    double catch_half_gap_mm = 45, drip_height_mm = 450;
    // thickening (G15-G17)
    double laid_cane_growth_mm = 3, laid_cane_taper_kept = 0.5;
    double ring_w1 = 3.0, ring_w_inf = 0.8, ring_tau = 5;
    double arm_ring_share = 0.5, head_ring_factor = 1.5, cordon_ring_share = 0.6, cordon_spur_ring_share = 0.25;
    double area_rule_p = 2, area_ring_most_mm = 2.0;
    // wounds in old wood
    double dry_back_share = 1.0, dry_back_sd = 0.4, dry_back_spared = 0.4, dry_back_kill = 0.10;
    // crop and memory (G11-G14)
    double bunch_mass_ref = 142, bunch_exponent = 0.25;
    double reserve_nu = 0.70, reserve_a = 0.36, reserve_z0 = 0.12, reserve_rho = 0.75;
    double reserve_split_number = 0.38, reserve_split_mass = 0.62;
    double capacity_return = 0.5, capacity_kappa = 0.10, capacity_clamp_low = 0.75, capacity_clamp_high = 1.25;
    double ri_star = 7;
    double crop_sd = 0.33;
    double dry_over_fresh = 0.57;
    // a row of vines
    double row_patch_sd = 0.17, row_corr = 0.85, row_place_sd = 0.17;
    double row_missing = 0.03, row_replanted = 0.02, row_dead = 0.01;
    // weather and the season's days
    double ar1_rho = 0.75, ar1_sd = 3.5;
    double gdd_base = 10;
    double spring_sum_base = 4.5, spring_sum_from = 60, spring_sum = 240;
    double budbreak_sum_early = 75, budbreak_sum_late = 92;
    double phyllochron = 22, nodes_at_burst = 4, bloom_sum = 325;
    double internode_extension = 5;
    double release_sum = 90, held_from_tip = 4;
    // cold and frost
    double budbreak_lt_vinifera = -2.2, budbreak_lt_labruscana = -6.4;
    double eco_latest = 60;
    double kill_sd = 1.7, secondary_hardier = 2, tertiary_hardier = 4;
    double frost_sd_vinifera = 0.6;
    double still_night_lapse = 2.0, still_night_wire = 0.9, still_night_most = 2;
    double frost_site_colder = 3;
    double spur_later_days = 1;
};

enum class ValueStatus : unsigned char { read, choice, computed, common_practice, memory };
constexpr auto words_of(ValueStatus) {
    return std::to_array<std::string_view>({"read", "choice", "computed", "common practice", "memory"});
}

struct ConstantRow {
    std::string_view name;
    double Constants::*value;
    std::string_view unit;
    double low, high; // clamps as well
    ValueStatus status;
    std::string_view source; // key, or "-"
    bool editable;
};

// A row for every field, in the order of the struct (test).
std::span<const ConstantRow> constant_rows();

// The trial setting's values: capacity and length of the trials' own fit, joints of the whole shoot, no handling loss.
Constants trial_constants();

} // namespace spurwright::growth
