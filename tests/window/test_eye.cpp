// Leaning in and stepping back: what is pointed at stays under the pointer, as near as the limits of the body allow.
#include <doctest/doctest.h>

#include "render/app/eye.h"
#include "render/app/vine_marks.h"
#include "tests/render/vines.h"

using namespace spurwright;

namespace {

glm::vec2 seen(const app::Eye& eye, glm::vec3 place) {
    const auto at = app::Projection(eye.camera(), 1280, 720)(place);
    return at ? glm::vec2(at->x, at->y) : glm::vec2(-1e6f);
}

}  // namespace

TEST_SUITE("window/eye") {
    TEST_CASE("from the first view a wheel over the head leads to it, step by step, the head under the pointer") {
        const auto shape = shape::vine_shape(test::grown_vine(7));
        for (const bool other : {false, true}) {
            app::Eye eye;
            eye.reduced_motion = true;
            eye.begin(shape);
            if (other) eye.look_from(scene::View::other_side, shape, {});
            const glm::vec3 head{shape.head.x, shape.head.y, shape.head.z};
            const glm::vec2 at = seen(eye, head);
            float away = glm::distance(eye.camera().eye, head);
            for (int k = 0; k < 10; ++k) {
                eye.nearer(1, head);
                CHECK(glm::distance(eye.camera().eye, head) < away);
                away = glm::distance(eye.camera().eye, head);
                CHECK(glm::distance(seen(eye, head), at) < 40);
                CHECK((eye.camera().eye.z < 0) == other);
            }
            for (int k = 0; k < 10; ++k) eye.nearer(1, head);
            CHECK(glm::distance(eye.camera().eye, head) < 0.75f);  // buds can be counted from here
            CHECK(glm::distance(seen(eye, head), at) < 40);
            for (int k = 0; k < 30; ++k) eye.nearer(-1, head);
            CHECK(glm::distance(eye.camera().eye, head) > 2);
            CHECK(glm::distance(seen(eye, head), at) < 60);
        }
    }
    TEST_CASE("by keys, with nothing pointed at, the middle of the picture comes nearer") {
        const auto shape = shape::vine_shape(test::grown_vine(7));
        app::Eye eye;
        eye.reduced_motion = true;
        eye.begin(shape);
        const auto before = eye.camera();
        for (int k = 0; k < 4; ++k) eye.nearer(1, eye.camera().target);
        const auto now = eye.camera();
        CHECK(std::fabs(now.eye.x - before.eye.x) < 0.02f);
        CHECK(now.eye.z < before.eye.z - 0.5f);
        CHECK(glm::dot(glm::normalize(now.target - now.eye), glm::normalize(before.target - before.eye)) > 0.9f);
    }
}
