// Writes a vine file: keys in the documented order, defaults left out.
#include "scenarios/io/json.h"
#include "scenarios/io/safe_file.h"
#include "scenarios/io/vine_file.h"
#include "sim/core/hash.h"

namespace spurwright::io {
namespace {

template <class E>
void set_word(Json& object, std::string_view key, E value, E other) {
    if (value != other) object.set(key, word_of(value));
}

void set_yes(Json& object, std::string_view key, bool value) {
    if (value) object.set(key, true);
}

Json diameters(Length major, Length minor) {
    Json list = Json::list();
    list.push(major);
    list.push(minor);
    return list;
}

Json printed(const Wire& wire) {
    Json o = Json::object();
    o.set("id", name_of(wire.id));
    o.set("kind", word_of(wire.kind));
    o.set("height", wire.height);
    if (wire.half_gap != Length{}) o.set("half_gap", wire.half_gap);
    set_word(o, "state", wire.state, WireState::up);
    return o;
}

bool is_default(const Bud& bud, BudKind kind, Points points) {
    return bud.kind == kind && bud.primary && bud.secondary && bud.tertiary && bud.points == points && !bud.harmed;
}

// Whether these are the buds a reader gives a node that names none.
bool are_default(Vine::Buds buds, std::uint32_t index, bool one_year) {
    if (!one_year) return buds.size() == 0;
    if (buds.size() != (index == 0 ? 2u : 1u)) return false;
    const Points points = index == 0 || index % 2 == 1 ? Points::outward : Points::inward;
    for (const Bud& bud : buds)
        if (!is_default(bud, index == 0 ? BudKind::crown : BudKind::node, points)) return false;
    return true;
}

Json printed(const Bud& bud) {
    Json o = Json::object();
    o.set("kind", word_of(bud.kind));
    if (!bud.primary || !bud.secondary || !bud.tertiary) {
        Json alive = Json::list();
        for (const bool one : {bud.primary, bud.secondary, bud.tertiary}) alive.push(one);
        o.set("alive", std::move(alive));
    }
    set_word(o, "points", bud.points, Points::outward);
    set_yes(o, "harmed", bud.harmed);
    return o;
}

Json printed(const Vine& vine, const Node& node, bool one_year) {
    Json o = Json::object();
    const std::uint32_t index = index_of(node.id);
    o.set("joint", node.joint);
    o.set("d", diameters(node.major, node.minor));
    Json at = Json::list();
    for (const Length l : {node.place.x, node.place.y, node.place.z}) at.push(l);
    o.set("at", std::move(at));
    if (node.rank != (index % 2 == 1 ? 1 : -1)) o.set("rank", node.rank);
    if (node.tendril_class != 0) o.set("tendril_class", node.tendril_class);
    set_word(o, "tendril", node.tendril, Tendril::none);
    set_word(o, "bunch", node.bunch, Bunch::none);
    set_word(o, "lateral", node.lateral, Lateral::none);
    set_word(o, "harm", node.harm, Harm::none);
    set_yes(o, "removed", node.removed);
    const auto buds = vine.buds_of(node);
    if (!are_default(buds, index, one_year)) {
        Json list = Json::list();
        for (const Bud& bud : buds) list.push(printed(bud));
        o.set("buds", std::move(list));
    }
    return o;
}

Json printed(const Vine& vine, const Axis& axis) {
    Json o = Json::object();
    o.set("id", name_of(axis.id));
    o.set("on", axis.parent ? Json(name_of(axis.parent)) : Json());
    o.set("born", axis.born);
    o.set("side", word_of(axis.side));
    o.set("ripe", axis.ripe);
    set_word(o, "class", axis.grew, CaneClass::ordinary);
    set_word(o, "end", axis.end, AxisEnd::tip);
    set_word(o, "state", axis.state, AxisState::live);
    set_yes(o, "removed", axis.removed);
    set_word(o, "mark", axis.mark, Role::none);
    Json nodes = Json::list();
    for (const Node& node : vine.nodes_of(axis)) nodes.push(printed(vine, node, axis.born == vine.winter));
    o.set("nodes", std::move(nodes));
    return o;
}

Json printed(const Wound& wound) {
    Json o = Json::object();
    o.set("id", name_of(wound.id));
    o.set("axis", name_of(wound.axis));
    o.set("node", name_of(wound.node));
    o.set("beyond", wound.beyond);
    o.set("d", diameters(wound.major, wound.minor));
    o.set("wood_age", wound.wood_age);
    o.set("winter", wound.winter);
    o.set("tool", word_of(wound.tool));
    if (wound.tilt != Angle{}) o.set("tilt", wound.tilt);
    set_yes(o, "protected", wound.protected_face);
    return o;
}

Json printed(const Laid& laid) {
    Json o = Json::object();
    o.set("axis", name_of(laid.axis));
    o.set("winter", laid.winter);
    o.set("side", word_of(laid.side));
    if (laid.half_wraps != 0) o.set("wraps", Json::decimal(laid.half_wraps * 5, 1));
    if (laid.strain != Strain{}) o.set("strain_percent", laid.strain);
    o.set("worst", name_of(laid.worst));
    set_word(o, "state", laid.state, LaidState::held);
    return o;
}

Json printed(const Tie& tie) {
    Json o = Json::object();
    o.set("id", name_of(tie.id));
    o.set("node", name_of(tie.node));
    o.set("beyond", tie.beyond);
    o.set("winter", tie.winter);
    set_yes(o, "tight", tie.tight);
    set_word(o, "state", tie.state, TieState::on);
    return o;
}

Json printed(const Brush& brush) {
    Json o = Json::object();
    o.set("id", name_of(brush.id));
    o.set("node", name_of(brush.node));
    set_yes(o, "hanging", brush.hanging);
    return o;
}

template <class Rows>
void set_rows(Json& object, std::string_view key, const Rows& rows) {
    if (rows.empty()) return;
    Json list = Json::list();
    for (const auto& row : rows) list.push(printed(row));
    object.set(key, std::move(list));
}

void set_neighbours(Json& object, const Vine& vine) {
    const Length reach{vine.spacing.count / 2 - 50'000};
    bool both_default = true;
    for (const Neighbour& n : vine.neighbours)
        both_default = both_default && n.kind == NeighbourKind::vine && n.reach == reach;
    if (both_default) return;
    Json list = Json::list();
    for (const Side side : both_sides) {
        const Neighbour& n = vine.neighbour(side);
        Json o = Json::object();
        o.set("side", word_of(side));
        o.set("kind", word_of(n.kind));
        o.set("reach", n.reach);
        list.push(std::move(o));
    }
    object.set("neighbours", std::move(list));
}

void set_history(Json& o, const Vine& v) {
    if (v.recipe != 255) o.set("recipe", v.recipe);
    if (v.seed != 0) o.set("seed", v.seed);
    set_word(o, "system", v.system, System::two_cane);
    if (v.variety != "plain") o.set("variety", v.variety);
    set_word(o, "vigour", v.vigour, Vigour::moderate);
    set_yes(o, "frost", v.frost);
    if (v.graft) o.set("graft", name_of(v.graft));
    if (v.crown_left != v.head) o.set("crown_left", name_of(v.crown_left));
    if (v.crown_right != v.head) o.set("crown_right", name_of(v.crown_right));
    if (v.origin_left) o.set("origin_left", *v.origin_left);
    if (v.origin_right) o.set("origin_right", *v.origin_right);
    if (v.capacity != 0) o.set("capacity", Json::decimal(v.capacity, 3));
    if (v.reserves != whole) o.set("reserves_share", v.reserves);
    if (v.last_prunings != Mass{}) o.set("last_prunings", v.last_prunings);
    if (v.last_yield != Mass{}) o.set("last_yield", v.last_yield);
}

} // namespace

std::string print_vine_file(const VineFile& file) {
    const Vine& v = file.vine;
    Json o = Json::object();
    o.set("kind", vine_kind);
    o.set("version", vine_version);
    o.set("winter", v.winter);
    o.set("spacing", v.spacing);
    o.set("row_spacing", v.row_spacing);
    set_rows(o, "wires", v.wires);
    o.set("head", name_of(v.head));
    Json axes = Json::list();
    for (const Axis& axis : v.axes) axes.push(printed(v, axis));
    o.set("axes", std::move(axes));
    set_history(o, v);
    set_neighbours(o, v);
    set_rows(o, "wounds", v.wounds);
    set_rows(o, "laid", v.laid);
    set_rows(o, "ties", v.ties);
    set_rows(o, "brush", v.brush);
    if (!file.code.empty()) o.set("code", file.code);
    if (file.pruned_from) {
        o.set("pruned_from", hash_text(*file.pruned_from));
        o.set("plan", file.plan);
    }
    if (!file.title.empty()) o.set("title", file.title);
    if (!file.note.empty()) o.set("note", file.note);
    return print_json(o);
}

Result<void> save_vine_file(const std::string& path, const VineFile& file) {
    return write_file(path, print_vine_file(file));
}

} // namespace spurwright::io
