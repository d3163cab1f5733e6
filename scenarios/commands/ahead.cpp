// ahead: what a plan brings in the seasons to come, beside the best plan and, where asked, another, under the same
// drawn weather.
#include <algorithm>
#include <cmath>
#include <cstdio>

#include "scenarios/ahead/look_ahead.h"
#include "scenarios/commands/house_rules_option.h"
#include "scenarios/commands/judged.h"
#include "scenarios/commands/quantities.h"
#include "scenarios/commands/verbs.h"
#include "scenarios/commands/winter_object.h"
#include "scenarios/io/site_file.h"
#include "scenarios/io/temperature_file.h"
#include "scenarios/io/variety_file.h"
#include "scenarios/words/layout.h"
#include "sim/planning/cordon.h"
#include "sim/vine/words_of.h"

namespace spurwright::commands {
namespace {

using ahead::Figure;

struct NamedLife {
    std::string_view name; // "mine", "best", "against"
    Vine pruned;
    ahead::Ahead ahead;
};

// A wish and what it points to.
struct OwnWish {
    ahead::AheadWish wish;
    std::shared_ptr<const growth::Variety> variety;
    std::shared_ptr<const weather::Climate> climate;
};

Result<OwnWish> wish_of(const Asked& asked, const Vine& vine) {
    OwnWish own_wish;
    ahead::AheadWish& wish = own_wish.wish;
    wish = ahead::usual_wish(vine);
    const auto seasons = read_whole(*asked.value("--seasons"), "--seasons", 1, ahead::most_seasons);
    if (!seasons) return failure(seasons.error());
    wish.seasons = static_cast<int>(*seasons);
    if (const auto text = asked.value("--variety")) {
        auto variety = io::load_variety(*text, "--variety");
        if (!variety) return failure(std::move(variety.error()));
        own_wish.variety = *std::move(variety);
        wish.variety = own_wish.variety.get();
    }
    const auto site = io::load_site(asked.value("--climate").value_or(std::string(ahead::usual_climate)), "--climate");
    if (!site) return failure(site.error());
    own_wish.climate = site->climate;
    wish.climate = own_wish.climate.get();
    bool south = false;
    if (const auto text = asked.value("--south")) {
        const auto yes = read_yes(*text, "--south");
        if (!yes) return failure(yes.error());
        south = *yes;
    }
    if (const auto path = asked.value("--temperatures")) {
        const auto file = io::load_temperatures(*path);
        if (!file) return failure(file.error());
        auto own = io::seasons_of(*file, south, *path);
        if (!own) return failure(own.error());
        wish.own = *std::move(own);
    }
    return own_wish;
}

// Acts that wait for spring, as days of the year in the north; what is not said was done in winter.
Result<void> late_acts(const Asked& asked, ahead::AheadWish& wish) {
    constexpr int midsummer = 181;
    const auto day = [&](const char* option, int least, int& into) -> Result<void> {
        const auto text = asked.value(option);
        if (!text) return {};
        const auto number = read_whole(*text, option, least, midsummer);
        if (!number) return failure(number.error());
        into = static_cast<int>(*number);
        return {};
    };
    weather::LateActs& late = wish.late;
    if (auto cut = day("--cut-on", 1, late.cut_day); !cut) return cut;
    late.laid_day = late.cut_day; // nobody lays what is still to be cut
    if (auto laid = day("--laid-on", std::max(1, late.cut_day), late.laid_day); !laid) return laid;
    wish.kickers = asked.has("--kickers-until");
    return day("--kickers-until", 1, late.upright_cut);
}

io::Json life_object(const NamedLife& life, bool kickers) {
    io::Json winters = io::Json::list();
    for (const ahead::AheadWinter& winter : life.ahead.winters) winters.push(winter_object(winter));
    io::Json o = io::Json::object();
    o.set("name", life.name);
    o.set("kickers_laid", kickers ? io::Json(life.ahead.kickers_laid) : io::Json());
    o.set("winters", std::move(winters));
    return o;
}

std::string spread_text(Figure figure, const ahead::Spread& spread, const words::Words& words) {
    if (!spread.known) return "-";
    const int decimals = decimals_of(figure) > 1 ? decimals_of(figure) : 0;
    const auto shown = [&](double value) {
        char text[40];
        const bool none = std::fabs(value) < 0.5 * std::pow(10.0, -decimals); // no "-0"
        std::snprintf(text, sizeof text, "%.*f", decimals, none ? 0.0 : value);
        return std::string(text);
    };
    return words("ahead.spread",
                 {{"median", shown(spread.median)}, {"low", shown(spread.low)}, {"high", shown(spread.high)}});
}

std::string winter_text(const std::vector<NamedLife>& lives, std::size_t year, const words::Words& words) {
    words::Table table;
    std::vector<std::string> head{words("ahead.winter", {{"n", Count{lives.front().ahead.winters[year].winter}}})};
    for (const NamedLife& life : lives) head.push_back(words("ahead.plan." + std::string(life.name)));
    table.rows.push_back(std::move(head));
    for (std::size_t i = 0; i < ahead::figure_count; ++i) {
        const auto figure = static_cast<Figure>(i);
        std::vector<std::string> row{words("ahead.figure." + std::string(word_of(figure)))};
        for (const NamedLife& life : lives) row.push_back(spread_text(figure, life.ahead.winters[year][figure], words));
        table.rows.push_back(std::move(row));
    }
    table.right = {false, true, true, true};
    return words::table_text(table) + "\n";
}

// Nothing where the vine has none.
std::optional<Plan> best_plan_of(const Vine& vine, const rules::HouseRules& house) {
    if (vine.system == System::cordon) return planning::best_of_cordon(vine, house).plan;
    const auto best = planning::Planning(vine, house).best();
    return best ? std::optional(best->plan) : std::nullopt;
}

Result<Answer> answer_ahead(const Asked& asked, const Surroundings& around) {
    const auto found = find_vine(asked.subject);
    if (!found) return failure(found.error());
    const auto house = house_rules_asked(asked, around, found->vine.system);
    if (!house) return failure(house.error());
    if (auto fine = can_be_judged(found->vine, asked.subject); !fine) return failure(std::move(fine.error()));
    if (found->vine.system == System::cordon)
        for (const char* option : {"--laid-on", "--kickers-until"})
            if (asked.has(option))
                return failure(refusal(Fault::not_allowed, "error.ahead.of-cordon", {{"text", std::string(option)}}, option));
    auto whole_wish = wish_of(asked, found->vine);
    if (!whole_wish) return failure(whole_wish.error());
    ahead::AheadWish* const wish = &whole_wish->wish;
    if (auto late = late_acts(asked, *wish); !late) return failure(late.error());
    std::vector<NamedLife> lives;
    const auto mine = prune_by_text(found->vine, *asked.value("--plan"));
    if (!mine) return failure(mine.error());
    if (auto meant = is_for_this_system(found->vine, mine->plan, mine->after); !meant) return failure(meant.error());
    lives.push_back({"mine", mine->after, {}});
    if (const auto best = best_plan_of(found->vine, house->rules)) {
        auto after = prune(found->vine, *best);
        if (!after) return failure(std::move(after.error()));
        lives.push_back({"best", *std::move(after), {}});
    }
    if (const auto other = asked.value("--against")) {
        auto against = prune_by_text(found->vine, *other);
        if (!against) {
            if (against.error().where.source == "plan") against.error().where.source = "--against";
            return failure(std::move(against.error()));
        }
        if (auto meant = is_for_this_system(found->vine, against->plan, against->after); !meant) {
            meant.error().where.source = "--against";
            return failure(std::move(meant.error()));
        }
        lives.push_back({"against", std::move(against->after), {}});
    }
    int done = 0;
    const int of = static_cast<int>(lives.size()) * ahead::weather_draws;
    for (NamedLife& life : lives)
        life.ahead = ahead::look_ahead(life.pruned, house->rules, *wish, [&] {
            ++done;
            if (around.progress) around.progress(done, of);
        });
    const bool own = !wish->own.empty();
    const words::Words& words = around.words;
    Answer answer;
    io::Json& o = answer.object;
    o.set("draws", ahead::weather_draws);
    o.set("climate", own ? io::Json() : io::Json(wish->climate->name));
    o.set("variety", wish->variety->name);
    io::Json rules = io::Json::object();
    for (std::size_t i = 0; i < words_of(weather::BudbreakRule{}).size(); ++i)
        rules.set(word_of(static_cast<weather::BudbreakRule>(i)), lives.front().ahead.budbreaks[i]);
    o.set("budbreak_by", std::move(rules));
    io::Json plans = io::Json::list();
    for (const NamedLife& life : lives) plans.push(life_object(life, wish->kickers));
    o.set("plans", std::move(plans));
    for (std::size_t year = 0; year < lives.front().ahead.winters.size(); ++year)
        answer.text += winter_text(lives, year, words);
    if (wish->kickers)
        for (const NamedLife& life : lives)
            answer.text += words::wrapped(words("ahead.kickers", {{"plan", TextKey{"ahead.plan." + std::string(life.name)}},
                                                                  {"n", Count{life.ahead.kickers_laid}},
                                                                  {"of", Count{ahead::weather_draws}}}));
    answer.text += words::wrapped(
        words("ahead.about", {{"n", Count{ahead::weather_draws}},
                              {"variety", std::string(wish->variety->shown)},
                              {"climate", own ? *asked.value("--temperatures") : std::string(wish->climate->name)}}));
    answer.text +=
        words::wrapped(words("ahead.budbreak", {{"hardiness", std::to_string(lives.front().ahead.budbreaks[0])},
                                                {"heat", std::to_string(lives.front().ahead.budbreaks[1])},
                                                {"none", std::to_string(lives.front().ahead.budbreaks[2])}}));
    answer.text += words::wrapped(words("ahead.no-forecast")) + words::wrapped(words("safety.line"));
    return answer;
}

} // namespace

Verb ahead_verb() {
    return {"ahead",
            "CODE|FILE",
            TextKey{"verb.ahead"},
            {{"--plan", "TEXT", TextKey{"option.plan"}, true},
             {"--seasons", "N", TextKey{"option.seasons"}, true},
             {"--against", "TEXT", TextKey{"option.against"}},
             {"--variety", "NAME|FILE", TextKey{"option.ahead-variety"}},
             {"--climate", "NAME|FILE", TextKey{"option.climate"}},
             {"--temperatures", "FILE", TextKey{"option.temperatures"}},
             {"--cut-on", "DAY", TextKey{"option.cut-on"}},
             {"--laid-on", "DAY", TextKey{"option.laid-on"}},
             {"--kickers-until", "DAY", TextKey{"option.kickers-until"}},
             {"--south", "yes|no", TextKey{"option.south"}},
             rules_option()},
            answer_ahead};
}

} // namespace spurwright::commands
