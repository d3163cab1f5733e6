#include "render/app/pointing.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include <imgui.h>

#include "render/app/desk_report.h"
#include "render/app/place_on_vine.h"
#include "sim/pruning/hand_bend.h"

namespace spurwright::app {
namespace {

namespace ask = practice::ask;
using practice::HandTool;
using practice::Practice;

// Our choice; pixels of a window 720 high.
constexpr float drag_turn_deg_a_px = 0.12f, drag_lean_m_a_px = 0.0012f;
constexpr float click_slack_px = 5;
constexpr float cycle_seconds = 1;
constexpr float lay_from_px = 40;  // a cane pulled this far along the row is laid to that side

// The place pointed at; with a cutting tool and Shift, the base of the piece, which other wood may hide.
practice::Spot meant(const Practice& practice, const scene::Picked& picked, bool whole_piece) {
    const practice::Spot spot = spot_of(practice.now(), picked);
    return whole_piece && practice::cuts(practice.tool) ? practice::Spot{spot.axis, {}, {-1}} : spot;
}

// What a click with the tool in hand asks; none: nothing lies there.
std::optional<practice::Request> click(const Practice& practice, const scene::Picked* picked, bool whole_piece) {
    if (practice.hand_rests()) return std::nullopt;
    if (!picked) {
        if (practice.tool == HandTool::none) return ask::Choose{};
        return std::nullopt;
    }
    const practice::Spot spot = meant(practice, *picked, whole_piece);
    const bool done = practice.finished();
    if (done || practice.tool == HandTool::none || practice.tool == HandTool::calliper)
        return ask::Choose{spot.axis, picked->kind == mesh::PartKind::bud ? spot.node : NodeId{}};
    if (practice.tool == HandTool::tape) return ask::MarkAs{spot.axis, practice.role_of(spot.axis) == practice.tape ? Role::none : practice.tape};
    if (practice::cuts(practice.tool)) return ask::CutHere{spot, practice.tool};
    if (practice.tool == HandTool::ties) return ask::TieHere{spot};
    return ask::Choose{spot.axis, {}};  // hands: chosen now, laid by pulling or by the bar
}

}  // namespace

// What lies under the pointer, where no panel does.
void Pointing::point(Practice& practice, const Stage& stage, const Frame& frame) {
    const ImGuiIO& io = ImGui::GetIO();
    const bool in_picture = !io.WantCaptureMouse && io.MousePos.x >= 0 && io.MousePos.y >= 0 && io.MousePos.x < frame.width && io.MousePos.y < frame.height;
    // Shift means another place under a pointing hand, none under one that rests while keys walk.
    const bool shift = std::exchange(shift_, io.KeyShift) != io.KeyShift && practice.hover,
               moved = shift || !pointer_ || pointer_->x != io.MousePos.x || pointer_->y != io.MousePos.y;
    if (!in_picture) {
        pointer_.reset();
        under_.clear();
        if (moved) practice.hover = {};
        return;
    }
    if (moved) keys_lead_ = false;
    if (keys_lead_) return;  // a view that turns under a resting pointer points at nothing
    if (!moved && !frame.moving && !under_.empty()) return;
    if (!moved && !frame.moving && practice.hover == practice::Spot{}) return;  // keys walk while the pointer rests
    pointer_ = ui::At{io.MousePos.x, io.MousePos.y};
    const scene::Camera& camera = frame.camera;
    scene::Reach reach;
    reach.radians_a_pixel = glm::radians(camera.fov_deg) / (camera.shown * frame.height);
    under_ = scene::picked_all(stage.capsules(), scene::ray_through(camera, io.MousePos.x / frame.width, io.MousePos.y / frame.height, frame.width / frame.height), reach);
    std::erase_if(under_, [](const scene::Picked& p) { return !p.axis; });
    cycled_ = 0;
    practice.hover = {};
    if (under_.empty()) return;
    if (!practice.drill()) practice.hover = meant(practice, under_.front(), io.KeyShift);  // a name would tell the wood
}

void Pointing::press(const Practice& practice, Eye& eye, const scene::Camera& camera, practice::Requests& asked) {
    const ImGuiIO& io = ImGui::GetIO();
    const scene::Picked* first = under_.empty() ? nullptr : &under_.front();
    if (ImGui::IsMouseClicked(0)) {
        drag_ = {};
        drag_.x = io.MousePos.x;
        drag_.y = io.MousePos.y;
        drag_.lays = practice.tool == HandTool::hands && first && !practice.finished();
        if (drag_.lays) {
            drag_.cane = first->axis;
            drag_.node = axis_of(first->node) == first->axis ? first->node : NodeId{};
            asked.push_back(ask::Choose{first->axis, {}});
        }
        drag_.turns = !first && !io.KeyShift;
        drag_.leans = !first && io.KeyShift;
    }
    if (ImGui::IsMouseClicked(1)) {
        drag_ = {};
        drag_.leans = true;
    }
    if (io.MouseWheel != 0) {
        eye.nearer(io.MouseWheel, first ? first->place : camera.target);
        came_nearer_ = true;
    }
}

void Pointing::pull(Eye& eye, float height) {
    const ImGuiIO& io = ImGui::GetIO();
    const bool held = ImGui::IsMouseDown(0) || ImGui::IsMouseDown(1);
    const bool just_pressed = ImGui::IsMouseClicked(0) || ImGui::IsMouseClicked(1);  // how it came there is no drag
    if (!held || just_pressed || (io.MouseDelta.x == 0 && io.MouseDelta.y == 0)) return;
    drag_.gone += std::fabs(io.MouseDelta.x) + std::fabs(io.MouseDelta.y);
    const float px = height / 720.0f;
    if (drag_.turns) eye.turn(-io.MouseDelta.x * drag_turn_deg_a_px / px, io.MouseDelta.y * drag_turn_deg_a_px / px);
    if (drag_.leans) eye.step(-io.MouseDelta.x * drag_lean_m_a_px / px, io.MouseDelta.y * drag_lean_m_a_px / px);
}

void Pointing::pull_cane(const Practice& practice, const Frame& frame, practice::Requests& asked) const {
    const ImGuiIO& io = ImGui::GetIO();
    const Axis* cane = practice.start().find(drag_.cane);
    const bool just_pressed = ImGui::IsMouseClicked(0);
    if (!drag_.lays || !cane || cane->node_count < 2 || just_pressed || !ImGui::IsMouseDown(0) || (io.MouseDelta.x == 0 && io.MouseDelta.y == 0)) return;
    const float x = io.MousePos.x - drag_.x, y = io.MousePos.y - drag_.y;
    if (std::fabs(x) + std::fabs(y) < click_slack_px * frame.click_slack) return;
    const std::uint32_t held = std::clamp(drag_.node ? index_of(drag_.node) : 1u, 1u, cane->node_count - 1);
    const Projection at(frame.camera, frame.width, frame.height);
    practice::Pull to{drag_.cane, node_id(drag_.cane, held), cane->side, {}};
    float best = 0;
    for (const Side side : both_sides) {
        const HandBend down = hand_bend(practice.start(), *cane, side, held, whole);
        const auto wire = at(of(down.places[held])), stands = at(of(practice.start().nodes_of(*cane)[held].place));
        if (!wire || !stands) continue;
        const float dx = wire->x - stands->x, dy = wire->y - stands->y, way = dx * dx + dy * dy;
        const float gone = (x * dx + y * dy) / std::max(way, 1.0f);
        // Which way it goes is told sideways, as letting go of it is.
        if (x * dx < 0 || gone <= best) continue;
        best = gone;
        to.side = side;
    }
    to.share = {static_cast<std::int32_t>(std::clamp(best, 0.0f, 1.0f) * 1000)};
    if (to != practice.pulled()) asked.push_back(ask::PullCane{to});
}

void Pointing::release(const Practice& practice, bool from_behind, float click_slack, practice::Requests& asked) {
    const ImGuiIO& io = ImGui::GetIO();
    const Drag drag = drag_;
    drag_ = {};
    if (drag.lays && std::fabs(io.MousePos.x - drag.x) >= lay_from_px) {
        const bool towards_far = (io.MousePos.x > drag.x) != from_behind;
        asked.push_back(ask::LayTo{drag.cane, towards_far ? Side::right : Side::left});
        return;
    }
    if (practice.pulled() && drag.lays) asked.push_back(ask::PullCane{});  // let go, it springs back
    if (io.WantCaptureMouse || drag.gone > click_slack_px * click_slack) return;
    // Again at one place soon: the next candidate.
    const bool again = clicked_ago_ < cycle_seconds && std::fabs(clicked_x_ - io.MousePos.x) + std::fabs(clicked_y_ - io.MousePos.y) < click_slack_px;
    const bool chooses = practice.tool == HandTool::none || practice.tool == HandTool::calliper || practice.finished();
    cycled_ = again && chooses && !under_.empty() ? cycled_ + 1 : 0;
    clicked_x_ = io.MousePos.x;
    clicked_y_ = io.MousePos.y;
    clicked_ago_ = 0;
    if (const auto one = click(practice, under_.empty() ? nullptr : &next_axis(under_, cycled_), io.KeyShift)) asked.push_back(*one);
}

void Pointing::let_keys_lead(Practice& practice) {
    keys_lead_ = true;
    practice.hover = {};
    under_.clear();
}

void Pointing::look_about(Eye& eye, const Frame& frame) {
    const ImGuiIO& io = ImGui::GetIO();
    came_nearer_ = false;
    pointer_.reset();
    under_.clear();
    if (!io.WantCaptureMouse) {
        if (ImGui::IsMouseClicked(0) || ImGui::IsMouseClicked(1)) {
            drag_ = {};
            drag_.leans = ImGui::IsMouseClicked(1) || io.KeyShift;
            drag_.turns = !drag_.leans;
        }
        if (io.MouseWheel != 0) {
            eye.nearer(io.MouseWheel, frame.camera.target);
            came_nearer_ = true;
        }
    }
    pull(eye, frame.height);
    if (ImGui::IsMouseReleased(0) || ImGui::IsMouseReleased(1)) drag_ = {};
}

practice::Requests Pointing::use(Practice& practice, const Stage& stage, Eye& eye, const Frame& frame) {
    practice::Requests asked;
    came_nearer_ = false;
    point(practice, stage, frame);
    const bool over_panel = ImGui::GetIO().WantCaptureMouse;
    if (!over_panel) press(practice, eye, frame.camera, asked);
    pull(eye, frame.height);
    pull_cane(practice, frame, asked);
    if (ImGui::IsMouseReleased(0)) release(practice, frame.camera.eye.z < 0 && !eye.orbits(), frame.click_slack, asked);
    if (ImGui::IsMouseDoubleClicked(0) && !over_panel && practice.chosen && (practice.tool == HandTool::none || practice.finished())) asked.push_back(ask::LookAtChosen{});
    return asked;
}

}  // namespace spurwright::app
