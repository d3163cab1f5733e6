#include "scenarios/learning/glicko2.h"

#include <algorithm>
#include <cmath>

namespace spurwright::learning {
namespace {

constexpr double glicko_scale = 173.7178, pi = 3.14159265358979323846;
constexpr double volatility_tolerance = 1e-9, least_volatility = 1e-4, most_volatility = 1;
constexpr int most_steps = 100;
constexpr double most_rating_off = 4000; // from 1500, of what is handed in

double g_of(double phi) { return 1 / std::sqrt(1 + 3 * phi * phi / (pi * pi)); }

double e_of(double mu, double mu_other, double g) { return 1 / (1 + std::exp(-g * (mu - mu_other))); }

// Step 5 of the note: the volatility, bracketed and closed in by false position.
double new_volatility(double phi, double sigma, double v, double delta, double tau) {
    const double a = std::log(sigma * sigma), room = delta * delta - phi * phi - v;
    const auto f = [&](double x) {
        const double e = std::exp(x), sum = phi * phi + v + e;
        return e * (delta * delta - phi * phi - v - e) / (2 * sum * sum) - (x - a) / (tau * tau);
    };
    double low = a, high = 0;
    if (room > 0) {
        high = std::log(room);
    } else {
        int k = 1;
        while (f(a - k * tau) < 0 && k < most_steps) ++k;
        high = a - k * tau;
    }
    double f_low = f(low), f_high = f(high);
    for (int step = 0; step < most_steps && std::abs(high - low) > volatility_tolerance; ++step) {
        const double next = low + (low - high) * f_low / (f_high - f_low), f_next = f(next);
        if (!std::isfinite(next) || !std::isfinite(f_next)) break;
        if (f_next * f_high <= 0) {
            low = high;
            f_low = f_high;
        } else {
            f_low /= 2;
        }
        high = next;
        f_high = f_next;
    }
    return std::clamp(std::exp(low / 2), least_volatility, most_volatility);
}

Strength held(Strength s) {
    const auto finite = [](double value, double other) { return std::isfinite(value) ? value : other; };
    s.rating = std::clamp(finite(s.rating, 1500), 1500 - most_rating_off, 1500 + most_rating_off);
    s.deviation = std::clamp(finite(s.deviation, least_sure_deviation), surest_deviation, least_sure_deviation);
    s.volatility = std::clamp(finite(s.volatility, 0.06), least_volatility, most_volatility);
    return s;
}

} // namespace

double expected_score(const Strength& one, const Strength& item) {
    const Strength a = held(one), b = held(item);
    const double both = std::sqrt(a.deviation * a.deviation + b.deviation * b.deviation) / glicko_scale;
    return std::clamp(e_of((a.rating - 1500) / glicko_scale, (b.rating - 1500) / glicko_scale, g_of(both)), 0.001, 0.999);
}

Strength after_period(const Strength& before, const std::vector<Met>& met, double tau) {
    const Strength start = held(before);
    tau = std::clamp(std::isfinite(tau) ? tau : usual_tau, 0.1, 2.0);
    const double mu = (start.rating - 1500) / glicko_scale, phi = start.deviation / glicko_scale, sigma = start.volatility;
    if (met.empty()) return held({start.rating, glicko_scale * std::sqrt(phi * phi + sigma * sigma), sigma});
    double information = 0, gained = 0;
    for (const Met& one : met) {
        const Strength item = held(one.item);
        const double g = g_of(item.deviation / glicko_scale), e = e_of(mu, (item.rating - 1500) / glicko_scale, g);
        information += g * g * e * (1 - e);
        gained += g * (std::clamp(std::isfinite(one.score) ? one.score : 0, 0.0, 1.0) - e);
    }
    if (!(information > 1e-12)) return start; // so unequal that nothing was learnt
    const double v = 1 / information, delta = v * gained;
    const double next_sigma = new_volatility(phi, sigma, v, delta, tau);
    const double phi_star = std::sqrt(phi * phi + next_sigma * next_sigma);
    const double next_phi = 1 / std::sqrt(1 / (phi_star * phi_star) + 1 / v);
    return held({1500 + glicko_scale * (mu + next_phi * next_phi * gained), glicko_scale * next_phi, next_sigma});
}

} // namespace spurwright::learning
