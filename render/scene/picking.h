// What lies under the pointer: one linear scan over capsules, on the CPU, the same in tests without a screen. Picking
// answers with names and a place between nodes, never with a screen position. Must not know: OpenGL, triangles.
#pragma once

#include <optional>
#include <vector>

#include "render/mesh/mesh.h"
#include "render/scene/camera.h"
#include "sim/shape/vine_shape.h"

namespace spurwright::scene {

struct Capsule {
    glm::vec3 from, to;
    float radius = 0;
    mesh::PartKind kind{};
    AxisId axis;
    NodeId node;          // at `from`; a stem's first segment and the piece beyond its last node name the nearest
    std::uint32_t id = 0; // of the bud, wound, tie or wire, by kind
};

// Capsules of one vine, with the spheres that hold them side by side for a quick scan.
class Capsules {
public:
    Capsules() = default;
    explicit Capsules(const shape::VineShape& vine);
    const std::vector<Capsule>& all() const { return all_; }
    void add(const Capsule& capsule);

    // Whose holding spheres come within slope x distance of the ray; refilled.
    void near(const Ray& ray, float slope, std::vector<std::uint32_t>& found) const;

private:
    // Spheres side by side, so that many are worked out at once.
    struct Spheres {
        std::vector<float> x, y, z, reach;
        void add(glm::vec3 middle, float radius);
        // By how much one stays outside the cone around the ray; not above 0 within it.
        float outside(std::size_t i, const Ray& ray, float slope) const;
    };
    struct Box {
        glm::vec3 low, high;
    };
    // Neighbours in the list stand close, along one stem: most of them are passed over a block at a time.
    static constexpr std::size_t block = 16;
    std::vector<Capsule> all_;
    Spheres each_, blocks_;
    std::vector<Box> boxes_;
};

struct Picked {
    mesh::PartKind kind{};
    AxisId axis;
    NodeId node;
    std::uint32_t id = 0;
    float share = 0;  // between `node` and the next, 0 to 1
    bool hit = false; // else a near miss
    float depth = 0;  // metres from the eye
    float miss = 0;   // radians beside its surface; 0 for a hit
    glm::vec3 place{0};
};

struct Reach {
    float slope = 0.0015f;  // radians beside the wood that still count
    float extra_pixels = 0; // 6 for touch and pen
    float radians_a_pixel = 0.001f;
};

// Best first: by angular miss inside the tolerance, then depth; a direct hit gives way to a near miss more than 20 mm
// in front of it only if that is within 0.1 m. Walking the list is cycling through candidates.
std::vector<Picked> picked_all(const Capsules& capsules, const Ray& ray, const Reach& reach);
std::optional<Picked> picked(const Capsules& capsules, const Ray& ray, const Reach& reach);

} // namespace spurwright::scene
