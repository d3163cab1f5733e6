#include "sim/planning/vine_tables.h"

#include <algorithm>

#include "sim/pruning/lay.h"
#include "sim/rules/asked.h"
#include "sim/rules/measure_pieces.h"
#include "sim/rules/piece_points.h"

namespace spurwright::planning {
namespace {

using rules::CaneFacts;
using rules::SpurFacts;

class Filler {
public:
    Filler(const Vine& vine, const rules::HouseRules& house)
        : vine_(vine), house_(house), offers_(rules::offers(vine, house)), asked_(rules::asked(offers_, house)) {
        filled_.pieces = pieces(vine, house);
        filled_.tables.candidates.resize(filled_.pieces.size());
        shortest_.resize(filled_.pieces.size());
    }

    VineTables fill() && {
        for (std::size_t row = 0; row < filled_.pieces.size(); ++row) {
            fill_cane(row);
            fill_spur(row);
        }
        shape_matrices(filled_.tables);
        fill_beside();
        fill_pairs();
        fill_totals();
        Tables& tables = filled_.tables;
        tables.constant = rules::canonical_points(asked_).count;
        for (const Side side : both_sides)
            tables.had_cane[at(side)] = !offers_.sides[rules::index_of(side)].canes.empty();
        tables.hard_cap = house_.caps.hard.count;
        tables.soft_cap = house_.caps.soft.count;
        return std::move(filled_);
    }

private:
    void fill_cane(std::size_t row) {
        const Piece& piece = filled_.pieces[row];
        Candidate& candidate = filled_.tables.candidates[row];
        candidate.side = piece.side;
        candidate.sucker = piece.sucker;
        candidate.first_buds = std::max(1, house_.cane_count.floor_buds);
        const Axis& axis = *vine_.find(piece.axis);
        for (const Side side : both_sides) {
            if (!piece.lies[at(side)]) continue;
            const Course course = course_of(vine_, axis, side);
            auto& worth = candidate.cane[at(side)];
            for (const std::uint32_t node : piece.cut_nodes) {
                const CaneFacts facts = rules::measure_cane(vine_, house_, axis, side, course, node);
                worth[at(Load::under)].push_back(rules::cane_points(facts, house_, asked_, true).count);
                worth[at(Load::enough)].push_back(rules::cane_points(facts, house_, asked_, false).count);
                if (node == piece.cut_nodes.front()) shortest_[row][at(side)] = facts;
            }
        }
    }

    void fill_spur(std::size_t row) {
        const Piece& piece = filled_.pieces[row];
        for (std::size_t buds = 1; buds <= piece.spur_nodes.size(); ++buds) {
            const SpurFacts facts = rules::measure_spur(vine_, house_, *vine_.find(piece.axis), static_cast<int>(buds));
            filled_.tables.candidates[row].spur.push_back(rules::spur_points(facts, house_, asked_).count);
        }
    }

    // A spur's place needs its base and its cane's base: neither changes with where they are cut.
    void fill_beside() {
        Tables& tables = filled_.tables;
        const std::size_t count = filled_.pieces.size();
        for (std::size_t x = 0; x < count; ++x) {
            const Piece& piece = filled_.pieces[x];
            if (piece.spur_nodes.empty()) continue;
            const SpurFacts spur = rules::measure_spur(vine_, house_, *vine_.find(piece.axis), 1);
            for (std::size_t a = 0; a <= count; ++a) {
                const CaneFacts* cane =
                    a < count && filled_.pieces[a].lies[at(piece.side)] ? &shortest_[a][at(piece.side)] : nullptr;
                tables.beside[x * (count + 1) + a] =
                    rules::place_points(rules::place_of(spur, cane), piece.side, house_, asked_).count;
            }
        }
    }

    void fill_pairs() {
        Tables& tables = filled_.tables;
        const std::size_t count = filled_.pieces.size();
        for (std::size_t a = 0; a <= count; ++a)
            for (std::size_t b = 0; b <= count; ++b) {
                rules::PairFacts facts;
                facts.cane = {a < count, b < count};
                facts.sucker_laid = (a < count && filled_.pieces[a].sucker) || (b < count && filled_.pieces[b].sucker);
                tables.pair[a * (count + 1) + b] = rules::pair_points(facts, asked_).count;
            }
    }

    void fill_totals() {
        Tables& tables = filled_.tables;
        const int target = rules::target_buds(house_, vine_.spacing);
        const int most = tables.fruiting_totals + spur_states;
        while (tables.enough_from < most && rules::short_load(tables.enough_from, target, house_)) ++tables.enough_from;
        tables.over_from = 0;
        while (tables.over_from < most && !rules::overloaded(tables.over_from, target, house_)) ++tables.over_from;
        for (int s = 0; s < spur_states; ++s)
            for (int f = 0; f < tables.fruiting_totals; ++f) {
                const rules::LoadFacts load{f, s, f + s, vine_.spacing};
                tables.totals[static_cast<std::size_t>(s * tables.fruiting_totals + f)] =
                    rules::load_points(load, house_, asked_).count;
            }
    }

    const Vine& vine_;
    const rules::HouseRules& house_;
    const rules::Offers offers_;
    const rules::Asked asked_;
    VineTables filled_;
    std::vector<std::array<CaneFacts, 2>> shortest_;  // [row][side laid to]
};

std::optional<std::uint16_t> row_of(const VineTables& tables, AxisId axis) {
    for (std::size_t row = 0; row < tables.pieces.size(); ++row)
        if (tables.pieces[row].axis == axis) return static_cast<std::uint16_t>(row);
    return std::nullopt;
}

// False where the part is named and not in the tables.
bool put_cane(const VineTables& tables, NodeId cut, std::uint16_t& row, std::uint16_t& node) {
    if (!cut) return true;
    const auto found = row_of(tables, axis_of(cut));
    if (!found) return false;
    const auto& nodes = tables.pieces[*found].cut_nodes;
    const auto at = std::find(nodes.begin(), nodes.end(), index_of(cut));
    if (at == nodes.end()) return false;
    row = *found;
    node = static_cast<std::uint16_t>(at - nodes.begin());
    return true;
}

bool put_spur(const VineTables& tables, AxisId axis, int kept, std::uint16_t& row, std::uint16_t& buds) {
    if (!axis) return kept == 0;
    const auto found = row_of(tables, axis);
    if (!found || kept < 1 || kept > most_spur_buds) return false;
    row = *found;
    buds = static_cast<std::uint16_t>(kept);
    return true;
}

}  // namespace

VineTables vine_tables(const Vine& vine, const rules::HouseRules& house) { return Filler(vine, house).fill(); }

Choice choice_of(const VineTables& tables, const Pick& pick) {
    const auto cane = [&](std::uint16_t row, std::uint16_t cut) {
        return row == no_piece ? NodeId{} : node_id(tables.pieces[row].axis, tables.pieces[row].cut_nodes[cut]);
    };
    const auto spur = [&](std::uint16_t row) { return row == no_piece ? AxisId{} : tables.pieces[row].axis; };
    return {cane(pick.left_cane, pick.left_cut),
            cane(pick.right_cane, pick.right_cut),
            spur(pick.left_spur),
            spur(pick.right_spur),
            pick.left_buds,
            pick.right_buds};
}

std::optional<Pick> pick_of(const VineTables& tables, const Choice& choice) {
    Pick pick;
    if (!put_cane(tables, choice.left_cane, pick.left_cane, pick.left_cut) ||
        !put_cane(tables, choice.right_cane, pick.right_cane, pick.right_cut) ||
        !put_spur(tables, choice.left_spur, choice.left_buds, pick.left_spur, pick.left_buds) ||
        !put_spur(tables, choice.right_spur, choice.right_buds, pick.right_spur, pick.right_buds) ||
        !is_choice(tables.tables, pick))
        return std::nullopt;
    return pick;
}

}  // namespace spurwright::planning
