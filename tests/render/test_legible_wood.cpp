// What a pruner must read from the wood, asked of the pixels: age, thickness, health, which cane lies in front. Drift-proof
// properties, never a golden. The bars are our choice.
#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

#include "render/scene/draw_list.h"
#include "render/scene/sight.h"
#include "sim/pruning/plan.h"
#include "sim/vine/vine_query.h"
#include "tests/render/drawing.h"
#include "tests/render/vines.h"

using namespace spurwright;
using test::drawn, test::Drawing, test::Lab, test::lab_of, test::luminance, test::median;

namespace {

// How far apart the middle colours of ordinary one-year wood and of two-year wood are, in L*a*b*; one-year's L* first.
std::pair<double, double> ages_apart(const Drawing& d, const std::vector<std::uint8_t>& seen) {
    std::vector<double> l[2], a[2], bb[2];
    for (std::size_t i = 0; i < d.count(); ++i) {
        const std::uint32_t part = d.part(i);
        if (!part || d.vine.parts[part - 1].kind != mesh::PartKind::stem) continue;
        const auto material = d.vine.parts[part - 1].material;
        if (material != mesh::Material::cane && material != mesh::Material::two_year) continue;
        if (material == mesh::Material::cane && d.shape.find(d.vine.parts[part - 1].axis)->grew != CaneClass::ordinary) continue;
        const std::size_t k = material == mesh::Material::cane ? 0 : 1;
        const Lab lab = lab_of(&seen[4 * i]);
        l[k].push_back(lab.l);
        a[k].push_back(lab.a);
        bb[k].push_back(lab.b);
    }
    REQUIRE(l[0].size() > 1000);
    REQUIRE(l[1].size() > 1000);
    return {median(l[0]), std::sqrt(std::pow(median(l[0]) - median(l[1]), 2) + std::pow(median(a[0]) - median(a[1]), 2) + std::pow(median(bb[0]) - median(bb[1]), 2))};
}

} // namespace

TEST_CASE("one-year wood is told from two-year wood by its colour in either light, and by eyes that lack a kind of cone") {
    NEED_A_PICTURE
    for (const Vine& vine : test::vines_to_read())
    for (const auto& size : test::sizes_to_read())
    for (const auto sky : {scene::Sky::sun, scene::Sky::overcast}) {
        const Drawing d = drawn(*b, vine, scene::View::head, sky, size.first, size.second);
        const auto [one_year, away] = ages_apart(d, d.seen);
        MESSAGE("L* one-year " << one_year << ", apart " << away);
        CHECK(away >= 14);
        if (sky == scene::Sky::overcast) CHECK(one_year >= 38);
        for (const auto sight : {scene::Sight::protanopia, scene::Sight::deuteranopia, scene::Sight::tritanopia}) {
            auto pixels = d.seen;
            scene::see_as(pixels, sight);
            const double apart = ages_apart(d, pixels).second;
            MESSAGE(scene::words_of(sight)[static_cast<std::size_t>(sight)] << ": apart " << apart);
            CHECK(apart >= 12);
        }
    }
}

TEST_CASE("a cane is drawn as thick as the tables have it: within 1 px of 720 lines or 6 %") {
    NEED_A_PICTURE
    constexpr int width = 5120, height = 2880;  // four times 720 lines, so that the counting of pixels errs less than what is asked
    int measured = 0;
    for (const Vine& vine : test::vines_to_read()) {
        const Drawing d = drawn(*b, vine, scene::View::head, scene::Sky::sun, width, height, false);
        const auto camera = scene::camera_of(scene::View::head, d.shape);
        const float aspect = static_cast<float>(width) / height;
        const glm::mat4 clip = scene::clip_from_world(camera, aspect);
        const auto pixel = [&](const shape::Vec3& p) {
            const glm::vec4 c = clip * glm::vec4(static_cast<float>(p.x), static_cast<float>(p.y), static_cast<float>(p.z), 1);
            return glm::vec2((c.x / c.w * 0.5f + 0.5f) * width, (c.y / c.w * 0.5f + 0.5f) * height);
        };
        for (std::uint32_t k = 0; k < d.vine.parts.size(); ++k) {
            const mesh::Part& part = d.vine.parts[k];
            if (part.kind != mesh::PartKind::stem || part.material != mesh::Material::cane) continue;
            const shape::Stem& stem = *d.shape.find(part.axis);
            for (std::size_t n = 0; n + 1 < stem.line.points().size(); ++n) {
                const auto& points = stem.line.points();
                if (points[n].node < 2 || points[n + 1].node != points[n].node + 1 || points[n].node > 6) continue;
                const shape::LineSample middle = stem.line.at(n, 0.5);  // its radii are the tables' own
                if (stem.line.segment_length(n) < 8 * middle.radii.major) continue;  // the node's swelling reaches its middle
                const glm::vec2 at = pixel(middle.place), along = pixel(middle.place + 0.01 * middle.along) - pixel(middle.place - 0.01 * middle.along);
                if (!d.inside(at, 130) || glm::length(along) < 50) continue;  // whole, with what lies beside it
                const glm::vec2 across(-along.y / glm::length(along), along.x / glm::length(along));
                const auto mine = [&](float step) {
                    const glm::vec2 p = at + step * across;
                    return d.part(static_cast<std::size_t>(p.y) * width + static_cast<std::size_t>(p.x)) == k + 1;
                };
                // The outline of flattened wood, square to itself and to the line of sight.
                const shape::Vec3 eye{static_cast<double>(camera.eye.x), static_cast<double>(camera.eye.y), static_cast<double>(camera.eye.z)};
                const shape::Vec3 sight = shape::unit(middle.place - eye), edge = shape::unit(shape::cross(middle.along, sight));
                const auto below = static_cast<std::size_t>(points[n].node);
                const shape::Vec3 flat = shape::unit(shape::square_part(shape::lerp(stem.nodes[below].plane, stem.nodes[below + 1].plane, 0.5), middle.along));
                const double half = std::hypot(middle.radii.minor * shape::dot(edge, flat), middle.radii.major * shape::dot(edge, shape::cross(middle.along, flat)));
                const double tables = static_cast<double>(glm::length(pixel(middle.place + half * edge) - pixel(middle.place - half * edge)));
                float out[2] = {0, 0};
                bool clear = true;
                for (int side = 0; side < 2; ++side) {
                    const float way = side ? 1.0f : -1.0f;
                    while (out[side] < 240 && mine(way * out[side])) out[side] += 0.25f;
                    // What lies beside must be what is behind the cane, not before it.
                    const glm::vec2 p = at + way * (out[side] + 1) * across;
                    clear = clear && d.part(static_cast<std::size_t>(p.y) * width + static_cast<std::size_t>(p.x)) == 0;
                }
                if (!clear || out[0] == 0 || out[1] == 0) continue;
                const double seen = static_cast<double>(out[0] + out[1]);
                CHECK(std::abs(seen - tables) <= std::max(4.0, 0.06 * tables));
                ++measured;
            }
        }
    }
    MESSAGE(measured << " joints measured");
    CHECK(measured >= 20);
}

TEST_CASE("old wood under an overcast sky is no black hole") {
    NEED_A_PICTURE
    for (const Vine& vine : test::vines_to_read()) {
        const Drawing d = drawn(*b, vine, scene::View::head, scene::Sky::overcast, 960, 540);
        std::vector<double> l;
        for (std::size_t i = 0; i < d.count(); ++i)
            if (const std::uint32_t part = d.part(i); part && d.vine.parts[part - 1].material == mesh::Material::old)
                l.push_back(lab_of(&d.seen[4 * i]).l);
        REQUIRE(l.size() > 1000);
        std::stable_sort(l.begin(), l.end());
        MESSAGE("median L* " << l[l.size() / 2] << ", 5th percentile " << l[l.size() / 20]);
        CHECK(l[l.size() / 2] >= 25);
        CHECK(l[l.size() / 20] >= 8);
    }
}

TEST_CASE("no wound of an earlier winter is green, one of this winter is") {
    NEED_A_PICTURE
    const auto greenest = [&](const Drawing& d, bool fresh) {
        double most = -100;
        for (std::size_t i = 0; i < d.count(); ++i) {
            const std::uint32_t part = d.part(i);
            if (!part || d.vine.parts[part - 1].material != mesh::Material::face) continue;
            const auto& p = d.vine.parts[part - 1];
            const auto first = d.vine.indices[static_cast<std::size_t>(p.material)][p.first];
            if (((d.vine.vertices[first].flags & mesh::fresh) != 0) != fresh) continue;
            // In light: what mixes in at the rim of a face is its neighbour's.
            most = std::max(most, static_cast<double>(d.seen[4 * i + 1]) - d.seen[4 * i]);
        }
        return most;
    };
    auto uncut = test::vines_to_read();
    uncut.push_back(test::grown_vine(3, 25));
    for (const Vine& vine : uncut) {
        const Drawing old = drawn(*b, vine, scene::View::head, scene::Sky::overcast, 1280, 720);
        CHECK(greenest(old, false) < 6);
        CHECK(greenest(old, true) == -100); // nothing was cut this winter
    }
    // A cane cut this winter shows its green ring to somebody who leans in over it.
    const Vine cut = *prune(test::little_vine(), Plan{{Cut{node_id(AxisId{4}, 1), Length{20'000}, {}, {}}}});
    const Drawing now = drawn(*b, cut, scene::View::head, scene::Sky::overcast, 1280, 720);
    CHECK(greenest(now, true) > 15);
}

namespace {

// How the light and dark of the bark changes within 4 px near the middle of the wood, along it and across: squares about
// each stem's own middle, since roundness in the sun is a slope that all its bark has. Their median counts, so that the
// edge of a shadow, of which one step in ten has one, does not.
struct Grain {
    std::vector<double> along, across;
    double ratio() const { return median(along) / median(across); }
};

void add_grain(Grain& grain, const Drawing& d, std::uint32_t part, const shape::Stem& stem) {
    std::vector<double> along, across;
    for (std::size_t s = 2; s + 1 < stem.line.segment_count(); ++s)
        for (const double share : {0.3, 0.4, 0.5, 0.6, 0.7}) {
            const shape::LineSample at = stem.line.at(s, share);
            const glm::vec2 middle = d.place(at.place), way = d.place(at.place + 0.01 * at.along) - middle;
            if (!d.inside(middle, 20) || glm::length(way) < 4) continue;
            const glm::vec2 t = way / glm::length(way), n(-t.y, t.x);
            if (0.5f * static_cast<float>(at.radii.mean()) * glm::length(way) / 0.01f < 2) continue;
            const auto grey = [&](glm::vec2 p) -> std::optional<double> {
                if (d.part(p) != part) return {};
                return 116 * std::cbrt(luminance(&d.seen[4 * d.pixel(static_cast<int>(p.x), static_cast<int>(p.y))]));
            };
            const auto inner = grey(middle - 2.0f * t), outer = grey(middle + 2.0f * t), one = grey(middle - 2.0f * n), other = grey(middle + 2.0f * n);
            if (!inner || !outer || !one || !other) continue;
            along.push_back(*outer - *inner);
            across.push_back(*other - *one);
        }
    const auto add = [](std::vector<double>& to, const std::vector<double>& steps) {
        if (steps.empty()) return;
        const double middle = median(steps);
        for (const double step : steps) to.push_back((step - middle) * (step - middle));
    };
    add(grain.along, along);
    add(grain.across, across);
}

} // namespace

TEST_CASE("grey alone, the bark of a year and of two years differ by their grain") {
    NEED_A_PICTURE
    for (const auto sky : {scene::Sky::sun, scene::Sky::overcast}) {
        Grain grain[2];
        for (const std::uint64_t seed : {7u, 3u, 11u}) {
            const Drawing d = drawn(*b, test::grown_vine(seed), scene::View::head, sky, 1920, 1080);
            for (std::uint32_t k = 0; k < d.vine.parts.size(); ++k) {
                const mesh::Part& part = d.vine.parts[k];
                if (part.kind != mesh::PartKind::stem) continue;
                if (part.material == mesh::Material::cane) add_grain(grain[0], d, k + 1, *d.shape.find(part.axis));
                if (part.material == mesh::Material::two_year) add_grain(grain[1], d, k + 1, *d.shape.find(part.axis));
            }
        }
        REQUIRE(grain[0].along.size() > 500);
        REQUIRE(grain[1].along.size() > 120);
        const double one = grain[0].ratio(), two = grain[1].ratio();
        MESSAGE(grain[1].along.size() << " places of two years; along / across: one year " << one << ", two years " << two);
        CHECK(one >= 2 * two);  // the old bark peels lengthwise
    }
}

namespace {

// The middle colour of all canes with their joints so changed, of the same pixels as `like`.
template <class Change>
Lab colour_with(test::Bench& b, Vine vine, scene::Sky sky, Change&& change) {
    for (Axis& axis : vine.axes)
        if (age(vine, axis) == 1) change(vine, axis);
    const Drawing d = drawn(b, vine, scene::View::head, sky, 960, 540);
    std::vector<double> l, a, bb;
    for (std::size_t i = 0; i < d.count(); ++i) {
        const std::uint32_t part = d.part(i);
        if (!part || d.vine.parts[part - 1].kind != mesh::PartKind::stem || d.vine.parts[part - 1].material != mesh::Material::cane) continue;
        const Lab lab = lab_of(&d.seen[4 * i]);
        l.push_back(lab.l);
        a.push_back(lab.a);
        bb.push_back(lab.b);
    }
    REQUIRE(l.size() > 5000);
    return {median(l), median(a), median(bb)};
}

} // namespace

TEST_CASE("a shaded, a dead and an unripe cane each have a colour of their own") {
    NEED_A_PICTURE
    const Vine vine = test::grown_vine(7);
    for (const auto sky : {scene::Sky::sun, scene::Sky::overcast}) {
        const auto ordinary = [](Vine&, Axis& axis) { axis.grew = CaneClass::ordinary; };
        const Lab sound = colour_with(*b, vine, sky, ordinary);
        const Lab others[] = {colour_with(*b, vine, sky, [](Vine&, Axis& axis) { axis.grew = CaneClass::shaded; }),
                              colour_with(*b, vine, sky, [](Vine&, Axis& axis) { axis.grew = CaneClass::ordinary, axis.state = AxisState::dead; }),
                              colour_with(*b, vine, sky, [](Vine&, Axis& axis) { axis.grew = CaneClass::ordinary, axis.ripe = Length{0}; })};
        for (const Lab& other : others) {
            MESSAGE("from sound wood " << test::apart(sound, other));
            CHECK(test::apart(sound, other) >= 8);
        }
    }
}

TEST_CASE("spots, a wire's wound and a cracked base are seen where the tables have them and nowhere else") {
    NEED_A_PICTURE
    for (const Harm harm : {Harm::spot, Harm::scar, Harm::cracked}) {
        Vine vine = test::little_vine();
        const Drawing sound = drawn(*b, vine, scene::View::head, scene::Sky::overcast, 1280, 720);
        const AxisId cane{5};
        const std::uint32_t at = harm == Harm::cracked ? 0 : 2;
        vine.nodes[vine.find(cane)->first_node + at].harm = harm;
        const Drawing hurt = drawn(*b, vine, scene::View::head, scene::Sky::overcast, 1280, 720);
        REQUIRE(hurt.numbers == sound.numbers);
        const auto& joint = hurt.shape.find(cane)->nodes[at];
        const glm::vec2 middle = hurt.place(joint.place);
        const float metre = scene::pixels_a_metre(hurt.camera, static_cast<float>(hurt.distance(joint.place)), hurt.height);
        int here = 0, elsewhere = 0;
        for (int y = 0; y < hurt.height; ++y)
            for (int x = 0; x < hurt.width; ++x) {
                const std::size_t i = hurt.pixel(x, y);
                if (test::apart(lab_of(&hurt.seen[4 * i]), lab_of(&sound.seen[4 * i])) < 8) continue;
                const bool near = glm::length(glm::vec2(x, y) - middle) < 0.06f * metre;
                (near ? here : elsewhere) += 1;
            }
        MESSAGE(words_of(Harm{})[static_cast<std::size_t>(harm)] << ": " << here << " pixels");
        CHECK(here >= 30);
        CHECK(elsewhere == 0);
    }
}

namespace {

// Two canes that cross in the picture, the nearer one first.
struct Crossing {
    std::uint32_t front = 0, back = 0;  // parts, index + 1
    glm::vec2 at, front_way, back_way;  // unit
    float front_half = 0, back_half = 0;  // widths in pixels, halved
};

struct Strand {
    std::uint32_t part = 0;
    std::vector<glm::vec2> at;
    std::vector<double> distance;
    std::vector<float> half;
};

std::vector<Strand> strands_of(const Drawing& d) {
    std::vector<Strand> strands;
    for (std::uint32_t k = 0; k < d.vine.parts.size(); ++k) {
        const mesh::Part& part = d.vine.parts[k];
        if (part.kind != mesh::PartKind::stem || part.material != mesh::Material::cane) continue;
        Strand strand;
        strand.part = k + 1;
        const shape::Stem& stem = *d.shape.find(part.axis);
        for (std::size_t s = 2; s < stem.line.segment_count(); ++s)
            for (const double share : {0.0, 0.25, 0.5, 0.75}) {
                const shape::LineSample at = stem.line.at(s, share);
                strand.at.push_back(d.place(at.place));
                strand.distance.push_back(d.distance(at.place));
                strand.half.push_back(static_cast<float>(at.radii.mean()) * scene::pixels_a_metre(d.camera, static_cast<float>(strand.distance.back()), d.height));
            }
        strands.push_back(std::move(strand));
    }
    return strands;
}

float cross(glm::vec2 a, glm::vec2 b) { return a.x * b.y - a.y * b.x; }

// Crossings of more than 25 degrees whose canes are 12 mm and more apart in depth: nearer ones touch.
std::vector<Crossing> crossings_of(const Drawing& d) {
    std::vector<Crossing> found;
    const auto strands = strands_of(d);
    for (std::size_t i = 0; i < strands.size(); ++i)
        for (std::size_t j = i + 1; j < strands.size(); ++j)
            for (std::size_t m = 0; m + 1 < strands[i].at.size(); ++m)
                for (std::size_t n = 0; n + 1 < strands[j].at.size(); ++n) {
                    const Strand &one = strands[i], &two = strands[j];
                    const glm::vec2 u = one.at[m + 1] - one.at[m], v = two.at[n + 1] - two.at[n], w = two.at[n] - one.at[m];
                    const float across = cross(u, v);
                    if (std::abs(across) < 0.42f * glm::length(u) * glm::length(v)) continue;
                    const float s = cross(w, v) / across, t = cross(w, u) / across;
                    if (s < 0 || s >= 1 || t < 0 || t >= 1) continue;
                    const glm::vec2 at = one.at[m] + s * u;
                    if (!d.inside(at, 40) || std::abs(one.distance[m] - two.distance[n]) < 0.012) continue;
                    Crossing c{one.part, two.part, at, glm::normalize(u), glm::normalize(v), one.half[m], two.half[n]};
                    if (two.distance[n] < one.distance[m]) {
                        std::swap(c.front, c.back);
                        std::swap(c.front_way, c.back_way);
                        std::swap(c.front_half, c.back_half);
                    }
                    found.push_back(c);
                }
    return found;
}

bool same_axis(const Drawing& d, std::uint32_t part, std::uint32_t stem) {
    return part && d.vine.parts[part - 1].axis == d.vine.parts[stem - 1].axis;
}

} // namespace

TEST_CASE("where canes cross the front one runs through, and the back one is darker beside it or has a dark line there") {
    NEED_A_PICTURE
    int crossings = 0, told = 0;
    for (const std::uint64_t seed : {7u, 3u, 5u, 9u, 11u, 12u})
        for (const auto sky : {scene::Sky::sun, scene::Sky::overcast}) {
            const Drawing d = drawn(*b, test::grown_vine(seed), scene::View::head, sky, 1280, 720);
            std::vector<double> darker;
            for (const Crossing& c : crossings_of(d)) {
                const float sine = std::abs(cross(c.front_way, c.back_way));
                bool hidden = false, broken = false;
                for (float s = -c.back_half / sine - 3; s <= c.back_half / sine + 3; s += 1) {
                    const std::uint32_t part = d.part(c.at + s * c.front_way);
                    if (same_axis(d, part, c.back)) broken = true;
                    else if (!same_axis(d, part, c.front)) hidden = true;
                }
                if (hidden) continue;
                CHECK_FALSE(broken);
                // Steps from where the back cane comes out from under the front one, to either side.
                const auto mean = [&](float from, float to) -> std::optional<double> {
                    double sum = 0;
                    int count = 0;
                    for (const float side : {-1.0f, 1.0f}) {
                        float out = 0;
                        while (out < 40 && d.inside(c.at + side * out * c.back_way) && d.part(c.at + side * out * c.back_way) != c.back) out += 0.5f;
                        for (float s = out + from; s <= out + to; s += 1) {
                            const glm::vec2 p = c.at + side * s * c.back_way;
                            if (!d.inside(p) || d.part(p) != c.back) continue;
                            sum += luminance(&d.seen[4 * d.pixel(static_cast<int>(p.x), static_cast<int>(p.y))]);
                            ++count;
                        }
                    }
                    if (count < 2) return {};
                    return sum / count;
                };
                const auto near = mean(0, 5), away = mean(12, 30);
                if (!near || !away) continue;
                darker.push_back(1 - *near / *away);
                ++crossings;
                const auto edge = mean(0, 1), past = mean(4, 8);
                told += darker.back() >= 0.08 || (edge && past && *edge <= 0.92 * *past);
            }
            REQUIRE_FALSE(darker.empty());
            MESSAGE(darker.size() << " crossings, darker by " << median(darker) << " in the middle");
        }
    MESSAGE(told << " of " << crossings);
    CHECK(crossings >= 20);
    CHECK(told * 100 >= crossings * 95);  // one may lie where a shadow of something else ends
}
