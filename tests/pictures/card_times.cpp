// What a frame takes on this machine's card, absolute, with the driver's own name: one vine, and a row of as many as are
// asked. Four samples a pixel, the fine mesh, low sun; a frame as it is drawn at rest (shadows kept) and one after an edit's
// upload. Usage: card_times [VINES IN THE ROW]
#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <functional>
#include <string>
#include <vector>

#include "render/app/picture.h"
#include "render/mesh/occlusion.h"
#include "render/mesh/vine_mesh.h"
#include "sim/growth/history.h"

using namespace spurwright;

namespace {

void print_frame(const char* what, int width, int height, const std::function<void()>& work) {
    std::vector<double> all;
    for (int i = 0; i < 33; ++i) {
        const auto from = std::chrono::steady_clock::now();
        work();
        glFinish();
        if (i >= 3) all.push_back(std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - from).count());
    }
    std::stable_sort(all.begin(), all.end());
    std::printf("%-28s %4dx%-4d  median %8.3f ms   10-90 %% %8.3f %8.3f\n", what, width, height, all[15], all[3], all[26]);
}

growth::Site site_of(std::uint64_t seed) {
    growth::Site site;
    site.seed = seed;
    site.age = 12;
    return site;
}

// Another vine's triangles, so far along the row.
void add(mesh::Mesh& row, const mesh::Mesh& vine, float along) {
    const auto base = static_cast<std::uint32_t>(row.vertices.size());
    for (mesh::Vertex v : vine.vertices) {
        v.position[0] += along;
        row.vertices.push_back(v);
    }
    for (std::size_t m = 0; m < mesh::material_count; ++m)
        for (const std::uint32_t i : vine.indices[m]) row.indices[m].push_back(base + i);
}

} // namespace

int main(int count, char** words) {
    const int vines = count > 1 ? std::atoi(words[1]) : 200;
    auto context = gl::OffscreenContext::make();
    if (!context) {
        std::puts("no context of OpenGL 3.3 is offered here through EGL");
        return 3;
    }
    auto renderer = gl::Renderer::make(std::string(SPURWRIGHT_SOURCE) + "/assets/shaders");
    if (!renderer) return 3;
    std::printf("machine: %s, OpenGL %s\n", gl::machine().c_str(), reinterpret_cast<const char*>(glGetString(GL_VERSION)));
    mesh::Mesh one, around, row;
    shape::VineShape shape;
    for (int i = vines; i-- > 0;) {
        shape = shape::vine_shape(*growth::grow_vine(site_of(static_cast<std::uint64_t>(7 + i))));
        mesh::build_vine(one, shape, mesh::fine_detail);
        mesh::bake_occlusion(one, shape);
        add(row, one, static_cast<float>(i - vines / 2) * static_cast<float>(shape.spacing));
    }
    mesh::build_surroundings(around, shape, mesh::fine_detail);
    (*renderer)->upload(scene::Of::surroundings, around);
    std::printf("one vine: %zu triangles; a row of %d: %zu; surroundings: %zu\n", one.triangle_count(), vines, row.triangle_count(), around.triangle_count());
    for (const auto& [width, height] : {std::pair{1920, 1080}, {3840, 2160}}) {
        const gl::Canvas canvas(width, height);
        if (!canvas.complete()) continue;
        for (const mesh::Mesh* m : {&one, &row}) {
            (*renderer)->upload(scene::Of::vine, *m);
            scene::DrawList list;
            list.camera = scene::camera_of(scene::View::row, shape);
            list.light = scene::light_of(scene::Sky::sun);
            scene::add_whole(list.items, scene::Of::vine, *m);
            scene::add_whole(list.items, scene::Of::surroundings, around);
            const std::string name = m == &one ? "one vine" : "a row of " + std::to_string(vines);
            print_frame(name.c_str(), width, height, [&] { (*renderer)->draw(list, canvas.target()); });
            print_frame((name + ", shadows anew").c_str(), width, height, [&] {
                (*renderer)->forget_shadow();
                (*renderer)->draw(list, canvas.target());
            });
            print_frame((name + ", uploaded anew").c_str(), width, height, [&] {
                (*renderer)->upload(scene::Of::vine, *m);
                (*renderer)->draw(list, canvas.target());
            });
        }
    }
    return 0;
}
