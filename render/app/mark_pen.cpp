#include "render/app/mark_pen.h"

#include <algorithm>
#include <cmath>

#include "sim/pruning/legal_edits.h"
#include "sim/vine/vine_query.h"

namespace spurwright::app {
namespace {

// sRGB of a mark's colour, as the picture takes it.
glm::vec3 rgb(unsigned c) { return {static_cast<float>((c >> 16) & 255) / 255.0f, static_cast<float>((c >> 8) & 255) / 255.0f, static_cast<float>(c & 255) / 255.0f}; }

}  // namespace

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

std::optional<glm::vec3> MarkPen::goes(const practice::CutPreview& cut) {
    for (const AxisId axis : cut.axes) outline(axis, ui::mark::goes, 2, 0.55f, true);
    const AxisId of_cut = axis_of(cut.cut.past);
    if (index_of(cut.cut.past) == 0) outline(of_cut, ui::mark::goes, 2, 0.55f, true);  // all of it but its collar
    for (const NodeId node : cut.nodes)
        for (const auto& bud : shape.buds)
            if (node_of(bud.bud) == node) out.emphases.push_back({axis_of(node), mesh::PartKind::bud, bud.bud.value, {rgb(ui::mark::goes), 0.7f, 0, 0, false}, true});
    const auto place = place_of(shape, practice.now(), {axis_of(cut.cut.past), cut.cut.past, cut.cut.beyond});
    if (!place) return std::nullopt;
    if (const auto* node = stem_node(shape, cut.cut.past)) bar(*place, of(node->along), false);
    ui::GoingLine line;
    if (const auto on = at(*place)) line.points.push_back(*on);
    for (const NodeId id : cut.nodes) {
        if (axis_of(id) != of_cut || index_of(id) == 0) continue;
        const auto* node = stem_node(shape, id);
        if (const auto on = node ? at(of(node->place)) : std::nullopt) line.points.push_back(*on);
    }
    if (line.points.size() > 1) out.marks.going.push_back(std::move(line));
    return place;
}

void MarkPen::outline(AxisId axis, unsigned colour, float px, float tint, bool passing) {
    out.emphases.push_back({axis, {}, 0, {rgb(colour), tint, 0, px, false}, passing});
}

void MarkPen::bar(glm::vec3 place, glm::vec3 along, bool is_made) {
    const auto here = at(place), ahead = at(place + 0.01f * glm::normalize(along + glm::vec3(0, 1e-6f, 0)));
    if (!here || !ahead) return;
    const float px = scene::pixels_a_metre(camera, glm::distance(camera.eye, place), static_cast<int>(at.height));
    out.marks.cuts.push_back({*here, unit(*here, *ahead), std::clamp(px * 0.012f, is_made ? 4.0f : 9.0f, 24.0f), is_made});
}

}  // namespace spurwright::app
