// vine-size: one-year prunings a metre of row, and the class of it.
#include "scenarios/commands/cite.h"
#include "scenarios/commands/quantities.h"
#include "scenarios/commands/verbs.h"
#include "scenarios/words/layout.h"
#include "sim/balance/vine_size.h"

#include <cmath>

namespace spurwright::commands {
namespace {

Result<Answer> answer_vine_size(const Asked& asked, const Surroundings& around) {
    const auto kg = read_kilograms(*asked.value("--prunings"), "--prunings");
    if (!kg) return failure(kg.error());
    const auto spacing = read_metres(*asked.value("--spacing"), "--spacing");
    if (!spacing) return failure(spacing.error());
    if (!(*spacing >= 0.3 && *spacing <= 10)) // our choice, as for buds
        return failure(refusal(Fault::out_of_range, "error.value.range", {{"text", *asked.value("--spacing")}, {"low", std::string("0.3 m")}, {"high", std::string("10 m")}}, "--spacing"));
    balance::SizeSet set = balance::SizeSet::cool;
    if (const auto word = asked.value("--set")) {
        const auto read = read_choice<balance::SizeSet>(*word, "--set");
        if (!read) return failure(read.error());
        set = *read;
    }
    const double size = balance::size_of(*kg, *spacing);
    const balance::SizeClass found = balance::size_class(size, set);
    Answer answer;
    answer.object.set("kg_per_m", io::Json::number(size, 6));
    answer.object.set("class", balance::words_of(found)[static_cast<std::size_t>(found)]);
    answer.object.set("source", "kliewer-2005");
    answer.object.set("cite", cite_json("kliewer-2005"));
    answer.object.set("status", "choice");
    answer.text = around.words("vine-size.is", {{"grams", Count{std::llround(size * 1000)}}}) + "\n" +
                  around.words("vine-size." + std::string(balance::words_of(found)[static_cast<std::size_t>(found)])) + "\n" +
                  words::wrapped(around.words("vine-size.about"));
    return answer;
}

} // namespace

Verb vine_size_verb() {
    return {"vine-size", "", TextKey{"verb.vine-size"},
            {{"--prunings", "W", TextKey{"option.prunings"}, true}, {"--spacing", "L", TextKey{"option.vine-spacing"}, true}, {"--set", "cool|warm", TextKey{"option.size-set"}, false}},
            answer_vine_size};
}

} // namespace spurwright::commands
