#include "sim/shape/fallen.h"

#include <algorithm>

namespace spurwright::shape {
namespace {

// Our choice, for the picture alone; metres.
constexpr double least_piece = 0.002; // along the wood that is left to draw
constexpr double face_depth = 0.001;  // the face of the cut stands this far out of the wood it closes
constexpr double nodes_apart = 1e-4, last_share = 0.98; // a rest never begins on a node or at a joint's very end

double whole_length(const Stem& stem) { return stem.from_root(stem.line.segment_count()); }

// The rest of a line from so many metres along its chords; `nodes` keep their numbers.
CentreLine from_there(const CentreLine& line, double from) {
    std::size_t segment = 0;
    double gone = 0;
    while (segment + 1 < line.segment_count() && gone + line.segment_length(segment) < from + nodes_apart) gone += line.segment_length(segment++);
    const double share = std::clamp((from - gone) / line.segment_length(segment), 0.0, last_share);
    const LineSample first = line.at(segment, share);
    std::vector<LinePoint> points{{first.place, first.radii, -1}};
    std::vector<Radii> middles;
    for (std::size_t s = segment; s < line.segment_count(); ++s) {
        middles.push_back(s == segment ? line.at(s, (1 + share) / 2).radii : line.at(s, 0.5).radii);
        points.push_back(line.points()[s + 1]);
    }
    return CentreLine(std::move(points), std::move(middles));
}

// Gathers the pieces of one change.
class Gathering {
public:
    Gathering(const VineShape& before, const VineShape& after) : before_(before), piece_of_(before.stems.size(), -1), place_in_(before.stems.size(), -1), first_of_(before.stems.size(), 0) {
        for (std::size_t i = 0; i < before.stems.size(); ++i) take(i, after.find(before.stems[i].axis));
        organs();
        for (FallenPiece& piece : pieces) weigh(piece);
    }
    std::vector<FallenPiece> pieces;

private:
    void take(std::size_t i, const Stem* left) {
        const Stem& stem = before_.stems[i];
        const std::size_t kept = left ? left->nodes.size() : 0;
        if (kept >= stem.nodes.size()) return;
        // Borne by wood that falls: of that piece, whole. Else a piece of its own.
        const int parent = stem.parent_stem;
        const bool borne = parent >= 0 && piece_of_[static_cast<std::size_t>(parent)] >= 0 && index_of(stem.parent) >= first_of_[static_cast<std::size_t>(parent)];
        first_of_[i] = kept;
        if (borne) {
            Stem whole = stem;
            whole.parent_stem = place_in_[static_cast<std::size_t>(parent)];
            put(i, piece_of_[static_cast<std::size_t>(parent)], std::move(whole));
            return;
        }
        const double all = whole_length(stem);
        // Where it was cut off flush, it begins where it came out of its parent's wood.
        const double from = std::min(left ? whole_length(*left) : stem.nodes.front().from_root, all - least_piece);
        if (from < 0) return;
        FallenPiece piece;
        piece.foot = stem.nodes[kept].node;
        piece.shape.seed = before_.seed;
        piece.shape.winter = before_.winter;
        piece.shape.spacing = before_.spacing;
        piece.shape.row_spacing = before_.row_spacing;
        Stem rest = stem;
        rest.line = from_there(stem.line, from);
        rest.parent = {};
        rest.parent_stem = -1;
        rest.trunk = false;  // no foot in the soil
        for (StemNode& node : rest.nodes) node.from_root -= from;
        rest.graft_at -= from;
        rest.ripe_at -= from;
        const LineSample foot = rest.line.at(0, 0);
        piece.cut = foot.place;
        WoundShape face;
        face.axis = stem.axis;
        face.node = piece.foot;
        face.outward = -foot.along;
        face.root = foot.place + face_depth * foot.along;
        face.face = foot.place + face_depth * face.outward;
        face.radii = foot.radii;
        face.wood_age = stem.age;
        piece.shape.wounds.push_back(face);
        pieces.push_back(std::move(piece));
        put(i, static_cast<int>(pieces.size()) - 1, std::move(rest));
    }

    void put(std::size_t i, int piece, Stem stem) {
        piece_of_[i] = piece;
        auto& stems = pieces[static_cast<std::size_t>(piece)].shape.stems;
        place_in_[i] = static_cast<int>(stems.size());
        stems.push_back(std::move(stem));
    }

    // Of the piece that holds this node of this stem; null where it stayed.
    FallenPiece* holder(std::uint32_t stem, std::uint32_t node) {
        if (piece_of_[stem] < 0 || node < first_of_[stem]) return nullptr;
        return &pieces[static_cast<std::size_t>(piece_of_[stem])];
    }

    void organs() {
        for (const BudShape& bud : before_.buds)
            if (FallenPiece* piece = holder(bud.stem, bud.node)) {
                piece->shape.buds.push_back(bud);
                piece->shape.buds.back().stem = static_cast<std::uint32_t>(place_in_[bud.stem]);
            }
        for (const HangerShape& hanger : before_.hangers)
            if (FallenPiece* piece = holder(hanger.stem, index_of(hanger.node))) {
                piece->shape.hangers.push_back(hanger);
                piece->shape.hangers.back().stem = static_cast<std::uint32_t>(place_in_[hanger.stem]);
            }
        for (const WoundShape& wound : before_.wounds)
            if (FallenPiece* piece = holder(wound.stem, index_of(wound.node))) {
                piece->shape.wounds.push_back(wound);
                piece->shape.wounds.back().stem = static_cast<std::uint32_t>(place_in_[wound.stem]);
            }
    }

    static void weigh(FallenPiece& piece) {
        double whole = 0;
        Vec3 sum{};
        for (const Stem& stem : piece.shape.stems)
            for (std::size_t s = 0; s < stem.line.segment_count(); ++s) {
                const LineSample middle = stem.line.at(s, 0.5);
                const double volume = stem.line.segment_length(s) * middle.radii.major * middle.radii.minor;
                sum = sum + volume * middle.place;
                whole += volume;
            }
        piece.balance = whole > 0 ? 1 / whole * sum : piece.cut;
    }

    const VineShape& before_;
    std::vector<int> piece_of_, place_in_;  // by stem of `before_`; -1: stands
    std::vector<std::size_t> first_of_;     // index of the first node that fell
};

} // namespace

std::vector<FallenPiece> fallen_pieces(const VineShape& before, const VineShape& after) { return std::move(Gathering(before, after).pieces); }

bool stands_again(const FallenPiece& piece, const VineShape& now) {
    const Stem* stem = now.find(axis_of(piece.foot));
    return stem && index_of(piece.foot) < stem->nodes.size();
}

} // namespace spurwright::shape
