// book suggest: buds for the coming winter by weight, by space, the smaller, and by the block's own years.
#include <cmath>

#include "scenarios/commands/cite.h"
#include "scenarios/commands/compare_lines.h"
#include "scenarios/commands/formula_option.h"
#include "scenarios/commands/own_store.h"
#include "scenarios/commands/quantities.h"
#include "scenarios/commands/spread_object.h"
#include "scenarios/commands/verbs.h"
#include "scenarios/io/house_rules_file.h"
#include "scenarios/io/safe_file.h"
#include "scenarios/reference_vines/suggest.h"
#include "scenarios/words/layout.h"

namespace spurwright::commands {
namespace {

using namespace reference_vines;

Count whole_count(double buds) { return Count{balance::whole_buds(buds)}; }

io::Json suggested_object(const SuggestedBuds& one, bool history) {
    io::Json o = io::Json::object();
    o.set("tag", one.tag.empty() ? io::Json() : io::Json(one.tag));
    o.set("row", one.tag.empty() ? io::Json() : io::Json(one.row));
    o.set("place", one.place ? io::Json(*one.place) : io::Json());
    o.set("prunings_g", one.prunings);
    o.set("kg_per_m", io::Json::number(one.kg_per_m, 3));
    o.set("class", std::string(word_of(one.size)));
    o.set("by_weight", whole_count(one.buds.by_weight).value);
    io::Json space = io::Json::list();
    for (const double end : {one.buds.by_space.low, one.buds.by_space.high}) space.push(whole_count(end).value);
    o.set("by_space", std::move(space));
    o.set("smaller", whole_count(one.buds.smaller).value);
    o.set("small_vine", one.small_vine);
    o.set("by_history", history ? io::Json(whole_count(one.by_history).value) : io::Json());
    o.set("history_low", history ? io::Json(whole_count(one.history_low).value) : io::Json());
    o.set("history_high", history ? io::Json(whole_count(one.history_high).value) : io::Json());
    o.set("kept", one.kept ? io::Json(*one.kept) : io::Json());
    return o;
}

// What the same vines changed by since the winter before that was weighed; null where no test is made of it.
io::Json since_object(const BlockSuggestion& suggested) {
    if (!suggested.change.tested) return {};
    io::Json o = io::Json::object();
    o.set("winter", suggested.before);
    o.set("pairs", suggested.change.pairs);
    o.set("mean_kg", io::Json::number(suggested.change.mean, 6));
    o.set("low_kg", io::Json::number(suggested.change.low, 6));
    o.set("high_kg", io::Json::number(suggested.change.high, 6));
    o.set("p", io::Json::number(suggested.change.p, 9));
    return o;
}

std::string suggestion_text(const BlockSuggestion& answer, const std::string& formula, const std::optional<std::string>& tag, const words::Words& words) {
    words::Table table;
    table.right = {false, false, true, true, true, true, true, true, true};
    table.rows = suggest_rows(answer, tag, words);
    std::string text = words("book.suggest-head", {{"block", answer.block.name}, {"winter", std::to_string(answer.winter)}, {"formula", formula}, {"n", Count{static_cast<std::int64_t>(answer.vines.size())}}}) + "\n";
    if (answer.block.invented) text += words::wrapped(words("book.invented-line"));
    text += "\n" + words::table_text(table) + "\n";
    if (!tag)
        for (const std::string& sentence : suggest_middle(answer, words)) text += words::wrapped(sentence);
    return text;
}

// The house rules that ask a vine of the block for so many buds: a practice vine judged by them is pruned to its last weight.
Result<io::HouseRulesFile> house_of(const BlockSuggestion& suggested, const SuggestedBuds& one, const io::Assets& assets) {
    auto base = io::load_house_rules("general", assets);
    if (!base) return failure(std::move(base.error()));
    io::HouseRulesFile file;
    file.base = "general";
    file.name = "reference-vine";
    file.title = suggested.block.name + (one.tag.empty() ? "" : ", " + one.tag) + ", " + std::to_string(suggested.winter);
    file.rules = base->rules;
    file.rules.bud_load.target = balance::whole_buds(one.buds.smaller);
    file.rules.set_by_house[rules::index_of(rules::RuleName::bud_load)] = true;
    file.own = {"bud-load.target"};
    if (const auto fault = rules::first_fault(file.rules))
        return failure({Fault::out_of_range, fault->key, {{"rule", std::string(fault->rule)}, {"parameter", std::string(fault->parameter)}}, {"--house", 0, 0, 0}});
    return file;
}

Result<SuggestedBuds> vine_asked(const BlockSuggestion& suggested, const std::optional<std::string>& tag) {
    if (!tag) return *suggested.middle;
    for (const SuggestedBuds& one : suggested.vines)
        if (one.tag == *tag) return one;
    return failure(refusal(Fault::unknown_part, "error.book.tag", {{"text", *tag}, {"winter", std::to_string(suggested.winter)}}, "--tag"));
}

Result<Answer> answer_book_suggest(const Asked& asked, const Surroundings& around) {
    balance::SizeSet sizes = balance::SizeSet::cool;
    if (const auto text = asked.value("--sizes")) {
        const auto read = read_choice<balance::SizeSet>(*text, "--sizes");
        if (!read) return failure(read.error());
        sizes = *read;
    }
    auto store = own_store_to_read();
    if (!store) return failure(store.error());
    if (!*store) return failure(unknown_block(asked.subject, {}));
    const auto book = book_of(**store, asked.subject);
    if (!book) return failure(book.error());
    const std::string own = book->front().block.formula;
    const std::string formula_text = asked.value("--formula").value_or(own.empty() ? "20+20" : own); // the usual one for vinifera [smith-2023]
    const auto formula = read_formula(formula_text);
    if (!formula) return failure(formula.error());
    const BlockSuggestion suggested = suggest(book->front(), *formula, sizes);
    if (suggested.vines.empty()) return failure(refusal(Fault::not_allowed, "error.book.nothing-weighed", {{"text", asked.subject}}, "book suggest"));
    const auto house_file = asked.value("--house"), tag = asked.value("--tag");
    const auto one_vine = vine_asked(suggested, tag);
    if (!one_vine) return failure(one_vine.error());
    if (house_file) {
        const auto house = house_of(suggested, *one_vine, around.assets);
        if (!house) return failure(house.error());
        if (auto done = io::write_file(*house_file, io::print_house_rules(*house)); !done) return failure(done.error());
    }
    const std::string_view source = balance::source_of(*formula);
    Answer answer;
    io::Json& o = answer.object;
    o.set("block", suggested.block.name);
    o.set("invented", suggested.block.invented);
    o.set("winter", suggested.winter);
    o.set("formula", formula_text);
    o.set("source", source.empty() ? std::string("-") : std::string(source));
    o.set("cite", cite_json(source));
    o.set("status", source.empty() ? "choice" : "read");
    io::Json vines = io::Json::list();
    for (const SuggestedBuds& one : suggested.vines)
        if (!tag || one.tag == *tag) vines.push(suggested_object(one, suggested.history.has_value()));
    o.set("vines", std::move(vines));
    o.set("middle", suggested_object(*suggested.middle, suggested.history.has_value()));
    o.set("history_years", suggested.history ? io::Json(suggested.history->years) : io::Json());
    o.set("middle_kept", suggested.kept ? io::Json::number(*suggested.kept, 1) : io::Json());
    o.set("if_light", whole_count(suggested.low).value);
    o.set("if_heavy", whole_count(suggested.high).value);
    o.set("since", since_object(suggested));
    o.set("house", house_file ? io::Json(*house_file) : io::Json());
    answer.text = suggestion_text(suggested, formula_text, tag, around.words);
    answer.text += source.empty() ? around.words("buds.own-formula") + "\n" : words::wrapped(around.words("buds.source", {{"text", cite_text(source)}}));
    if (house_file) answer.text += words::wrapped(around.words("book.house-written", {{"file", *house_file}, {"n", whole_count(one_vine->buds.smaller)}}));
    answer.text += words::wrapped(around.words("buds.not-advice"));
    return answer;
}

} // namespace

Verb book_suggest_verb() {
    return {"book suggest", "BLOCK", TextKey{"verb.book-suggest"}, {{"--formula", "A+B", TextKey{"option.formula"}}, {"--sizes", "cool|warm", TextKey{"option.size-set"}}, {"--tag", "TAG", TextKey{"option.tag"}}, {"--house", "FILE", TextKey{"option.house-out"}}}, answer_book_suggest};
}

} // namespace spurwright::commands
