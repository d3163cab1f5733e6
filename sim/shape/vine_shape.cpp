#include "sim/shape/vine_shape.h"

#include "sim/shape/stems.h"
#include "sim/vine/vine_query.h"

namespace spurwright::shape {

const Stem* VineShape::find(AxisId axis) const {
    for (const Stem& stem : stems)
        if (stem.axis == axis) return &stem;
    return nullptr;
}

VineShape vine_shape(const Vine& vine) {
    VineShape shape;
    shape.seed = vine.seed;
    shape.winter = vine.winter;
    shape.spacing = in_m(vine.spacing);
    shape.row_spacing = in_m(vine.row_spacing);
    const Node* head = vine.find(vine.head);
    shape.head = head ? point_of(head->place) : Vec3{0, 0.8, 0};
    for (const Side side : both_sides) {
        const std::size_t k = side == Side::right ? 1 : 0;
        const Node* crown = vine.find(vine.crown(side));
        shape.crowns[k] = crown ? point_of(crown->place) : shape.head;
        const Neighbour& neighbour = vine.neighbour(side);
        const double x = sign_of(side) * shape.spacing;
        shape.neighbours[k] = {x, neighbour.kind, x - sign_of(side) * in_m(neighbour.reach)};
    }
    std::vector<int> stem_of_row;
    add_stems(shape, vine, stem_of_row);
    add_organs(shape, vine, stem_of_row);
    add_wounds(shape, vine, stem_of_row);
    add_dead_strips(shape, vine);
    add_trellis(shape, vine);
    add_ties(shape, vine, stem_of_row);
    return shape;
}

} // namespace spurwright::shape
