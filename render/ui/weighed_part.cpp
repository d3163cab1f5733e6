#include "render/ui/weighed_part.h"

#include <algorithm>

#include "render/ui/widgets.h"

namespace spurwright::ui {
namespace {

namespace ask = practice::ask;
using weighing::NextBuds;

Asked log_of(const NextBuds& next, Ui& ui) {
    Asked asked;
    for (std::size_t i = 0; i < next.task().log.size(); ++i) {
        const weighing::LoggedWinter& one = next.task().log[i];
        const std::string label = ui.say(one.wet ? "screen.next.winter-wet" : "screen.next.winter", {{"n", counted(i + 1)}, {"winter", std::to_string(one.winter)}, {"weight", one.prunings}});
        if (next.verdict()) text(ui, ui.say(next.left_out(i) ? "screen.next.left-out" : "screen.next.stands", {{"text", label}}));
        else if (toggle(ui, "next.log." + std::to_string(i + 1), label, !next.left_out(i))) asked = ask::LeaveOut{i, !next.left_out(i)};
    }
    return asked;
}

Asked three_numbers(const NextBuds& next, Views& views, Ui& ui) {
    WeighView& view = views.weigh;
    bool entered = false;
    const auto one = [&](std::string_view name, std::string_view label, Field& field, const Arguments& arguments) {
        entered |= text_field(ui, name, ui.say("screen.next.buds-hint"), field, ui.em() * 8, true);
        const std::string words = ui.say(label, arguments);
        flow(ui, text_size(ui, words, 0).x);
        row_text(ui, words);
    };
    one("next.by-weight", "screen.next.by-weight", view.by_weight, {{"formula", next.task().formula}, {"weight", next.written()}});
    one("next.by-space", "screen.next.by-space", view.by_space, {{"spacing", next.task().spacing}});
    one("next.keep", "screen.next.keep", view.keep, {});
    const bool typed = !view.by_weight.text.empty() && !view.by_space.text.empty() && !view.keep.text.empty();
    if ((button(ui, "next.say", ui.say("screen.do.weigh-said"), {Weight::main, typed, false, 0, ui.say("screen.key.enter")}) || entered) && typed)
        return ask::SayNext{view.by_weight.text, view.by_space.text, view.keep.text};
    return {};
}

void came_of_buds(const NextBuds& next, Ui& ui) {
    const weighing::NextVerdict& verdict = *next.verdict();
    const balance::BudTarget& buds = verdict.of_written;
    const auto whole = [](double n) { return Count{balance::whole_buds(n)}; };
    strong_text(ui, ui.say("screen.next.said", {{"by_weight", Count{next.said().by_weight}}, {"by_space", Count{next.said().by_space}}, {"keep", Count{next.said().keep}}}));
    if (verdict.slips.empty()) text(ui, ui.say("weigh.next.right"));
    for (const weighing::FoundNextSlip& slip : verdict.slips) text(ui, ui.words.sentence(slip.key, slip.arguments));
    text(ui, ui.say("weigh.next.three", {{"by_weight", whole(buds.by_weight)}, {"low", whole(buds.by_space.low)}, {"house", whole(buds.by_space.house)}, {"high", whole(buds.by_space.high)}, {"n", whole(buds.smaller)}}));
    text(ui, ui.say(buds.meeting == balance::Meeting::above ? "buds.above" : buds.meeting == balance::Meeting::below ? "buds.below" : "buds.agree"));
    if (whole(verdict.of_true.smaller) != whole(buds.smaller)) text(ui, ui.say("weigh.next.of-true", {{"n", whole(verdict.of_true.smaller)}}));
    if (verdict.dry > 0)
        text(ui, ui.say("weigh.next.beside-" + std::string(word_of(verdict.beside)), {{"n", Count{verdict.dry}}, {"weight", next.written()}, {"low", verdict.least}, {"middle", verdict.middle}, {"high", verdict.most}}));
    text(ui, ui.say("buds.not-advice"), true);
}

} // namespace

void weighed_part(Ui& ui, const weighing::Verdict& verdict) {
    strong_text(ui, ui.say(verdict.within ? "weigh.within" : "weigh.off", {{"written", verdict.written}, {"bundle", verdict.truly.mass}}));
    text(ui, ui.say("weigh.truly", {{"bundle", verdict.truly.mass}, {"low", verdict.truly.least}, {"high", verdict.truly.most}}), true);
    if (verdict.slips.empty()) text(ui, ui.say("weigh.nothing-wrong"));
    for (std::size_t i = 0; i < verdict.slips.size(); ++i) {
        const weighing::FoundSlip& slip = verdict.slips[i];
        text(ui, ui.say("screen.weigh.slip", {{"n", counted(i + 1)}, {"text", ui.words.sentence(slip.key, slip.arguments)}}));
    }
    text(ui, ui.say(verdict.for_the_trend ? "weigh.for-the-trend" : "weigh.not-for-the-trend"));
}

Asked next_buds_part(const State& state, Views& views, Ui& ui) {
    const NextBuds& next = *state.next_buds;
    Asked asked;
    head_text(ui, ui.say("screen.next.title"));
    text(ui, ui.say(next.verdict() ? "screen.next.log" : "screen.next.asks-log"));
    take(asked, log_of(next, ui));
    rule_line(ui);
    if (next.verdict()) {
        came_of_buds(next, ui);
    } else {
        text(ui, ui.say("screen.next.asks-buds"));
        take(asked, three_numbers(next, views, ui));
    }
    return asked;
}

} // namespace spurwright::ui
