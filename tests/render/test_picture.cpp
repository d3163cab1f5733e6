// Pictures by their pixels: drift-proof properties, never a golden. Skipped, with the reason printed, where this
// machine has no EGL or no OpenGL 3.3.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include "render/app/glass.h"
#include "render/app/picture.h"
#include "render/gl/png.h"
#include "render/mesh/occlusion.h"
#include "render/mesh/vine_mesh.h"
#include "render/scene/sight.h"
#include "sim/pruning/plan.h"
#include "tests/render/drawing.h"
#include "tests/render/vines.h"

using namespace spurwright;
using test::assets, test::drawn, test::Drawing, test::Lab, test::lab_of, test::median;

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

TEST_CASE("under the glass lies the same picture three times as large") {
    NEED_A_PICTURE
    const Drawing d = drawn(*b, test::little_vine(), scene::View::head, scene::Sky::sun, 320, 180);
    const auto list = scene::draw_list(d.vine, d.around, {}, d.camera, scene::light_of(scene::Sky::sun));
    gl::Canvas large(960, 540);
    b->renderer->draw(list, large.target());
    const auto whole = large.pixels();
    app::Glass glass;
    for (const auto& [across, down] : {std::pair{160, 90}, {100, 60}}) {
        glass.draw(*b->renderer, list, 1, 320, 180, static_cast<float>(across), static_cast<float>(down));
        const int size = app::Glass::size_on(180), left = 3 * across - size / 2, low = 3 * (180 - down) - size / 2;
        std::vector<std::uint8_t> shown(static_cast<std::size_t>(size) * static_cast<std::size_t>(size) * 4);
        glBindTexture(GL_TEXTURE_2D, glass.texture());
        glGetTexImage(GL_TEXTURE_2D, 0, GL_RGBA, GL_UNSIGNED_BYTE, shown.data());
        std::size_t other = 0;
        for (int y = 0; y < size; ++y)
            for (int x = 0; x < size * 4; ++x) {
                const auto there = (static_cast<std::size_t>(low + y) * 960 + static_cast<std::size_t>(left)) * 4 + static_cast<std::size_t>(x);
                other += std::abs(shown[static_cast<std::size_t>(y * size * 4 + x)] - whole[there]) > 8;
            }
        CHECK(other <= shown.size() / 200);
    }
}

// From here on tests make studios and contexts of their own.

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
