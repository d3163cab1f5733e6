#include "scenarios/commands/vine_answer.h"

#include <algorithm>

#include "scenarios/words/layout.h"
#include "sim/core/hash.h"
#include "sim/vine/canonical_text.h"
#include "sim/vine/vine_query.h"

namespace spurwright::commands {
namespace {

// Cane candidates and last winter's laid canes, by id.
std::vector<const Axis*> listed(const Vine& vine) {
    std::vector<AxisId> ids = cane_candidates(vine);
    for (const Axis& axis : vine.axes)
        if (!axis.removed && was_laid_last_winter(vine, axis)) ids.push_back(axis.id);
    std::stable_sort(ids.begin(), ids.end());
    std::vector<const Axis*> axes;
    axes.reserve(ids.size());
    for (const AxisId id : ids) axes.push_back(vine.find(id));
    return axes;
}

// Of a cane as the rules measure it; of older wood, which has no count buds, the mean of all its joints.
Length mean_joint(const Vine& vine, const Axis& axis) {
    if (age(vine, axis) == 1) return mean_internode(vine, axis);
    const auto nodes = vine.nodes_of(axis);
    std::int64_t sum = 0;
    for (const Node& node : nodes) sum += index_of(node.id) > 0 ? node.joint.count : 0;
    return {nodes.size() > 1 ? static_cast<std::int32_t>(sum / (std::int64_t{nodes.size()} - 1)) : 0};
}

io::Json site_object(const FoundVine& found) {
    const Vine& v = found.vine;
    io::Json o = io::Json::object();
    o.set("age", v.winter);
    o.set("vigour", word_of(v.vigour));
    o.set("frost", v.frost);
    o.set("spacing_mm", v.spacing);
    o.set("row_spacing_mm", v.row_spacing);
    o.set("wire_mm", fruiting_wire_height(v));
    o.set("system", word_of(v.system));
    o.set("variety", v.variety);
    o.set("pruner", found.site ? io::Json(word_of(found.site->pruner)) : io::Json());
    o.set("trunks",
          static_cast<int>(std::count_if(v.axes.begin(), v.axes.end(), [](const Axis& a) { return is_trunk(a); })));
    io::Json neighbours = io::Json::object();
    for (const Side side : both_sides) neighbours.set(word_of(side), word_of(v.neighbour(side).kind));
    o.set("neighbours", std::move(neighbours));
    o.set("seed", found.site ? io::Json(found.site->seed) : v.seed ? io::Json(v.seed) : io::Json());
    return o;
}

io::Json candidate_object(const Vine& vine, const Axis& axis) {
    io::Json o = io::Json::object();
    o.set("id", name_of(axis.id));
    o.set("wood_age", age(vine, axis));
    o.set("diameter_mm", thickness(vine, axis));
    o.set("end_diameter_mm", end_diameter(vine, axis));
    o.set("mean_internode_mm", mean_joint(vine, axis));
    o.set("count_buds", count_buds(vine, axis));
    o.set("distance_to_head_mm", distance_to_head(vine, axis));
    const auto crept = creep(vine, axis);
    o.set("creep_mm", crept ? io::Json(*crept) : io::Json());
    o.set("below_wire_mm", below_wire(vine, axis));
    o.set("side", word_of(axis.side));
    o.set("azimuth_deg", base_azimuth(vine, axis, axis.side));
    o.set("ripe_mm", axis.ripe);
    io::Json notes = io::Json::list();
    for (const std::string_view note : notes_of(vine, axis)) notes.push(note);
    o.set("notes", std::move(notes));
    return o;
}

// A length as a cell: without its unit, which stands in the head of the column.
std::string cell(const words::Words& words, Length l, int decimals) {
    return words::number_text(l.count, 3, decimals, words.numbers());
}

std::string candidates_text(const Vine& vine, const words::Words& words) {
    words::Table table;
    table.right = {false, true, true, true, true, true, true, true, true, false, false};
    std::vector<std::string> head;
    for (const std::string_view key :
         {"cane", "age", "thick", "end", "joints", "buds", "to-head", "creep", "below-wire", "side", "notes"})
        head.push_back(words("table." + std::string(key)));
    table.rows.push_back(std::move(head));
    for (const Axis* axis : listed(vine)) {
        const auto crept = creep(vine, *axis);
        std::string notes;
        for (const std::string_view note : notes_of(vine, *axis))
            notes += (notes.empty() ? "" : ", ") + words("note." + std::string(note));
        table.rows.push_back({name_of(axis->id), std::to_string(age(vine, *axis)),
                              cell(words, thickness(vine, *axis), 1), cell(words, end_diameter(vine, *axis), 1),
                              cell(words, mean_joint(vine, *axis), 0), std::to_string(count_buds(vine, *axis)),
                              cell(words, distance_to_head(vine, *axis), 0), crept ? cell(words, *crept, 0) : "-",
                              cell(words, below_wire(vine, *axis), 0),
                              words("post." + std::string(word_of(axis->side))), notes});
    }
    return words::table_text(table);
}

std::string heading(const FoundVine& found, const words::Words& words) {
    const Vine& v = found.vine;
    const Arguments facts{{"code", found.code},
                          {"hash", hash_text(vine_hash(v))},
                          {"n", Count{v.winter}},
                          {"vigour", TextKey{v.vigour == Vigour::low    ? "vigour.low"
                                             : v.vigour == Vigour::high ? "vigour.high"
                                                                        : "vigour.moderate"}},
                          {"spacing", v.spacing},
                          {"wire", fruiting_wire_height(v)}};
    std::string out = found.code.empty() ? words("show.no-code", facts) : words("show.code", facts);
    return out + "\n" + words("show.site", facts) + "\n" + words("show.hash", facts) + "\n";
}

} // namespace

std::vector<std::string_view> notes_of(const Vine& vine, const Axis& axis) {
    std::vector<std::string_view> notes;
    const auto note = [&](bool holds, std::string_view word) {
        if (holds) notes.push_back(word);
    };
    const auto nodes = vine.nodes_of(axis);
    const auto harmed = [&](Harm harm) {
        return std::any_of(nodes.begin(), nodes.end(), [&](const Node& n) { return n.harm == harm; });
    };
    const Axis* parent = axis.parent ? vine.find(axis_of(axis.parent)) : nullptr;
    note(was_laid_last_winter(vine, axis), "laid-last-winter");
    note(parent && was_laid_last_winter(vine, *parent), "on-last-winters-cane");
    note(parent && was_spur_last_winter(vine, *parent), "on-last-winters-spur");
    note(on_rootstock(vine, axis), "below-graft");
    note(!on_rootstock(vine, axis) && is_sucker(vine, axis), "sucker");
    const bool water_shoot = is_cane(vine, axis) && !is_sucker(vine, axis) && is_water_shoot(vine, axis);
    note(water_shoot && age(vine, *parent) >= 3, "from-old-wood");
    note(water_shoot && age(vine, *parent) < 3, "from-base-bud");
    note(is_cane(vine, axis) && is_double(vine, axis), "double");
    note(harmed(Harm::cracked), "cracked");
    note(harmed(Harm::spot), "spotted");
    note(harmed(Harm::scar), "scarred");
    note(axis.end == AxisEnd::broken, "broken-end");
    note(axis.state == AxisState::dead, "dead");
    note(axis.removed, "cut-off");
    return notes;
}

Answer vine_answer(const FoundVine& found, const words::Words& words) {
    Answer answer;
    answer.object.set("code", found.code.empty() ? io::Json() : io::Json(found.code));
    answer.object.set("hash", hash_text(vine_hash(found.vine)));
    answer.object.set("age_years", found.vine.winter);
    answer.object.set("site", site_object(found));
    io::Json candidates = io::Json::list();
    for (const Axis* axis : listed(found.vine)) candidates.push(candidate_object(found.vine, *axis));
    answer.object.set("candidates", std::move(candidates));
    answer.text = heading(found, words) + "\n" + candidates_text(found.vine, words) + "\n" +
                  words::wrapped(words("show.measures"));
    return answer;
}

} // namespace spurwright::commands
