// How long one vine takes from tables to pixels, part by part, on this machine. Ratios belong to tests/bench; this prints
// milliseconds for whoever tunes. Usage: frame_times [SEED [AGE]]
#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <functional>
#include <string>
#include <vector>

#include "render/app/memory.h"
#include "render/app/picture.h"
#include "render/mesh/occlusion.h"
#include "render/mesh/vine_mesh.h"
#include "render/scene/picking.h"
#include "sim/growth/history.h"

using namespace spurwright;

namespace {

double median_ms(int rounds, const std::function<void()>& work) {
    std::vector<double> all;
    for (int i = 0; i < rounds; ++i) {
        const auto from = std::chrono::steady_clock::now();
        work();
        all.push_back(std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - from).count());
    }
    std::stable_sort(all.begin(), all.end());
    return all[all.size() / 2];
}

}  // namespace

int main(int count, char** words) {
    app::keep_freed_memory();
    growth::Site site;
    site.seed = count > 1 ? std::strtoul(words[1], nullptr, 10) : 7;
    site.age = count > 2 ? std::atoi(words[2]) : 12;
    const Vine vine = *growth::grow_vine(site);
    mesh::Mesh m, around;
    shape::VineShape shape = shape::vine_shape(vine);
    std::printf("shape           %8.2f ms\n", median_ms(9, [&] { shape = shape::vine_shape(vine); }));
    for (const auto& [name, detail] : {std::pair{"slow", mesh::slow_detail}, {"fine", mesh::fine_detail}}) {
        const double build = median_ms(9, [&] { mesh::build_vine(m, shape, detail); });
        const double bake = median_ms(5, [&] { mesh::bake_occlusion(m, shape); });
        const double rest = median_ms(3, [&] { mesh::build_surroundings(around, shape, detail); });
        std::printf("%-8s build  %8.2f ms  occlusion %7.2f ms  surroundings %7.2f ms  triangles %zu + %zu  vertices %zu + %zu\n", name, build, bake, rest,
                    m.triangle_count(), around.triangle_count(), m.vertices.size(), around.vertices.size());
    }
    const scene::Capsules capsules(shape);
    const auto camera = scene::camera_of(scene::View::row, shape);
    std::size_t hits = 0;
    const double pick = median_ms(9, [&] {
        for (int i = 0; i < 1000; ++i)
            hits += scene::picked(capsules, scene::ray_through(camera, 0.001f * static_cast<float>(i), 0.4f, 1.78f), {}).has_value();
    });
    std::printf("pick            %8.2f us a ray, %zu capsules, %zu hits\n", pick, capsules.all().size(), hits / 9);
    for (const bool low : {true, false}) {
        auto context = gl::OffscreenContext::make();
        if (!context) return 3;
        auto renderer = gl::Renderer::make(std::string(SPURWRIGHT_SOURCE) + "/assets/shaders");
        if (!renderer) return 3;
        const mesh::Detail detail = low ? mesh::slow_detail : mesh::fine_detail;
        mesh::build_vine(m, shape, detail);
        mesh::build_surroundings(around, shape, detail);
        (*renderer)->upload(scene::Of::surroundings, around);
        gl::Canvas canvas(1280, 720);
        for (const auto view : {scene::View::row, scene::View::whole}) {
            const auto list = scene::draw_list(m, around, {}, scene::camera_of(view, shape), scene::light_of(scene::Sky::sun));
            const auto frame = [&] {
                (*renderer)->draw(list, canvas.target(), low ? gl::quick_samples : gl::fine_samples);
                (void)canvas.pixels();
            };
            (*renderer)->upload(scene::Of::vine, m);
            frame();
            const double still = median_ms(9, frame);
            const double with_shadow = median_ms(5, [&] {
                (*renderer)->upload(scene::Of::vine, m);
                frame();
            });
            const std::clock_t cpu = std::clock();
            for (int i = 0; i < 5; ++i) frame();
            const double spent = 1000.0 * static_cast<double>(std::clock() - cpu) / CLOCKS_PER_SEC / 5;
            std::printf("processor time of a frame, all threads: %8.1f ms\n", spent);
            std::printf("%s %-6s frame %8.1f ms   with upload and shadow %8.1f ms\n", low ? "low  " : "still", scene::words_of(view)[static_cast<std::size_t>(view)].data(), still, with_shadow);
        }
        std::printf("machine: %s\n", gl::machine().c_str());
    }
    return 0;
}
