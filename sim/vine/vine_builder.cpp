#include "sim/vine/vine_builder.h"

#include <algorithm>

#include "sim/core/check.h"
#include "sim/vine/course_book.h"
#include "sim/vine/vine_check.h"

namespace spurwright {

Axis& VineBuilder::add_axis(AxisId id, NodeId parent, int born) {
    Rows rows;
    rows.axis.id = id;
    rows.axis.parent = parent;
    rows.axis.born = born;
    rows_.push_back(std::move(rows));
    return rows_.back().axis;
}

Node& VineBuilder::add_node(Length joint, Length major, Length minor, Place place) {
    SPURWRIGHT_CHECK(rows_.size(), >, 0u);
    Rows& rows = rows_.back();
    SPURWRIGHT_CHECK(rows.nodes.size(), <=, highest_node_index);
    Node node;
    node.id = node_id(rows.axis.id, static_cast<std::uint32_t>(rows.nodes.size()));
    node.joint = joint;
    node.major = major;
    node.minor = minor;
    node.place = place;
    node.rank = rows.nodes.size() % 2 == 1 ? 1 : -1;
    rows.nodes.push_back(node);
    rows.buds.emplace_back();
    return rows.nodes.back();
}

Bud& VineBuilder::add_bud(BudKind kind, Points points) {
    SPURWRIGHT_CHECK(rows_.size(), >, 0u);
    Rows& rows = rows_.back();
    SPURWRIGHT_CHECK(rows.nodes.size(), >, 0u);
    auto& buds = rows.buds.back();
    SPURWRIGHT_CHECK(buds.size(), <=, highest_bud_slot);
    Bud bud;
    bud.id = bud_id(rows.nodes.back().id, static_cast<std::uint32_t>(buds.size()));
    bud.kind = kind;
    bud.points = points;
    buds.push_back(bud);
    return buds.back();
}

void link_rows(Vine& vine) {
    std::uint32_t node = 0, bud = 0;
    for (Axis& axis : vine.axes) {
        axis.first_node = node;
        while (node < vine.nodes.size() && axis_of(vine.nodes[node].id) == axis.id) {
            Node& row = vine.nodes[node];
            row.first_bud = bud;
            while (bud < vine.buds.size() && node_of(vine.buds[bud].id) == row.id) ++bud;
            row.bud_count = bud - row.first_bud;
            ++node;
        }
        axis.node_count = node - axis.first_node;
    }
    vine.courses = std::make_shared<CourseBook>();
}

Side side_by_place(const Vine& vine, const Axis& axis) {
    const Axis* parent = axis.parent ? vine.find(axis_of(axis.parent)) : nullptr;
    if (!parent) return Side::none;
    if (parent->side != Side::none) return parent->side;
    const bool left_here = axis_of(vine.crown_left) == parent->id, right_here = axis_of(vine.crown_right) == parent->id;
    if (left_here != right_here) return left_here ? Side::left : Side::right;
    const Node* head = vine.find(vine.head);
    const auto nodes = vine.nodes_of(axis);
    const Node& first = nodes[nodes.size() > 1 ? 1 : 0];
    return head && first.place.x > head->place.x ? Side::right : Side::left;
}

Result<Vine> VineBuilder::build(bool find_sides) {
    std::stable_sort(rows_.begin(), rows_.end(), [](const Rows& a, const Rows& b) { return a.axis.id < b.axis.id; });
    for (Rows& rows : rows_) {
        vine.axes.push_back(rows.axis);
        vine.nodes.insert(vine.nodes.end(), rows.nodes.begin(), rows.nodes.end());
        for (const auto& buds : rows.buds) vine.buds.insert(vine.buds.end(), buds.begin(), buds.end());
    }
    rows_.clear();
    link_rows(vine);
    if (!vine.crown_left) vine.crown_left = vine.head;
    if (!vine.crown_right) vine.crown_right = vine.head;
    for (Axis& axis : vine.axes) {
        const Axis* parent = axis.parent ? vine.find(axis_of(axis.parent)) : nullptr;
        axis.order = parent ? parent->order + 1 : 0;
        if (find_sides && axis.node_count > 0) axis.side = side_by_place(vine, axis);
    }
    if (auto broken = check_vine(vine)) return failure(std::move(*broken));
    return std::move(vine);
}

}  // namespace spurwright
