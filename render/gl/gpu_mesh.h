// A mesh on the graphics card: one vertex buffer, the indices of all materials joined. Knows the vertex layout.
#pragma once

#include <array>

#include "render/gl/gl_objects.h"
#include "render/scene/draw_list.h"

namespace spurwright::gl {

class GpuMesh {
public:
    void fill(const mesh::Mesh& mesh); // replaces what was there
    void draw(const scene::Drawn& item) const;

private:
    VertexArray array_ = new_array();
    Buffer vertices_ = new_buffer(), indices_ = new_buffer();
    std::array<std::size_t, mesh::material_count> first_{}; // of each material within the joined indices
};

} // namespace spurwright::gl
