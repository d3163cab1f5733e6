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

Drawing drawn(Bench& b, const Vine& vine, scene::View view, scene::Sky sky, int width, int height) {
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
    b.renderer->draw(list, canvas.target());
    d.seen = canvas.pixels();
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

TEST_CASE("one-year wood is told from two-year wood by its colour in either light") {
    NEED_A_PICTURE
    const std::pair<std::uint64_t, scene::Sky> seen[] = {{7, scene::Sky::sun}, {7, scene::Sky::overcast}, {3, scene::Sky::sun}, {11, scene::Sky::overcast}};
    for (const auto& [seed, sky] : seen) {
        const Drawing d = drawn(*b, test::grown_vine(seed), scene::View::head, sky, 960, 540);
        std::vector<double> l[2], a[2], bb[2];
        for (std::size_t i = 0; i < d.count(); ++i) {
            const std::uint32_t part = d.part(i);
            if (!part || d.vine.parts[part - 1].kind != mesh::PartKind::stem) continue;
            const auto material = d.vine.parts[part - 1].material;
            if (material != mesh::Material::cane && material != mesh::Material::two_year) continue;
            if (material == mesh::Material::cane &&
                d.shape.find(d.vine.parts[part - 1].axis)->grew != CaneClass::ordinary)
                continue;
            const std::size_t k = material == mesh::Material::cane ? 0 : 1;
            const Lab lab = lab_of(&d.seen[4 * i]);
            l[k].push_back(lab.l);
            a[k].push_back(lab.a);
            bb[k].push_back(lab.b);
        }
        REQUIRE(l[0].size() > 1000);
        REQUIRE(l[1].size() > 1000);
        const double away =
            std::sqrt(std::pow(median(l[0]) - median(l[1]), 2) + std::pow(median(a[0]) - median(a[1]), 2) +
                      std::pow(median(bb[0]) - median(bb[1]), 2));
        MESSAGE("L* one-year " << median(l[0]) << ", two-year " << median(l[1]) << ", apart " << away);
        CHECK(away >= 14);
        if (sky == scene::Sky::overcast) CHECK(median(l[0]) >= 38);
    }
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

TEST_CASE("a picture of no or of too many pixels is refused") {
    CHECK_FALSE(app::check_size(0, 720));
    CHECK_FALSE(app::check_size(1280, 100'000));
    CHECK(app::check_size(1280, 100'000).error().fault == Fault::out_of_range);
    CHECK(app::check_size(1280, 720));
}
