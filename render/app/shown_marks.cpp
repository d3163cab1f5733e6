#include "render/app/shown_marks.h"

#include "render/ui/part_words.h"
#include "sim/vine/vine_query.h"

namespace spurwright::app {

void mark_act(MarkPen& pen, const practice::Watching& watching) {
    const practice::WatchedAct* act = watching.shown();
    if (!act || !act->edit) return;
    const auto place = place_of(pen.shape, pen.practice.now(), act->spot);
    const auto at = place ? pen.at(*place) : std::nullopt;
    if (at) pen.out.marks.rings.push_back(*at);
    if (watching.goes()) {
        (void)pen.goes(*watching.goes());
        if (!at) return;
        ui::Label label = ui::cut_label(pen.ui, *watching.goes(), *at);
        const Axis& axis = *pen.practice.now().find(act->spot.axis);
        if (age(pen.practice.now(), axis) > 1) label.first = pen.ui.words.sentence(act->named.key, act->named.arguments);  // no buds to keep
        pen.out.marks.labels.push_back(std::move(label));
        return;
    }
    if (!watching.lies().empty()) {
        ui::TwinLine line;
        for (const Place& p : watching.lies())
            if (const auto on = pen.at(of(p))) line.points.push_back(*on);
        pen.out.marks.twins.push_back(std::move(line));
    }
    const auto* mark = std::get_if<Mark>(&*act->edit);
    pen.outline(act->spot.axis, mark ? colour_of(mark->role) : ui::mark::hover, 3, 0.15f, true);
    if (mark && at) pen.out.marks.tapes.push_back({*at, ui::tape_of(mark->role), 36, {}, false});
    if (!at) return;
    ui::Label label;
    label.at = *at;
    label.first = pen.ui.words.sentence(act->named.key, act->named.arguments);
    pen.out.marks.labels.push_back(std::move(label));
}

void mark_touch(MarkPen& pen, const practice::TouchDrill& drill) {
    if (!drill.here()) return;
    const auto place = place_of(pen.shape, pen.practice.now(), drill.here()->spot);
    const auto at = place ? pen.at(*place) : std::nullopt;
    if (!at) return;
    pen.out.marks.rings.push_back(*at);
    if (!drill.answered()) return;
    pen.outline(drill.here()->spot.axis, ui::mark::hover, 2, 0.1f, true);
    ui::Label label;
    label.at = *at;
    label.first = pen.ui.say(drill.here()->older ? "screen.drill.is-older" : "screen.drill.is-one-year");
    pen.out.marks.labels.push_back(std::move(label));
}

void mark_question(MarkPen& pen, const practice::SceneQuestions& questions) {
    const practice::Question* asked = questions.here();
    if (!asked) return;
    if (asked->spot) {
        const auto place = place_of(pen.shape, pen.practice.now(), asked->spot);
        if (const auto at = place ? pen.at(*place) : std::nullopt) pen.out.marks.rings.push_back(*at);
    }
    for (std::size_t i = 0; i < asked->answers.size(); ++i)
        for (const Named& argument : asked->answers[i].arguments) {
            const auto* axis = std::get_if<AxisId>(&argument.value);
            if (!axis) continue;
            pen.outline(*axis, ui::mark::hover, 2, 0.15f, true);
            const std::uint32_t joints = pen.practice.now().find(*axis)->node_count;
            const auto place = place_of(pen.shape, pen.practice.now(), {*axis, node_id(*axis, std::min(joints - 1, 4u)), {0}});
            if (const auto at = place ? pen.at(*place) : std::nullopt) pen.out.marks.digits.push_back({*at, static_cast<int>(i) + 1, asked->said && i == asked->right, asked->said && i != asked->right, {}});
        }
}

}  // namespace spurwright::app
