#include <algorithm>

#include "render/ui/panel.h"
#include "render/ui/wall_parts.h"
#include "scenarios/quiz/item_words.h"
#include "scenarios/quiz/results.h"
#include "sim/rules/rule_list.h"

namespace spurwright::ui {
namespace {

using quiz::Results;

std::string share_words(const Ui& ui, const quiz::Share& share) {
    return ui.say("screen.wall.share-of", {{"n", Count{share.right}}, {"of", Count{share.of}}});
}

void by_item(const quiz::Quiz& quiz, const Results& results, Ui& ui) {
    strong_text(ui, ui.say("screen.wall.by-question"));
    for (const quiz::ItemResult& result : results.items) {
        const quiz::Item& item = quiz.items()[result.item];
        std::string line = ui.say("screen.wall.result-line", {{"n", Count{static_cast<std::int64_t>(result.item) + 1}},
                                                              {"text", ui.say("quiz.kind." + std::string(word_of(item.kind)))},
                                                              {"share", share_words(ui, result.last)}});
        if (result.first != result.last) line += "  " + ui.say("screen.wall.before-talking", {{"share", share_words(ui, result.first)}});
        if (result.dropped) line += "  " + ui.say("screen.wall.was-dropped");
        else if (result.rekeyed) line += "  " + ui.say("screen.wall.was-keyed-anew");
        else if (!result.scored) line += "  " + ui.say("screen.wall.was-talk-only");
        text(ui, line, result.dropped || !result.scored);
        if (result.commonest_wrong && !result.dropped)
            text(ui, ui.say("screen.wall.wrong-line", {{"answer", quiz::answer_text(ui.words, item, *result.commonest_wrong)}, {"n", Count{result.commonest_wrong_count}}}), true);
    }
}

void by_rule(const Results& results, Ui& ui) {
    strong_text(ui, ui.say("screen.wall.by-rule"));
    for (const quiz::RuleResult& rule : results.rules) {
        const std::string name = ui.say("rule." + std::string(rules::key_of(rule.rule)) + ".name");
        text(ui, ui.say(rule.named() ? "screen.wall.rule-line" : "screen.wall.rule-few", {{"text", name}, {"share", share_words(ui, rule.answers)}}), !rule.named());
    }
}

void by_voter(const Results& results, Ui& ui) {
    bool any = false;
    for (const auto& [voter, share] : results.voters) {
        if (!any) strong_text(ui, ui.say("screen.wall.by-post"));
        any = true;
        text(ui, ui.say(voter.way == quiz::Way::post ? "screen.wall.post-line" : "screen.wall.person-line", {{"n", Count{voter.number}}, {"share", share_words(ui, share)}}));
    }
}

} // namespace

Asked wall_results(const State& state, Views& views, Ui& ui) {
    const quiz::Quiz& quiz = *state.crew->quiz();
    const Results results = quiz::results_of(quiz);
    Asked asked;
    PanelPlace place = middle_panel(ui, 60);
    place.keys_scroll = true;
    panel_begin(ui, "wall", place);
    head_text(ui, ui.say("screen.wall.results"));
    take(asked, command_button(ui, state, views, "wall", "wall-close", Weight::main, false));
    take(asked, command_button(ui, state, views, "wall", "wall-reopen", Weight::plain, false, true));
    take(asked, command_button(ui, state, views, "wall", "find", Weight::quiet, true, true));
    if (results.items.empty()) text(ui, ui.say("screen.wall.no-results"));
    else strong_text(ui, ui.say("screen.wall.all", {{"share", share_words(ui, results.all)}}));
    if (!results.to_show.empty()) {
        strong_text(ui, ui.say("screen.wall.to-show"));
        for (const rules::RuleName name : results.to_show) text(ui, ui.say("rule." + std::string(rules::key_of(name)) + ".asks"));
    }
    if (!results.items.empty()) {
        rule_line(ui);
        by_item(quiz, results, ui);
        rule_line(ui);
        by_rule(results, ui);
        by_voter(results, ui);
    }
    rule_line(ui);
    text(ui, ui.say("screen.wall.not-for-pay"), true);
    unchecked_line(ui);
    panel_end(ui);
    return asked;
}

} // namespace spurwright::ui
