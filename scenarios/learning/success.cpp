#include "scenarios/learning/success.h"

#include <algorithm>
#include <cmath>

namespace spurwright::learning {
namespace {

constexpr double least_chance = 0.001, most_chance = 0.999;
constexpr double points_to_logits = 173.7178; // of one scale into the other, as Glicko-2 has it
constexpr double prior_deviation = 150;       // of an item nobody has answered; our choice

double within_chance(double p) { return std::isfinite(p) ? std::clamp(p, least_chance, most_chance) : 0.5; }

} // namespace

double two_pl(double theta, double a, double b) { return within_chance(1 / (1 + std::exp(-a * (theta - b)))); }

double two_pl_information(double theta, double a, double b) {
    const double p = two_pl(theta, a, b);
    return a * a * p * (1 - p);
}

double prior_difficulty(const ItemLook& look) {
    const double points = std::max(0.1, look.margin.count / 10.0);
    double b = 0.75 * (2 - std::log2(points));
    if (look.choices > 4) b += 0.3 * (look.choices - 4);
    if (look.one_rule_apart) b += 0.4;
    if (look.hard_to_see) b += 0.4;
    return b;
}

double with_guessing(double known, int choices) {
    const double c = choices > 0 ? 1.0 / choices : 0;
    return c + (1 - c) * std::clamp(known, 0.0, 1.0);
}

std::optional<double> known_share(double observed, int choices) {
    const double c = choices > 0 ? 1.0 / choices : 0;
    if (!(observed >= c) || !(c < 1)) return std::nullopt;
    return std::min(1.0, (observed - c) / (1 - c));
}

double wanted_difficulty(double theta, double known, double a) {
    const double p = within_chance(known);
    return theta - std::log(p / (1 - p)) / a;
}

double ability_of(const Strength& strength) { return (strength.rating - 1500) / points_to_logits; }

Strength strength_of_item(double b) { return {1500 + points_to_logits * b, prior_deviation, 0.06}; }

double graded_outcome(Tenths lost) { return std::exp(-std::max(0, lost.count) / 250.0); }

ShareInterval wilson(int right, int of) {
    if (of <= 0) return {};
    constexpr double z = 1.959963984540054;
    const double n = of, p = std::clamp(right, 0, of) / n, zz = z * z / n;
    const double middle = (p + zz / 2) / (1 + zz), half = z * std::sqrt(p * (1 - p) / n + zz / (4 * n)) / (1 + zz);
    return {std::max(0.0, middle - half), std::min(1.0, middle + half)};
}

std::optional<double> brier(const std::vector<Stated>& stated) {
    if (stated.empty()) return std::nullopt;
    double sum = 0;
    for (const Stated& one : stated) sum += (one.sure - (one.right ? 1 : 0)) * (one.sure - (one.right ? 1 : 0));
    return sum / static_cast<double>(stated.size());
}

} // namespace spurwright::learning
