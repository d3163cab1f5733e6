// The house's own rules: every number a vine is judged by, with what the works say, changed by a step and judged at once.
#include <algorithm>

#include "render/ui/asked.h"
#include "render/ui/panel.h"
#include "render/ui/screens.h"
#include "render/ui/shown_parts.h"
#include "scenarios/commands/cite.h"
#include "scenarios/house/parameter_parts.h"
#include "scenarios/words/measures.h"
#include "sim/core/hash.h"
#include "sim/rules/findings.h"
#include "sim/rules/rule_list.h"

namespace spurwright::ui {
namespace {

namespace ask = practice::ask;
using house::Measured;
using house::Part;
using house::Value;

const rules::Rule* rule_named(std::string_view key) {
    const auto at = std::find_if(rules::all_rules.begin(), rules::all_rules.end(), [&](const rules::Rule* rule) { return rule->key() == key; });
    return at == rules::all_rules.end() ? nullptr : *at;
}

std::string dashed(std::string_view name) {
    std::string key(name);
    std::replace(key.begin(), key.end(), '_', '-');
    return key;
}

std::string group_name(const Ui& ui, std::string_view group) {
    return rule_named(group) ? ui.say("rule." + std::string(group) + ".name") : ui.say("house.group." + dashed(group));
}

std::string value_text(const Ui& ui, const Value& value) {
    if (value.measured == Measured::yes) return ui.say(value.thousandths ? "screen.house.yes" : "screen.house.no");
    if (value.measured == Measured::word) return ui.say("house.word." + std::string(value.word));
    if (value.open) return ui.say("screen.house.none");
    const std::string number = words::number_text(value.thousandths, 3, 3, ui.words.numbers());
    switch (value.measured) {
    case Measured::mm: return number + " " + ui.say("unit.mm");
    case Measured::deg: return number + " " + ui.say("unit.deg");
    case Measured::per_metre: return number + " " + ui.say("unit.per_m");
    case Measured::points: return ui.say("screen.house.points", {{"text", number}});
    case Measured::turns: return ui.say("screen.house.turns", {{"text", number}});
    case Measured::share:  // over one it is so many times something
        if (value.ranged || value.thousandths > 1000) return number + " " + ui.say("unit.ratio");
        return words::number_text(value.thousandths, 1, 1, ui.words.numbers()) + " " + ui.say("unit.percent");
    default: return number;
    }
}

std::string part_name(const Ui& ui, const Part& part, const Value& value) {
    const std::string name = ui.say("house.value." + dashed(part.name));
    if (!value.ranged) return name;
    return ui.say(part.upper ? "screen.house.to" : "screen.house.from", {{"text", name}});
}

// What a value is, and a step either way; what it was as shipped, where it differs.
Asked part_row(Ui& ui, const State& state, const Part& part) {
    const Value value = house::value_of(state.shell.house.rules, part), shipped = house::value_of(state.shell.house_shipped, part);
    const std::string name = "house." + std::string(part.rule) + "." + std::string(part.name) + (part.upper ? ".to" : ""),
                      shown = part_name(ui, part, value);
    Asked asked;
    if (value.measured == Measured::yes) {
        if (toggle(ui, name, shown, value.thousandths != 0)) asked = ask::HouseStep{part, 1};
    } else {
        if (value.measured != Measured::word) {
            if (button(ui, name + ".less", "–")) asked = ask::HouseStep{part, -1};
            ImGui::SameLine();
        }
        if (button(ui, name + ".more", value.measured == Measured::word ? ui.say("screen.house.switch") : "+")) asked = ask::HouseStep{part, 1};
        ImGui::SameLine();
        row_text(ui, ui.say("screen.house.value", {{"name", shown}, {"text", value_text(ui, value)}}));
    }
    const bool differs = value.thousandths != shipped.thousandths || value.open != shipped.open || value.word != shipped.word;
    if (!differs) return asked;
    const std::string back = ui.say("screen.house.as-shipped", {{"text", value_text(ui, shipped)}});
    flow(ui, button_width(ui, back));
    if (button(ui, name + ".back", back, {Weight::quiet})) asked = ask::HouseAsShipped{part};
    return asked;
}

std::string ends_text(const Ui& ui, const Claim& claim) {
    const auto number = [&](double value) { return words::number_text(static_cast<std::int64_t>(value * 1000 + (value < 0 ? -0.5 : 0.5)), 3, 3, ui.words.numbers()); };
    const bool low = claim.low > -1e9, high = claim.high < 1e9;
    if (!low && !high) return {};
    const std::string_view key = !high ? "rules.at-least" : !low ? "rules.up-to" : claim.low < claim.high || claim.high < claim.low ? "rules.from-to" : "rules.exactly";
    const std::string range = ui.say(key, {{"low", low ? number(claim.low) : ""}, {"high", high ? number(claim.high) : ""}});
    return claim.unit.empty() ? range : range + " " + std::string(claim.unit);
}

// Works side by side, so that where they disagree it is seen.
void works(Ui& ui, const rules::Rule& rule) {
    if (rule.claims.empty()) text(ui, ui.say("screen.house.no-work"), true);
    for (const Claim& claim : rule.claims) {
        const std::string ends = ends_text(ui, claim);
        text(ui, ends.empty() ? ui.say("screen.house.work-says", {{"text", commands::cite_text(claim.source->key)}, {"place", std::string(claim.place)}})
                              : ui.say("screen.house.work-number", {{"text", commands::cite_text(claim.source->key)}, {"place", std::string(claim.place)}, {"range", ends}}));
    }
}

Asked one_group(Ui& ui, const State& state, HouseView& view) {
    Asked asked;
    const rules::Rule* rule = rule_named(view.group);
    strong_text(ui, group_name(ui, view.group));
    text(ui, ui.say(rule ? "rule." + view.group + ".asks" : "house.about." + dashed(view.group)));
    if (rule) {
        const Status status = state.shell.house.rules.set_by_house[rules::index_of(rule->name)] ? Status::house : rule->status;
        shown_who_says(ui, *rule, status);
    }
    for (const Part& part : house::parts_of(view.group)) take(asked, part_row(ui, state, part));
    if (rule && fold(ui, "house.works", ui.say("screen.house.works"), view.works_open)) works(ui, *rule);
    if (button(ui, "house.back", ui.say("screen.house.all"), {Weight::main})) view.group.clear();
    return asked;
}

bool own(const State& state, std::string_view group) {
    return std::any_of(state.shell.house.own.begin(), state.shell.house.own.end(), [&](const std::string& key) { return key.starts_with(std::string(group) + "."); });
}

Asked all_groups(Ui& ui, const State& state, HouseView& view) {
    Asked asked;
    strong_text(ui, ui.say("screen.house.begin-from"));
    const bool cordon = state.practice && state.practice->start().system == System::cordon;
    for (const std::string_view set : io::shipped_house_sets)
        if (cordon == (set == "spur-cordon") && choice(ui, "house.set." + std::string(set), ui.say("house." + std::string(set)), state.shell.house.base == set))
            asked = ask::HouseFrom{std::string(set)};
    strong_text(ui, ui.say("screen.house.values"));
    for (const std::string_view group : house::groups()) {
        const rules::Rule* rule = rule_named(group);
        std::string second;
        if (rule) second = state.shell.house.rules.of(rule->name).on ? ui.say("screen.house.points", {{"text", words::points_text(Tenths{state.shell.house.rules.weight(rule->name)}, ui.words.numbers())}}) : ui.say("screen.house.off");
        if (own(state, group)) second = ui.say("screen.house.own-here", {{"text", second}});
        if (list_row(ui, "house.group." + std::string(group), group_name(ui, group), false, second)) view = {std::string(group), false, view.files_open, view.path};
    }
    if (fold(ui, "house.files", ui.say("screen.house.files"), view.files_open)) {
        (void)text_field(ui, "house.path", ui.say("screen.house.path"), view.path, ImGui::GetContentRegionAvail().x);
        const bool any = !view.path.text.empty();
        if (button(ui, "house.out", ui.say("screen.house.write-out"), {Weight::plain, any})) asked = ask::HouseOut{view.path.text};
        flow(ui, button_width(ui, ui.say("screen.house.read-in")));
        if (button(ui, "house.in", ui.say("screen.house.read-in"), {Weight::plain, any})) asked = ask::HouseIn{view.path.text};
    }
    return asked;
}

// How the vine in hand stands under them.
void vine_line(Ui& ui, const State& state) {
    const practice::LookBack* look = state.practice && state.practice->look() ? &*state.practice->look() : nullptr;
    if (!look) return text(ui, ui.say("screen.house.unfinished"), true);
    if (!look->plans || look->plans->none()) return strong_text(ui, ui.say("screen.house.vine", {{"points", look->mine.points}}));
    strong_text(ui, ui.say("screen.house.vine-best", {{"points", look->mine.points}, {"best", look->plans->best().points}}));
}

} // namespace

std::optional<Request> screen_house(const State& state, Views& views, Ui& ui) {
    const ImVec2 screen = ImGui::GetIO().DisplaySize;
    Asked asked;
    PanelPlace place;
    place.x = place.y = ui.grid.gap();
    place.width = std::min(ui.em() * 34, screen.x - 2 * ui.grid.gap());
    place.most_height = screen.y - 2 * ui.grid.gap();
    panel_begin(ui, "house", place);
    head_text(ui, ui.say("screen.house.title"));
    vine_line(ui, state);
    text(ui, ui.say("screen.house.set", {{"hash", hash_text(rules::rule_set_hash(state.shell.house.rules))}, {"n", counted(state.shell.house.own.size())}}), true);
    take(asked, views.house.group.empty() ? all_groups(ui, state, views.house) : one_group(ui, state, views.house));
    rule_line(ui);
    const bool vine = state.practice != nullptr;
    take(asked, command_button(ui, state, views, "house", vine ? "to-vine" : "home", Weight::plain, false));
    if (!state.shell.house.own.empty()) {
        const std::string all = ui.say("screen.house.all-as-shipped");
        flow(ui, button_width(ui, all));
        if (button(ui, "house.reset", all, {Weight::quiet})) asked = ask::HouseAsShipped{};
    }
    take(asked, command_button(ui, state, views, "house", "find", Weight::quiet, true, true));
    unchecked_line(ui);
    panel_end(ui);
    take(asked, say_panel(state, ui, 0));
    return asked;
}

} // namespace spurwright::ui
