// Pictures by their pixels: drift-proof properties, never a golden. Skipped, with the reason printed, where this
// machine has no EGL or no OpenGL 3.3.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include "render/app/picture.h"
#include "render/gl/png.h"
#include "render/mesh/occlusion.h"
#include "render/mesh/vine_mesh.h"
#include "render/scene/sight.h"
#include "sim/pruning/plan.h"
#include "tests/render/vines.h"

using namespace spurwright;

namespace {

const std::string assets = std::string(SPURWRIGHT_SOURCE) + "/assets";

struct Lab {
    double l, a, b;
};

Lab lab_of(const std::uint8_t* rgb) {
    double lin[3];
    for (int k = 0; k < 3; ++k) {
        const double c = rgb[k] / 255.0;
        lin[k] = c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
    }
    const double x = (0.4124 * lin[0] + 0.3576 * lin[1] + 0.1805 * lin[2]) / 0.9505,
                 y = 0.2126 * lin[0] + 0.7152 * lin[1] + 0.0722 * lin[2],
                 z = (0.0193 * lin[0] + 0.1192 * lin[1] + 0.9505 * lin[2]) / 1.089;
    const auto f = [](double t) { return t > 0.008856 ? std::cbrt(t) : 7.787 * t + 16.0 / 116; };
    return {116 * f(y) - 16, 500 * (f(x) - f(y)), 200 * (f(y) - f(z))};
}

double median(std::vector<double> v) {
    std::nth_element(v.begin(), v.begin() + static_cast<std::ptrdiff_t>(v.size() / 2), v.end());
    return v[v.size() / 2];
}

// A vine drawn twice: as seen, and by part numbers.
struct Drawing {
    mesh::Mesh vine, around;
    shape::VineShape shape;
    std::vector<std::uint8_t> seen, numbers;
    int width, height;

    // Part at a pixel: index + 1, 0 for none or the surroundings.
    std::uint32_t part(std::size_t i) const {
        return numbers[4 * i + 2] ? 0u : numbers[4 * i] + 256u * numbers[4 * i + 1];
    }
    std::size_t count() const { return static_cast<std::size_t>(width) * static_cast<std::size_t>(height); }
};

struct Bench {
    std::unique_ptr<gl::OffscreenContext> context;
    std::unique_ptr<gl::Renderer> renderer;
};

Bench* bench() {
    static Bench made = [] {
        Bench b;
        auto context = gl::OffscreenContext::make();
        if (!context) return b;
        b.context = std::move(*context);
        auto renderer = gl::Renderer::make(assets + "/shaders");
        if (renderer) b.renderer = std::move(*renderer);
        return b;
    }();
    return made.renderer ? &made : nullptr;
}

Drawing drawn(Bench& b, const Vine& vine, scene::View view, scene::Sky sky, int width, int height, bool seen = true) {
    Drawing d;
    d.width = width;
    d.height = height;
    d.shape = shape::vine_shape(vine);
    mesh::build_vine(d.vine, d.shape, mesh::fine_detail);
    mesh::bake_occlusion(d.vine, d.shape);
    mesh::build_surroundings(d.around, d.shape, mesh::slow_detail);
    b.renderer->upload(scene::Of::vine, d.vine);
    b.renderer->upload(scene::Of::surroundings, d.around);
    gl::Canvas canvas(width, height);
    const auto list = scene::draw_list(d.vine, d.around, {}, scene::camera_of(view, d.shape), scene::light_of(sky));
    if (seen) {
        b.renderer->draw(list, canvas.target());
        d.seen = canvas.pixels();
    }
    b.renderer->draw_parts(list, canvas.target());
    d.numbers = canvas.pixels();
    return d;
}

#define NEED_A_PICTURE                                                                                                 \
    Bench* const b = bench();                                                                                          \
    if (!b) {                                                                                                          \
        MESSAGE("skipped: no EGL or no OpenGL 3.3 on this machine, or a shader does not compile");                     \
        return;                                                                                                        \
    }

} // namespace

TEST_CASE("where there is EGL, every shader compiles") {
    auto context = gl::OffscreenContext::make();
    if (!context) {
        MESSAGE("skipped: no EGL or no OpenGL 3.3 on this machine");
        return;
    }
    const auto renderer = gl::Renderer::make(assets + "/shaders");
    CHECK(renderer.has_value());
    const auto none = gl::Renderer::make("/nowhere");
    REQUIRE_FALSE(none.has_value());
    CHECK(none.error().fault == Fault::missing);
    CHECK(none.error().key.name == "error.picture.shader-file");
}

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
    const std::pair<std::uint64_t, scene::Sky> seen[] = {{7, scene::Sky::sun}, {7, scene::Sky::overcast}, {3, scene::Sky::sun}, {11, scene::Sky::overcast}};
    for (const auto& [seed, sky] : seen) {
        const Drawing d = drawn(*b, test::grown_vine(seed), scene::View::head, sky, 960, 540);
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

TEST_CASE("without a kind of cone grey stays grey, red and green come together or blue and yellow do, and full sight changes nothing") {
    std::vector<std::uint8_t> greys;
    for (int v = 0; v < 256; v += 5)
        for (const int k : {v, v, v, 255}) greys.push_back(static_cast<std::uint8_t>(k));
    for (const auto sight : {scene::Sight::full, scene::Sight::grey, scene::Sight::protanopia, scene::Sight::deuteranopia, scene::Sight::tritanopia}) {
        auto seen = greys;
        scene::see_as(seen, sight);
        for (std::size_t i = 0; i < seen.size(); ++i) CHECK(std::abs(seen[i] - greys[i]) <= 1);
    }
    const auto apart = [](std::vector<std::uint8_t> two, scene::Sight sight) {
        scene::see_as(two, sight);
        const Lab one = lab_of(two.data()), other = lab_of(two.data() + 4);
        return std::hypot(one.a - other.a, one.b - other.b);
    };
    // A brick red and a leaf green, a blue and an olive yellow.
    const std::vector<std::uint8_t> red_green{170, 80, 60, 255, 90, 120, 60, 255}, blue_yellow{70, 90, 170, 255, 150, 150, 60, 255};
    for (const auto sight : {scene::Sight::protanopia, scene::Sight::deuteranopia}) {
        CHECK(apart(red_green, sight) < 0.6 * apart(red_green, scene::Sight::full));
        CHECK(apart(blue_yellow, sight) > 0.6 * apart(blue_yellow, scene::Sight::full));
    }
    CHECK(apart(blue_yellow, scene::Sight::tritanopia) < 0.6 * apart(blue_yellow, scene::Sight::full));
    CHECK(apart(red_green, scene::Sight::grey) < 1);
}

TEST_CASE("a cane is drawn as thick as the tables have it: within 1 px of 720 lines or 6 %") {
    NEED_A_PICTURE
    constexpr int width = 3840, height = 2160;  // three times 720 lines, so that the counting of pixels errs less than what is asked
    int measured = 0;
    for (const std::uint64_t seed : {7u, 3u}) {
        const Drawing d = drawn(*b, test::grown_vine(seed), scene::View::head, scene::Sky::sun, width, height, false);
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
                if (at.x < 40 || at.x > width - 40 || at.y < 40 || at.y > height - 40 || glm::length(along) < 38) continue;
                const glm::vec2 across(-along.y / glm::length(along), along.x / glm::length(along));
                const auto mine = [&](float step) {
                    const glm::vec2 p = at + step * across;
                    return d.part(static_cast<std::size_t>(p.y) * width + static_cast<std::size_t>(p.x)) == k + 1;
                };
                // The outline of flattened wood, square to itself and to the line of sight.
                const shape::Vec3 eye{static_cast<double>(camera.eye.x), static_cast<double>(camera.eye.y), static_cast<double>(camera.eye.z)};
                const shape::Vec3 sight = shape::unit(middle.place - eye), edge = shape::unit(shape::cross(middle.along, sight));
                const shape::Vec3 flat = shape::unit(shape::square_part(stem.nodes[static_cast<std::size_t>(points[n].node)].plane, middle.along));
                const double half = std::hypot(middle.radii.minor * shape::dot(edge, flat), middle.radii.major * shape::dot(edge, shape::cross(middle.along, flat)));
                const double tables = static_cast<double>(glm::length(pixel(middle.place + half * edge) - pixel(middle.place - half * edge)));
                float out[2] = {0, 0};
                bool clear = true;
                for (int side = 0; side < 2; ++side) {
                    const float way = side ? 1.0f : -1.0f;
                    while (out[side] < 180 && mine(way * out[side])) out[side] += 0.25f;
                    // What lies beside must be what is behind the cane, not before it.
                    const glm::vec2 p = at + way * (out[side] + 1) * across;
                    clear = clear && d.part(static_cast<std::size_t>(p.y) * width + static_cast<std::size_t>(p.x)) == 0;
                }
                if (!clear || out[0] == 0 || out[1] == 0) continue;
                const double seen = static_cast<double>(out[0] + out[1]);
                CHECK(std::abs(seen - tables) <= std::max(3.0, 0.06 * tables));
                ++measured;
            }
        }
    }
    MESSAGE(measured << " joints measured");
    CHECK(measured >= 20);
}

TEST_CASE("a metre on the fruiting wire is as many pixels as the projection says") {
    NEED_A_PICTURE
    const Drawing d = drawn(*b, test::grown_vine(7), scene::View::row, scene::Sky::sun, 1280, 720);
    const auto camera = scene::camera_of(scene::View::row, d.shape);
    const glm::mat4 clip = scene::clip_from_world(camera, 1280.0f / 720);
    const float height = static_cast<float>(d.shape.trellis.fruiting_height);
    const auto x_of = [&](float x) {
        const glm::vec4 c = clip * glm::vec4(x, height, 0, 1);
        return (c.x / c.w * 0.5f + 0.5f) * 1280;
    };
    const float distance = std::hypot(camera.eye.y - height, camera.eye.z);
    // Along the row the wire keeps its distance to the plane of the eye.
    const glm::vec3 ahead = glm::normalize(camera.target - camera.eye);
    const float deep = glm::dot(glm::vec3(0, height, 0) - camera.eye, ahead);
    CHECK(distance >= deep);
    CHECK(x_of(0.5f) - x_of(-0.5f) == doctest::Approx(scene::pixels_a_metre(camera, deep, 720)).epsilon(0.005));
}

TEST_CASE("old wood under an overcast sky is no black hole") {
    NEED_A_PICTURE
    const Drawing d = drawn(*b, test::grown_vine(7), scene::View::head, scene::Sky::overcast, 960, 540);
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
    const Vine vine = test::grown_vine(3, 25);
    const Drawing old = drawn(*b, vine, scene::View::head, scene::Sky::overcast, 1280, 720);
    CHECK(greenest(old, false) < 6);
    CHECK(greenest(old, true) == -100); // nothing was cut this winter
    // A cane cut this winter shows its green ring to somebody who leans in over it.
    const Vine cut = *prune(test::little_vine(), Plan{{Cut{node_id(AxisId{4}, 1), Length{20'000}, {}, {}}}});
    const Drawing now = drawn(*b, cut, scene::View::head, scene::Sky::overcast, 1280, 720);
    CHECK(greenest(now, true) > 15);
}

TEST_CASE("buds near the eye can be counted: each that nothing hides is one patch at least 4 px wide") {
    NEED_A_PICTURE
    const Drawing d = drawn(*b, test::little_vine(), scene::View::head, scene::Sky::sun, 1280, 720);
    gl::Canvas canvas(d.width, d.height);
    int counted = 0;
    for (std::uint32_t k = 0; k < d.vine.parts.size(); ++k) {
        const mesh::Part& part = d.vine.parts[k];
        if (part.kind != mesh::PartKind::bud) continue;
        const auto* bud = &*std::find_if(d.shape.buds.begin(), d.shape.buds.end(),
                                         [&](const auto& s) { return s.bud.value == part.id; });
        if (bud->kind != BudKind::node) continue;
        // What it would cover with nothing before it.
        scene::DrawList alone = scene::draw_list(d.vine, d.around, {}, scene::camera_of(scene::View::head, d.shape),
                                                 scene::light_of(scene::Sky::sun));
        alone.items = {{scene::Of::vine, part.material, part.first, part.count, {}}};
        b->renderer->draw_parts(alone, canvas.target());
        const auto whole = canvas.pixels();
        std::set<std::pair<int, int>> seen;
        int covers = 0;
        for (int y = 0; y < d.height; ++y)
            for (int x = 0; x < d.width; ++x) {
                const auto i = static_cast<std::size_t>(y * d.width + x);
                covers += whole[4 * i] + whole[4 * i + 1] > 0;
                if (d.part(i) == k + 1) seen.insert({x, y});
            }
        if (covers < 10 || static_cast<int>(seen.size()) < covers * 6 / 10)
            continue; // hidden by its cane or out of the frame
        ++counted;
        int low = 10'000, high = 0;
        for (const auto& [x, y] : seen) low = std::min(low, x), high = std::max(high, x);
        CHECK(high - low + 1 >= 4);
        CHECK(seen.size() >= 10);
        std::vector<std::pair<int, int>> edge{*seen.begin()};
        seen.erase(seen.begin());
        while (!edge.empty()) {
            const auto [x, y] = edge.back();
            edge.pop_back();
            for (int dx = -1; dx <= 1; ++dx)
                for (int dy = -1; dy <= 1; ++dy)
                    if (const auto at = seen.find({x + dx, y + dy}); at != seen.end()) {
                        edge.push_back(*at);
                        seen.erase(at);
                    }
        }
        CHECK(seen.empty());
    }
    CHECK(counted >= 4);
}

TEST_CASE("each wire is one unbroken line, however far") {
    NEED_A_PICTURE
    const Drawing d = drawn(*b, test::grown_vine(7), scene::View::whole, scene::Sky::sun, 640, 360);
    gl::Canvas canvas(d.width, d.height);
    for (const mesh::Part& part : d.vine.parts) {
        if (part.kind != mesh::PartKind::wire) continue;
        scene::DrawList alone = scene::draw_list(d.vine, d.around, {}, scene::camera_of(scene::View::whole, d.shape),
                                                 scene::light_of(scene::Sky::sun));
        alone.items = {{scene::Of::vine, part.material, part.first, part.count, {}}};
        b->renderer->draw_parts(alone, canvas.target());
        const auto pixels = canvas.pixels();
        int gaps = 0, columns = 0;
        for (int x = 0; x < d.width; ++x) {
            bool any = false;
            for (int y = 0; y < d.height; ++y)
                any = any || pixels[4 * static_cast<std::size_t>(y * d.width + x)] +
                                     pixels[4 * static_cast<std::size_t>(y * d.width + x) + 1] >
                                 0;
            gaps += !any;
            columns += any;
        }
        CHECK(columns > 0);
        CHECK(gaps == 0);
    }
}

TEST_CASE("a passing look is drawn over the kept picture, which stays to the byte, and shows what a whole frame would") {
    NEED_A_PICTURE
    const Drawing d = drawn(*b, test::little_vine(), scene::View::row, scene::Sky::sun, 480, 270);
    const auto camera = scene::camera_of(scene::View::row, d.shape);
    const auto light = scene::light_of(scene::Sky::sun);
    scene::Emphasis hover{AxisId{5}, {}, 0, {{0.9f, 0.8f, 0.1f}, 0.5f, 0, 2, false}, true};
    gl::Canvas kept(d.width, d.height), over(d.width, d.height);
    auto list = scene::draw_list(d.vine, d.around, std::span(&hover, 1), camera, light);
    b->renderer->draw(list, kept.target());
    CHECK(kept.pixels() == d.seen); // nothing of it in the picture itself
    over.copy(kept);
    CHECK(over.pixels() == d.seen);
    b->renderer->draw_over(list, over.target());
    CHECK(kept.pixels() == d.seen);
    hover.passing = false;
    list = scene::draw_list(d.vine, d.around, std::span(&hover, 1), camera, light);
    gl::Canvas whole(d.width, d.height);
    b->renderer->draw(list, whole.target());
    const auto shown = over.pixels(), wanted = whole.pixels();
    std::size_t changed = 0, meant = 0, both = 0;
    for (std::size_t i = 0; i < d.count(); ++i) {
        const auto away = [&](const std::vector<std::uint8_t>& p) { return std::abs(p[4 * i] - d.seen[4 * i]) + std::abs(p[4 * i + 2] - d.seen[4 * i + 2]) > 24; };
        changed += away(shown);
        meant += away(wanted);
        both += away(shown) && away(wanted);
    }
    CHECK(meant > 500);
    CHECK(both > meant * 9 / 10); // edges of one sample a pixel against many
    CHECK(both > changed * 9 / 10);
}

TEST_CASE("the same vine gives the same picture to the byte, and a cut changes it") {
    auto studio = app::Studio::make(assets);
    if (!studio) {
        MESSAGE("skipped: no EGL or no OpenGL 3.3 on this machine");
        return;
    }
    app::PictureWish wish;
    wish.width = 320;
    wish.height = 180;
    const Vine vine = test::little_vine();
    const auto once = *(*studio)->draw(vine, wish), twice = *(*studio)->draw(vine, wish);
    CHECK(once == twice);
    const auto cut = *(*studio)->draw(*prune(vine, Plan{{Cut{node_id(AxisId{5}, 1), Length{20'000}, {}, {}}}}), wish);
    CHECK(cut != once);
    const std::string png = gl::png_bytes(once, 320, 180);
    CHECK(png.substr(1, 3) == "PNG");
    // Nothing burnt out: fewer than one pixel in a thousand at full white.
    std::size_t burnt = 0;
    for (std::size_t i = 0; i < once.size(); i += 4)
        burnt += once[i] == 255 || once[i + 1] == 255 || once[i + 2] == 255;
    CHECK(burnt <= once.size() / 4 / 1000);
}

TEST_CASE("a picture drawn in tiles is the picture drawn at once") {
    auto studio = app::Studio::make(assets);
    if (!studio) {
        MESSAGE("skipped: no EGL or no OpenGL 3.3 on this machine");
        return;
    }
    app::PictureWish wish;
    wish.width = 330;
    wish.height = 190;
    const Vine vine = test::grown_vine(7);
    const auto once = *(*studio)->draw(vine, wish);
    wish.tile = 100;
    const auto tiled = *(*studio)->draw(vine, wish);
    REQUIRE(once.size() == tiled.size());
    std::size_t other = 0;
    for (std::size_t i = 0; i < once.size(); ++i) other += std::abs(once[i] - tiled[i]) > 8;
    MESSAGE(other << " of " << once.size() << " bytes differ by more than 8");
    CHECK(other <= once.size() / 200);
}

TEST_CASE("a picture of no or of too many pixels is refused") {
    CHECK_FALSE(app::check_size(0, 720));
    CHECK_FALSE(app::check_size(1280, 100'000));
    CHECK(app::check_size(1280, 100'000).error().fault == Fault::out_of_range);
    CHECK(app::check_size(1280, 720));
}
