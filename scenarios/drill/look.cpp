#include "scenarios/drill/look.h"

#include <algorithm>

#include "scenarios/quiz/ground.h"
#include "scenarios/quiz/in_sight.h"
#include "scenarios/quiz/item_maker.h"
#include "scenarios/quiz/set_out.h"
#include "sim/core/random.h"
#include "sim/growth/history.h"
#include "sim/rules/measure_plan.h"
#include "sim/vine/vine_query.h"

namespace spurwright::drill {
namespace {

using quiz::TapedPlace;

enum class Traits : std::uint32_t { vine = 41, place, other_place, cut, job };
std::uint64_t look_draw(std::uint64_t seed, Traits what, std::uint32_t part = 0) { return draw(seed, static_cast<std::uint32_t>(what), part); }

// A place of a class on a vine, and what is told of it.
struct Found {
    TapedPlace place;
    quiz::Told told;
};

// Wood that can be asked about: it stands, in sight, within reach of somebody in the row.
bool stands(const Axis& axis) { return !axis.removed && !is_trunk(axis); }

bool within_sight(const Vine& vine, const Node& node) {
    return index_of(node.id) > 0 && !node.removed && node.place.y <= fruiting_wire_height(vine) + Length{450'000} && quiz::in_sight(vine, node.id);
}

// The middle of a joint, told by the node below it.
TapedPlace middle_of_joint(const Node& node) { return {node_id(axis_of(node.id), index_of(node.id) - 1), Length{node.joint.count / 2}}; }

// Joints of an axis at which a ring can hang: long and thick enough to be seen.
std::vector<const Node*> ring_joints(const Vine& vine, const Axis& axis) {
    std::vector<const Node*> joints;
    for (const Node& node : vine.nodes_of(axis))
        if (within_sight(vine, node) && node.joint >= Length{18'000} && mean_diameter(node) >= Length{3'500}) joints.push_back(&node);
    return joints;
}

// In the lower third, where its own thickness shows.
std::optional<TapedPlace> ring_near_base(const Vine& vine, const Axis& axis) {
    const auto joints = ring_joints(vine, axis);
    for (const Node* node : joints)
        if (index_of(node->id) >= 2 && index_of(node->id) <= 5) return middle_of_joint(*node);
    return std::nullopt;
}

bool whole_cane(const Vine& vine, const Axis& axis) { return stands(axis) && is_cane(vine, axis) && axis.state == AxisState::live; }

// ---- one function a skill: every place of class `wanted` on the vine

std::vector<Found> wood_of_age(const Vine& vine, std::size_t wanted) {
    std::vector<Found> found;
    for (const Axis& axis : vine.axes) {
        const int years = stands(axis) ? age(vine, axis) : 0;
        if (axis.state != AxisState::live || std::min(years, 3) != static_cast<int>(wanted) + 1) continue;
        for (const Node* node : ring_joints(vine, axis))
            if (along(vine, axis, index_of(node->id)) <= axis.ripe)
                found.push_back({middle_of_joint(*node), {TextKey{years == 1 ? "quiz.reveal.one-year" : years == 2 ? "quiz.reveal.two-years" : "quiz.reveal.older"}, {{"years", Count{years}}}}});
    }
    return found;
}

// Buds with a clear joint of 4 to 10 mm below them are counted differently by different people: never asked.
std::vector<Found> buds_that(const Vine& vine, std::size_t wanted) {
    std::vector<Found> found;
    for (const Axis& axis : vine.axes) {
        if (!whole_cane(vine, axis)) continue;
        const auto nodes = vine.nodes_of(axis);
        // Base buds sit in the crown, below the first joint; with the next bud well apart nobody takes one for the other.
        const bool apart = nodes.size() > 1 && within_sight(vine, nodes[1]) && nodes[1].joint > Length{15'000};
        if (wanted == 1 && apart) found.push_back({{nodes[0].id, {}}, {TextKey{"drill.told.base"}, {}}});
        if (wanted == 1) continue;
        for (const Node& node : nodes)
            if (within_sight(vine, node) && index_of(node.id) <= 6 && node.joint > Length{10'000} && is_count_bud(vine, axis, node))
                found.push_back({{node.id, {}}, {TextKey{"drill.told.counts"}, {{"measured", node.joint}}}});
    }
    return found;
}

// Clear of the band's ends by what an eye is out.
std::optional<std::size_t> clear_class(Length measured, const rules::Range<Length>& full, const rules::Range<Length>& half, Length noise) {
    if (measured + noise <= half.low) return 0;
    if (measured >= full.low + noise && measured + noise <= full.high) return 1;
    if (measured >= half.high + noise) return 2;
    return std::nullopt;
}

std::vector<Found> canes_of_size(const Vine& vine, std::size_t wanted, const rules::HouseRules& house) {
    static constexpr std::array<std::string_view, 3> keys{"drill.told.thin", "drill.told.right-size", "drill.told.bull"};
    std::vector<Found> found;
    for (const Axis& axis : vine.axes) {
        if (!whole_cane(vine, axis)) continue;
        const Length thick = thickness(vine, axis);
        const auto& band = house.cane_diameter.band;
        // The right class is narrow: half of what an eye is out is asked of it.
        auto of = clear_class(thick, band.full, band.half, house.acceptable.see_diameter);
        if (!of && thick >= band.full.low + Length{house.acceptable.see_diameter.count / 2} && thick + Length{house.acceptable.see_diameter.count / 2} <= band.full.high) of = 1;
        const auto place = of == wanted ? ring_near_base(vine, axis) : std::nullopt;
        if (place) found.push_back({*place, {TextKey{keys[wanted]}, {{"measured", thick}, {"low", band.full.low}, {"high", band.full.high}}}});
    }
    return found;
}

std::vector<Found> canes_of_joints(const Vine& vine, std::size_t wanted, const rules::HouseRules& house) {
    static constexpr std::array<std::string_view, 3> keys{"drill.told.short-joints", "drill.told.right-joints", "drill.told.long-joints"};
    std::vector<Found> found;
    for (const Axis& axis : vine.axes) {
        if (!whole_cane(vine, axis) || ripe_count_nodes(vine, axis, house.habits()).size() < 6) continue;
        const Length mean = mean_internode(vine, axis, house.habits());
        const auto of = clear_class(mean, house.internode_length.full, house.internode_length.half, Length{house.acceptable.see_length.count / 6});
        const auto place = of == wanted ? ring_near_base(vine, axis) : std::nullopt;
        if (place) found.push_back({*place, {TextKey{keys[wanted]}, {{"measured", mean}, {"low", house.internode_length.full.low}, {"high", house.internode_length.full.high}}}});
    }
    return found;
}

std::vector<Found> canes_at_wire(const Vine& vine, std::size_t wanted, const rules::HouseRules& house) {
    std::vector<Found> found;
    for (const Axis& axis : vine.axes) {
        if (!whole_cane(vine, axis)) continue;
        const Length below = below_wire(vine, axis), noise = house.acceptable.see_length + house.acceptable.see_length;
        const bool fits = wanted == 0 ? below >= noise : Length{} - below >= noise;
        const auto place = fits ? ring_near_base(vine, axis) : std::nullopt;
        if (place) found.push_back({*place, {TextKey{wanted == 0 ? "drill.told.below-wire" : "drill.told.above-wire"}, {{"measured", Length{std::abs(below.count)}}}}});
    }
    return found;
}

std::vector<Found> wood_alive(const Vine& vine, std::size_t wanted) {
    std::vector<Found> found;
    for (const Axis& axis : vine.axes) {
        if (!stands(axis) || (axis.state == AxisState::live) != (wanted == 0) || age(vine, axis) > 3) continue;
        for (const Node* node : ring_joints(vine, axis))
            if (wanted == 1 || along(vine, axis, index_of(node->id)) <= axis.ripe) found.push_back({middle_of_joint(*node), {TextKey{wanted == 0 ? "drill.told.alive" : "drill.told.dead"}, {}}});
    }
    return found;
}

std::vector<Found> places_on(const Vine& vine, Skill skill, std::size_t wanted, const rules::HouseRules& house) {
    switch (skill) {
    case Skill::wood_age: return wood_of_age(vine, wanted);
    case Skill::bud_counts: return buds_that(vine, wanted);
    case Skill::cane_size: return canes_of_size(vine, wanted, house);
    case Skill::joints: return canes_of_joints(vine, wanted, house);
    case Skill::wire_side: return canes_at_wire(vine, wanted, house);
    case Skill::live_wood: return wood_alive(vine, wanted);
    case Skill::cut_made:
    case Skill::which_job: break;
    }
    return {};
}

std::optional<Found> drawn_place(const std::vector<Found>& places, std::uint64_t seed, Traits what) {
    std::optional<std::size_t> best;
    for (std::size_t i = 0; i < places.size(); ++i)
        if (!best || look_draw(seed, what, places[i].place.node.value) < look_draw(seed, what, places[*best].place.node.value)) best = i;
    return best ? std::optional(places[*best]) : std::nullopt;
}

std::optional<Vine> look_vine(std::uint64_t seed, std::uint32_t try_number) {
    growth::Site site = quiz::crew_site(look_draw(seed, Traits::vine, try_number));
    auto vine = growth::grow_vine(site);
    return vine ? std::optional(*std::move(vine)) : std::nullopt;
}

Look look_of(Skill skill, std::uint64_t seed, Vine vine, const Found& found, std::size_t right) {
    Look look;
    look.skill = skill;
    look.seed = seed;
    look.right = right;
    look.item.kind = quiz::Kind::wood_age; // one ring, answered in words
    look.item.seed = seed;
    look.item.vine = std::move(vine);
    look.item.places = {found.place};
    look.item.words = words_of_skill(skill);
    look.item.accepted = {{static_cast<std::uint8_t>(right + 1)}};
    look.item.reveal = found.told;
    return look;
}

// ---- a cut that somebody made: a cane shortened well, flush at its last bud, or with a long stub
std::optional<Look> cut_look(std::size_t wanted, std::uint64_t seed, const rules::HouseRules& house) {
    static constexpr std::array<std::string_view, 3> keys{"drill.told.cut-flush", "drill.told.cut-good", "drill.told.cut-long"};
    const std::array<Length, 3> beyond{Length{2'000}, house.end_cut.full_from, Length{60'000}}; // past the last bud; the outer two our choice
    for (std::uint32_t i = 0; i < most_look_draws; ++i) {
        const auto vine = look_vine(seed, i);
        if (!vine) continue;
        std::vector<Found> places;
        for (const Axis& axis : vine->axes) {
            if (!whole_cane(*vine, axis)) continue;
            for (const Node& node : vine->nodes_of(axis)) {
                const Node* next = vine->find(node_id(axis.id, index_of(node.id) + 1));
                if (index_of(node.id) < 2 || index_of(node.id) > 6 || !next || next->joint < beyond[wanted] + Length{15'000}) continue;
                if (within_sight(*vine, node) && is_count_bud(*vine, axis, node)) places.push_back({{node.id, beyond[wanted]}, {TextKey{keys[wanted]}, {{"measured", beyond[wanted]}}}});
            }
        }
        const auto found = drawn_place(places, seed, Traits::cut);
        if (!found) continue;
        Plan plan;
        plan.edits.emplace_back(Cut{found->place.node, found->place.beyond, Tool::shears, {}});
        const auto after = prune(*vine, plan);
        if (!after) continue;
        Found shown = *found;
        shown.place.beyond = {}; // the ring hangs at the last bud: past it lies what is looked at
        return look_of(Skill::cut_made, seed, *after, shown, wanted);
    }
    return std::nullopt;
}

std::optional<Look> job_look(std::size_t wanted, std::uint64_t seed, const rules::HouseRules& house) {
    for (std::uint32_t i = 0; i < most_look_draws; ++i) {
        auto item = quiz::which_job(look_draw(seed, Traits::job, i), house);
        if (!item || item->accepted.size() != 1) continue;
        const TextKey right = item->words[item->accepted[0][0] - 1u];
        if (right != words_of_skill(Skill::which_job)[wanted]) continue;
        Look look;
        look.skill = Skill::which_job;
        look.seed = seed;
        look.right = wanted;
        look.item = *std::move(item);
        look.item.kind = quiz::Kind::which_job;
        look.item.seed = seed;
        look.item.words = words_of_skill(Skill::which_job);
        look.item.accepted = {{static_cast<std::uint8_t>(wanted + 1)}};
        return look;
    }
    return std::nullopt;
}

} // namespace

const std::vector<TextKey>& words_of_skill(Skill skill) {
    static const std::array<std::vector<TextKey>, skill_count> words{{
        {TextKey{"quiz.word.one-year"}, TextKey{"quiz.word.two-years"}, TextKey{"quiz.word.older"}},
        {TextKey{"drill.word.counts"}, TextKey{"drill.word.base"}},
        {TextKey{"drill.word.thin"}, TextKey{"drill.word.right-size"}, TextKey{"drill.word.bull"}},
        {TextKey{"drill.word.short-joints"}, TextKey{"drill.word.right-joints"}, TextKey{"drill.word.long-joints"}},
        {TextKey{"drill.word.below-wire"}, TextKey{"drill.word.above-wire"}},
        {TextKey{"drill.word.cut-flush"}, TextKey{"drill.word.cut-good"}, TextKey{"drill.word.cut-long"}},
        {TextKey{"drill.word.alive"}, TextKey{"drill.word.dead"}},
        {TextKey{"quiz.word.as-ordered"}, TextKey{"quiz.word.weak"}, TextKey{"quiz.word.young"}, TextKey{"quiz.word.dead"}},
    }};
    return words[static_cast<std::size_t>(skill)];
}

int target_seconds(Skill skill) {
    switch (skill) {
    case Skill::wood_age:
    case Skill::live_wood: return 3;
    case Skill::which_job: return 8;
    default: return 4;
    }
}

bool has_pairs(Skill skill) { return skill != Skill::cut_made && skill != Skill::which_job; }

std::optional<Look> make_look(Skill skill, std::size_t wanted, std::uint64_t seed, const rules::HouseRules& house) {
    if (wanted >= words_of_skill(skill).size()) return std::nullopt;
    if (skill == Skill::cut_made) return cut_look(wanted, seed, house);
    if (skill == Skill::which_job) return job_look(wanted, seed, house);
    for (std::uint32_t i = 0; i < most_look_draws; ++i) {
        auto vine = look_vine(seed, i);
        const auto found = vine ? drawn_place(places_on(*vine, skill, wanted, house), seed, Traits::place) : std::nullopt;
        if (found) return look_of(skill, seed, *std::move(vine), *found, wanted);
    }
    return std::nullopt;
}

std::optional<Look> make_pair(Skill skill, std::size_t wanted, std::size_t other, std::uint64_t seed, const rules::HouseRules& house) {
    if (!has_pairs(skill) || wanted == other || std::max(wanted, other) >= words_of_skill(skill).size()) return std::nullopt;
    for (std::uint32_t i = 0; i < most_look_draws; ++i) {
        auto vine = look_vine(seed, i);
        if (!vine) continue;
        const auto one = drawn_place(places_on(*vine, skill, wanted, house), seed, Traits::place), two = drawn_place(places_on(*vine, skill, other, house), seed, Traits::other_place);
        if (!one || !two) continue;
        // Digits along the row from the near post.
        const bool first = quiz::along_row(*vine, one->place) <= quiz::along_row(*vine, two->place);
        Look look = look_of(skill, seed, *std::move(vine), *one, wanted);
        look.item.places = first ? std::vector{one->place, two->place} : std::vector{two->place, one->place};
        look.item.words.clear();
        look.item.accepted = {{static_cast<std::uint8_t>(first ? 1 : 2)}};
        look.beside = other;
        return look;
    }
    return std::nullopt;
}

} // namespace spurwright::drill
