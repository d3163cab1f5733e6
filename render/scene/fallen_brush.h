// The prunings of this vine: what is falling, what lies on the soil. One body a cut, so that each falls in its own time and
// is taken away when its wood stands again. Must not know: OpenGL, plans, cuts.
#pragma once

#include <vector>

#include "render/mesh/detail.h"
#include "render/scene/fall.h"

namespace spurwright::scene {

class FallenBrush {
public:
    void forget(); // another vine
    // What `before` had and `after` lacks begins to fall, or lies at once; what stands again in `after` is gone from here.
    void change(const shape::VineShape& before, const shape::VineShape& after, bool at_once);
    // Lets time pass; true while something still falls.
    bool advance(double seconds);

    bool falls() const { return falling_ > 0; }
    bool empty() const { return bodies_.empty(); }
    std::uint64_t lying_change() const { return lying_change_; } // rises when what lies there changes
    std::uint64_t falling_change() const { return falling_change_; } // rises with every step of a fall

    // Replace what was in the mesh.
    void build_lying(mesh::Mesh& mesh, const mesh::Detail& detail);
    void build_falling(mesh::Mesh& mesh, const mesh::Detail& detail);

private:
    struct Body {
        shape::FallenPiece piece;
        Fall fall;
        double gone = 0; // seconds
        mesh::Mesh built; // as it hung
        int built_as = 0; // rings a joint of it; 0: not built
        bool lies() const { return gone >= fall.seconds; }
    };
    void build(mesh::Mesh& mesh, const mesh::Detail& detail, bool lying);
    std::vector<Body> bodies_;
    int falling_ = 0;
    std::uint64_t lying_change_ = 0, falling_change_ = 0;
};

} // namespace spurwright::scene
