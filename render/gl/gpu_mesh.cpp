#include "render/gl/gpu_mesh.h"

#include <cstddef>

namespace spurwright::gl {

void GpuMesh::fill(const mesh::Mesh& m) {
    glBindVertexArray(array_.get());
    glBindBuffer(GL_ARRAY_BUFFER, vertices_.get());
    glBufferData(GL_ARRAY_BUFFER, static_cast<GLsizeiptr>(m.vertices.size() * sizeof(mesh::Vertex)), m.vertices.data(),
                 GL_DYNAMIC_DRAW);
    std::size_t count = 0;
    for (std::size_t k = 0; k < mesh::material_count; ++k) {
        first_[k] = count;
        count += m.indices[k].size();
    }
    glBindBuffer(GL_ELEMENT_ARRAY_BUFFER, indices_.get());
    glBufferData(GL_ELEMENT_ARRAY_BUFFER, static_cast<GLsizeiptr>(count * 4), nullptr, GL_DYNAMIC_DRAW);
    for (std::size_t k = 0; k < mesh::material_count; ++k)
        if (!m.indices[k].empty())
            glBufferSubData(GL_ELEMENT_ARRAY_BUFFER, static_cast<GLintptr>(first_[k] * 4),
                            static_cast<GLsizeiptr>(m.indices[k].size() * 4), m.indices[k].data());
    constexpr GLsizei stride = sizeof(mesh::Vertex);
    const auto at = [](std::size_t offset) { return reinterpret_cast<const void*>(offset); };
    glVertexAttribPointer(0, 3, GL_FLOAT, GL_FALSE, stride, at(offsetof(mesh::Vertex, position)));
    glVertexAttribPointer(1, 3, GL_FLOAT, GL_FALSE, stride, at(offsetof(mesh::Vertex, normal)));
    glVertexAttribPointer(2, 2, GL_FLOAT, GL_FALSE, stride, at(offsetof(mesh::Vertex, u)));
    glVertexAttribIPointer(3, 1, GL_UNSIGNED_SHORT, stride, at(offsetof(mesh::Vertex, part)));
    glVertexAttribPointer(4, 2, GL_BYTE, GL_TRUE, stride, at(offsetof(mesh::Vertex, axis)));
    glVertexAttribPointer(5, 3, GL_UNSIGNED_BYTE, GL_TRUE, stride, at(offsetof(mesh::Vertex, age)));
    glVertexAttribIPointer(6, 1, GL_UNSIGNED_BYTE, stride, at(offsetof(mesh::Vertex, flags)));
    for (GLuint k = 0; k < 7; ++k) glEnableVertexAttribArray(k);
}

void GpuMesh::draw(const scene::Drawn& item) const {
    glBindVertexArray(array_.get());
    const std::size_t from = first_[static_cast<std::size_t>(item.material)] + item.first;
    glDrawElements(GL_TRIANGLES, static_cast<GLsizei>(item.count), GL_UNSIGNED_INT,
                   reinterpret_cast<const void*>(from * 4));
}

} // namespace spurwright::gl
