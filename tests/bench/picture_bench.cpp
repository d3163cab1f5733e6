// What the picture costs: rebuilding it after an edit, one frame and its terms, what passes over a kept picture. Ratios in
// one process on whatever draws here; machine and renderer are printed. Exit 1 where a bar is missed, 3 without EGL.
#include <algorithm>
#include <cmath>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <thread>

#include "render/app/gltf_file.h"
#include "render/app/memory.h"
#include "render/app/stage.h"
#include "render/gl/offscreen_context.h"
#include "render/mesh/occlusion.h"
#include "render/mesh/vine_mesh.h"
#include "render/scene/views.h"
#include "scenarios/io/safe_file.h"
#include "sim/growth/history.h"
#include "sim/pruning/plan.h"
#include "tests/bench/ratio.h"

using namespace spurwright;
using bench::Bar;

namespace {

constexpr int width = 1280, height = 720;
constexpr gl::Finish full, flatter{1, false, false};
const std::string shaders = SPURWRIGHT_SOURCE "/assets/shaders";

std::string processor() {
    std::ifstream file("/proc/cpuinfo");
    for (std::string line; std::getline(file, line);)
        if (line.starts_with("model name")) return line.substr(line.find(':') + 2);
    return "unknown";
}

// The bare peer of a rebuild: tubes along ready points, no organs, frames carried from ring to ring, vertices of the same
// 40 bytes, as many triangles as asked.
std::uint64_t bare_tubes(std::size_t triangles, std::vector<mesh::Vertex>& vertices, std::vector<std::uint32_t>& indices) {
    constexpr std::size_t sides = 8, rings = 30;
    const std::size_t tubes = std::max<std::size_t>(1, triangles / (2 * sides * (rings - 1)));
    float around[sides][2];
    for (std::size_t k = 0; k < sides; ++k) around[k][0] = std::cos(0.7853982f * static_cast<float>(k)), around[k][1] = std::sin(0.7853982f * static_cast<float>(k));
    vertices.resize(tubes * rings * sides);
    indices.resize(tubes * (rings - 1) * sides * 6);
    std::size_t at = 0, to = 0;
    for (std::size_t t = 0; t < tubes; ++t) {
        float x[3]{1, 0, 0};
        for (std::size_t r = 0; r < rings; ++r) {
            const float s = static_cast<float>(r), w = 0.02f * s + static_cast<float>(t);
            const float p[3]{0.1f * w, 0.03f * s, 0.01f * w * w};
            float d[3]{0.002f, 0.03f, 0.0004f * w};
            const float size = 1 / std::sqrt(d[0] * d[0] + d[1] * d[1] + d[2] * d[2]);
            for (float& v : d) v *= size;
            const float dot = x[0] * d[0] + x[1] * d[1] + x[2] * d[2];
            for (int k = 0; k < 3; ++k) x[k] -= dot * d[k];
            const float wide = 1 / std::sqrt(x[0] * x[0] + x[1] * x[1] + x[2] * x[2]);
            for (float& v : x) v *= wide;
            const float y[3]{d[1] * x[2] - d[2] * x[1], d[2] * x[0] - d[0] * x[2], d[0] * x[1] - d[1] * x[0]};
            for (std::size_t k = 0; k < sides; ++k) {
                mesh::Vertex& v = vertices[at++];
                for (int c = 0; c < 3; ++c) {
                    v.normal[c] = around[k][0] * x[c] + around[k][1] * y[c];
                    v.position[c] = p[c] + 0.004f * v.normal[c];
                }
                v.u = static_cast<float>(k) / sides;
                v.v = s;
                v.part = static_cast<std::uint16_t>(t);
                v.axis[0] = v.axis[1] = 0;
                v.age = 8, v.occlusion = 255, v.node = v.flags = 0;
            }
            if (r == 0) continue;
            const auto low = static_cast<std::uint32_t>(at - 2 * sides), high = static_cast<std::uint32_t>(at - sides);
            for (std::uint32_t k = 0; k < sides; ++k) {
                const std::uint32_t n = (k + 1) % sides;
                for (const std::uint32_t i : {low + k, low + n, high + n, low + k, high + n, high + k}) indices[to++] = i;
            }
        }
    }
    return at + to + static_cast<std::uint64_t>(1e6f * std::fabs(vertices[at / 2].position[1]));
}

// A renderer with one vine's meshes in it, and a picture to draw into.
struct Easel {
    std::unique_ptr<gl::Renderer> renderer;
    gl::Canvas canvas;
    int samples;
    mesh::Mesh vine, around;
    scene::DrawList list;

    Easel(int wanted, const gl::Finish& finish, const shape::VineShape& shape, const mesh::Detail& detail, scene::View view, int w = width, int h = height) : canvas(w, h), samples(wanted) {
        auto made = gl::Renderer::make(shaders, finish);
        if (!made) std::exit(3);
        renderer = std::move(*made);
        mesh::build_vine(vine, shape, detail);
        mesh::bake_occlusion(vine, shape);
        mesh::build_surroundings(around, shape, detail);
        renderer->upload(scene::Of::surroundings, around);
        renderer->upload(scene::Of::vine, vine);
        list = scene::draw_list(vine, around, {}, scene::camera_of(view, shape), scene::light_of(scene::Sky::sun));
    }
    std::uint64_t frame() {
        renderer->draw(list, canvas.target(), samples);
        glFinish();
        return 1;
    }
};

}  // namespace

int main(int argc, char** argv) {
    app::keep_freed_memory();
    const auto context = gl::OffscreenContext::make();
    if (!context) return std::puts("skipped: no EGL or no OpenGL 3.3"), 3;
    bench::Bench b(argc, argv);
    std::printf("machine: %s, %u cores, %s, %dx%d, vine of seed 7\n", processor().c_str(), std::thread::hardware_concurrency(), gl::machine().c_str(), width, height);

    growth::Site site;
    site.seed = 7;
    const Vine vine = *growth::grow_vine(site);
    shape::VineShape shape = shape::vine_shape(vine);

    // ---- after an edit
    mesh::Mesh rebuilt;
    mesh::build_vine(rebuilt, shape, mesh::slow_detail);
    std::vector<mesh::Vertex> vertices;
    std::vector<std::uint32_t> indices;
    const auto rebuild = [&] { return mesh::build_vine(rebuilt, shape, mesh::slow_detail), rebuilt.vertices.size(); };
    std::printf("the vine: %zu triangles on a slow machine\n", rebuilt.triangle_count());
    b.ratio("L6 rebuild of the vine / bare tubes of as many triangles", Bar::at_most, 5, rebuild, 3, [&] { return bare_tubes(rebuilt.triangle_count(), vertices, indices); }, 9);
    Easel low(gl::quick_samples, full, shape, mesh::slow_detail, scene::View::row);
    AxisId cane;
    NodeId cut;
    for (const auto& stem : shape.stems)
        if (stem.wood == shape::Wood::one_year && !stem.lateral && stem.nodes.size() > 8) cane = stem.axis, cut = stem.nodes[3].node;
    const Plan plan{{Cut{cut, Length{8'000}, {}, {}}}};
    bool turn = false;
    shape::VineShape now = shape;
    mesh::Mesh edited;
    mesh::KeptOcclusion kept;
    b.ratio("L7 edit to picture (replay, shape, rebuild, light, upload) / L6", Bar::at_most, 4,
            [&] {
                turn = !turn;
                shape::VineShape next = shape::vine_shape(turn ? *prune(vine, plan) : vine);
                mesh::rebuild_vine(edited, kept, now, next, mesh::slow_detail);
                now = std::move(next);
                low.renderer->upload(scene::Of::vine, edited);
                kept = mesh::KeptOcclusion(edited);
                edited.keep_parts();
                glFinish();
                return kept.open.size();
            },
            2, rebuild, 2);
    Plan long_work; // each cane shortened joint by joint
    for (const auto& stem : shape.stems)
        if (stem.wood == shape::Wood::one_year && !stem.lateral)
            for (std::size_t k = stem.nodes.size(); k-- > 4 && long_work.edits.size() < 200;) {
                long_work.edits.push_back(Cut{stem.nodes[k].node, Length{2'000}, {}, {}});
                if (!prune(vine, long_work)) long_work.edits.pop_back();  // a joint too short for it
            }
    const auto replayed = prune(vine, long_work);
    if (!replayed || long_work.edits.size() < 200) return std::printf("%zu cuts, 200 wanted\n", long_work.edits.size()), 1;
    std::printf("%zu edits, %zu of %zu axes left\n", long_work.edits.size(), replayed->axes.size(), vine.axes.size());
    b.ratio("L25 undo of 200 edits by replay / L6", Bar::at_most, 1, [&] { return prune(vine, long_work)->axes.size(); }, 5, rebuild, 3);

    // ---- a file for other programs, written whole and synced, against the same bytes alone
    const app::GltfVariant variant{"as found", &vine};
    const std::string exported = app::gltf_file({&variant, 1}).bytes, file = (std::filesystem::temp_directory_path() / "spurwright-bench.glb").string();
    std::printf("the file: %zu bytes\n", exported.size());
    b.ratio("L26 export .glb / memcpy and write of its bytes", Bar::at_most, 4,
            [&] {
                const std::string bytes = app::gltf_file({&variant, 1}).bytes;
                return io::write_file(file, bytes) ? bytes.size() : 0;
            },
            1,
            [&] {
                const std::string bytes = exported;
                return io::write_file(file, bytes) ? bytes.size() : 0;
            },
            1);
    std::filesystem::remove(file);

    // ---- a frame and its terms
    for (const auto view : {scene::View::row, scene::View::head}) {
        const bool wide = view == scene::View::row;
        Easel base(gl::quick_samples, full, shape, mesh::slow_detail, view), flat(gl::quick_samples, flatter, shape, mesh::slow_detail, view);
        b.ratio(wide ? "L17 frame / flat variant, wide" : "L17 frame / flat variant, close", Bar::at_most, wide ? 1.6 : 1.9, [&] { return base.frame(); }, 1, [&] { return flat.frame(); }, 1);
        if (!wide) break;
        Easel many(gl::fine_samples, full, shape, mesh::slow_detail, view);
        b.ratio("L18 frame, four samples / one", Bar::at_most, 2.7, [&] { return many.frame(); }, 1, [&] { return base.frame(); }, 1);
        Easel rest(gl::quick_samples, full, shape, mesh::slow_detail, view), moving(gl::quick_samples, full, shape, mesh::slow_detail, view, width * 3 / 4, height * 3 / 4);
        b.ratio("L19 frame while moving / at rest, not scaled", Bar::at_most, 0.7, [&] { return moving.frame(); }, 1, [&] { return rest.frame(); }, 1);
        b.ratio("L20 frame with its shadow pass / without", Bar::at_most, 1.3,
                [&] {
                    rest.renderer->forget_shadow();
                    return rest.frame();
                },
                1, [&] { return rest.frame(); }, 1);
    }

    // ---- over a kept picture, as the window does it
    app::Stage stage(shaders);
    if (!stage.show(vine, true, true)) return 3;
    std::vector<AxisId> canes;
    for (const auto& stem : shape.stems)
        if (!stem.trunk) canes.push_back(stem.axis);
    scene::Camera camera = scene::camera_of(scene::View::row, shape);
    std::size_t nth = 0;
    const auto frame = [&] {  // the picture anew: the eye has stirred
        camera.eye.x += nth++ % 2 ? 1e-4f : -1e-4f;
        stage.draw(camera, {}, width, height, false);
        glFinish();
        return nth;
    };
    const auto over = [&](int axes, float tint) {
        std::vector<scene::Emphasis> emphases;
        for (int k = 0; k < axes; ++k) emphases.push_back({canes[(nth++) % canes.size()], {}, 0, {{0.9f, 0.85f, 0.2f}, tint, 0, 2, false}, true});
        stage.draw(camera, emphases, width, height, stage.slow());
        glFinish();
        return nth;
    };
    b.ratio("hover highlight / frame", Bar::at_most, 0.1, [&] { return over(1, 0.1f); }, 2, frame, 1);
    b.ratio("cut preview / frame", Bar::at_most, 0.2, [&] { return over(4, 0.55f); }, 2, frame, 1);
    return b.status();
}
