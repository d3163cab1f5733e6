#include "render/app/look_back_marks.h"

#include <algorithm>

#include "render/ui/part_words.h"

namespace spurwright::app {
namespace {

constexpr float shortest_tape = 20, longest_tape = 60, px_a_point = 6;  // pixels (our choice)
constexpr int most_words = 4;  // at twin lines: a cordon has a dozen, and the dots say it too

void hang(MarkPen& pen, const practice::Walked& w, bool current) {
    if ((w.folded && !current) || w.stop == practice::Stop::remark) return;
    const glm::vec3 there = w.axis ? place_of(pen.shape, pen.practice.now(), {w.axis, w.node, {0}}).value_or(of(pen.shape.head))
                            : w.side == Side::none ? of(pen.shape.head)
                                                   : of(pen.shape.crowns[w.side == Side::right ? 1 : 0]);
    const auto at = pen.at(there);
    if (!at) return;
    const float length = std::clamp(shortest_tape + px_a_point * static_cast<float>(in_points(w.lost)), shortest_tape, longest_tape);
    pen.out.marks.tapes.push_back({*at, ui::tape_of(w.mend), length, current ? pen.ui.say("mend." + std::string(word_of(w.mend))) : std::string(), current});
}

void draw_twin(MarkPen& pen, const practice::Twin& twin, bool as_good, bool with_word) {
    ui::TwinLine line;
    if (with_word) line.word = pen.ui.say(as_good ? "mark.as-good" : "mark.better");
    for (const Place& place : twin.places)
        if (const auto at = pen.at(of(place))) line.points.push_back({at->x + 3, at->y - 3});  // beside its own wood
    if (line.points.size() > 1) pen.out.marks.twins.push_back(std::move(line));
}

// A cut tried elsewhere: the piece as it would then lie, a bar where it would end, and what would go where it is shorter.
void draw_moved(MarkPen& pen, const practice::MovedCut& cut) {
    const AxisId axis = cut.of().axis;
    pen.outline(axis, ui::mark::hover, 2, 0.1f);
    const auto& places = cut.line.places;
    if (places.size() < 2) return;
    ui::TwinLine line;
    line.word = pen.ui.say("mark.what-if");
    for (const Place& place : places)
        if (const auto at = pen.at(of(place))) line.points.push_back({at->x + 3, at->y - 3});
    if (line.points.size() > 1) pen.out.marks.twins.push_back(std::move(line));
    pen.bar(of(places.back()), of(places.back()) - of(places[places.size() - 2]), false);
    ui::GoingLine going;
    for (const Node& node : pen.practice.now().nodes_of(*pen.practice.now().find(axis)))
        if (!node.removed && node.id >= cut.line.last)
            if (const auto at = pen.at(of(node.place))) going.points.push_back(*at);
    if (going.points.size() > 1) pen.out.marks.going.push_back(std::move(going));
}

}  // namespace

void mark_look_back(MarkPen& pen, const practice::LookBack& look) {
    const bool at_piece = look.current < look.walk.size();
    const AxisId lit = look.moved ? look.moved->of().axis : at_piece ? look.walk[look.current].axis : AxisId{};
    for (const auto& stem : pen.shape.stems)
        if (lit && stem.axis != lit && !stem.trunk) pen.out.emphases.push_back({stem.axis, {}, 0, {glm::vec3(0), 0, 0.4f, 0, false}});
    if (lit) pen.outline(lit, ui::mark::hover, 2, 0.1f);
    for (std::size_t i = 0; i < look.walk.size(); ++i) hang(pen, look.walk[i], i == look.current);
    if (look.moved) return draw_moved(pen, *look.moved);
    if (!look.twin_shown || !look.plans || look.as_good_shown >= look.twins.size()) return;
    const auto& all = look.twins[look.as_good_shown];
    int drawn = 0;
    for (const practice::Twin& twin : at_piece ? practice::twins_for(look, look.walk[look.current], all) : all) draw_twin(pen, twin, look.mine_as_good, ++drawn <= most_words);
}

}  // namespace spurwright::app
