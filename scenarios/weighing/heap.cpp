#include "scenarios/weighing/heap.h"

#include <algorithm>
#include <utility>

#include "sim/pruning/prunings.h"
#include "sim/vine/vine_query.h"

namespace spurwright::weighing {
namespace {

constexpr double least_density = 0.85, most_density = 1.05;  // g/cm3, of fresh dormant wood; our choice

class HeapMaker {
public:
    HeapMaker(const Vine& before, const Vine& after, const rules::HouseRules& house)
        : before_(before), after_(after), house_(house), piece_of_(before.axes.size()) {}

    std::vector<Piece> made() {
        for (std::size_t row = 0; row < before_.axes.size(); ++row) take(row);
        for (std::size_t row = 0; row < before_.axes.size(); ++row) stand_on(row);
        return swept();
    }

private:
    std::vector<double> mg_;  // of each piece; rounded once

    double gone_mg(std::size_t row) const { return standing_mass_mg(before_, before_.axes[row]) - standing_mass_mg(after_, after_.axes[row]); }

    bool was_cut_itself(AxisId axis) const {
        return std::any_of(after_.wounds.begin(), after_.wounds.end(), [&](const Wound& w) { return w.winter == after_.winter && w.axis == axis; });
    }
    // Whether it came off with the wood that bore it, and so still stands on it.
    bool came_with_bearer(const Axis& axis) const {
        return axis.parent && after_.find(axis.parent)->removed && !before_.find(axis.parent)->removed && !was_cut_itself(axis.id);
    }
    bool laid_now(AxisId axis) const {
        return std::any_of(after_.laid.begin(), after_.laid.end(), [&](const Laid& l) { return l.winter == after_.winter && l.axis == axis; });
    }

    Piece shape_of(std::size_t row) const {
        const auto was = before_.nodes_of(before_.axes[row]), is = after_.nodes_of(after_.axes[row]);
        Piece piece;
        piece.axis = before_.axes[row].id;
        piece.dead = before_.axes[row].state != AxisState::live;
        const Node* outer = nullptr;
        for (std::uint32_t i = 0; i < is.size(); ++i) {
            if (!is[i].removed || was[i].removed) continue;
            if (!outer) piece.thick = mean_diameter(was[i]);
            outer = &was[i];
            piece.length += was[i].joint;
            ++piece.joints;
        }
        if (outer) piece.thin = mean_diameter(*outer);
        else piece.thick = piece.thin = mean_diameter(was.back()), piece.length = Length{5'000};  // no node: a tip
        return piece;
    }

    void take(std::size_t row) {
        const Axis& axis = before_.axes[row];
        const double gone = gone_mg(row);
        if (gone < 0.5) return;
        const bool young = age(before_, axis) == 1, with_bearer = came_with_bearer(axis);
        if (with_bearer && (is_lateral(before_, axis) || !young)) {
            // A lateral stays on its cane; old wood on old wood is one piece.
            if (const auto bearer = piece_of_[row_of(before_, *before_.find(axis_of(axis.parent)))]) {
                piece_of_[row] = bearer;
                mg_[*bearer] += gone;
                pieces_[*bearer].laterals += young;
                return;
            }
        }
        Piece piece = shape_of(row);
        const CountingHabits habits = house_.habits();
        const bool sucker = young && is_sucker(before_, axis, habits), stays = !after_.nodes_of(after_.axes[row])[0].removed;
        piece.kind = !young ? Kind::old_wood : sucker ? Kind::sucker : is_lateral(before_, axis) ? Kind::lateral : stays ? Kind::end : Kind::cane;
        piece.belongs = young && (!sucker || house_.prunings_weighed.suckers);
        if (piece.kind == Kind::end && laid_now(axis.id)) piece.found = Lies::wires;
        piece_of_[row] = pieces_.size();
        pieces_.push_back(piece);
        mg_.push_back(gone);
    }

    void stand_on(std::size_t row) {
        const Axis& axis = before_.axes[row];
        const auto piece = piece_of_[row];
        if (!piece || pieces_[*piece].axis != axis.id || !came_with_bearer(axis)) return;
        const auto bearer = piece_of_[row_of(before_, *before_.find(axis_of(axis.parent)))];
        if (bearer && *bearer != *piece && pieces_[*bearer].kind == Kind::old_wood) pieces_[*piece].on = bearer;
    }

    // Small pieces of one-year wood as one handful, those of old wood with the largest of it.
    std::vector<Piece> swept() {
        std::vector<Piece> all;
        std::vector<std::optional<std::size_t>> at(pieces_.size());
        Piece handful;
        double handful_mg = 0, old_mg = 0;
        std::vector<double> mg;
        for (std::size_t i = 0; i < pieces_.size(); ++i) {
            const Piece& piece = pieces_[i];
            const bool small = mg_[i] < a_bit.count && std::none_of(pieces_.begin(), pieces_.end(), [&](const Piece& p) { return p.on == i; });
            if (small && piece.belongs) {
                if (handful.joints++ == 0) handful.axis = piece.axis, handful.thin = piece.thin;
                handful.length = std::max(handful.length, piece.length);
                handful.thick = std::max(handful.thick, piece.thick);
                handful.thin = std::min(handful.thin, piece.thin);
                handful_mg += mg_[i];
            } else if (small && piece.kind == Kind::old_wood && old_elsewhere(i)) {
                old_mg += mg_[i];
            } else {
                at[i] = all.size();
                all.push_back(piece);
                mg.push_back(mg_[i]);
            }
        }
        for (Piece& piece : all)
            if (piece.on) piece.on = at[*piece.on];
        for (std::size_t i = 0; i < all.size(); ++i)
            if (all[i].kind == Kind::old_wood) mg[i] += std::exchange(old_mg, 0);
        if (handful_mg > 0) {
            handful.kind = Kind::bits;
            handful.belongs = true;
            all.push_back(handful);
            mg.push_back(handful_mg);
        }
        for (std::size_t i = 0; i < all.size(); ++i) all[i].mass = Mass{rounded(mg[i])};
        return all;
    }
    bool old_elsewhere(std::size_t but) const {
        for (std::size_t i = 0; i < pieces_.size(); ++i)
            if (i != but && pieces_[i].kind == Kind::old_wood && mg_[i] >= a_bit.count) return true;
        return false;
    }

    const Vine &before_, &after_;
    const rules::HouseRules& house_;
    std::vector<std::optional<std::size_t>> piece_of_;  // by row of the axis
    std::vector<Piece> pieces_;
};

}  // namespace

std::vector<Piece> pieces_of(const Vine& before, const Vine& after, const rules::HouseRules& house) { return HeapMaker(before, after, house).made(); }

TrueBundle true_bundle(const std::vector<Piece>& pieces) {
    Mass mass;
    for (const Piece& piece : pieces)
        if (piece.belongs) mass += piece.mass;
    return {mass, Mass{rounded(mass.count * (least_density / density_fresh))}, Mass{rounded(mass.count * (most_density / density_fresh))}};
}

}  // namespace spurwright::weighing
