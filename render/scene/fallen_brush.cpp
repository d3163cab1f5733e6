#include "render/scene/fallen_brush.h"

#include <algorithm>

#include "render/mesh/occlusion.h"
#include "render/mesh/vine_mesh.h"

namespace spurwright::scene {

void FallenBrush::forget() {
    bodies_.clear();
    falling_ = 0;
    ++lying_change_;
    ++falling_change_;
}

void FallenBrush::change(const shape::VineShape& before, const shape::VineShape& after, bool at_once) {
    const std::size_t was = bodies_.size();
    std::erase_if(bodies_, [&](const Body& body) { return shape::stands_again(body.piece, after); });
    bool lying = bodies_.size() != was;
    for (shape::FallenPiece& piece : shape::fallen_pieces(before, after)) {
        Body body;
        body.fall = fall_of(piece);
        body.piece = std::move(piece);
        if (at_once) body.gone = body.fall.seconds, lying = true;
        bodies_.push_back(std::move(body));
    }
    falling_ = static_cast<int>(std::count_if(bodies_.begin(), bodies_.end(), [](const Body& b) { return !b.lies(); }));
    if (lying) ++lying_change_;
    ++falling_change_;
}

bool FallenBrush::advance(double seconds) {
    if (falling_ == 0) return false;
    const int was = falling_;
    falling_ = 0;
    for (Body& body : bodies_) {
        if (body.lies()) continue;
        body.gone += seconds;
        falling_ += body.lies() ? 0 : 1;
    }
    ++falling_change_;
    if (falling_ < was) ++lying_change_;
    return falling_ > 0;
}

void FallenBrush::build(mesh::Mesh& mesh, const mesh::Detail& detail, bool lying) {
    mesh.clear();
    for (Body& body : bodies_) {
        if (body.lies() != lying) continue;
        if (body.built_as != detail.rings_a_joint) {
            mesh::build_brush(body.built, body.piece.shape, detail);
            mesh::bake_occlusion(body.built, body.piece.shape);
            body.built_as = detail.rings_a_joint;
        }
        mesh::add_posed(mesh, body.built, pose_at(body.fall, body.gone));
    }
}

void FallenBrush::build_lying(mesh::Mesh& mesh, const mesh::Detail& detail) { build(mesh, detail, true); }
void FallenBrush::build_falling(mesh::Mesh& mesh, const mesh::Detail& detail) { build(mesh, detail, false); }

} // namespace spurwright::scene
