#include "sim/rules/tool_choice.h"

#include "sim/rules/wound_size.h"

namespace spurwright::rules {

TextKey tool_key(Tool tool) {
    return TextKey{tool == Tool::shears ? "tool.shears" : tool == Tool::loppers ? "tool.loppers" : "tool.saw"};
}

Tool suitable_tool(Length diameter, int wood_age, const HouseRules& house) {
    const auto& asks = house.tool_choice;
    if (diameter <= (wood_age == 1 ? asks.shears_one_year : asks.shears_old)) return Tool::shears;
    return diameter <= asks.loppers ? Tool::loppers : Tool::saw;
}

PerMille mark_tool(const CutFacts& cut, const HouseRules& house) {
    const int out = static_cast<int>(suitable_tool(cut.diameter, cut.wood_age, house)) - static_cast<int>(cut.tool);
    return out <= 0 ? full_mark : out == 1 ? half_mark : no_mark;
}

PerMille mark_tool_choice(const std::vector<CutFacts>& cuts, const ClearingFacts& clearing, const HouseRules& house) {
    if (no_work_done(cuts, clearing)) return no_mark;
    if (cuts.empty()) return full_mark;
    int sum = 0;
    for (const CutFacts& cut : cuts) sum += mark_tool(cut, house).count;
    return {sum / static_cast<int>(cuts.size())};
}

Said say_tool_choice(const std::vector<CutFacts>& cuts, const ClearingFacts& clearing, const HouseRules& house) {
    const CutFacts* worst = nullptr;
    int wrong = 0;
    for (const CutFacts& cut : cuts) {
        if (mark_tool(cut, house) == full_mark) continue;
        ++wrong;
        if (!worst || mark_tool(cut, house) < mark_tool(*worst, house)) worst = &cut;
    }
    Said said;
    said.measured = wrong * 1000;
    said.unit = Unit::count;
    said.full = Wanted{0, 0};
    said.key = TextKey{no_work_done(cuts, clearing) ? "rule.tool-choice.no-cut"
                       : !worst                     ? "rule.tool-choice.full"
                                                    : "rule.tool-choice.small"};
    said.arguments = {{"n", Count{static_cast<std::int64_t>(cuts.size())}}, {"wrong", Count{wrong}}};
    if (worst) {
        said.arguments.push_back({"part", worst->axis});
        said.arguments.push_back({"measured", worst->diameter});
        said.arguments.push_back({"tool", tool_key(worst->tool)});
        said.arguments.push_back({"better", tool_key(suitable_tool(worst->diameter, worst->wood_age, house))});
    }
    said.if_lost = Mend::now;
    return said;
}

Said say_clean_tools() {
    Said said;
    said.key = TextKey{"rule.tool-choice.clean"};
    said.if_lost = Mend::now;
    return said;
}

const Rule tool_choice{RuleName::tool_choice, {"rule.tool-choice.asks"}, Group::cuts, Step::clear, Per::vine,
                       Status::choice,        tool_choice_claims,        {""}};

}  // namespace spurwright::rules
