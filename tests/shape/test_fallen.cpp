// What a cut lets fall is the wood that was there and is no more: nothing lost, nothing doubled.
#include <doctest/doctest.h>

#include "sim/growth/history.h"
#include "sim/pruning/plan.h"
#include "sim/shape/fallen.h"
#include "tests/support/little_vine.h"

using namespace spurwright;
using namespace spurwright::shape;

namespace {

// Cubic metres over 4 pi: of every stem, node organs counted apart.
double wood(const VineShape& vine) {
    double sum = 0;
    for (const Stem& stem : vine.stems)
        for (std::size_t s = 0; s < stem.line.segment_count(); ++s) {
            const Radii r = stem.line.at(s, 0.5).radii;
            sum += stem.line.segment_length(s) * r.major * r.minor;
        }
    return sum;
}

VineShape after(const Vine& vine, std::vector<Edit> edits) { return vine_shape(*prune(vine, Plan{std::move(edits)})); }

Edit cut_at(NodeId node, double beyond_mm) { return Cut{node, from_mm(beyond_mm), {}, {}}; }

} // namespace

TEST_SUITE("shape/fallen") {
    TEST_CASE("nothing falls where nothing was cut, and nothing where wood came back") {
        const Vine vine = test::little_vine();
        const VineShape whole = vine_shape(vine), less = after(vine, {cut_at(node_id(AxisId{4}, 2), 20)});
        CHECK(fallen_pieces(whole, whole).empty());
        CHECK(fallen_pieces(less, whole).empty());
        CHECK(fallen_pieces(whole, after(vine, {Mark{AxisId{4}, Role::left}})).empty());
    }
    TEST_CASE("a cane cut within its length: one piece, its outer nodes and buds, from the face of the cut on") {
        const Vine vine = test::little_vine();
        const VineShape whole = vine_shape(vine), less = after(vine, {cut_at(node_id(AxisId{5}, 2), 20)});
        const auto pieces = fallen_pieces(whole, less);
        REQUIRE(pieces.size() == 1);
        const FallenPiece& piece = pieces[0];
        CHECK(piece.foot == node_id(AxisId{5}, 3));
        REQUIRE(piece.shape.stems.size() == 1);
        CHECK(piece.shape.buds.size() == whole.buds.size() - less.buds.size());
        const auto& left = less.find(AxisId{5})->line.points().back();
        CHECK(length(piece.cut - left.place) < 0.0005);
        CHECK(piece.balance.y > piece.cut.y);
        CHECK(wood(piece.shape) == doctest::Approx(wood(whole) - wood(less)).epsilon(0.02));
        CHECK(piece.shape.wounds.front().winters == 0);
        CHECK_FALSE(stands_again(piece, less));
        CHECK(stands_again(piece, whole));
    }
    TEST_CASE("an arm takes what it bears down with it, in one piece; two cuts make two") {
        const Vine vine = test::little_vine();
        const VineShape whole = vine_shape(vine);
        const auto arm = fallen_pieces(whole, after(vine, {cut_at(node_id(AxisId{2}, 0), 10)}));
        REQUIRE(arm.size() == 1);
        CHECK(arm[0].shape.stems.size() == 3);  // a2, a4, a5
        for (std::size_t i = 1; i < 3; ++i) CHECK(arm[0].shape.stems[i].parent_stem == 0);
        const auto two = fallen_pieces(whole, after(vine, {cut_at(node_id(AxisId{6}, 1), 5), cut_at(node_id(AxisId{7}, 2), 5)}));
        REQUIRE(two.size() == 2);
        CHECK(two[0].foot == node_id(AxisId{6}, 2));
        CHECK(two[1].foot == node_id(AxisId{7}, 3));
    }
    TEST_CASE("on grown vines the pieces of a whole winter hold the wood, the buds and the hangers that are gone") {
        for (const std::uint64_t seed : {3u, 7u, 11u}) {
            growth::Site site;
            site.seed = seed;
            const Vine vine = *growth::grow_vine(site);
            const VineShape whole = vine_shape(vine);
            std::vector<Edit> edits;
            for (const Stem& stem : whole.stems)
                if (stem.wood == Wood::one_year && !stem.lateral)
                    if (const Edit cut = cut_at(node_id(stem.axis, stem.axis.value % 3), 8); prune(vine, Plan{{cut}})) edits.push_back(cut);
            REQUIRE(edits.size() > 10);
            const auto cut = prune(vine, Plan{edits});
            REQUIRE(cut);
            const VineShape less = vine_shape(*cut);
            std::size_t buds = 0, hangers = 0;
            double fell = 0;
            for (const FallenPiece& piece : fallen_pieces(whole, less)) {
                buds += piece.shape.buds.size();
                hangers += piece.shape.hangers.size();
                fell += wood(piece.shape);
                for (const BudShape& bud : piece.shape.buds) CHECK(bud.stem < piece.shape.stems.size());
            }
            CHECK(buds == whole.buds.size() - less.buds.size());
            CHECK(hangers == whole.hangers.size() - less.hangers.size());
            CHECK(fell == doctest::Approx(wood(whole) - wood(less)).epsilon(0.02));
        }
    }
}
