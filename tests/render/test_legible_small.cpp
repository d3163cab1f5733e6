// What a pruner must read besides the wood, asked of the pixels: buds and their sides, wires, ties and clips, a measure.
// Drift-proof properties, never a golden. The bars are our choice.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include "render/scene/draw_list.h"
#include "tests/render/drawing.h"
#include "tests/render/vines.h"

using namespace spurwright;
using test::drawn, test::Drawing, test::luminance;

TEST_CASE("a metre on the fruiting wire is as many pixels as the projection says") {
    NEED_A_PICTURE
    for (const Vine& vine : test::vines_to_read())
    for (const auto& size : test::sizes_to_read()) {
        const Drawing d = drawn(*b, vine, scene::View::row, scene::Sky::sun, size.first, size.second, false);
        const auto camera = scene::camera_of(scene::View::row, d.shape);
        const glm::mat4 clip = scene::clip_from_world(camera, static_cast<float>(d.width) / static_cast<float>(d.height));
        const float height = static_cast<float>(d.shape.trellis.fruiting_height);
        const auto x_of = [&](float x) {
            const glm::vec4 c = clip * glm::vec4(x, height, 0, 1);
            return (c.x / c.w * 0.5f + 0.5f) * static_cast<float>(d.width);
        };
        const float distance = std::hypot(camera.eye.y - height, camera.eye.z);
        // Along the row the wire keeps its distance to the plane of the eye.
        const glm::vec3 ahead = glm::normalize(camera.target - camera.eye);
        const float deep = glm::dot(glm::vec3(0, height, 0) - camera.eye, ahead);
        CHECK(distance >= deep);
        CHECK(x_of(0.5f) - x_of(-0.5f) == doctest::Approx(scene::pixels_a_metre(camera, deep, d.height)).epsilon(0.005));
    }
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

TEST_CASE("each bud in sight stands on the side of its cane that the tables name") {
    NEED_A_PICTURE
    int seen = 0;
    for (const Vine& vine : test::vines_to_read()) {
        const Drawing d = drawn(*b, vine, scene::View::head, scene::Sky::sun, 1920, 1080, false);
        std::map<std::uint32_t, std::pair<glm::dvec2, int>> patches;  // by part: sum of places, count
        for (int y = 0; y < d.height; ++y)
            for (int x = 0; x < d.width; ++x)
                if (const std::uint32_t part = d.part(d.pixel(x, y)); part && d.vine.parts[part - 1].kind == mesh::PartKind::bud) {
                    auto& [sum, count] = patches[part];
                    sum += glm::dvec2(x + 0.5, y + 0.5);
                    ++count;
                }
        for (const auto& [part, patch] : patches) {
            if (patch.second < 10) continue;
            const auto& bud = *std::find_if(d.shape.buds.begin(), d.shape.buds.end(), [&, id = d.vine.parts[part - 1].id](const auto& s) { return s.bud.value == id; });
            if (bud.kind != BudKind::node) continue;
            const glm::vec2 foot = d.place(bud.foot), way = glm::normalize(d.place(bud.foot + 0.01 * bud.along) - foot), n(-way.y, way.x);
            const float named = glm::dot(d.place(bud.foot + bud.stem_radius * bud.out) - foot, n);
            if (std::abs(named) < 0.5f * static_cast<float>(bud.stem_radius) * scene::pixels_a_metre(d.camera, static_cast<float>(d.distance(bud.foot)), d.height)) continue;  // towards the eye or away
            const float shown = glm::dot(glm::vec2(patch.first / static_cast<double>(patch.second)) - foot, n);
            CHECK(shown * named > 0);
            ++seen;
        }
    }
    MESSAGE(seen << " buds");
    CHECK(seen >= 20);
}

TEST_CASE("what holds the canes can be pointed at: each tie, clip and drip line in sight is a part of its own, 3 px or wider") {
    NEED_A_PICTURE
    std::map<mesh::PartKind, int> seen;
    for (const Vine& vine : test::vines_to_read()) {
        const Drawing d = drawn(*b, vine, scene::View::head, scene::Sky::sun, 1280, 720, false);
        gl::Canvas canvas(d.width, d.height);
        std::set<std::pair<mesh::PartKind, std::uint32_t>> names;
        for (const mesh::Part& part : d.vine.parts) {
            if (part.kind != mesh::PartKind::tie && part.kind != mesh::PartKind::clip && part.kind != mesh::PartKind::drip) continue;
            if (part.kind == mesh::PartKind::tie) CHECK(names.insert({part.kind, part.id}).second);
            scene::DrawList alone = scene::draw_list(d.vine, d.around, {}, d.camera, scene::light_of(scene::Sky::sun));
            alone.items = {{scene::Of::vine, part.material, part.first, part.count, {}}};
            b->renderer->draw_parts(alone, canvas.target());
            const auto pixels = canvas.pixels();
            int left = d.width, right = -1, low = d.height, high = -1;
            for (int y = 0; y < d.height; ++y)
                for (int x = 0; x < d.width; ++x)
                    if (const auto i = 4 * d.pixel(x, y); pixels[i] + pixels[i + 1] > 0) left = std::min(left, x), right = std::max(right, x), low = std::min(low, y), high = std::max(high, y);
            if (right < 0 || left < 10 || low < 10 || right > d.width - 10 || high > d.height - 10) {
                if (part.kind != mesh::PartKind::drip || right < 0) continue;  // it runs out of the picture both ways
            }
            CHECK(std::max(right - left, high - low) + 1 >= 3);
            ++seen[part.kind];
        }
    }
    MESSAGE(seen[mesh::PartKind::tie] << " ties, " << seen[mesh::PartKind::clip] << " clips, " << seen[mesh::PartKind::drip] << " drip lines");
    CHECK(seen[mesh::PartKind::tie] >= 3);
    CHECK(seen[mesh::PartKind::drip] >= 2);
}

TEST_CASE("a wire stands out from what is behind it: 1.3 to 1 along 95 % of what is seen of each") {
    NEED_A_PICTURE
    int all = 0, all_clear = 0;
    for (const Vine& vine : test::vines_to_read())
    for (const auto& size : test::sizes_to_read())
    for (const auto sky : {scene::Sky::sun, scene::Sky::overcast}) {
        const Drawing d = drawn(*b, vine, scene::View::head, sky, size.first, size.second);
        for (const mesh::Part& part : d.vine.parts) {
            if (part.kind != mesh::PartKind::wire) continue;
            const auto number = static_cast<std::uint32_t>(&part - d.vine.parts.data()) + 1;
            int columns = 0, clear = 0;
            for (int x = 0; x < d.width; ++x) {
                int low = d.height, high = -1;
                for (int y = 0; y < d.height; ++y)
                    if (d.part(d.pixel(x, y)) == number) low = std::min(low, y), high = std::max(high, y);
                if (high < 0 || low < 4 || high > d.height - 5) continue;
                double extreme[2] = {1, 0};
                for (int y = low; y <= high; ++y) {
                    const double l = luminance(&d.seen[4 * d.pixel(x, y)]);
                    extreme[0] = std::min(extreme[0], l), extreme[1] = std::max(extreme[1], l);
                }
                const double behind = (luminance(&d.seen[4 * d.pixel(x, low - 3)]) + luminance(&d.seen[4 * d.pixel(x, high + 3)])) / 2;
                const double contrast = std::max((extreme[1] + 0.05) / (behind + 0.05), (behind + 0.05) / (extreme[0] + 0.05));
                ++columns;
                clear += contrast >= 1.3;
            }
            if (columns < 200) continue;
            CHECK(clear >= columns * 95 / 100);
            all += columns;
            all_clear += clear;
        }
    }
    MESSAGE(all_clear << " of " << all << " columns");
    CHECK(all > 1000);
}
