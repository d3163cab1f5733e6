#include "render/app/desk_report.h"

#include <algorithm>

#include "render/app/vine_marks.h"
#include "scenarios/io/json.h"
#include "scenarios/quiz/results.h"
#include "sim/pruning/plan_text.h"
#include "sim/vine/vine_query.h"

namespace spurwright::app {
namespace {

using io::Json;

Json box_of(const ui::Box& box) {
    Json list = Json::list();
    for (const float v : {box.x0, box.y0, box.x1, box.y1}) list.push(Json::number(static_cast<double>(v), 1));
    return list;
}

Json parts_of(const Vine& vine, const Stage& stage, const scene::Camera& camera, float width, float height) {
    const Projection at(camera, width, height);
    Json parts = Json::list();
    for (const auto& stem : stage.shape().stems) {
        for (std::size_t i = 0; i + 1 < stem.nodes.size() || i < stem.nodes.size(); ++i) {
            const auto& node = stem.nodes[i];
            // The middle of the joint beyond the node: clear of its bud.
            const auto& beyond = stem.nodes[std::min(i + 1, stem.nodes.size() - 1)];
            const auto middle = 0.5 * (node.place + beyond.place);
            const glm::vec3 place{static_cast<float>(middle.x), static_cast<float>(middle.y), static_cast<float>(middle.z)};
            const auto seen = at(place);
            if (!seen || seen->x < 0 || seen->y < 0 || seen->x > width || seen->y > height) continue;
            // Only what a click there would pick.
            const auto picked = scene::picked(stage.capsules(), scene::ray_through(camera, seen->x / width, seen->y / height, width / height), {});
            if (!picked || picked->axis != stem.axis) continue;
            Json part = Json::object();
            part.set("node", name_of(node.node));
            part.set("age", age(vine, *vine.find(stem.axis)));
            part.set("x", Json::number(static_cast<double>(seen->x), 1));
            part.set("y", Json::number(static_cast<double>(seen->y), 1));
            parts.push(std::move(part));
        }
    }
    return parts;
}

// Axes in the order that Tab walks them: a hand of its own walks once round.
Json walk_of(const practice::Practice& practice) {
    practice::Practice walker = practice;
    Json axes = Json::list();
    walker.choose({});
    walker.walk_canes(1);
    const AxisId first = walker.chosen;
    for (AxisId at = first; at; at = walker.chosen) {
        axes.push(name_of(at));
        walker.walk_canes(1);
        if (walker.chosen == first) break;
    }
    return axes;
}

// Where the crew's quiz stands; never its key before the reveal.
Json wall_of(const practice::CrewQuiz& crew) {
    Json o = Json::object();
    o.set("stage", word_of(crew.stage()));
    o.set("offered", crew.offered());
    const quiz::Quiz* quiz = crew.quiz();
    if (!quiz) return o;
    o.set("phase", word_of(quiz->phase()));
    o.set("at", static_cast<std::int64_t>(quiz->at()));
    o.set("questions", static_cast<std::int64_t>(quiz->items().size()));
    o.set("kind", word_of(quiz->item().kind));
    o.set("answers", quiz->state().last().answers());
    const quiz::Results results = quiz::results_of(*quiz);
    o.set("right", results.all.right);
    o.set("of", results.all.of);
    o.set("revealed", static_cast<std::int64_t>(results.items.size()));
    return o;
}

// Where the scale stands; what the bundle truly has only once it is written down.
Json weighing_of(const weighing::Exercise& exercise) {
    Json o = Json::object(), pieces = Json::list();
    for (std::size_t i = 0; i < exercise.pieces().size(); ++i) {
        Json piece = Json::object();
        piece.set("kind", word_of(exercise.pieces()[i].kind));
        piece.set("belongs", exercise.pieces()[i].belongs);
        piece.set("lies", word_of(exercise.lies(i)));
        piece.set("still_on", exercise.still_on(i));
        piece.set("canes_on", static_cast<std::int64_t>(exercise.canes_on(i)));
        pieces.push(std::move(piece));
    }
    o.set("pieces", std::move(pieces));
    o.set("tied", exercise.tied());
    o.set("hangs", exercise.hangs());
    o.set("wet", exercise.wet());
    o.set("shown", exercise.shown_text());
    o.set("unit", word_of(exercise.unit()));
    if (!exercise.written()) return o;
    o.set("within", exercise.verdict()->within);
    o.set("bundle_g", exercise.verdict()->truly.mass);
    Json slips = Json::list();
    for (const weighing::FoundSlip& slip : exercise.verdict()->slips) slips.push(std::string(word_of(slip.slip)));
    o.set("slips", std::move(slips));
    return o;
}

Json book_of(const practice::BookDesk& book) {
    Json o = Json::object();
    o.set("page", word_of(book.page()));
    o.set("blocks", static_cast<std::int64_t>(book.book().size()));
    o.set("block", book.open() ? Json(book.open()->block.name) : Json());
    o.set("vines", book.open() ? Json(static_cast<std::int64_t>(book.open()->vines.size())) : Json());
    o.set("at", static_cast<std::int64_t>(book.at()));
    o.set("winter", book.winter());
    o.set("keyed", static_cast<std::int64_t>(book.keyed()));
    o.set("entered", book.entered());
    o.set("odd", book.odd().has_value());
    o.set("making_demo", book.making_demo());
    const auto has_point = [](const reference_vines::ReferenceVine& vine) { return vine.latitude_e7 && vine.longitude_e7; };
    o.set("points", book.open() ? static_cast<std::int64_t>(std::count_if(book.open()->vines.begin(), book.open()->vines.end(), has_point)) : std::int64_t{0});
    Json point;
    if (book.vine() && has_point(*book.vine())) {
        point = Json::list();
        point.push(*book.vine()->latitude_e7);
        point.push(*book.vine()->longitude_e7);
    }
    o.set("point", std::move(point));
    o.set("history", static_cast<std::int64_t>(book.history().size()));
    return o;
}

// The buds said, and what was wrong with them, once they are said.
Json next_of(const weighing::NextBuds& next) {
    Json o = Json::object(), log = Json::list(), slips = Json::list();
    for (std::size_t i = 0; i < next.task().log.size(); ++i) {
        Json one = Json::object();
        one.set("wet", next.task().log[i].wet);
        one.set("left_out", next.left_out(i));
        log.push(std::move(one));
    }
    o.set("log", std::move(log));
    if (!next.verdict()) return o;
    for (const weighing::FoundNextSlip& slip : next.verdict()->slips) slips.push(std::string(word_of(slip.slip)));
    o.set("slips", std::move(slips));
    return o;
}

}  // namespace

practice::Spot spot_of(const Vine& vine, const scene::Picked& picked) {
    practice::Spot spot{picked.axis, picked.node, {-1}};
    const Node* node = vine.find(picked.node);
    if (!node || axis_of(picked.node) != picked.axis) {  // a face of another axis: the crown of what bears it
        spot.node = node_id(picked.axis, 0);
        return spot;
    }
    if (picked.kind != mesh::PartKind::stem) return spot;
    const Axis& axis = *vine.find(picked.axis);
    const auto nodes = vine.nodes_of(axis);
    const std::uint32_t index = index_of(picked.node);
    // A curved joint is several short capsules: how far along is measured in space, from its node.
    const Place& p = node->place;
    const glm::vec3 from{in_m(p.x), in_m(p.y), in_m(p.z)};
    const float past = glm::distance(from, picked.place);
    const bool next = index + 1 < nodes.size() && !nodes[index + 1].removed;
    const double joint = next ? in_m(nodes[index + 1].joint) : static_cast<double>(past);
    spot.beyond = from_mm(1000 * std::min(static_cast<double>(past), joint));
    return spot;
}

const scene::Picked& next_axis(const std::vector<scene::Picked>& under, std::size_t n) {
    std::vector<const scene::Picked*> axes;
    for (const scene::Picked& p : under) {
        bool known = false;
        for (const auto* other : axes) known = known || other->axis == p.axis;
        if (!known) axes.push_back(&p);
    }
    return *axes[n % axes.size()];
}

std::string report_of(const practice::Session& session, const Stage& stage, const std::string& view, const scene::Camera& camera, const ui::UiProbe& probe, bool at_rest, const Counted& counted, float width, float height) {
    Json o = Json::object();
    o.set("screen", practice::words_of(session.shell().screen)[static_cast<std::size_t>(session.shell().screen)]);
    o.set("at_rest", at_rest);
    o.set("frames", counted.frames);
    o.set("key_presses", counted.key_presses);
    o.set("language", session.words().language());
    o.set("view", view);
    o.set("searching", session.shell().searching);
    o.set("read_only", session.shell().read_only);
    o.set("offered", session.shell().offered);
    o.set("winters", static_cast<std::int64_t>(session.winters()));
    o.set("two", !session.two_vines() ? Json() : session.shows_two() ? Json(session.two_vines()->found ? "shown" : "living") : Json(*session.two_vines()->in_hand == practice::mine ? "mine" : "better"));
    o.set("message", session.shell().message ? Json(session.words().sentence(session.shell().message->key, session.shell().message->arguments)) : Json());
    if (const auto* practice = session.practice()) {
        o.set("code", practice->task().code);
        o.set("plan", print_plan(practice->done()));
        o.set("done", static_cast<std::int64_t>(practice->done_count()));
        o.set("acts", static_cast<std::int64_t>(practice->acts().size()));
        o.set("tool", practice::words_of(practice->tool)[static_cast<std::size_t>(practice->tool)]);
        o.set("tape", word_of(practice->tape));
        o.set("chosen", practice->chosen ? Json(name_of(practice->chosen)) : Json());
        o.set("chosen_node", practice->chosen_node ? Json(name_of(practice->chosen_node)) : Json());
        o.set("hover", practice->hover ? Json(name_of(practice->hover.node ? practice->hover.node : node_id(practice->hover.axis, 0))) : Json());
        o.set("walk", walk_of(*practice));
        o.set("waiting", practice->waiting().has_value());
        o.set("step", word_of(practice->step()));
        o.set("finished", practice->finished());
        o.set("asked_buds", practice->asked_buds());
        o.set("from_book", practice->task().from_book ? Json(practice->task().from_book->tag) : Json());
        o.set("rung", practice->task().ladder ? Json(practice->task().ladder->number) : Json());
        o.set("shown", static_cast<std::int64_t>(std::count(practice->shown_acts().begin(), practice->shown_acts().end(), true)));
        o.set("showing", practice->showing_step() ? Json(word_of(*practice->showing_step())) : Json());
        o.set("scene", practice->task().scene);
        o.set("scene_number", static_cast<std::int64_t>(practice->task().scene_number));
        o.set("watching", practice->watching() ? Json(static_cast<std::int64_t>(practice->watching()->at())) : Json());
        o.set("watch_acts", practice->watching() ? Json(static_cast<std::int64_t>(practice->watching()->acts().size())) : Json());
        o.set("drill", practice->drill() ? Json(static_cast<std::int64_t>(practice->drill()->at())) : Json());
        if (practice->look()) {
            o.set("points", practice->look()->mine.points);
            o.set("weighed_within", practice->look()->weighed ? Json(practice->look()->weighed->within) : Json());
            o.set("piece", static_cast<std::int64_t>(practice->look()->current));
            o.set("pieces", static_cast<std::int64_t>(practice->look()->walk.size()));
            o.set("best", practice->look()->best ? Json(practice->look()->best->points) : Json());
            Json moved;
            if (const auto& cut = practice->look()->moved) {
                moved = Json::object();
                moved.set("axis", name_of(cut->of().axis));
                moved.set("at", static_cast<std::int64_t>(cut->at));
                moved.set("ends", static_cast<std::int64_t>(cut->ends.size()));
                moved.set("points", cut->end().points);
            }
            o.set("moved", std::move(moved));
        }
        // Not at rest, the stage may still show the vine of before, whose parts the one in hand lacks.
        if (at_rest && session.shell().screen == practice::Screen::row && !stage.empty() && !session.shows_two()) o.set("parts", parts_of(practice->now(), stage, camera, width, height));
    }
    o.set("ladder", session.ladder() ? Json(session.ladder()->standing.rung) : Json());
    if (const auto* crew = session.crew()) o.set("wall", wall_of(*crew));
    if (session.weighing()) o.set("weighing", weighing_of(*session.weighing()));
    if (session.next_buds()) o.set("next", next_of(*session.next_buds()));
    if (session.book()) o.set("book", book_of(*session.book()));
    Json widgets = Json::list();
    for (const ui::Probed& p : probe.all()) {
        Json w = Json::object();
        w.set("name", p.name);
        w.set("label", p.label);
        w.set("box", box_of(p.box));
        w.set("seen", box_of(p.seen));
        w.set("target", p.target);
        w.set("enabled", p.enabled);
        w.set("focused", p.focused);
        widgets.push(std::move(w));
    }
    o.set("widgets", std::move(widgets));
    return io::print_json_line(o);
}

}  // namespace spurwright::app
