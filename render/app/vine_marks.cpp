#include "render/app/vine_marks.h"

#include <algorithm>
#include <cmath>

#include "render/app/look_back_marks.h"
#include "render/app/shown_marks.h"
#include "render/ui/part_words.h"
#include "sim/vine/vine_query.h"

namespace spurwright::app {
namespace {

using practice::Practice;
using practice::Spot;

constexpr float tick_below_px = 12;  // width of a bud on the screen above which it counts itself (our choice)

void roles(MarkPen& pen) {
    for (const auto& stem : pen.shape.stems) {
        if (stem.mark == Role::none) continue;
        pen.outline(stem.axis, colour_of(stem.mark), 2, 0.25f);
        const auto& node = stem.nodes[std::min<std::size_t>(2, stem.nodes.size() - 1)];
        if (const auto at = pen.at(of(node.place))) pen.out.marks.tapes.push_back({*at, ui::tape_of(stem.mark), 30, {}, false});
    }
}

void hatched(MarkPen& pen, const practice::Shell& shell) {
    if (!shell.hatch) return;
    for (const auto& stem : pen.shape.stems)
        if (stem.wood == shape::Wood::two_year) pen.outline(stem.axis, 0x000000, 3, 0.45f);
}

void made(MarkPen& pen) {
    for (const auto& stem : pen.shape.stems)
        if (stem.end == shape::StemEnd::cut && stem.end_winters == 0 && stem.line.points().size() > 1) {
            const auto& points = stem.line.points();
            pen.bar(of(points.back().place), of(points.back().place) - of(points[points.size() - 2].place), true);
        }
    for (const auto& wound : pen.shape.wounds)
        if (wound.winters == 0) pen.bar(of(wound.face), of(wound.outward), true);
}

void laid(MarkPen& pen) {
    for (const Laid& laid : pen.practice.now().laid) {
        if (laid.winter != pen.practice.now().winter) continue;
        const shape::Stem* stem = pen.shape.find(laid.axis);
        if (!stem || stem->nodes.size() < 2) continue;
        const auto from = pen.at(of(stem->nodes[stem->nodes.size() - 2].place)), to = pen.at(of(stem->nodes.back().place));
        if (from && to) pen.out.marks.arrows.push_back({*to, unit(*from, *to)});
    }
}

void chosen(MarkPen& pen) {
    if (!pen.practice.chosen) return;
    pen.outline(pen.practice.chosen, ui::mark::hover, 3, 0.15f, true);  // no colour of a tape: it says nothing of what becomes of it
    const Axis* axis = pen.practice.now().find(pen.practice.chosen);
    int number = 0;
    for (const auto& bud : pen.shape.buds) {
        const auto& stem = pen.shape.stems[bud.stem];
        if (stem.axis != pen.practice.chosen || bud.kind != BudKind::node) continue;
        const Node* node = pen.practice.now().find(node_of(bud.bud));
        if (!axis || !node || !is_count_bud(pen.practice.now(), *axis, *node)) continue;
        ++number;
        const auto foot = pen.at(of(bud.foot)), tip = pen.at(of(bud.foot + 0.02 * bud.out));
        if (!foot || !tip) continue;
        const float px = scene::pixels_a_metre(pen.camera, glm::distance(pen.camera.eye, of(bud.foot)), static_cast<int>(pen.at.height)) * static_cast<float>(1.8 * bud.stem_radius);
        if (px < tick_below_px) pen.out.marks.ticks.push_back({*foot, unit(*foot, *tip), number});
    }
    if (const auto place = pen.practice.chosen_node ? place_of(pen.shape, pen.practice.now(), {pen.practice.chosen, pen.practice.chosen_node, {0}}) : std::nullopt)
        if (const auto at = pen.at(*place)) pen.out.marks.labels.push_back({*at, pen.ui.say("mark.node", {{"n", Count{index_of(pen.practice.chosen_node)}}}), {}, true});
}

// A cane in the hand, where it stands by now, and what it says of the bend.
void bent(MarkPen& pen) {
    const auto& bend = pen.practice.bend();
    if (!bend) return;
    const practice::Pull& pull = pen.practice.pulled();
    const auto nodes = pen.practice.now().nodes_of(*pen.practice.now().find(pull.cane));
    ui::BentCane drawn;
    drawn.level = static_cast<int>(bend->level);
    for (std::size_t i = 0; i < bend->places.size() && i < nodes.size() && !nodes[i].removed; ++i) {
        const glm::vec3 place = of(bend->places[i]);
        const auto on = pen.at(place);
        if (!on) continue;
        const float px = scene::pixels_a_metre(pen.camera, glm::distance(pen.camera.eye, place), static_cast<int>(pen.at.height));
        drawn.points.push_back(*on);
        drawn.widths.push_back(px * static_cast<float>(in_m(mean_diameter(nodes[i]))));
        if (nodes[i].id == bend->worst) drawn.worst = *on;
        if (nodes[i].id == pull.node) pen.out.marks.labels.insert(pen.out.marks.labels.begin(), ui::bend_label(pen.ui, *bend, *on));
    }
    if (drawn.points.size() > 1) pen.out.marks.bent.push_back(std::move(drawn));
}

void hover(MarkPen& pen, const practice::Shell& shell, std::optional<ui::At> pointer) {
    const Spot& spot = pen.practice.hover;
    if (!spot || !pointer) return;
    pen.outline(spot.axis, ui::mark::hover, 2, 0.1f, true);
    if (practice::cuts(pen.practice.tool)) return;
    pen.out.marks.labels.insert(pen.out.marks.labels.begin(), ui::hover_label(pen.ui, pen.practice.now(), spot, pen.practice.calliper_asked, shell.settings.units == settings::UnitsName::inch, *pointer));
}

void would_cut_here(MarkPen& pen, const std::optional<practice::CutPreview>& cut, std::optional<ui::At> pointer) {
    if (!practice::cuts(pen.practice.tool)) return;
    const bool pointed = pen.practice.hover && pointer;
    if (!cut) {
        const auto why = pen.practice.why_not_cut();
        if (why && pointed) pen.out.marks.labels.insert(pen.out.marks.labels.begin(), ui::refusal_label(pen.ui, *why, *pointer));
        return;
    }
    const auto place = pen.goes(*cut);
    if (!place) return;
    const auto at = pen.at(*place);
    if (at) pen.out.marks.labels.insert(pen.out.marks.labels.begin(), ui::cut_label(pen.ui, *cut, pointed ? *pointer : *at));
}

}  // namespace

Overlay overlay_of(const Practice& practice, const practice::Shell& shell, const shape::VineShape& shape, const scene::Camera& camera,
                   const std::optional<practice::CutPreview>& would_cut, std::optional<ui::At> pointer, const ui::Ui& ui, float width, float height) {
    MarkPen pen{practice, shape, camera, ui, Projection(camera, width, height)};
    if (practice.drill()) {
        mark_touch(pen, *practice.drill());
        return std::move(pen.out);
    }
    if (practice.questions()) {
        mark_question(pen, *practice.questions());
        return std::move(pen.out);
    }
    hatched(pen, shell);
    if (practice.watching()) mark_act(pen, *practice.watching());
    if (practice.finished()) {
        mark_look_back(pen, *practice.look());
        return std::move(pen.out);
    }
    roles(pen);
    made(pen);
    laid(pen);
    chosen(pen);
    if (practice.pulled()) {  // the hand is full
        bent(pen);
        return std::move(pen.out);
    }
    hover(pen, shell, pointer);
    would_cut_here(pen, would_cut, pointer);
    return std::move(pen.out);
}

}  // namespace spurwright::app
