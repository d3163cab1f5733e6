#include "scenarios/reference_vines/demo_block.h"

#include <algorithm>
#include <cmath>

#include "scenarios/ahead/drawn_spring.h"
#include "scenarios/io/csv.h"
#include "scenarios/reference_vines/book_export.h"
#include "sim/balance/bud_formula.h"
#include "sim/balance/bud_target.h"
#include "sim/core/check.h"
#include "sim/growth/history_pruner.h"
#include "sim/growth/row.h"
#include "sim/growth/season.h"
#include "sim/growth/variety.h"
#include "sim/pruning/prunings.h"
#include "sim/vine/vine_query.h"
#include "sim/vine/words_of.h"

namespace spurwright::reference_vines {
namespace {

constexpr double scale_step_g = 10; // of a hanging scale; our choice
constexpr int age_at_first = 8;     // winters since planting, at the first weighing; our choice
constexpr std::string_view demo_formula = "20+20"; // vinifera [smith-2023]

int kept_buds(const Vine& pruned) {
    int buds = 0;
    for (const Axis& axis : pruned.axes)
        if (!axis.removed && age(pruned, axis) == 1) buds += count_buds(pruned, axis);
    return buds;
}

double kept_kg(const Vine& grown, const Vine& pruned) { return prunings(grown, pruned).removed.one_year_mg / 1e6; }

// One place of the block through its winters.
class DemoLife {
public:
    DemoLife(const growth::RowPlace& place, DemoPolicy policy, Vine vine) : place_(place), policy_(policy), vine_(std::move(vine)) {
        settings_.constants = growth::with_variety({}, *growth::find_variety("plain"));
        settings_.site_capacity = growth::own_site_capacity(vine_, settings_.constants);
    }

    // Prunes and weighs this winter, then grows on through the year's spring and summer.
    Weighing winter(int year, int nth) {
        Vine pruned = pruned_with(policy_buds());
        Weighing w;
        w.winter = year;
        const double grams = scale_step_g * std::round(1000 * kept_kg(vine_, pruned) / scale_step_g);
        w.prunings = from_g(std::max(grams, scale_step_g));
        w.canes = laid_canes(pruned);
        w.buds = kept_buds(pruned);
        if (nth > 0) w.crop = from_g(100 * std::round(10 * crop_kg_));
        grow(std::move(pruned), static_cast<std::uint32_t>(nth));
        return w;
    }

private:
    Vine pruned_with(double buds) const {
        growth::PrunerHabits habits = growth::habits_of(Pruner::good);
        habits.load = buds / balance::buds_by_space(place_.site.spacing_m).house;
        if (policy_ == DemoPolicy::many_buds) habits.end_mm = growth::habits_of(Pruner::too_many_buds).end_mm;
        auto pruned = prune(vine_, growth::history_plan(vine_, habits));
        SPURWRIGHT_CHECK(pruned.has_value(), ==, true); // the history pruner's plans are legal
        return std::move(*pruned);
    }

    // By weight: pruned roughly as the space asks, weighed, then as the weight asks, no more than the space holds.
    double policy_buds() const {
        const double space = balance::buds_by_space(place_.site.spacing_m).house;
        if (policy_ == DemoPolicy::few_buds) return 0.55 * space;
        if (policy_ == DemoPolicy::many_buds) return 1.5 * space;
        const double asked = balance::buds_for({}, kept_kg(vine_, pruned_with(space))).buds;
        return balance::bud_target(asked, place_.site.spacing_m).smaller;
    }

    static std::int64_t laid_canes(const Vine& pruned) {
        return std::count_if(pruned.laid.begin(), pruned.laid.end(),
                             [&](const Laid& laid) { return laid.winter == pruned.winter && laid.state != LaidState::snapped && !pruned.find(laid.axis)->removed; });
    }

    void grow(Vine pruned, std::uint32_t year) {
        ahead::AheadWish weather;
        weather.variety = growth::find_variety("plain");
        weather.climate = weather::find_climate(ahead::usual_climate);
        const ahead::DrawnSpring spring = ahead::drawn_spring(pruned, weather, settings_.constants, 1, year); // the same for every vine
        weather::take_cold(pruned, spring.buds, spring.frost_share, spring.kill, 1);
        growth::SeasonNotes notes;
        vine_ = growth::season(pruned, settings_, &notes);
        crop_kg_ = notes.yield_kg;
    }

    const growth::RowPlace& place_;
    DemoPolicy policy_;
    Vine vine_;
    double crop_kg_ = 0;
    growth::SeasonSettings settings_;
};

// The first growing places of a row.
std::vector<growth::RowPlace> growing_places(const growth::Site& site, std::uint64_t seed, std::size_t wanted) {
    std::vector<growth::RowPlace> growing;
    for (const growth::RowPlace& place : growth::row_places(site, seed, static_cast<int>(2 * wanted)))
        if (place.state == growth::PlaceState::growing && growing.size() < wanted) growing.push_back(place);
    return growing;
}

} // namespace

Result<DemoBlock> demo_block(const DemoWish& wish) {
    growth::Site site;
    site.age = age_at_first;
    DemoBlock demo;
    demo.block = {0, "demo-invented", from_mm(1000 * site.spacing_m), from_mm(1000 * site.rows_m), std::string(demo_formula), true};
    BlockBook book{demo.block, {}};
    int done = 0;
    for (int row = 1; row <= demo_rows; ++row) {
        const auto policy = static_cast<DemoPolicy>(row - 1);
        for (const growth::RowPlace& place : growing_places(site, wish.seed + static_cast<std::uint64_t>(row), demo_vines / demo_rows)) {
            auto grown = growth::grow_place(place);
            if (!grown) return failure(std::move(grown.error()));
            DemoLife life(place, policy, std::move(**grown));
            ReferenceVine vine;
            vine.row = std::to_string(row);
            vine.place = place.number;
            vine.tag = std::to_string(100 * row + place.number);
            for (int nth = 0; nth < demo_winters; ++nth) {
                vine.winters.push_back(life.winter(wish.last_winter - demo_winters + 1 + nth, nth));
                vine.winters.back().note = "invented, " + std::string(word_of(policy));
            }
            book.vines.push_back(std::move(vine));
            if (wish.progress) wish.progress(++done, demo_vines);
        }
    }
    demo.csv = book_csv({book}).text;
    return demo;
}

} // namespace spurwright::reference_vines
