#include "sim/planning/vine_tables.h"

#include <algorithm>

#include "sim/pruning/lay.h"
#include "sim/rules/measure_pieces.h"
#include "sim/rules/piece_points.h"

namespace spurwright::planning {
namespace {

using rules::CaneFacts;
using rules::SpurFacts;

MeasuredPiece measured(const Vine& vine, const rules::HouseRules& house, const Piece& piece) {
    const Axis& axis = *vine.find(piece.axis);
    MeasuredPiece facts{piece.side, piece.sucker, {}, {}};
    for (const Side side : both_sides) {
        if (!piece.lies[at(side)]) continue;
        const Course course = course_of(vine, axis, side);
        for (const std::uint32_t node : piece.cut_nodes)
            facts.canes[at(side)].push_back(rules::measure_cane(vine, house, axis, side, course, node));
    }
    for (std::size_t buds = 1; buds <= piece.spur_nodes.size(); ++buds)
        facts.spurs.push_back(rules::measure_spur(vine, house, axis, static_cast<int>(buds)));
    return facts;
}

class Filler {
public:
    Filler(const std::vector<MeasuredPiece>& pieces, const rules::Offers& offers, Length spacing,
           const rules::HouseRules& house)
        : pieces_(pieces), offers_(offers), spacing_(spacing), house_(house), asked_(rules::asked(offers, house)) {}

    Tables fill() && {
        for (const MeasuredPiece& piece : pieces_) tables_.candidates.push_back(candidate(piece));
        shape_matrices(tables_);
        fill_beside();
        fill_pairs();
        fill_totals();
        tables_.constant = rules::canonical_points(asked_).count;
        tables_.single = asked_.single;
        for (const Side side : both_sides)
            tables_.had_cane[at(side)] = !asked_.single && !offers_.sides[rules::index_of(side)].canes.empty();
        tables_.hard_cap = house_.caps.hard.count;
        tables_.soft_cap = house_.caps.soft.count;
        return std::move(tables_);
    }

private:
    Candidate candidate(const MeasuredPiece& piece) const {
        Candidate candidate;
        candidate.side = piece.side;
        candidate.sucker = piece.sucker;
        for (const Side side : both_sides) {
            auto& worth = candidate.cane[at(side)];
            for (const CaneFacts& cane : piece.canes[at(side)]) {
                worth[at(Load::under)].push_back(rules::cane_points(cane, house_, asked_, true).count);
                worth[at(Load::enough)].push_back(rules::cane_points(cane, house_, asked_, false).count);
            }
            if (!piece.canes[at(side)].empty()) candidate.first_buds = piece.canes[at(side)].front().count_buds;
        }
        for (const SpurFacts& spur : piece.spurs)
            candidate.spur.push_back(rules::spur_points(spur, house_, asked_).count);
        return candidate;
    }

    // A spur's place needs its base and its cane's base: neither changes with where they are cut.
    void fill_beside() {
        for (std::size_t x = 0; x < pieces_.size(); ++x) {
            const MeasuredPiece& piece = pieces_[x];
            if (piece.spurs.empty()) continue;
            for (std::size_t a = 0; a <= pieces_.size(); ++a) {
                const auto* canes = a < pieces_.size() ? &pieces_[a].canes[at(piece.side)] : nullptr;
                const CaneFacts* cane = canes && !canes->empty() ? &canes->front() : nullptr;
                tables_.beside[x * (pieces_.size() + 1) + a] =
                    rules::place_points(rules::place_of(piece.spurs.front(), cane), piece.side, house_, asked_).count;
            }
        }
    }

    void fill_pairs() {
        const std::size_t count = pieces_.size();
        for (std::size_t a = 0; a <= count; ++a)
            for (std::size_t b = 0; b <= count; ++b) {
                rules::PairFacts facts;
                facts.cane = {a < count, b < count};
                facts.sucker_laid = (a < count && pieces_[a].sucker) || (b < count && pieces_[b].sucker);
                tables_.pair[a * (count + 1) + b] = rules::pair_points(facts, asked_).count;
            }
    }

    void fill_totals() {
        const int target = rules::target_buds(house_, spacing_);
        const int most = tables_.fruiting_totals + spur_states;
        while (tables_.enough_from < most && rules::short_load(tables_.enough_from, target, house_))
            ++tables_.enough_from;
        tables_.over_from = 0;
        while (tables_.over_from < most && !rules::overloaded(tables_.over_from, target, house_)) ++tables_.over_from;
        for (int s = 0; s < spur_states; ++s)
            for (int f = 0; f < tables_.fruiting_totals; ++f)
                tables_.totals[static_cast<std::size_t>(s * tables_.fruiting_totals + f)] =
                    rules::load_points({f, s, f + s, spacing_}, house_, asked_).count;
    }

    const std::vector<MeasuredPiece>& pieces_;
    const rules::Offers& offers_;
    const Length spacing_;
    const rules::HouseRules& house_;
    const rules::Asked asked_;
    Tables tables_;
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

Tables tables_of(const std::vector<MeasuredPiece>& pieces, const rules::Offers& offers, Length spacing,
                 const rules::HouseRules& house) {
    return Filler(pieces, offers, spacing, house).fill();
}

VineTables vine_tables(const Vine& vine, const rules::HouseRules& house) {
    VineTables filled{pieces(vine, house), {}};
    std::vector<MeasuredPiece> facts;
    facts.reserve(filled.pieces.size());
    for (const Piece& piece : filled.pieces) facts.push_back(measured(vine, house, piece));
    filled.tables = tables_of(facts, rules::offers(vine, house), vine.spacing, house);
    return filled;
}

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
