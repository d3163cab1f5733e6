#include "scenarios/ahead/look_ahead.h"

#include <algorithm>
#include <cmath>
#include <mutex>
#include <thread>

#include "sim/core/check.h"
#include "sim/core/random.h"
#include "sim/growth/history_pruner.h"
#include "sim/growth/season.h"
#include "sim/growth/traits.h"
#include "sim/pruning/prunings.h"
#include "sim/vine/vine_query.h"
#include "sim/weather/spring.h"

namespace spurwright::ahead {
namespace {

constexpr std::uint64_t highest_seed = (std::uint64_t{1} << 40) - 1;

using Values = std::array<std::vector<double>, figure_count>;

// Where the laid canes of this winter start: along the wood and over the ground, mean over the sides laid.
struct LaidStarts {
    std::array<bool, 2> laid{};
    std::array<double, 2> out_mm{}, up_mm{};
};

LaidStarts laid_starts(const Vine& pruned) {
    LaidStarts starts;
    for (const Laid& row : pruned.laid) {
        const Axis& cane = *pruned.find(row.axis);
        if (row.winter != pruned.winter || cane.removed || row.state == LaidState::snapped) continue;
        const std::size_t side = row.side == Side::right ? 1 : 0;
        starts.laid[side] = true;
        starts.out_mm[side] = in_mm(distance_to_head(pruned, cane));
        starts.up_mm[side] = in_mm(pruned.nodes_of(cane)[0].place.y);
    }
    return starts;
}

// Good by the house's full bands for wood, and somewhere near enough to the head.
bool is_good(const Vine& vine, const Axis& cane, const rules::HouseRules& house) {
    const auto inside = [](const auto& range, auto value) { return value >= range.low && value <= range.high; };
    if (!inside(house.cane_diameter.band.full, thickness(vine, cane))) return false;
    if (!inside(house.internode_length.full, mean_internode(vine, cane))) return false;
    if (is_double(vine, cane) || is_sucker(vine, cane) || on_rootstock(vine, cane)) return false;
    for (const Node& node : vine.nodes_of(cane))
        if (node.harm != Harm::none) return false;
    if (ripe_count_nodes(vine, cane).size() < 6) return false;
    return distance_to_head(vine, cane) <= house.origin_distance.half_to &&
           inside(house.origin_height.band.half, below_wire(vine, cane)) &&
           base_azimuth(vine, cane, cane.side) <= house.cane_side.half_to;
}

// Where spring frost is common the cold air lies: its nights are colder than the climate's. Own temperatures are as
// measured.
weather::Temperatures season_of(const AheadWish& wish, bool frost_site, const growth::Constants& c,
                                std::uint32_t draw_number, std::uint32_t year) {
    if (wish.own.empty()) {
        weather::Temperatures t = weather::drawn_season(*wish.climate, c, draw_number, year);
        if (frost_site)
            for (double& night : t.lowest) night -= c.frost_site_colder;
        return t;
    }
    const auto bits = draw(draw_number, static_cast<std::uint32_t>(growth::Trait::weather), year);
    return wish.own[static_cast<std::size_t>(between(bits, 0, static_cast<std::int32_t>(wish.own.size()) - 1))];
}

// One life of the vine under one draw of weather.
class Life {
public:
    Life(const Vine& pruned, const rules::HouseRules& house, const AheadWish& wish, std::uint32_t draw_number)
        : vine_(pruned), house_(house), wish_(wish), draw_(draw_number) {
        settings_.constants = growth::with_variety({}, *wish.variety);
        settings_.site_capacity = own_site_capacity(pruned, settings_.constants);
        // The first draw is the vine's own luck, as it would grow on in practice; the others have luck of their own.
        if (draw_number > 1) vine_.seed = mix(pruned.seed + draw_number) & highest_seed;
    }

    void live(std::vector<Values>& winters, std::array<int, 3>& budbreaks) {
        LaidStarts before = laid_starts(vine_);
        for (int year = 0; year < wish_.seasons; ++year) {
            Values& into = winters[static_cast<std::size_t>(year)];
            ++budbreaks[static_cast<std::size_t>(spring(into, static_cast<std::uint32_t>(year)))];
            growth::SeasonNotes notes;
            const Vine grown = growth::season(vine_, settings_, &notes);
            auto pruned = prune(grown, growth::history_plan(grown, growth::habits_of(Pruner::good)));
            SPURWRIGHT_CHECK(pruned.has_value(), ==, true); // the history pruner's plans are legal
            vine_ = std::move(*pruned);
            measure(into, grown, notes, before);
        }
    }

private:
    static void put(Values& into, Figure figure, double value) {
        into[static_cast<std::size_t>(figure)].push_back(value);
    }

    // Winter's cold and spring's frost on the pruned vine; the rule that opened its buds.
    weather::BudbreakRule spring(Values& into, std::uint32_t year) {
        const growth::Constants& c = settings_.constants;
        const weather::Temperatures t = season_of(wish_, vine_.frost, c, draw_, year);
        const weather::Budbreak open = weather::budbreak(*wish_.variety, t, c);
        // Where the hardiness model is not valid it kills no bud either.
        weather::BudKill kill;
        const auto* row = weather::find_hardiness(wish_.variety->hardiness);
        if (row && open.rule == weather::BudbreakRule::hardiness)
            kill = weather::winter_kill(weather::worst_margin(weather::harden(*row, t), t, open.day), c);
        const auto buds = weather::opening(vine_, open.day, {}, t, c);
        const auto lost = weather::frost_losses(buds, open.day, wish_.variety->species, t, c);
        const weather::ColdToll toll = weather::take_cold(vine_, buds, lost, kill, draw_);
        put(into, Figure::buds_killed, toll.killed);
        const int open_buds = toll.buds - toll.killed;
        put(into, Figure::frost_loss_share, open_buds > 0 ? static_cast<double>(toll.frosted) / open_buds : 0.0);
        return open.rule;
    }

    void measure(Values& into, const Vine& grown, const growth::SeasonNotes& notes, LaidStarts& before) {
        put(into, Figure::shoots, notes.shoots);
        put(into, Figure::non_count_shoots, notes.non_count_kept);
        put(into, Figure::blind_nodes, notes.blind);
        put(into, Figure::yield_kg, notes.yield_kg);
        int good = 0;
        for (const AxisId id : cane_candidates(grown)) {
            const Axis& cane = *grown.find(id);
            put(into, Figure::thickness_mm, in_mm(thickness(grown, cane)));
            good += is_good(grown, cane, house_);
        }
        put(into, Figure::good_canes, good);
        const double prunings_g = prunings(grown, vine_).removed.one_year_mg / 1000;
        put(into, Figure::prunings_g, prunings_g);
        if (prunings_g > 0) put(into, Figure::crop_to_prunings, 1000 * notes.yield_kg / prunings_g);
        const LaidStarts now = laid_starts(vine_);
        double out = 0, up = 0, sides = 0;
        for (std::size_t side = 0; side < 2; ++side) {
            if (!now.laid[side] || !before.laid[side]) continue;
            out += now.out_mm[side] - before.out_mm[side];
            up += now.up_mm[side] - before.up_mm[side];
            ++sides;
        }
        if (sides > 0) {
            put(into, Figure::creep_mm, out / sides);
            put(into, Figure::climb_mm, up / sides);
        }
        before = now;
    }

    Vine vine_;
    const rules::HouseRules& house_;
    const AheadWish& wish_;
    std::uint32_t draw_;
    growth::SeasonSettings settings_;
};

} // namespace

Spread spread_of(std::vector<double> values) {
    if (values.empty()) return {};
    std::stable_sort(values.begin(), values.end());
    const auto at = [&](double share) {
        const double place = share * static_cast<double>(values.size() - 1);
        const auto low = static_cast<std::size_t>(place);
        const double next = low + 1 < values.size() ? values[low + 1] : values[low];
        return values[low] + (next - values[low]) * (place - static_cast<double>(low));
    };
    return {true, at(0.5), at(0.1), at(0.9)};
}

Ahead look_ahead(const Vine& pruned, const rules::HouseRules& house, const AheadWish& wish,
                 const std::function<void()>& progress) {
    struct OneDraw {
        std::vector<Values> winters;
        std::array<int, 3> budbreaks{};
    };
    const auto seasons = static_cast<std::size_t>(wish.seasons);
    std::vector<OneDraw> draws(weather_draws);
    std::mutex telling;
    const auto work = [&](std::size_t first, std::size_t step) {
        for (std::size_t i = first; i < draws.size(); i += step) {
            draws[i].winters.resize(seasons);
            Life(pruned, house, wish, static_cast<std::uint32_t>(i) + 1).live(draws[i].winters, draws[i].budbreaks);
            const std::lock_guard<std::mutex> one(telling);
            if (progress) progress();
        }
    };
    const std::size_t threads = std::clamp<std::size_t>(std::thread::hardware_concurrency(), 1, draws.size());
    std::vector<std::thread> others;
    for (std::size_t i = 1; i < threads; ++i) others.emplace_back(work, i, threads);
    work(0, threads);
    for (std::thread& other : others) other.join();
    Ahead result;
    for (std::size_t year = 0; year < seasons; ++year) {
        AheadWinter winter{pruned.winter + static_cast<int>(year) + 1, {}};
        for (std::size_t figure = 0; figure < figure_count; ++figure) {
            std::vector<double> all;
            for (const OneDraw& one : draws)
                all.insert(all.end(), one.winters[year][figure].begin(), one.winters[year][figure].end());
            winter.figures[figure] = spread_of(std::move(all));
        }
        result.winters.push_back(winter);
    }
    for (const OneDraw& one : draws)
        for (std::size_t rule = 0; rule < result.budbreaks.size(); ++rule)
            result.budbreaks[rule] += one.budbreaks[rule];
    return result;
}

} // namespace spurwright::ahead
