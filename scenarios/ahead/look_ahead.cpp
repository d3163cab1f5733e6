#include "scenarios/ahead/look_ahead.h"

#include <algorithm>
#include <cmath>
#include <mutex>
#include <thread>

#include "scenarios/ahead/drawn_spring.h"
#include "scenarios/ahead/kickers.h"
#include "sim/core/check.h"
#include "sim/core/random.h"
#include "sim/growth/history_pruner.h"
#include "sim/growth/season.h"
#include "sim/pruning/prunings.h"
#include "sim/rules/cordon_row.h"
#include "sim/vine/vine_query.h"

namespace spurwright::ahead {
namespace {

constexpr std::uint64_t highest_seed = (std::uint64_t{1} << 40) - 1;

using Values = std::array<std::vector<double>, figure_count>;

// Where this winter's laid canes start: along the wood and over the ground, mean over the sides laid.
struct LaidStarts {
    std::array<bool, 2> laid{};
    std::array<double, 2> out_mm{}, up_mm{};
};

// Of a cordon, on which nothing is laid: how far the spurs kept have climbed from their arm, the mean of each.
LaidStarts spur_starts(const Vine& pruned, const rules::HouseRules& house) {
    LaidStarts starts;
    const rules::CordonRow rows = rules::cordon_row(pruned, house);
    for (std::size_t side = 0; side < rows.size(); ++side) {
        double spurs = 0;
        for (const rules::RowCane& spur : rows[side]) {
            if (pruned.nodes_of(*pruned.find(spur.axis))[1].removed) continue;
            starts.up_mm[side] += in_mm(spur.climbed);
            ++spurs;
        }
        starts.laid[side] = spurs > 0;
        if (spurs > 0) starts.up_mm[side] /= spurs;
    }
    return starts;
}

LaidStarts starts_of(const Vine& pruned, const rules::HouseRules& house) {
    if (pruned.system == System::cordon) return spur_starts(pruned, house);
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

// One life of the vine under one draw of weather.
class Life {
public:
    Life(const Vine& pruned, const rules::HouseRules& house, const AheadWish& wish, std::uint32_t draw_number)
        : vine_(pruned), house_(house), wish_(wish), draw_(draw_number) {
        settings_.constants = growth::with_variety({}, *wish.variety);
        settings_.tendrils_everywhere = wish.variety->tendrils_everywhere;
        settings_.site_capacity = own_site_capacity(pruned, settings_.constants);
        // The first draw is the vine's own luck, as it would grow on in practice; the others have luck of their own.
        if (draw_number > 1) vine_.seed = mix(pruned.seed + draw_number) & highest_seed;
    }

    void live(std::vector<Values>& winters, std::array<int, 3>& budbreaks) {
        LaidStarts before = starts_of(vine_, house_);
        for (int year = 0; year < wish_.seasons; ++year) {
            Values& into = winters[static_cast<std::size_t>(year)];
            ++budbreaks[static_cast<std::size_t>(spring(into, static_cast<std::uint32_t>(year)))];
            growth::SeasonNotes notes;
            const Vine grown = growth::season(vine_, settings_, &notes);
            if (year == 0) next_ = grown;
            auto pruned = prune(grown, growth::history_plan(grown, growth::habits_of(Pruner::good)));
            SPURWRIGHT_CHECK(pruned.has_value(), ==, true); // the history pruner's plans are legal
            vine_ = std::move(*pruned);
            measure(into, grown, notes, before);
        }
    }

    bool kicker_laid() const { return kicker_laid_; }
    Vine take_next() { return std::move(next_); } // what the first season grew, uncut

private:
    static void put(Values& into, Figure figure, double value) {
        into[static_cast<std::size_t>(figure)].push_back(value);
    }

    // Winter's cold and spring's frost on the pruned vine; the rule that opened its buds.
    weather::BudbreakRule spring(Values& into, std::uint32_t year) {
        const DrawnSpring drawn = drawn_spring(vine_, wish_, settings_.constants, draw_, year);
        const weather::ColdToll toll =
            weather::take_cold(vine_, drawn.buds, drawn.frost_share, drawn.kill, draw_);
        put(into, Figure::buds_killed, toll.killed);
        const int open_buds = toll.buds - toll.killed;
        put(into, Figure::frost_loss_share, open_buds > 0 ? static_cast<double>(toll.frosted) / open_buds : 0.0);
        const LaidBuds laid = laid_buds(vine_, drawn.buds);
        if (laid.buds > 0) put(into, Figure::open_day, laid.mean_day);
        if (year == 0 && wish_.kickers) kicker_laid_ = look_at_kickers(drawn.buds, laid);
        return drawn.open.rule;
    }

    // After the frost: sound laid canes do not need what stands beside them; for dead ones it is cut and laid
    // [vineworks-frost for the first; the second is common practice, no source]. Whether it was laid.
    bool look_at_kickers(const std::vector<weather::OpenBud>& buds, const LaidBuds& laid) {
        const Vine stood = vine_;
        bool any_laid = false;
        for (const AxisId kicker : kickers_of(stood, buds)) {
            const Plan acts = laid.sound() ? plan_off(kicker) : plan_instead(stood, kicker, laid);
            for (const Edit& edit : acts.edits) {
                const bool done = prune_one(vine_, edit, stood).has_value();
                any_laid = any_laid || (done && std::holds_alternative<Lay>(edit));
            }
        }
        return any_laid;
    }

    void measure(Values& into, const Vine& grown, const growth::SeasonNotes& notes, LaidStarts& before) {
        put(into, Figure::shoots, notes.shoots);
        put(into, Figure::non_count_shoots, notes.non_count_kept);
        put(into, Figure::blind_nodes, notes.blind);
        put(into, Figure::yield_kg, notes.yield_kg);
        std::array<int, 2> good{}; // by side
        const bool cordon = grown.system == System::cordon;
        for (const AxisId id : cane_candidates(grown)) {
            const Axis& cane = *grown.find(id);
            put(into, Figure::thickness_mm, in_mm(thickness(grown, cane)));
            put(into, Figure::cane_distance_mm, in_mm(distance_to_head(grown, cane)));
            good[cane.side == Side::right ? 1 : 0] += !cordon && is_good(grown, cane, house_);
        }
        const rules::CordonRow rows = rules::cordon_row(grown, house_); // empty but on a cordon
        for (std::size_t side = 0; side < rows.size(); ++side)
            for (const rules::RowCane& cane : rows[side]) good[side] += cane.good;
        put(into, Figure::good_canes, good[0] + good[1]);
        put(into, Figure::good_left, good[0]);
        put(into, Figure::good_right, good[1]);
        const double prunings_g = prunings(grown, vine_).removed.one_year_mg / 1000;
        put(into, Figure::prunings_g, prunings_g);
        if (prunings_g > 0) put(into, Figure::crop_to_prunings, 1000 * notes.yield_kg / prunings_g);
        const LaidStarts now = starts_of(vine_, house_);
        double out = 0, up = 0, sides = 0;
        for (std::size_t side = 0; side < 2; ++side) {
            if (!now.laid[side] || !before.laid[side]) continue;
            out += now.out_mm[side] - before.out_mm[side];
            up += now.up_mm[side] - before.up_mm[side];
            ++sides;
        }
        if (sides > 0) {
            if (!cordon) put(into, Figure::creep_mm, out / sides);
            put(into, Figure::climb_mm, up / sides);
        }
        before = now;
    }

    Vine vine_, next_;
    const rules::HouseRules& house_;
    const AheadWish& wish_;
    std::uint32_t draw_;
    bool kicker_laid_ = false;
    growth::SeasonSettings settings_;
};

} // namespace

AheadWish usual_wish(const Vine& vine, std::string_view climate) {
    AheadWish wish;
    wish.variety = growth::find_variety(vine.variety);
    if (!wish.variety) wish.variety = &growth::varieties()[0]; // of its own variety the vine file holds no values
    wish.climate = weather::find_climate(climate);
    if (!wish.climate) wish.climate = weather::find_climate(usual_climate);
    return wish;
}

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
        bool kicker_laid = false;
    };
    const auto seasons = static_cast<std::size_t>(wish.seasons);
    std::vector<OneDraw> draws(weather_draws);
    Vine next;
    std::mutex telling;
    const auto work = [&](std::size_t first, std::size_t step) {
        for (std::size_t i = first; i < draws.size(); i += step) {
            draws[i].winters.resize(seasons);
            Life life(pruned, house, wish, static_cast<std::uint32_t>(i) + 1);
            life.live(draws[i].winters, draws[i].budbreaks);
            draws[i].kicker_laid = life.kicker_laid();
            if (i == 0) next = life.take_next();
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
    AheadWinter told{pruned.winter + 1, {}};
    for (std::size_t figure = 0; figure < figure_count; ++figure)
        told.figures[figure] = spread_of(draws.front().winters.front()[figure]);
    result.next = std::make_shared<const NextVine>(NextVine{std::move(next), told});
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
    for (const OneDraw& one : draws) {
        DrawnWinter& drawn = result.draws.emplace_back();
        for (std::size_t figure = 0; figure < figure_count; ++figure)
            if (const Spread own = spread_of(one.winters.front()[figure]); own.known) drawn[figure] = own.median;
    }
    for (const OneDraw& one : draws) result.kickers_laid += one.kicker_laid;
    for (const OneDraw& one : draws)
        for (std::size_t rule = 0; rule < result.budbreaks.size(); ++rule)
            result.budbreaks[rule] += one.budbreaks[rule];
    return result;
}

} // namespace spurwright::ahead
