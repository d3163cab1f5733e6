// grow: a vine by its history, from settings; the code that names it, and its cane candidates.
#include <random>

#include "scenarios/commands/grow_row.h"
#include "scenarios/commands/quantities.h"
#include "scenarios/commands/switch_option.h"
#include "scenarios/commands/verbs.h"
#include "scenarios/commands/vine_answer.h"
#include "scenarios/io/site_file.h"
#include "scenarios/io/variety_file.h"
#include "scenarios/words/layout.h"
#include "sim/growth/history.h"
#include "sim/growth/row.h"
#include "sim/growth/variety.h"

namespace spurwright::commands {
namespace {

constexpr std::int64_t most_seed = (std::int64_t{1} << 40) - 1;

// Reads options into a site, one at a time; the first refusal stays.
class SiteOptions {
public:
    explicit SiteOptions(const Asked& asked) : asked_(asked) {}
    std::optional<Error> refused;

    template <class Read, class Into>
    void take(std::string_view option, Read read, Into into) {
        const auto text = asked_.value(option);
        if (!text || refused) return;
        auto value = read(*text, option);
        if (value)
            into(*std::move(value));
        else
            refused = std::move(value.error());
    }
    void metres(std::string_view option, double& into, double factor = 1) {
        take(option, read_metres, [&](double value) { into = value * factor; });
    }
    template <class E>
    void word(std::string_view option, E& into) {
        take(option, read_choice<E>, [&](E value) { into = value; });
    }
    void yes(std::string_view option, bool& into) {
        take(option, read_yes, [&](bool value) { into = value; });
    }

private:
    const Asked& asked_;
};

// "30cm,60cm,90cm" above the fruiting wire; "none".
Result<std::vector<double>> read_catch(std::string_view text, std::string_view option) {
    std::vector<double> pairs;
    if (text == "none") return pairs;
    while (true) {
        const std::size_t comma = std::min(text.find(','), text.size());
        const auto metres = read_metres(text.substr(0, comma), option);
        if (!metres) return failure(metres.error());
        pairs.push_back(*metres);
        if (comma == text.size()) return pairs;
        text.remove_prefix(comma + 1);
    }
}

Result<growth::Site> site_of_options(const Asked& asked) {
    growth::Site site;
    if (const auto text = asked.value("--site")) {
        auto file = io::load_site(*text, "--site");
        if (!file) return failure(std::move(file.error()));
        site = std::move(file->vineyard);
    }
    SiteOptions o(asked);
    o.take(
        "--age", [](auto text, auto option) { return read_whole(text, option, -1'000'000, 1'000'000); },
        [&](std::int64_t v) { site.age = static_cast<int>(v); });
    o.word("--vigour", site.vigour);
    o.yes("--frost", site.frost);
    o.metres("--spacing", site.spacing_m);
    o.metres("--rows", site.rows_m);
    o.metres("--wire", site.wire_m);
    o.word("--system", site.system);
    o.take(
        "--variety", [](auto text, auto option) { return io::load_variety(std::string(text), option); },
        [&](std::shared_ptr<const growth::Variety> v) {
            site.variety = v->name;
            if (!growth::find_variety(v->name)) site.own_variety = std::move(v);
        });
    site.graft = growth::usually_grafted(growth::variety_of(site));
    o.word("--pruner", site.pruner);
    o.take(
        "--trunks", [](auto text, auto option) { return read_whole(text, option, 1, 2); },
        [&](std::int64_t v) { site.trunks = static_cast<int>(v); });
    o.word("--neighbours", site.neighbours);
    o.take("--catch", read_catch, [&](std::vector<double> v) { site.catch_m = std::move(v); });
    o.metres("--head-below", site.head_below_mm, 1000);
    if (asked.value("--hedge") == "off")
        site.hedge_m.reset();
    else
        o.take("--hedge", read_metres, [&](double v) { site.hedge_m = v; });
    if (const auto text = asked.value("--thinning"); text && *text != "on" && *text != "off" && !o.refused)
        o.refused = unknown_word(*text, "--thinning", "on, off");
    else
        site.thinning = text.value_or("on") == "on";
    o.word("--harvest", site.harvest);
    o.yes("--graft", site.graft);
    o.word("--wires-in-winter", site.wires_in_winter);
    o.yes("--drip", site.drip);
    o.take(
        "--seed", [](auto text, auto option) { return read_whole(text, option, 0, most_seed); },
        [&](std::int64_t v) { site.seed = static_cast<std::uint64_t>(v); });
    if (!asked.has("--seed")) {
        std::random_device fresh; // a fresh vine each time: the code printed names it for good
        const std::uint64_t high = fresh(), low = fresh();
        site.seed = (high << 32 | low) & static_cast<std::uint64_t>(most_seed);
    }
    if (o.refused) return failure(*std::move(o.refused));
    if (const auto fine = growth::check(site); !fine) return failure(fine.error());
    return site;
}

Result<Answer> answer_grow(const Asked& asked, const Surroundings& around) {
    const auto site = site_of_options(asked);
    if (!site) return failure(site.error());
    if (const auto row = asked.value("--row")) {
        if (asked.has("--tempt")) return failure(refusal(Fault::bad_text, "error.grow.tempt-row", {}, "--tempt"));
        const auto places = read_whole(*row, "--row", 1, growth::most_places);
        if (!places) return failure(places.error());
        return row_answer(*site, static_cast<int>(*places), asked.value("-o"), around);
    }
    auto vine = growth::grow_vine(*site);
    if (!vine) return failure(std::move(vine.error()));
    auto coded = growth::coded(*site);
    io::Json tempting = io::Json::list();
    if (const auto text = asked.value("--tempt")) {
        const auto switches = read_switches(*text, "--tempt");
        if (!switches) return failure(switches.error());
        for (const growth::Temptation& temptation : *switches) {
            auto made = growth::tempted(*vine, temptation);
            if (!made) return failure(std::move(made.error()));
            vine = std::move(made->vine);
            tempting.push(name_of(made->axis));
        }
        coded.reset(); // a code says no switches
    }
    const FoundVine found{*std::move(vine), coded ? print_code(*coded) : "", *site};
    if (const auto path = asked.value("-o")) {
        io::VineFile file;
        file.vine = found.vine;
        file.code = found.code;
        if (auto written = io::save_vine_file(*path, file); !written) return failure(std::move(written.error()));
    }
    Answer answer = vine_answer(found, around.words);
    if (asked.has("--tempt")) answer.object.set("tempting", std::move(tempting));
    if (const auto path = asked.value("-o")) {
        answer.object.set("file", *path);
        answer.text += around.words("show.written", {{"file", *path}}) + "\n";
    } else if (!coded) {
        answer.text += words::wrapped(around.words("grow.no-code"));
    }
    return answer;
}

} // namespace

Verb grow_verb() {
    const auto about = [](std::string_view key) { return TextKey{key}; };
    return {"grow",
            "",
            about("verb.grow"),
            {{"--seed", "N", about("option.seed")},
             {"--age", "N", about("option.age")},
             {"--vigour", "low|moderate|high", about("option.vigour")},
             {"--frost", "yes|no", about("option.frost")},
             {"--spacing", "L", about("option.spacing")},
             {"--rows", "L", about("option.rows")},
             {"--wire", "L", about("option.wire")},
             {"--pruner", "W", about("option.pruner")},
             {"--neighbours", "both|near|far|none", about("option.neighbours")},
             {"--system", "W", about("option.system")},
             {"--variety", "NAME|FILE", about("option.variety")},
             {"--site", "NAME|FILE", about("option.site")},
             {"--trunks", "1|2", about("option.trunks")},
             {"--catch", "L,L,...|none", about("option.catch")},
             {"--head-below", "L", about("option.head-below")},
             {"--hedge", "L|off", about("option.hedge")},
             {"--thinning", "on|off", about("option.thinning")},
             {"--harvest", "hand|machine", about("option.harvest")},
             {"--graft", "yes|no", about("option.graft")},
             {"--wires-in-winter", "up|dropped", about("option.wires-in-winter")},
             {"--drip", "yes|no", about("option.drip")},
             {"--tempt", "W:near|far,...", about("option.tempt")},
             {"--row", "N", about("option.row")},
             {"-o", "FILE", about("option.output")}},
            answer_grow};
}

} // namespace spurwright::commands
