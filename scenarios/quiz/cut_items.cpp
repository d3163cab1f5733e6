// Items about one cane or one joint: where it is cut, how many buds it has, how old the wood is.
#include <algorithm>

#include "scenarios/quiz/in_sight.h"
#include "scenarios/quiz/item_maker.h"
#include "scenarios/quiz/set_out.h"
#include "sim/core/random.h"
#include "sim/planning/vine_tables.h"
#include "sim/vine/vine_query.h"

namespace spurwright::quiz {
namespace {

constexpr Length doubtful_from{4'000}, doubtful_to{10'000};  // clear joint below a bud that people count differently
constexpr std::uint32_t least_apart = 2;                     // nodes between two tapes on one cane

// What the same choice is worth cut after another node.
std::optional<Tenths> points_cut_at(const Ground& ground, planning::Pick pick, Side side, std::uint16_t cut) {
    (side == Side::left ? pick.left_cut : pick.right_cut) = cut;
    if (!planning::is_choice(ground.planning.tables().tables, pick)) return std::nullopt;
    return Tenths{planning::points_of(ground.planning.tables().tables, pick)};
}

// Tapes no nearer than `least_apart` nodes to each other, the best right one first; the rest as they come.
std::vector<Option> kept_apart(std::vector<std::pair<std::uint32_t, Option>> options) {
    std::stable_sort(options.begin(), options.end(), [](const auto& a, const auto& b) { return a.second.points > b.second.points; });
    std::vector<std::pair<std::uint32_t, Option>> kept;
    for (const auto& option : options)
        if (std::all_of(kept.begin(), kept.end(), [&](const auto& k) {
                return (k.first > option.first ? k.first - option.first : option.first - k.first) >= least_apart;
            }))
            kept.push_back(option);
    std::vector<Option> out;
    out.reserve(kept.size());
    for (auto& k : kept) out.push_back(k.second);
    return out;
}

bool countable(const Vine& vine, const Axis& axis) {
    const auto nodes = vine.nodes_of(axis);
    for (std::uint32_t i = 1; i < nodes.size(); ++i)
        if (nodes[i].joint >= doubtful_from && nodes[i].joint <= doubtful_to) return false;
    return true;
}

Told older_told(const Vine& vine, const Axis& axis) {
    const int years = age(vine, axis);
    if (years == 1) return {TextKey{"quiz.reveal.one-year"}, {}};
    return {TextKey{years == 2 ? "quiz.reveal.two-years" : "quiz.reveal.older"}, {{"years", Count{years}}}};
}

}  // namespace

std::optional<Item> where_to_cut(const Ground& ground, const Wanted& wanted) {
    const planning::VineTables& tables = ground.planning.tables();
    const auto pick = planning::pick_of(tables, ground.best.choice);
    const std::uint16_t row = wanted.side == Side::left ? pick->left_cane : pick->right_cane;
    if (row == planning::no_piece) return std::nullopt;
    const planning::Piece& piece = tables.pieces[row];
    std::vector<std::pair<std::uint32_t, Option>> options;
    for (std::size_t cut = 0; cut < piece.cut_nodes.size(); ++cut) {
        const auto points = points_cut_at(ground, *pick, wanted.side, static_cast<std::uint16_t>(cut));
        if (!points) continue;
        const std::uint32_t node = piece.cut_nodes[cut];
        const Node* next = ground.vine.find(node_id(piece.axis, node + 1));
        if (!next) continue;
        const TapedPlace place{node_id(piece.axis, node), Length{next->joint.count / 2}};
        // Along the cane, not along the row: the digits rise from its base.
        options.push_back({node, {piece.axis, place, Length{static_cast<std::int32_t>(node)}, ground.as_good(*points), *points}});
    }
    const auto shown = set_out(kept_apart(std::move(options)), wanted.places, wanted.rank, wanted.seed);
    if (!shown) return std::nullopt;
    Item item;
    item.vine = ground.vine;
    item.side = wanted.side;
    fill_places(item, *shown);
    item.scored = item.margin >= ground.tolerance;
    item.rule = rules::RuleName::bud_load;
    const auto target = ground.house.bud_load.target.value_or(0);
    const int buds = target > 0 ? target : static_cast<int>(ground.house.bud_load.per_metre * std::int64_t{ground.vine.spacing.count} / 1'000'000);
    item.reveal = {TextKey{"quiz.reveal.where-to-cut"}, {{"n", Count{buds}}}};
    for (const Option& option : *shown)
        item.why_not.push_back(option.good ? Told{} : Told{TextKey{"quiz.why.where-to-cut"}, {{"points", ground.best.points - option.points}}});
    return item;
}

std::optional<Item> count_buds_of_one(const Ground& ground, const Wanted& wanted) {
    std::vector<std::pair<std::uint64_t, AxisId>> canes;
    for (const AxisId cane : cane_candidates(ground.vine, ground.house.habits()))
        if (countable(ground.vine, *ground.vine.find(cane))) canes.emplace_back(draw(wanted.seed, 11, cane.value), cane);
    if (canes.empty()) return std::nullopt;
    const AxisId cane = std::min_element(canes.begin(), canes.end())->second;
    const Axis& axis = *ground.vine.find(cane);
    const auto nodes = ripe_count_nodes(ground.vine, axis, ground.house.habits());
    const int most = std::min<int>(most_counted, static_cast<int>(nodes.size())), least = std::min(4, most);
    const int asked = between(draw(wanted.seed, 12, 0), least, most);
    const std::uint32_t last = nodes[static_cast<std::size_t>(asked) - 1];
    const Node* next = ground.vine.find(node_id(cane, last + 1));
    if (!next) return std::nullopt;
    Item item;
    item.vine = ground.vine;
    item.places = {{node_id(cane, last), Length{next->joint.count / 2}}};
    const int counted = count_buds(ground.vine, axis, ground.house.habits(), last);
    if (counted > most_counted) return std::nullopt;
    item.accepted = {{static_cast<std::uint8_t>(counted)}};
    item.rule = rules::RuleName::bud_load;
    item.reveal = {TextKey{"quiz.reveal.count"}, {{"n", Count{counted}}}};
    return item;
}

std::optional<Item> wood_age(const Ground& ground, const Wanted& wanted) {
    // The class is drawn first, then a joint of it in sight; words in drawn order.
    const std::array<TextKey, 3> all{TextKey{"quiz.word.one-year"}, TextKey{"quiz.word.two-years"}, TextKey{"quiz.word.older"}};
    const int wanted_years = between(draw(wanted.seed, 13, 0), 1, 3);
    std::vector<std::pair<std::uint64_t, NodeId>> joints;
    for (const Axis& axis : ground.vine.axes) {
        if (axis.removed || is_trunk(axis) || axis.state != AxisState::live || std::min(age(ground.vine, axis), 3) != wanted_years) continue;
        Length along;
        for (const Node& node : ground.vine.nodes_of(axis)) {
            if (index_of(node.id) == 0) continue;
            along += node.joint;
            if (node.removed || node.joint < Length{20'000} || mean_diameter(node) < Length{4'000} || along > axis.ripe) continue;
            if (node.place.y > fruiting_wire_height(ground.vine) + Length{350'000} || !in_sight(ground.vine, node.id)) continue;
            joints.emplace_back(draw(wanted.seed, 14, node.id.value), node.id);
        }
    }
    if (joints.empty()) return std::nullopt;
    const NodeId joint = std::min_element(joints.begin(), joints.end())->second;
    std::vector<std::pair<std::uint64_t, int>> order;
    order.reserve(3);
    for (int i = 0; i < 3; ++i) order.emplace_back(draw(wanted.seed, 15, static_cast<std::uint32_t>(i)), i);
    std::stable_sort(order.begin(), order.end());
    Item item;
    item.vine = ground.vine;
    item.places = {{node_id(axis_of(joint), index_of(joint) - 1), Length{ground.vine.find(joint)->joint.count / 2}}};
    for (std::size_t i = 0; i < 3; ++i) {
        item.words.push_back(all[static_cast<std::size_t>(order[i].second)]);
        if (order[i].second == wanted_years - 1) item.accepted = {{static_cast<std::uint8_t>(i + 1)}};
    }
    item.rule = rules::RuleName::wood_age;
    item.reveal = older_told(ground.vine, *ground.vine.find(axis_of(joint)));
    return item;
}

}  // namespace spurwright::quiz
