// The temptations of scenes that came first: what is changed or added keeps every invariant and reads as the rules read it.
#include <cmath>

#include "sim/core/numeric.h"
#include "tests/growth/over_vines.h"

using namespace spurwright;
using namespace spurwright::growth;
using test::grown_for_switches;
using test::is_near;
using test::over_vines;
using test::read_cane;

TEST_CASE("the fat top cane is thick, flat, long-jointed and stands above the wire, as the rules read it") {
    over_vines<FatTopCane>([](const Vine& vine, const Tempted& made, const FatTopCane& wanted) {
        const rules::CaneFacts cane = read_cane(made);
        CHECK(is_near(cane.diameter, wanted.diameter, 50));
        CHECK(cane.axis_ratio.count >= wanted.axis_ratio.count - 2);
        CHECK(cane.axis_ratio.count <= wanted.axis_ratio.count + 2);
        CHECK(is_near(cane.mean_joint, wanted.joint, 1'000));
        CHECK(is_near(cane.below_wire, -wanted.above_wire, 500));
        CHECK(made.vine.axes.size() == vine.axes.size() + 2); // the cane and what it stands on
        CHECK(age(made.vine, *made.vine.find(axis_of(made.vine.find(made.axis)->parent))) >= 3);
        CHECK(made.vine.find(made.axis)->grew == CaneClass::bull);
    });
}

TEST_CASE("the far cane is faultless and stands 250 to 400 mm out on last winter's laid cane") {
    over_vines<FarCane>([](const Vine&, const Tempted& made, const FarCane& wanted) {
        const rules::CaneFacts cane = read_cane(made);
        CHECK(is_near(cane.diameter, wanted.diameter, 50));
        CHECK(is_near(cane.mean_joint, wanted.joint, 1'000));
        CHECK(cane.distance_to_head >= Length{250'000});
        CHECK(cane.distance_to_head <= Length{400'000});
        CHECK(cane.count_buds >= 11);
        CHECK_FALSE((cane.health.spot || cane.health.wound || cane.health.cracked || cane.health.twin));
        CHECK(cane.health.ripe_share == whole);
        CHECK(was_laid_last_winter(made.vine, *made.vine.find(axis_of(made.vine.find(made.axis)->parent))));
    });
}

TEST_CASE("the plain near cane is sound, stands on last winter's spur and has its mate below it") {
    over_vines<PlainNearCane>([](const Vine&, const Tempted& made, const PlainNearCane& wanted) {
        const rules::CaneFacts cane = read_cane(made);
        CHECK(is_near(cane.diameter, wanted.diameter, 50));
        CHECK(is_near(cane.mean_joint, wanted.joint, 1'000));
        CHECK_FALSE((cane.health.spot || cane.health.wound || cane.health.cracked || cane.health.twin));
        const Axis& axis = *made.vine.find(made.axis);
        CHECK(was_spur_last_winter(made.vine, *made.vine.find(axis_of(axis.parent))));
        bool mate = false;
        for (const Axis& other : made.vine.axes)
            mate = mate || (axis_of(other.parent) == axis_of(axis.parent) && index_of(other.parent) < index_of(axis.parent));
        CHECK(mate);
    });
}

TEST_CASE("the old upright is two-year wood that stands like a cane and carries canes") {
    over_vines<OldUpright>([](const Vine& vine, const Tempted& made, const OldUpright& wanted) {
        const Axis& axis = *made.vine.find(made.axis);
        CHECK(age(made.vine, axis) == 2);
        CHECK_FALSE(was_laid_last_winter(made.vine, axis));
        CHECK_FALSE(was_spur_last_winter(made.vine, axis));
        CHECK(is_near(thickness(made.vine, axis), wanted.diameter, 50));
        const auto nodes = made.vine.nodes_of(axis);
        // How far it leans over the part that stands free, from its first elbow up to some 300 mm of it.
        const Place& from = nodes[3].place;
        const Place& to = nodes[6].place;
        const double up = to.y.count - from.y.count, x = to.x.count - from.x.count, z = to.z.count - from.z.count;
        const double lean = numeric::degrees(numeric::atan2(std::sqrt(x * x + z * z), up));
        CHECK(lean > in_deg(wanted.off_vertical) - 4);
        CHECK(lean < in_deg(wanted.off_vertical) + 4);
        int canes = 0;
        for (const Axis& other : made.vine.axes) canes += axis_of(other.parent) == axis.id && is_cane(made.vine, other);
        CHECK(canes == 3);
        CHECK(made.vine.axes.size() == vine.axes.size() + 4);
    });
}

TEST_CASE("numbers no wood can have are refused, and a vine without the place for it says so") {
    const Vine vine = grown_for_switches(5);
    FarCane far;
    far.out = Length{900'000};
    CHECK(tempted(vine, far).error().key.name == "error.tempt.range");
    FatTopCane fat;
    fat.diameter = Length{60'000};
    CHECK(tempted(vine, fat).error().key.name == "error.tempt.range");
    Site site;
    site.age = 3; // nothing was laid yet the winter before
    site.seed = 5;
    const Vine young = *grow_vine(site);
    CHECK(tempted(young, FarCane{}).error().key.name == "error.tempt.no-place");
    CHECK(tempted(young, OldUpright{}).error().key.name == "error.tempt.no-place");
}
