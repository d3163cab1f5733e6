#include "scenarios/practice/scene_questions.h"

#include <algorithm>
#include <array>
#include <cstdlib>

#include "scenarios/practice/cut_preview.h"
#include "sim/balance/bud_formula.h"
#include "sim/balance/bud_target.h"
#include "sim/planning/eye_noise.h"
#include "sim/planning/planning.h"
#include "sim/rules/judge.h"
#include "sim/rules/say.h"
#include "sim/rules/tool_choice.h"
#include "sim/vine/vine_query.h"

namespace spurwright::practice {
namespace {

using balance::Meeting;
using scenes::Ask;

constexpr std::size_t most_answers = 4, cuts_asked = 4;
constexpr double mg_per_kg = 1e6;

Worded number_answer(int n) { return {{"question.number"}, {{"n", Count{n}}}}; }

// What the tag and the space ask for, by the formula that the scenes name: 20+20 [smith-2023].
struct Numbers {
    balance::FormulaBuds weight;
    balance::BudTarget target;
    int by_weight = 0, low = 0, by_space = 0, high = 0, smaller = 0;
};

Numbers numbers_of(Mass tag, Length spacing) {
    Numbers n;
    n.weight = balance::buds_for({}, static_cast<double>(tag.count) / mg_per_kg);
    n.target = balance::bud_target(n.weight.buds, in_m(spacing));
    n.by_weight = balance::whole_buds(n.weight.buds);
    n.low = balance::whole_buds(n.target.by_space.low);
    n.by_space = balance::whole_buds(n.target.by_space.house);
    n.high = balance::whole_buds(n.target.by_space.high);
    n.smaller = std::min(n.by_weight, n.by_space);
    return n;
}

class QuestionMaker {
public:
    QuestionMaker(const Vine& vine, const rules::HouseRules& house, const std::optional<Mass>& tag) : vine_(vine), house_(house), planning_(vine, house) {
        if (tag) numbers_ = numbers_of(*tag, vine.spacing);
        if (tag) tag_ = *tag;
    }

    void ask(Ask what) {
        switch (what) {
        case Ask::job: return job();
        case Ask::by_weight: return by_weight();
        case Ask::by_space: return by_space();
        case Ask::smaller: return smaller();
        case Ask::tell: return tell();
        case Ask::which_cane: return which_cane();
        case Ask::when: return when();
        case Ask::tools: return tools();
        }
    }
    std::vector<Question> all() && { return std::move(all_); }

private:
    void add(Worded asks, std::vector<Worded> answers, std::size_t right, Worded why, Spot spot = {}) {
        all_.push_back({std::move(asks), std::move(answers), right, std::move(why), spot, std::nullopt});
    }

    Arguments of_numbers() const {
        return {{"weight", tag_}, {"spacing", vine_.spacing}, {"by_weight", Count{numbers_->by_weight}}, {"low", Count{numbers_->low}},
                {"by_space", Count{numbers_->by_space}}, {"high", Count{numbers_->high}}, {"n", Count{numbers_->smaller}}};
    }

    void job() {
        if (!numbers_) return;
        const rules::Offers offers = rules::offers(vine_, house_);
        const bool no_cane = offers.sides[0].canes.empty() && offers.sides[1].canes.empty();
        const Meeting meeting = numbers_->target.meeting;
        const std::size_t right = no_cane ? 3 : meeting == Meeting::agree ? 0 : meeting == Meeting::below ? 1 : 2;
        static constexpr std::array<std::string_view, 4> why{"question.why.job-fill", "question.why.job-short", "question.why.job-space", "question.why.job-renew"};
        add({{"question.ask.job"}, of_numbers()}, {{{"question.job.fill"}}, {{"question.job.short"}}, {{"question.job.space"}}, {{"question.job.renew"}}}, right,
            {TextKey{why[right]}, of_numbers()});
    }

    // The right one among the other numbers of the same vine, the smallest first.
    void number(std::string_view asks, int right, std::string_view why) {
        std::vector<int> shown{right};
        for (const int other : {numbers_->by_weight, numbers_->by_space, numbers_->high, numbers_->low, 20})
            if (shown.size() < most_answers && std::find(shown.begin(), shown.end(), other) == shown.end()) shown.push_back(other);
        std::stable_sort(shown.begin(), shown.end());
        std::vector<Worded> answers;
        answers.reserve(shown.size());
        for (const int n : shown) answers.push_back(number_answer(n));
        const auto at = static_cast<std::size_t>(std::find(shown.begin(), shown.end(), right) - shown.begin());
        add({TextKey{asks}, of_numbers()}, std::move(answers), at, {TextKey{why}, of_numbers()});
    }

    void by_weight() {
        if (numbers_) number("question.ask.by-weight", numbers_->by_weight, numbers_->weight.small_vine ? "question.why.by-weight-small" : "question.why.by-weight");
    }
    void by_space() {
        if (numbers_) number("question.ask.by-space", numbers_->by_space, "question.why.by-space");
    }
    void smaller() {
        if (numbers_) number("question.ask.smaller", numbers_->smaller, "question.why.smaller");
    }

    void tell() {
        if (!numbers_) return;
        const Meeting meeting = numbers_->target.meeting;
        const std::size_t right = meeting == Meeting::above ? 0 : meeting == Meeting::below ? 1 : 2;
        add({{"question.ask.tell"}, of_numbers()}, {{{"question.tell.above"}}, {{"question.tell.below"}}, {{"question.tell.agree"}}}, right,
            {TextKey{right == 0 ? "buds.above" : right == 1 ? "buds.below" : "buds.agree"}});
    }

    // On the side that offers fewest canes, two or more: the two that allow most, as far apart as no eye could confuse.
    void which_cane() {
        const rules::Offers offers = rules::offers(vine_, house_);
        std::optional<Side> side;
        for (const Side one : both_sides) {
            const std::size_t canes = offers.sides[rules::index_of(one)].canes.size();
            if (canes >= 2 && (!side || canes < offers.sides[rules::index_of(*side)].canes.size())) side = one;
        }
        if (!side) return;
        std::vector<planning::BestPlan> best;
        std::vector<AxisId> laid;
        for (const AxisId cane : offers.sides[rules::index_of(*side)].canes)
            if (auto plan = planning_.best_laying(cane, *side)) best.push_back(*std::move(plan)), laid.push_back(cane);
        if (best.size() < 2) return;
        std::vector<std::size_t> order(best.size());
        for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
        std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return best[a].points > best[b].points; });
        const std::size_t first = order[0], second = order[1];
        if (best[first].points - best[second].points <= planning::tolerance(vine_, house_, best[first].plan)) return;
        const bool far_second = laid[first] < laid[second];
        const auto words = [&](std::size_t i) { return Worded{{"question.cane"}, {{"part", laid[i]}, {"measured", distance_to_head(vine_, *vine_.find(laid[i]))}}}; };
        const bool spur_is_other = (*side == Side::left ? best[first].choice.left_spur : best[first].choice.right_spur) == laid[second];
        add({{"question.ask.which-cane"}, {{"side", rules::side_key(*side)}}}, far_second ? std::vector<Worded>{words(first), words(second)} : std::vector<Worded>{words(second), words(first)},
            far_second ? 0 : 1,
            {TextKey{spur_is_other ? "question.why.cane-and-spur" : "question.why.cane"},
             {{"part", laid[first]}, {"other", laid[second]}, {"points", best[first].points}, {"less", best[second].points}}},
            {laid[second], {}, {-1}});
    }

    void when() { add({{"question.ask.when"}}, {{{"question.when.together"}}, {{"question.when.laid"}}, {{"question.when.cleared"}}}, 0, {{"question.why.when"}}); }

    struct ClearCut {
        Cut cut;
        rules::CutFacts facts;
    };

    // Cuts of a plan that are clear of where one tool ends and the next begins, by the tool that suits them.
    void add_clear(std::vector<ClearCut>& clear, const Plan& plan) const {
        const auto after = prune(vine_, plan);
        if (!after) return;
        const rules::PlanFacts facts = rules::measure_plan(vine_, *after, house_, rules::offers(vine_, house_));
        for (const Edit& edit : plan.edits) {
            const auto* cut = std::get_if<Cut>(&edit);
            const rules::CutFacts* fact = cut ? only_cut_of(facts.cuts, axis_of(cut->past)) : nullptr;
            if (!fact || !fact->on_vine || !clear_of_edges(*fact)) continue;
            clear.push_back({*cut, *fact});
            clear.back().cut.tool = rules::suitable_tool(fact->diameter, fact->wood_age, house_);
        }
    }

    // Four cuts, each tool in turn: of the best plan, and of old wood or a dead stub at its base where a tool is missing.
    void tools() {
        const auto best = planning_.best();
        if (!best) return;
        std::vector<ClearCut> clear;
        add_clear(clear, best->plan);
        for (const Axis& axis : vine_.axes)
            if (!axis.removed && !is_trunk(axis) && age(vine_, axis) > 1) add_missing(clear, axis);
        std::vector<std::size_t> chosen;
        for (std::size_t round = 0; round < cuts_asked; ++round)
            for (const Tool tool : {Tool::saw, Tool::loppers, Tool::shears})
                for (std::size_t i = 0; i < clear.size(); ++i) {
                    if (clear[i].cut.tool != tool || std::find(chosen.begin(), chosen.end(), i) != chosen.end()) continue;
                    if (chosen.size() < cuts_asked) chosen.push_back(i);
                    break;
                }
        std::stable_sort(chosen.begin(), chosen.end());  // in the order of work
        for (const std::size_t i : chosen) tool_question(clear[i].cut, clear[i].facts);
    }

    void add_missing(std::vector<ClearCut>& clear, const Axis& axis) const {
        std::vector<ClearCut> one;
        add_clear(one, {{cut_at(vine_, {axis.id, {}, {-1}}, Tool::saw)}});
        if (one.size() != 1 || std::any_of(clear.begin(), clear.end(), [&](const ClearCut& have) { return have.cut.tool == one.front().cut.tool; })) return;
        clear.push_back(one.front());
    }

    static const rules::CutFacts* only_cut_of(const std::vector<rules::CutFacts>& cuts, AxisId axis) {
        const rules::CutFacts* found = nullptr;
        for (const rules::CutFacts& cut : cuts) {
            if (cut.axis != axis) continue;
            if (found) return nullptr;
            found = &cut;
        }
        return found;
    }

    bool clear_of_edges(const rules::CutFacts& cut) const {
        const auto& asks = house_.tool_choice;
        const std::int32_t off = 2 * house_.acceptable.see_diameter.count;
        for (const Length edge : {cut.wood_age == 1 ? asks.shears_one_year : asks.shears_old, asks.loppers})
            if (std::abs((cut.diameter - edge).count) < off) return false;
        return true;
    }

    void tool_question(const Cut& cut, const rules::CutFacts& facts) {
        const auto& asks = house_.tool_choice;
        const Arguments thick{{"part", axis_of(cut.past)}, {"measured", facts.diameter}, {"shears", facts.wood_age == 1 ? asks.shears_one_year : asks.shears_old}, {"loppers", asks.loppers}};
        add({{"question.ask.tool"}, {{"part", axis_of(cut.past)}}}, {{{"question.tool.shears"}}, {{"question.tool.loppers"}}, {{"question.tool.saw"}}}, static_cast<std::size_t>(cut.tool),
            {TextKey{facts.wood_age == 1 ? "question.why.tool" : "question.why.tool-old"}, thick}, {axis_of(cut.past), cut.past, std::max(cut.beyond, Length{})});
    }

    const Vine& vine_;
    const rules::HouseRules& house_;
    planning::Planning planning_;
    std::optional<Numbers> numbers_;
    Mass tag_{};
    std::vector<Question> all_;
};

}  // namespace

int SceneQuestions::right() const {
    return static_cast<int>(std::count_if(all_.begin(), all_.end(), [](const Question& q) { return q.was_right(); }));
}

void SceneQuestions::answer(std::size_t which) {
    if (here() && !answered() && which < here()->answers.size()) all_[at_].said = which;
}

void SceneQuestions::next() {
    if (answered()) ++at_;
}

std::vector<Question> scene_questions(const Vine& vine, const rules::HouseRules& house, const std::vector<scenes::Ask>& asks, const std::optional<Mass>& tag) {
    QuestionMaker maker(vine, house, tag);
    for (const scenes::Ask one : asks) maker.ask(one);
    return std::move(maker).all();
}

}  // namespace spurwright::practice
