// What lies under the pointer, against a ray-tracing library: the same capsules and rays, one thread, in one run. Built
// where the library is (package libembree-dev, 3.13); nothing else needs it.
#include <cmath>
#include <cstdio>

#include <embree3/rtcore.h>

#include "render/scene/picking.h"
#include "render/scene/views.h"
#include "sim/growth/history.h"
#include "tests/bench/ratio.h"

using namespace spurwright;
using bench::Bar;

namespace {

// The same capsules as round curves of one segment each.
class Peer {
public:
    explicit Peer(const std::vector<scene::Capsule>& capsules) {
        const RTCGeometry curves = rtcNewGeometry(device_, RTC_GEOMETRY_TYPE_ROUND_LINEAR_CURVE);
        auto* ends = static_cast<float*>(rtcSetNewGeometryBuffer(curves, RTC_BUFFER_TYPE_VERTEX, 0, RTC_FORMAT_FLOAT4, 4 * sizeof(float), 2 * capsules.size()));
        auto* first = static_cast<unsigned*>(rtcSetNewGeometryBuffer(curves, RTC_BUFFER_TYPE_INDEX, 0, RTC_FORMAT_UINT, sizeof(unsigned), capsules.size()));
        for (std::size_t i = 0; i < capsules.size(); ++i) {
            glm::vec3 to = capsules[i].to;
            if (to == capsules[i].from) to.y += 1e-4f;  // a ball: the library knows no curve without a length
            for (const glm::vec3& p : {capsules[i].from, to}) {
                for (int k = 0; k < 3; ++k) *ends++ = p[k];
                *ends++ = capsules[i].radius;
            }
            first[i] = static_cast<unsigned>(2 * i);
        }
        rtcCommitGeometry(curves);
        rtcAttachGeometry(scene_, curves);
        rtcReleaseGeometry(curves);
        rtcCommitScene(scene_);
    }
    ~Peer() {
        rtcReleaseScene(scene_);
        rtcReleaseDevice(device_);
    }
    Peer(const Peer&) = delete;
    Peer& operator=(const Peer&) = delete;

    bool hits(const scene::Ray& ray) const {
        RTCIntersectContext context;
        rtcInitIntersectContext(&context);
        RTCRayHit r{};
        r.ray.org_x = ray.from.x, r.ray.org_y = ray.from.y, r.ray.org_z = ray.from.z;
        r.ray.dir_x = ray.way.x, r.ray.dir_y = ray.way.y, r.ray.dir_z = ray.way.z;
        r.ray.tfar = 1e9f;
        r.ray.mask = ~0u;
        r.hit.geomID = RTC_INVALID_GEOMETRY_ID;
        rtcIntersect1(scene_, &context, &r);
        return r.hit.geomID != RTC_INVALID_GEOMETRY_ID;
    }

private:
    RTCDevice device_ = rtcNewDevice("threads=1");
    RTCScene scene_ = rtcNewScene(device_);
};

}  // namespace

int main(int argc, char** argv) {
    bench::Bench b(argc, argv);
    scene::Capsules capsules;
    scene::Camera camera;
    for (std::uint32_t seed = 1; capsules.all().size() < 6'000; ++seed) {  // vines side by side, as a row has them
        growth::Site site;
        site.seed = seed;
        const auto shape = shape::vine_shape(*growth::grow_vine(site));
        if (seed == 1) camera = scene::camera_of(scene::View::row, shape);
        const scene::Capsules of_one(shape);
        for (scene::Capsule c : of_one.all()) {
            c.from.x += 1.8f * static_cast<float>(seed - 1), c.to.x += 1.8f * static_cast<float>(seed - 1);
            capsules.add(c);
        }
    }
    const Peer peer(capsules.all());
    std::vector<scene::Ray> rays;  // half of them at wood, as people point; half over the whole picture
    for (std::size_t k = 0; k < 800; ++k) {
        const auto& aim = capsules.all()[k * 7 % 1'400];
        rays.push_back({camera.eye, glm::normalize(0.5f * (aim.from + aim.to) - camera.eye)});
    }
    for (int y = 0; y < 20; ++y)
        for (int x = 0; x < 40; ++x) rays.push_back(scene::ray_through(camera, (0.5f + static_cast<float>(x)) / 40, (0.5f + static_cast<float>(y)) / 20, 16.0f / 9));

    const scene::Reach surface{0, 0, 0};
    int same = 0, hit = 0;
    for (const auto& ray : rays) {
        const auto own = scene::picked(capsules, ray, surface);
        same += (own && own->hit) == peer.hits(ray);
        hit += own && own->hit;
    }
    const double agree = 100.0 * same / static_cast<double>(rays.size());
    std::printf("L12 rays that agree on a hit: %.2f %% of %zu, %d of them hit  bar >= 99.9: %s\n", agree, rays.size(), hit, agree >= 99.9 ? "met" : "MISSED");
    std::printf("%zu capsules\n", capsules.all().size());
    b.ratio("L8 picking within 1.5 mrad, linear scan / a library's tree", Bar::at_most, 25,
            [&] {
                std::uint64_t found = 0;
                for (const auto& ray : rays) found += scene::picked(capsules, ray, {}).has_value();
                return found;
            },
            1,
            [&] {
                std::uint64_t found = 0;
                for (const auto& ray : rays) found += peer.hits(ray);
                return found;
            },
            10);
    return agree >= 99.9 ? b.status() : 1;
}
