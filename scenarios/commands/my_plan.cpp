#include "scenarios/commands/my_plan.h"

#include <cstdlib>

#include "scenarios/commands/judged.h"
#include "scenarios/words/layout.h"
#include "sim/pruning/plan_text.h"

namespace spurwright::commands {

using io::Json;

PerMille share_of(std::uint64_t part, std::uint64_t of) {
    return {of == 0 ? 0 : static_cast<std::int32_t>(static_cast<double>(part) * 1000.0 / static_cast<double>(of))};
}

Json my_plan_object(const MyPlan& mine, Tenths best, Tenths least) {
    Json o = Json::object();
    o.set("plan", print_plan(mine.plan));
    o.set("points", mine.points);
    o.set("behind", best - mine.points);
    o.set("as_good", mine.points >= least);
    o.set("margin", mine.points - least); // below 0: so far from as good
    o.set("plans_better", mine.tally.better);
    o.set("plans_equal", mine.tally.equal);
    o.set("better_share", share_of(mine.tally.better, mine.tally.counted));
    return o;
}

std::string my_plan_text(const MyPlan& mine, Tenths best, Tenths least, const words::Words& words) {
    const Tenths margin = mine.points - least;
    const auto count = [](std::uint64_t n) { return Count{static_cast<std::int64_t>(n)}; };
    return words::wrapped(words(margin.count >= 0 ? "acceptable.is-as-good" : "acceptable.is-not",
                                {{"points", mine.points},
                                 {"behind", best - mine.points},
                                 {"margin", Tenths{std::abs(margin.count)}},
                                 {"better", count(mine.tally.better)},
                                 {"counted", count(mine.tally.counted)},
                                 {"share", share_of(mine.tally.better, mine.tally.counted)}})) +
           "\n";
}

Result<std::optional<Pruned>> plan_beside(const Asked& asked, const Vine& vine) {
    const auto text = asked.value("--plan");
    if (!text) return std::optional<Pruned>{};
    auto pruned = prune_by_text(vine, *text);
    if (!pruned) return failure(std::move(pruned.error()));
    if (auto meant = is_for_this_system(vine, pruned->plan, pruned->after); !meant) return failure(meant.error());
    return std::optional<Pruned>{*std::move(pruned)};
}

Result<std::vector<AxisId>> measured_asked(const Asked& asked, const Vine& vine) {
    std::vector<AxisId> pieces;
    const std::string text = asked.value("--measured").value_or("");
    for (std::size_t from = 0; from < text.size();) {
        const std::size_t end = std::min(text.find(',', from), text.size());
        const std::string name = text.substr(from, end - from);
        const auto axis = read_axis(name);
        if (!axis || !vine.find(*axis))
            return failure(refusal(Fault::unknown_part, "error.acceptable.piece", {{"text", name}}, "--measured"));
        pieces.push_back(*axis);
        from = end + 1;
    }
    return pieces;
}

} // namespace spurwright::commands
