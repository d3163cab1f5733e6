#include "render/app/gaze.h"

namespace spurwright::app {
namespace {

namespace ask = practice::ask;
using practice::Practice;
using practice::Spot;

// A panel lies over the foot of the picture: what is shown stands so far above the middle, more where text is large.
constexpr float raised_deg = 5, raised_high_deg = 10.5f, over_head_m = 0.15f;  // (our choice)
constexpr float key_turn_deg = 5, key_fine_deg = 1, key_step_m = 0.05f;

}  // namespace

bool Gaze::by_keys(std::span<const ui::KeyPress> presses, bool rests, glm::vec3 ahead) {
    namespace key = ui::key;
    bool moved = false;
    for (const ui::KeyPress& p : presses) {
        if (p.alt || (rests && !p.shift && !p.ctrl && (p.key == key::left || p.key == key::right))) continue;
        const int x = p.key == key::right ? 1 : p.key == key::left ? -1 : 0, y = p.key == key::up ? 1 : p.key == key::down ? -1 : 0;
        const int closer = p.key == key::pad_plus || p.key == key::equal ? 1 : p.key == key::pad_minus || p.key == key::minus ? -1 : 0;
        if (x || y) {
            const float turn = p.ctrl ? key_fine_deg : key_turn_deg;
            if (p.shift) eye_.step(key_step_m * static_cast<float>(x), key_step_m * static_cast<float>(y));
            else eye_.turn(turn * static_cast<float>(x), turn * static_cast<float>(y));
        } else if (closer && !p.ctrl) {
            eye_.nearer(static_cast<float>(closer), ahead);
        } else {
            continue;
        }
        moved = true;
    }
    return moved;
}

bool Gaze::by_request(const practice::Request& request, const Practice& practice, const shape::VineShape& shape) {
    if (const auto* from = std::get_if<ask::LookFrom>(&request)) {
        const auto view = scene::read_view(from->view);
        if (view) eye_.look_from(*view, shape, practice.chosen);
        return true;
    }
    if (std::holds_alternative<ask::LookAtChosen>(request)) {
        const auto place = place_of(shape, practice.now(), {practice.chosen, practice.chosen_node, {0}});
        if (practice.chosen && place) eye_.look_at(*place, true);
        return true;
    }
    if (std::holds_alternative<ask::LookAtPiece>(request)) {
        to_piece(practice, shape);
        return true;
    }
    if (const auto* orbit = std::get_if<ask::Orbit>(&request)) {
        eye_.set_orbit(orbit->on, shape);
        return true;
    }
    return false;
}

void Gaze::to_piece(const Practice& practice, const shape::VineShape& shape) {
    if (practice.look() && practice.look()->moved) {  // a cut tried elsewhere stands foremost
        const auto& line = practice.look()->moved->line.places;
        if (!line.empty()) eye_.look_at(of(line.back()), true);
        return;
    }
    if (!practice.look() || practice.look()->current >= practice.look()->walk.size()) return;
    const auto& w = practice.look()->walk[practice.look()->current];
    const auto place = w.axis ? place_of(shape, practice.now(), {w.axis, w.node, {0}}) : std::nullopt;
    if (place) eye_.look_at(*place, true);
}

void Gaze::to_walked(const Practice& practice, const shape::VineShape& shape, const Projection& drawn) {
    const NodeId node = practice.chosen_node ? practice.chosen_node : node_id(practice.chosen, 2);
    const auto place = place_of(shape, practice.now(), {practice.chosen, practice.now().find(node) ? node : NodeId{}, {0}});
    if (!place) return;
    const auto at = drawn(*place);
    const bool seen = at && at->x > 0.1f * drawn.width && at->x < 0.9f * drawn.width && at->y > 0.15f * drawn.height && at->y < 0.85f * drawn.height;
    if (!seen) eye_.look_at(*place, false);
}

bool Gaze::to_shown(const Practice* practice, const shape::VineShape& shape, bool high) {
    std::size_t at = 0;
    if (practice && practice->drill()) at = practice->drill()->at() + 1;
    else if (practice && practice->questions()) at = practice->questions()->at() + 1;
    else if (practice && practice->watching()) at = practice->watching()->at() + 1;
    if (at == turned_to_) return false;
    const bool began = turned_to_ == 0, touches = practice && practice->drill(), asks = practice && practice->questions();
    turned_to_ = at;
    const practice::WatchedAct* act = at > 0 && !touches && !asks ? practice->watching()->shown() : nullptr;
    const bool lays = act && act->edit && std::holds_alternative<Lay>(*act->edit);
    const Spot spot = asks ? (practice->questions()->here() ? practice->questions()->here()->spot : Spot{})
                      : touches ? (practice->drill()->here() ? practice->drill()->here()->spot : Spot{}) : act && !lays ? act->spot : Spot{};
    if (began || !spot) eye_.look_from(scene::View::row, shape, {});
    const float raised = high ? raised_high_deg : raised_deg;
    if (at > 0 && !spot) eye_.look_at(glm::vec3(shape.head.x, shape.head.y, shape.head.z) + glm::vec3(0, over_head_m, 0), false, raised - raised_deg);
    if (const auto place = spot ? place_of(shape, practice->now(), spot) : std::nullopt) eye_.look_at(*place, true, raised);
    return true;
}

}  // namespace spurwright::app
