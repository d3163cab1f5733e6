// What must hold of every mesh of a vine: closed wood, children inside parents, honest thickness.
#include <doctest/doctest.h>

#include <array>
#include <cmath>
#include <cstring>
#include <map>
#include <numeric>

#include "render/mesh/bud_mesh.h"
#include "render/mesh/occlusion.h"
#include "render/mesh/vine_mesh.h"
#include "sim/pruning/plan.h"
#include "tests/render/vines.h"

using namespace spurwright;
using namespace spurwright::mesh;

namespace {

using Corner = std::array<float, 3>;

Corner corner_of(const Vertex& v) { return {v.position[0], v.position[1], v.position[2]}; }

// Triangles of one closed piece: a tube and the faces that close it, welded by place.
struct Piece {
    std::vector<std::array<std::uint32_t, 3>> triangles;
    std::vector<Corner> places;
    PartKind kind{};
    AxisId axis;
};

std::vector<Piece> closed_pieces(const Mesh& mesh) {
    std::vector<Piece> pieces;
    std::map<Corner, std::uint32_t> seen;
    for (const Part& part : mesh.parts) {
        if (part.kind == PartKind::strips || part.kind == PartKind::post)
            continue; // ribbons and sheet steel are open by design
        if (part.material != Material::face) {
            pieces.push_back({{}, {}, part.kind, part.axis});
            seen.clear();
        }
        Piece& piece = pieces.back();
        const auto& list = mesh.indices[static_cast<std::size_t>(part.material)];
        for (std::uint32_t i = part.first; i < part.first + part.count; i += 3) {
            std::array<std::uint32_t, 3> t{};
            for (std::uint32_t k = 0; k < 3; ++k) {
                const Corner p = corner_of(mesh.vertices[list[i + k]]);
                const auto [at, fresh] = seen.try_emplace(p, static_cast<std::uint32_t>(piece.places.size()));
                if (fresh) piece.places.push_back(p);
                t[k] = at->second;
            }
            piece.triangles.push_back(t);
        }
    }
    return pieces;
}

std::uint32_t root_of(std::vector<std::uint32_t>& parent, std::uint32_t i) {
    while (parent[i] != i) i = parent[i] = parent[parent[i]];
    return i;
}

double volume_of(const Corner& a, const Corner& b, const Corner& c) {
    const auto d = [](const Corner& p, int k) { return static_cast<double>(p[static_cast<std::size_t>(k)]); };
    return (d(a, 0) * (d(b, 1) * d(c, 2) - d(b, 2) * d(c, 1)) + d(a, 1) * (d(b, 2) * d(c, 0) - d(b, 0) * d(c, 2)) +
            d(a, 2) * (d(b, 0) * d(c, 1) - d(b, 1) * d(c, 0))) /
           6;
}

double area_of(const Corner& a, const Corner& b, const Corner& c) {
    const shape::Vec3 p{a[0], a[1], a[2]}, q{b[0], b[1], b[2]}, r{c[0], c[1], c[2]};
    return shape::length(shape::cross(q - p, r - p)) / 2;
}

// By the parity of crossings along a slanted ray.
bool is_inside(const Piece& piece, shape::Vec3 from) {
    const shape::Vec3 way = shape::unit(shape::Vec3{0.3127, 0.8713, -0.4171});
    int crossings = 0;
    for (const auto& t : piece.triangles) {
        shape::Vec3 p[3];
        for (std::size_t k = 0; k < 3; ++k)
            p[k] = {piece.places[t[k]][0], piece.places[t[k]][1], piece.places[t[k]][2]};
        const shape::Vec3 e1 = p[1] - p[0], e2 = p[2] - p[0], h = shape::cross(way, e2);
        const double det = shape::dot(e1, h);
        if (std::fabs(det) < 1e-18) continue;
        const shape::Vec3 s = from - p[0], q = shape::cross(s, e1);
        const double u = shape::dot(s, h) / det, v = shape::dot(way, q) / det;
        if (u < 0 || v < 0 || u + v > 1) continue;
        crossings += shape::dot(e2, q) / det > 0;
    }
    return crossings % 2 == 1;
}

void check_closed(const Mesh& mesh) {
    for (const Piece& piece : closed_pieces(mesh)) {
        CAPTURE(static_cast<int>(piece.kind));
        CAPTURE(piece.axis.value);
        std::map<std::pair<std::uint32_t, std::uint32_t>, int> edges;
        std::vector<std::uint32_t> parent(piece.places.size());
        std::iota(parent.begin(), parent.end(), 0u);
        double least_area = 1;
        for (const auto& t : piece.triangles) {
            least_area = std::min(least_area, area_of(piece.places[t[0]], piece.places[t[1]], piece.places[t[2]]));
            for (std::size_t k = 0; k < 3; ++k) {
                ++edges[{t[k], t[(k + 1) % 3]}];
                parent[root_of(parent, t[k])] = root_of(parent, t[(k + 1) % 3]);
            }
        }
        CHECK(least_area > 1e-11);
        int bad_edges = 0;
        for (const auto& [edge, times] : edges) {
            const auto back = edges.find({edge.second, edge.first});
            bad_edges += times != 1 || back == edges.end() || back->second != 1;
        }
        CHECK(bad_edges == 0);
        // Vertices, edges, faces and volume by connected component.
        struct Count {
            int vertices = 0, half_edges = 0, faces = 0;
            double volume = 0;
        };
        std::map<std::uint32_t, Count> parts;
        for (std::uint32_t i = 0; i < piece.places.size(); ++i) ++parts[root_of(parent, i)].vertices;
        for (const auto& [edge, times] : edges) parts[root_of(parent, edge.first)].half_edges += times;
        for (const auto& t : piece.triangles) {
            Count& c = parts[root_of(parent, t[0])];
            ++c.faces;
            c.volume += volume_of(piece.places[t[0]], piece.places[t[1]], piece.places[t[2]]);
        }
        for (const auto& [root, c] : parts) {
            CHECK(c.vertices - c.half_edges / 2 + c.faces == 2);
            CHECK(c.volume > 0);
        }
    }
}

} // namespace

TEST_CASE("all round wood is closed: each edge twice in opposite directions, V - E + F = 2, volume above 0") {
    Mesh mesh;
    for (const Detail& detail : {slow_detail, fine_detail}) {
        build_vine(mesh, shape::vine_shape(test::little_vine()), detail);
        check_closed(mesh);
    }
    build_vine(mesh, shape::vine_shape(test::grown_vine(7)), slow_detail);
    check_closed(mesh);
    build_vine(mesh, shape::vine_shape(test::grown_vine(3, 25)), fine_detail);
    check_closed(mesh);
}

TEST_CASE("a dead strip of an old trunk is a flat without bark, where the shape says and nowhere else, and the trunk stays closed") {
    int strips = 0;
    for (std::uint64_t seed = 1; seed <= 40 && strips < 4; ++seed) {
        const auto shape = shape::vine_shape(test::grown_vine(seed, 26));
        Mesh mesh;
        build_vine(mesh, shape, fine_detail);
        const auto bare_of = [&](const shape::Stem& stem) {
            std::vector<const Vertex*> bare;
            for (const Part& part : mesh.parts)
                if (part.kind == PartKind::stem && part.axis == stem.axis)
                    for (std::uint32_t i = part.first; i < part.first + part.count; ++i) {
                        const Vertex& v = mesh.vertices[mesh.indices[static_cast<std::size_t>(part.material)][i]];
                        if (v.flags & dead) bare.push_back(&v);
                    }
            return bare;
        };
        for (const auto& stem : shape.stems)
            if (stem.trunk && shape.dead_strips.empty()) CHECK(bare_of(stem).empty());
        for (const auto& strip : shape.dead_strips) {
            ++strips;
            const auto bare = bare_of(shape.stems[strip.stem]);
            CHECK(bare.size() > 30);
            double facing = 0;
            for (const Vertex* v : bare) {
                const shape::Vec3 normal{static_cast<double>(v->normal[0]), static_cast<double>(v->normal[1]), static_cast<double>(v->normal[2])};
                CHECK(shape::dot(normal, strip.out) > 0.5);
                facing += shape::dot(normal, strip.out);
            }
            CHECK(facing / static_cast<double>(bare.size()) > 0.9);
            check_closed(mesh);
        }
    }
    CHECK(strips == 4);
}

TEST_CASE("every stem starts inside the wood that bears it") {
    for (const int age : {4, 12, 25}) {
        const auto shape = shape::vine_shape(test::grown_vine(7, age));
        Mesh mesh;
        build_vine(mesh, shape, slow_detail);
        const auto pieces = closed_pieces(mesh);
        std::map<std::uint32_t, const Piece*> stems;
        std::vector<const Piece*> heads;
        for (const Piece& piece : pieces) {
            if (piece.kind == PartKind::stem) stems[piece.axis.value] = &piece;
            if (piece.kind == PartKind::head) heads.push_back(&piece);
        }
        std::map<std::uint32_t, std::uint32_t> first; // vertex of each stem's first ring
        for (const Part& part : mesh.parts)
            if (part.kind == PartKind::stem)
                first[part.axis.value] = mesh.indices[static_cast<std::size_t>(part.material)][part.first];
        int outside = 0, asked = 0;
        for (const auto& stem : shape.stems) {
            if (stem.trunk) continue;
            const auto& bearer = *stems.at(axis_of(stem.parent).value);
            const int sides = std::max(4, slow_detail.sides(stem.nodes[0].radius));
            for (int j = 0; j < sides; ++j) {
                const Corner p = corner_of(mesh.vertices[first.at(stem.axis.value) + static_cast<std::uint32_t>(j)]);
                const shape::Vec3 at{p[0], p[1], p[2]};
                bool inside = is_inside(bearer, at);
                for (const Piece* head : heads) inside = inside || is_inside(*head, at);
                ++asked;
                outside += !inside;
            }
        }
        CAPTURE(age);
        CHECK(asked > 100);
        CHECK(outside == 0);
    }
}

TEST_CASE(
    "a ring of few sides holds the area of its circle: shares 0.9003, 0.9549 and 0.9745 of plain 8, 12 and 16 sides") {
    constexpr double pi = 3.14159265358979323846;
    for (const auto& [sides, share] : {std::pair{8, 0.9003}, {12, 0.9549}, {16, 0.9745}}) {
        const double plain = sides / (2 * pi) * std::sin(2 * pi / sides);
        CHECK(plain == doctest::Approx(share).epsilon(1e-4));
        const double r = area_true_radius(sides);
        CHECK(plain * r * r == doctest::Approx(1.0).epsilon(1e-12));
    }
}

TEST_CASE("buds are seated in their node, never narrower than 3.2 mm on a sound cane, and each is a part of its own") {
    const auto shape = shape::vine_shape(test::grown_vine(5));
    Mesh mesh;
    build_vine(mesh, shape, fine_detail);
    std::size_t parts = 0;
    for (const Part& part : mesh.parts) parts += part.kind == PartKind::bud;
    CHECK(parts == shape.buds.size());
    for (const auto& bud : shape.buds)
        if (bud.kind == BudKind::node && !bud.harmed) CHECK(size_of(bud).width >= 0.0032);
}

TEST_CASE("rebuilding keeps the memory and the numbers") {
    const auto shape = shape::vine_shape(test::grown_vine(5));
    Mesh mesh;
    build_vine(mesh, shape, slow_detail);
    const auto* memory = mesh.vertices.data();
    const auto first = mesh.vertices;
    build_vine(mesh, shape, slow_detail);
    CHECK(mesh.vertices.data() == memory);
    CHECK(std::memcmp(first.data(), mesh.vertices.data(), first.size() * sizeof(Vertex)) == 0);
}

TEST_CASE("a vine of the default site stays within the triangles that a software renderer can draw") {
    Mesh mesh;
    std::size_t all = 0;
    constexpr std::uint64_t vines = 12;
    for (std::uint64_t seed = 1; seed <= vines; ++seed) {
        const auto shape = shape::vine_shape(test::grown_vine(seed));
        build_vine(mesh, shape, slow_detail);
        CHECK(mesh.triangle_count() < 110'000);
        all += mesh.triangle_count();
    }
    CHECK(all / vines < 75'000);
}

TEST_CASE("wood hides sky from wood: open at a free cane, darker in the head, the same bytes every time") {
    const auto shape = shape::vine_shape(test::grown_vine(7));
    Mesh mesh;
    build_vine(mesh, shape, slow_detail);
    bake_occlusion(mesh, shape);
    const auto once = mesh.vertices;
    bake_occlusion(mesh, shape);
    CHECK(std::memcmp(once.data(), mesh.vertices.data(), once.size() * sizeof(Vertex)) == 0);
    double near_sum = 0, far_sum = 0, near_count = 0, far_count = 0;
    for (const Vertex& v : mesh.vertices) {
        if (mesh.parts[v.part].kind != PartKind::stem) continue;
        const shape::Vec3 at{v.position[0], v.position[1], v.position[2]};
        const double away = shape::length(at - shape.head);
        if (away < 0.12) near_sum += v.occlusion, ++near_count;
        if (away > 0.5) far_sum += v.occlusion, ++far_count;
    }
    CHECK(near_sum / near_count < 0.9 * far_sum / far_count);
    CHECK(far_sum / far_count > 180);
}

TEST_CASE("light worked out again only where wood came or went is that of a whole working out, to the byte") {
    const Vine vine = test::grown_vine(7);
    const auto whole = shape::vine_shape(vine);
    mesh::Mesh again;
    mesh::rebuild_vine(again, {}, {}, whole, mesh::slow_detail);
    const auto same_bytes = [](const mesh::Mesh& a, const mesh::Mesh& b) {
        REQUIRE(a.vertices.size() == b.vertices.size());
        for (std::size_t i = 0; i < a.vertices.size(); ++i)
            if (a.vertices[i].occlusion != b.vertices[i].occlusion) return false;
        return true;
    };
    shape::VineShape before = whole;
    int tried = 0;
    for (const auto& stem : whole.stems) {
        if (stem.trunk || stem.nodes.size() < 3 || tried >= 12) continue;
        ++tried;
        const auto cut = prune(vine, Plan{{Cut{stem.nodes[stem.axis.value % 2].node, Length{8'000}, {}, {}}}});
        if (!cut) continue;
        for (const auto& now : {shape::vine_shape(*cut), whole}) { // off, and back again
            const mesh::KeptOcclusion kept(again);
            again.keep_parts();
            mesh::rebuild_vine(again, kept, before, now, mesh::slow_detail);
            mesh::Mesh anew;
            mesh::build_vine(anew, now, mesh::slow_detail);
            mesh::bake_occlusion(anew, now);
            CHECK(same_bytes(again, anew));
            before = now;
        }
    }
    CHECK(tried == 12);
}
