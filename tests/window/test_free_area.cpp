// What panels leave free of the picture, and that what a view was composed for is shown there.
#include <doctest/doctest.h>

#include "render/app/free_area.h"

using namespace spurwright;
using namespace spurwright::app;

namespace {

const ui::Box band{0, 0, 1280, 88}, tools{325, 667, 955, 715}, look{876, 5, 1275, 715}, card{5, 93, 307, 445};
const scene::Camera camera{};

// Where a place of the world stands, as fractions of the window.
glm::vec2 seen(const scene::Camera& c, glm::vec3 place) {
    const glm::vec4 clip = scene::clip_from_world(c, 1280.0f / 720.0f) * glm::vec4(place, 1);
    return {(clip.x / clip.w + 1) / 2, (1 - clip.y / clip.w) / 2};
}

} // namespace

TEST_SUITE("window/free-area") {
    TEST_CASE("a band, tools and the look back take their edges away, a small card nothing") {
        const FreeArea row = free_area({band, tools, card}, 1280, 720);
        CHECK(row.y0 == doctest::Approx(88.0 / 720));
        CHECK(row.y1 == doctest::Approx(667.0 / 720));
        CHECK((row.x0 == 0 && row.x1 == 1));
        const FreeArea back = free_area({look}, 1280, 720);
        CHECK(back.x1 == doctest::Approx(876.0 / 1280));
        CHECK((back.y0 == 0 && back.y1 == 1));
    }
    TEST_CASE("panels over nearly all of it leave the picture as it was rather than a sliver") {
        const FreeArea area = free_area({{0, 0, 1280, 400}, {100, 420, 1180, 718}}, 1280, 720);
        CHECK((area.y0 == 0 && area.y1 == 1));
    }
    TEST_CASE("at normal text the picture stays as it was composed") {
        const scene::Camera same = in_free_area(camera, FreeArea{});
        CHECK(same.shown == 1);
        CHECK(glm::length(same.shift) < 1e-6f);
    }
    TEST_CASE("what stood between band and tools stands in the free area, and a ray through it finds it again") {
        for (const FreeArea area : {FreeArea{0, 0.2f, 1, 0.75f}, FreeArea{0, 0, 0.36f, 1}, FreeArea{0, 0, 0.68f, 1}, FreeArea{0, 0.35f, 0.5f, 0.6f}}) {
            const scene::Camera framed = in_free_area(camera, area);
            for (const glm::vec2 from : {glm::vec2(0.25f, 0.2f), glm::vec2(0.5f, 0.5f), glm::vec2(0.75f, 0.9f)}) {
                const scene::Ray ray = scene::ray_through(camera, from.x, from.y, 1280.0f / 720.0f);
                const glm::vec3 place = ray.from + 1.5f * ray.way;
                const glm::vec2 at = seen(framed, place);
                CHECK(at.x >= area.x0);
                CHECK(at.x <= area.x1);
                CHECK(at.y >= area.y0);
                CHECK(at.y <= area.y1);
                CHECK(glm::length(scene::ray_through(framed, at.x, at.y, 1280.0f / 720.0f).way - ray.way) < 1e-4f);
            }
        }
    }
}
