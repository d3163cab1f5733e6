#include "render/app/vine_marks.h"

#include <algorithm>
#include <cmath>

#include "render/ui/part_words.h"
#include "sim/pruning/legal_edits.h"
#include "sim/vine/vine_query.h"

namespace spurwright::app {
namespace {

using practice::LookBack;
using practice::Practice;
using practice::Spot;

constexpr float tick_below_px = 12;        // width of a bud on the screen above which it counts itself
constexpr float shortest_tape = 20, longest_tape = 60, px_a_point = 6;

glm::vec3 of(shape::Vec3 v) { return {v.x, v.y, v.z}; }
glm::vec3 of(const Place& p) { return {in_m(p.x), in_m(p.y), in_m(p.z)}; }

// sRGB of a mark's colour, as the picture takes it.
glm::vec3 rgb(unsigned c) { return {static_cast<float>((c >> 16) & 255) / 255.0f, static_cast<float>((c >> 8) & 255) / 255.0f, static_cast<float>(c & 255) / 255.0f}; }

const shape::StemNode* stem_node(const shape::VineShape& shape, NodeId id) {
    const shape::Stem* stem = shape.find(axis_of(id));
    if (!stem) return nullptr;
    for (const auto& node : stem->nodes)
        if (node.node == id) return &node;
    return nullptr;
}

ui::At unit(ui::At from, ui::At to) {
    const float x = to.x - from.x, y = to.y - from.y, l = std::max(std::sqrt(x * x + y * y), 1e-3f);
    return {x / l, y / l};
}

unsigned colour_of(Role role) {
    switch (role) {
        case Role::left:
        case Role::right: return ui::mark::stays;
        case Role::spur: return ui::mark::spur;
        case Role::kicker:
        case Role::spare: return ui::mark::spare;
        case Role::remove: return ui::mark::goes;
        case Role::none: break;
    }
    return 0;
}

class Builder {
public:
    Builder(const Practice& practice, const practice::Shell& shell, const shape::VineShape& shape, const scene::Camera& camera, const ui::Ui& ui, float width,
            float height)
        : practice_(practice), shell_(shell), shape_(shape), camera_(camera), ui_(ui), at_(camera, width, height), height_(height) {}

    Overlay out;

    // ---- while pruning
    void roles() {
        for (const auto& stem : shape_.stems) {
            if (stem.mark == Role::none) continue;
            outline(stem.axis, colour_of(stem.mark), 2, 0.25f);
            const auto& node = stem.nodes[std::min<std::size_t>(2, stem.nodes.size() - 1)];
            if (const auto at = at_(of(node.place))) out.marks.tapes.push_back({*at, ui::tape_of(stem.mark), 30, {}, false});
        }
    }
    void hatched() {
        if (!shell_.hatch) return;
        for (const auto& stem : shape_.stems)
            if (stem.wood == shape::Wood::two_year) outline(stem.axis, 0x000000, 3, 0.45f);
    }
    void made() {
        for (const auto& stem : shape_.stems)
            if (stem.end == shape::StemEnd::cut && stem.end_winters == 0 && stem.line.points().size() > 1) {
                const auto& points = stem.line.points();
                add_bar(of(points.back().place), of(points.back().place) - of(points[points.size() - 2].place), true);
            }
        for (const auto& wound : shape_.wounds)
            if (wound.winters == 0) add_bar(of(wound.face), of(wound.outward), true);
    }
    void laid() {
        for (const Laid& laid : practice_.now().laid) {
            if (laid.winter != practice_.now().winter) continue;
            const shape::Stem* stem = shape_.find(laid.axis);
            if (!stem || stem->nodes.size() < 2) continue;
            const auto from = at_(of(stem->nodes[stem->nodes.size() - 2].place)), to = at_(of(stem->nodes.back().place));
            if (from && to) out.marks.arrows.push_back({*to, unit(*from, *to)});
        }
    }
    void chosen() {
        if (!practice_.chosen) return;
        outline(practice_.chosen, ui::mark::stays, 3, 0.15f, true);
        const Axis* axis = practice_.now().find(practice_.chosen);
        int number = 0;
        for (const auto& bud : shape_.buds) {
            const auto& stem = shape_.stems[bud.stem];
            if (stem.axis != practice_.chosen || bud.kind != BudKind::node) continue;
            const Node* node = practice_.now().find(node_of(bud.bud));
            if (!axis || !node || !is_count_bud(practice_.now(), *axis, *node)) continue;
            ++number;
            const auto foot = at_(of(bud.foot)), tip = at_(of(bud.foot + 0.02 * bud.out));
            if (!foot || !tip) continue;
            const float px = scene::pixels_a_metre(camera_, glm::distance(camera_.eye, of(bud.foot)), static_cast<int>(height_)) * static_cast<float>(1.8 * bud.stem_radius);
            if (px < tick_below_px) out.marks.ticks.push_back({*foot, unit(*foot, *tip), number});
        }
        if (const auto place = practice_.chosen_node ? place_of(shape_, practice_.now(), {practice_.chosen, practice_.chosen_node, {0}}) : std::nullopt)
            if (const auto at = at_(*place)) out.marks.labels.push_back({*at, ui_.say("mark.node", {{"n", Count{index_of(practice_.chosen_node)}}}), {}, true});
    }
    void hover(std::optional<ui::At> pointer) {
        const Spot& spot = practice_.hover;
        if (!spot || !pointer) return;
        outline(spot.axis, ui::mark::hover, 2, 0.1f, true);
        if (practice::cuts(practice_.tool)) return;
        out.marks.labels.insert(out.marks.labels.begin(), ui::hover_label(ui_, practice_.now(), spot, practice_.calliper_asked, shell_.settings.units == settings::UnitsName::inch, *pointer));
    }
    void would_cut(const std::optional<practice::CutPreview>& cut, std::optional<ui::At> pointer) {
        if (!practice::cuts(practice_.tool)) return;
        const bool pointed = practice_.hover && pointer;
        if (!cut) {
            const auto why = practice_.why_not_cut();
            if (why && pointed) out.marks.labels.insert(out.marks.labels.begin(), ui::refusal_label(ui_, *why, *pointer));
            return;
        }
        const auto place = goes(*cut);
        if (!place) return;
        const auto at = at_(*place);
        if (at) out.marks.labels.insert(out.marks.labels.begin(), ui::cut_label(ui_, *cut, pointed ? *pointer : *at));
    }

    // ---- shown
    // The act spoken of: its piece set off, what it would take off, its place ringed.
    void act(const practice::Watching& watching) {
        const practice::WatchedAct* act = watching.shown();
        if (!act || !act->edit) return;
        const auto place = place_of(shape_, practice_.now(), act->spot);
        const auto at = place ? at_(*place) : std::nullopt;
        if (at) out.marks.rings.push_back(*at);
        if (watching.goes()) {
            (void)goes(*watching.goes());
            if (!at) return;
            ui::Label label = ui::cut_label(ui_, *watching.goes(), *at);
            const Axis& axis = *practice_.now().find(act->spot.axis);
            if (age(practice_.now(), axis) > 1) label.first = ui_.words.sentence(act->named.key, act->named.arguments);  // no buds to keep
            out.marks.labels.push_back(std::move(label));
            return;
        }
        if (!watching.lies().empty()) {
            ui::TwinLine line;
            for (const Place& p : watching.lies())
                if (const auto on = at_(of(p))) line.points.push_back(*on);
            out.marks.twins.push_back(std::move(line));
        }
        const auto* mark = std::get_if<Mark>(&*act->edit);
        outline(act->spot.axis, mark ? colour_of(mark->role) : ui::mark::hover, 3, 0.15f, true);
        if (mark && at) out.marks.tapes.push_back({*at, ui::tape_of(mark->role), 36, {}, false});
        if (!at) return;
        ui::Label label;
        label.at = *at;
        label.first = ui_.words.sentence(act->named.key, act->named.arguments);
        out.marks.labels.push_back(std::move(label));
    }
    // A ring and nothing else before the answer: no name, no outline tells the wood.
    void touch(const practice::TouchDrill& drill) {
        if (!drill.here()) return;
        const auto place = place_of(shape_, practice_.now(), drill.here()->spot);
        const auto at = place ? at_(*place) : std::nullopt;
        if (!at) return;
        out.marks.rings.push_back(*at);
        if (!drill.answered()) return;
        outline(drill.here()->spot.axis, ui::mark::hover, 2, 0.1f, true);
        ui::Label label;
        label.at = *at;
        label.first = ui_.say(drill.here()->older ? "screen.drill.is-older" : "screen.drill.is-one-year");
        out.marks.labels.push_back(std::move(label));
    }

    // ---- the look back
    void look_back(const LookBack& look) {
        const bool at_piece = look.current < look.walk.size();
        const AxisId lit = at_piece ? look.walk[look.current].axis : AxisId{};
        for (const auto& stem : shape_.stems)
            if (lit && stem.axis != lit && !stem.trunk) out.emphases.push_back({stem.axis, {}, 0, {glm::vec3(0), 0, 0.4f, 0, false}});
        if (lit) outline(lit, ui::mark::hover, 2, 0.1f);
        for (std::size_t i = 0; i < look.walk.size(); ++i) hang(look.walk[i], i == look.current);
        if (!look.twin_shown || !look.plans || look.as_good_shown >= look.twins.size()) return;
        const auto& all = look.twins[look.as_good_shown];
        for (const practice::Twin& twin : at_piece ? practice::twins_for(look, look.walk[look.current], all) : all) draw_twin(twin);
    }

private:
    // What a cut would take off, tinted, and a bar where it goes through; there.
    std::optional<glm::vec3> goes(const practice::CutPreview& cut) {
        for (const AxisId axis : cut.axes) outline(axis, ui::mark::goes, 2, 0.55f, true);
        const AxisId of_cut = axis_of(cut.cut.past);
        if (index_of(cut.cut.past) == 0) outline(of_cut, ui::mark::goes, 2, 0.55f, true);  // all of it but its collar
        for (const NodeId node : cut.nodes)
            for (const auto& bud : shape_.buds)
                if (node_of(bud.bud) == node) out.emphases.push_back({axis_of(node), mesh::PartKind::bud, bud.bud.value, {rgb(ui::mark::goes), 0.7f, 0, 0, false}, true});
        const auto place = place_of(shape_, practice_.now(), {axis_of(cut.cut.past), cut.cut.past, cut.cut.beyond});
        if (!place) return std::nullopt;
        if (const auto* node = stem_node(shape_, cut.cut.past)) add_bar(*place, of(node->along), false);
        ui::GoingLine line;
        if (const auto at = at_(*place)) line.points.push_back(*at);
        for (const NodeId id : cut.nodes) {
            if (axis_of(id) != of_cut || index_of(id) == 0) continue;
            const auto* node = stem_node(shape_, id);
            if (const auto at = node ? at_(of(node->place)) : std::nullopt) line.points.push_back(*at);
        }
        if (line.points.size() > 1) out.marks.going.push_back(std::move(line));
        return place;
    }
    void hang(const practice::Walked& w, bool current) {
        if ((w.folded && !current) || w.stop == practice::Stop::remark) return;
        const glm::vec3 there = w.axis ? place_of(shape_, practice_.now(), {w.axis, w.node, {0}}).value_or(of(shape_.head))
                                : w.side == Side::none ? of(shape_.head)
                                                       : of(shape_.crowns[w.side == Side::right ? 1 : 0]);
        const auto at = at_(there);
        if (!at) return;
        const float length = std::clamp(shortest_tape + px_a_point * static_cast<float>(in_points(w.lost)), shortest_tape, longest_tape);
        out.marks.tapes.push_back({*at, ui::tape_of(w.mend), length, current ? ui_.say("mend." + std::string(word_of(w.mend))) : std::string(), current});
    }
    void draw_twin(const practice::Twin& twin) {
        ui::TwinLine line;
        line.word = ui_.say("mark.better");
        for (const Place& place : twin.places)
            if (const auto at = at_(of(place))) line.points.push_back({at->x + 3, at->y - 3});  // beside its own wood
        if (line.points.size() > 1) out.marks.twins.push_back(std::move(line));
    }
    void outline(AxisId axis, unsigned colour, float px, float tint, bool passing = false) {
        out.emphases.push_back({axis, {}, 0, {rgb(colour), tint, 0, px, false}, passing});
    }
    void add_bar(glm::vec3 place, glm::vec3 along, bool is_made) {
        const auto at = at_(place), on = at_(place + 0.01f * glm::normalize(along + glm::vec3(0, 1e-6f, 0)));
        if (!at || !on) return;
        const float px = scene::pixels_a_metre(camera_, glm::distance(camera_.eye, place), static_cast<int>(height_));
        out.marks.cuts.push_back({*at, unit(*at, *on), std::clamp(px * 0.012f, is_made ? 4.0f : 9.0f, 24.0f), is_made});
    }

    const Practice& practice_;
    const practice::Shell& shell_;
    const shape::VineShape& shape_;
    const scene::Camera& camera_;
    const ui::Ui& ui_;
    Projection at_;
    float height_;
};

}  // namespace

Projection::Projection(const scene::Camera& camera, float w, float h) : clip_from_world(scene::clip_from_world(camera, w / std::max(h, 1.0f))), eye(camera.eye), width(w), height(h) {}

std::optional<ui::At> Projection::operator()(glm::vec3 place) const {
    const glm::vec4 clip = clip_from_world * glm::vec4(place, 1);
    if (clip.w <= 0.02f) return std::nullopt;
    return ui::At{(clip.x / clip.w * 0.5f + 0.5f) * width, (0.5f - clip.y / clip.w * 0.5f) * height};
}

std::optional<glm::vec3> place_of(const shape::VineShape& shape, const Vine& vine, const Spot& spot) {
    const shape::Stem* stem = shape.find(spot.axis);
    if (!stem || stem->nodes.empty()) return std::nullopt;
    const NodeId id = spot.node ? spot.node : stem->nodes[std::min<std::size_t>(2, stem->nodes.size() - 1)].node;
    const auto* node = stem_node(shape, id);
    if (!node) return std::nullopt;
    const float past = static_cast<float>(std::max(0.0, in_m(spot.beyond)));
    const Node* next = vine.find(node_id(spot.axis, index_of(id) + 1));
    const auto* after = next ? stem_node(shape, next->id) : nullptr;
    if (past <= 0) return of(node->place);
    if (!after) return of(node->place) + past * of(node->along);
    const float joint = std::max(glm::distance(of(node->place), of(after->place)), 1e-4f);
    const float share = std::min(past / joint, 1.0f);
    // On the wood as it is drawn: a joint bends between its nodes.
    const auto& points = stem->line.points();
    for (std::size_t i = 0; i + 1 < points.size(); ++i)
        if (points[i].node == static_cast<int>(index_of(id)) && points[i + 1].node == points[i].node + 1) return of(stem->line.at(i, static_cast<double>(share)).place);
    return glm::mix(of(node->place), of(after->place), share);
}

Overlay overlay_of(const Practice& practice, const practice::Shell& shell, const shape::VineShape& shape, const scene::Camera& camera,
                   const std::optional<practice::CutPreview>& would_cut, std::optional<ui::At> pointer, const ui::Ui& ui, float width, float height) {
    Builder b(practice, shell, shape, camera, ui, width, height);
    if (practice.drill()) {
        b.touch(*practice.drill());
        return std::move(b.out);
    }
    b.hatched();
    if (practice.watching()) b.act(*practice.watching());
    if (practice.finished()) {
        b.look_back(*practice.look());
        return std::move(b.out);
    }
    b.roles();
    b.made();
    b.laid();
    b.chosen();
    b.hover(pointer);
    b.would_cut(would_cut, pointer);
    return std::move(b.out);
}

}  // namespace spurwright::app
