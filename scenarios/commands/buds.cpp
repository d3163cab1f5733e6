// buds: how many buds last winter's prunings ask for, beside what the space holds, and the smaller of both.
#include <optional>

#include "scenarios/commands/cite.h"
#include "scenarios/commands/formula_option.h"
#include "scenarios/commands/quantities.h"
#include "scenarios/commands/verbs.h"
#include "scenarios/words/layout.h"
#include "sim/balance/bud_formula.h"
#include "sim/balance/bud_target.h"

namespace spurwright::commands {
namespace {

using namespace balance;

std::string_view key_of(Meeting meeting) {
    return meeting == Meeting::above ? "buds.above" : meeting == Meeting::below ? "buds.below" : "buds.agree";
}

Result<Answer> answer_buds(const Asked& asked, const Surroundings& around) {
    const std::string formula_text = *asked.value("--formula");
    const auto formula = read_formula(formula_text);
    if (!formula) return failure(formula.error());
    const auto kg = read_kilograms(*asked.value("--prunings"), "--prunings");
    if (!kg) return failure(kg.error());
    std::optional<double> spacing;
    if (const auto text = asked.value("--spacing")) {
        const auto metres = read_metres(*text, "--spacing");
        if (!metres) return failure(metres.error());
        if (!(*metres >= 0.3 && *metres <= 10)) // our choice: wider than any row that is pruned by hand
            return failure(refusal(Fault::out_of_range, "error.value.range", {{"text", *text}, {"low", std::string("0.3 m")}, {"high", std::string("10 m")}}, "--spacing"));
        spacing = *metres;
    }

    const FormulaBuds asked_for = buds_for(*formula, *kg);
    const std::string_view source = source_of(*formula);
    const words::Words& words = around.words;
    const Count by_weight{whole_buds(asked_for.buds)};
    Count smaller = by_weight;
    io::Json space;
    std::string space_text = words("buds.no-spacing") + "\n";
    if (spacing) {
        const BudTarget target = bud_target(asked_for.buds, *spacing);
        const Count low{whole_buds(target.by_space.low)}, house{whole_buds(target.by_space.house)}, high{whole_buds(target.by_space.high)};
        smaller = Count{whole_buds(target.smaller)};
        space = io::Json::list();
        space.push(low.value);
        space.push(high.value);
        space_text = words("buds.by-space", {{"low", low}, {"n", house}, {"high", high}}) + "\n" +
                     words("buds.leave", {{"n", smaller}}) + "\n" + words::wrapped(words(key_of(target.meeting)));
    }
    Answer answer;
    answer.object.set("buds", io::Json::number(asked_for.buds, 6));
    answer.object.set("rounded", by_weight.value);
    answer.object.set("by_space", std::move(space));
    answer.object.set("smaller", smaller.value);
    answer.object.set("small_vine", asked_for.small_vine);
    answer.object.set("formula", formula_text);
    answer.object.set("source", source.empty() ? std::string("-") : std::string(source));
    answer.object.set("cite", cite_json(source));
    answer.object.set("status", source.empty() ? "choice" : "read");

    answer.text = words("buds.by-weight", {{"n", by_weight}, {"exact", Ratio{asked_for.buds}}, {"formula", formula_text}}) + "\n" + space_text;
    if (asked_for.small_vine) answer.text += words("buds.small-vine") + "\n";
    answer.text += source.empty() ? words("buds.own-formula") + "\n" : words::wrapped(words("buds.source", {{"text", cite_text(source)}}));
    answer.text += words::wrapped(words("buds.not-advice"));
    return answer;
}

} // namespace

Verb buds_verb() {
    return {"buds", "", TextKey{"verb.buds"},
            {{"--formula", "A+B", TextKey{"option.formula"}, true}, {"--prunings", "W", TextKey{"option.prunings"}, true}, {"--spacing", "L", TextKey{"option.vine-spacing"}, false}},
            answer_buds};
}

} // namespace spurwright::commands
