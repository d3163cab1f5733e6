#include "render/app/gltf_file.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstring>
#include <limits>
#include <map>
#include <sstream>

#include "render/app/tiny_gltf.h"
#include "render/mesh/vine_mesh.h"
#include "sim/core/check.h"
#include "sim/vine/vine_query.h"

namespace spurwright::app {
namespace {

using mesh::Material;
using mesh::Part;
using mesh::PartKind;
using tinygltf::Value;

constexpr std::uint32_t stride = 24;  // bytes a vertex: place, normal
constexpr double millimetres = 1'000;

// Middle of what the pictures' bark runs through, sRGB (our choice), and how rough.
struct Paint {
    const char* name;
    std::array<double, 3> srgb;
    double roughness;
    double metal = 0;
};
constexpr std::array<Paint, mesh::material_count> paints{{{"one-year wood", {146, 115, 86}, 0.62},
                                                          {"two-year wood", {79, 69, 61}, 0.88},
                                                          {"old wood", {92, 80, 70}, 0.92},
                                                          {"bud", {132, 96, 71}, 0.7},
                                                          {"dry stem", {62, 48, 46}, 0.9},
                                                          {"face of a cut", {150, 128, 98}, 0.8},
                                                          {"timber", {128, 116, 101}, 0.9},
                                                          {"metal", {116, 117, 116}, 0.5, 1},
                                                          {"rubber", {50, 52, 51}, 0.55},
                                                          {"twine", {152, 136, 104}, 0.9},
                                                          {"leaf", {101, 78, 57}, 0.9},
                                                          {"ground", {114, 100, 78}, 1},
                                                          {"straw", {142, 127, 96}, 1},
                                                          {"far away", {84, 88, 76}, 1},
                                                          {"thin stem or wire", {104, 96, 88}, 0.7}}};

double linear_of(double srgb) {
    const double c = srgb / 255;
    return c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
}

tinygltf::Material material_of(Material m) {
    const Paint& paint = paints[static_cast<std::size_t>(m)];
    tinygltf::Material made;
    made.name = paint.name;
    made.pbrMetallicRoughness.baseColorFactor = {linear_of(paint.srgb[0]), linear_of(paint.srgb[1]), linear_of(paint.srgb[2]), 1};
    made.pbrMetallicRoughness.metallicFactor = paint.metal;
    made.pbrMetallicRoughness.roughnessFactor = paint.roughness;
    made.doubleSided = m == Material::old;  // loose strips of bark
    return made;
}

// Where each material stands in the file; only those used do.
using MaterialBook = std::map<Material, int>;

const char* kind_of(const Vine& vine, const Axis& axis) {
    if (is_trunk(axis)) return "trunk";
    if (is_sucker(vine, axis)) return "sucker";
    if (is_lateral(vine, axis)) return "lateral";
    if (is_cane(vine, axis)) return "cane";
    if (was_laid_last_winter(vine, axis)) return "laid cane of last winter";
    if (was_spur_last_winter(vine, axis)) return "spur of last winter";
    return "arm";
}

const char* kind_of(PartKind kind) {
    switch (kind) {
    case PartKind::bud: return "bud";
    case PartKind::tendril: return "tendril";
    case PartKind::bunch: return "bunch stem";
    case PartKind::face: return "wound";
    case PartKind::head: return "head";
    case PartKind::strips: return "bark strips";
    case PartKind::tie: return "tie";
    case PartKind::wire: return "wire";
    case PartKind::clip: return "clip";
    case PartKind::drip: return "drip line";
    case PartKind::stake: return "stake";
    case PartKind::post: return "post";
    case PartKind::stem:
    case PartKind::ground:
    case PartKind::straw:
    case PartKind::neighbour:
    case PartKind::row:
    case PartKind::horizon: break;
    }
    return "";
}

Value extras_of(const Vine& vine, const shape::VineShape& shape, const Part& part) {
    Value::Object o;
    o["id"] = Value(static_cast<int>(part.kind == PartKind::stem ? part.axis.value : part.id));
    const Axis* axis = part.axis ? vine.find(part.axis) : nullptr;
    if (part.kind == PartKind::stem && axis) {
        o["kind"] = Value(std::string(kind_of(vine, *axis)));
        o["wood_age"] = Value(age(vine, *axis));
        o["diameter_mm"] = Value(in_mm(thickness(vine, *axis)));
        const shape::Stem* stem = shape.find(part.axis);
        if (stem && !stem->nodes.empty()) o["length_mm"] = Value(millimetres * (stem->nodes.back().from_root - stem->nodes.front().from_root));
        const shape::Stem* parent = stem && stem->parent_stem >= 0 ? &shape.stems[static_cast<std::size_t>(stem->parent_stem)] : nullptr;
        o["parent"] = Value(static_cast<int>(parent ? parent->axis.value : 0));
        return Value(std::move(o));
    }
    o["kind"] = Value(std::string(kind_of(part.kind)));
    if (part.kind == PartKind::face)
        if (const auto wound = std::find_if(vine.wounds.begin(), vine.wounds.end(), [&](const Wound& w) { return w.id.value == part.id; });
            wound != vine.wounds.end()) {
            o["wood_age"] = Value(wound->wood_age);
            o["diameter_mm"] = Value((in_mm(wound->major) + in_mm(wound->minor)) / 2);
        }
    o["parent"] = Value(static_cast<int>(part.axis.value));
    return Value(std::move(o));
}

// Parts of one organ follow each other: wood and face of one wound, the arms of one bunch stem.
bool same_organ(const Part& a, const Part& b) { return a.kind == b.kind && a.axis == b.axis && a.id == b.id; }

// Adds one variant's bytes, accessors, meshes, nodes and scene.
class Variant {
public:
    Variant(tinygltf::Model& model, MaterialBook& materials, GltfFile& file, const GltfVariant& variant) : model_(model), materials_(materials), file_(file), vine_(*variant.vine), shape_(shape::vine_shape(vine_)) {
        mesh::build_vine(mesh_, shape_, mesh::fine_detail);
        scene_.name = variant.name;
        add_vertices();
        for (std::size_t i = 0; i < mesh_.parts.size();) {
            std::size_t end = i + 1;
            while (end < mesh_.parts.size() && same_organ(mesh_.parts[i], mesh_.parts[end])) ++end;
            add_organ({mesh_.parts.data() + i, end - i});
            i = end;
        }
        close_indices();
        model_.scenes.push_back(std::move(scene_));
    }

private:
    void add_vertices() {
        auto& data = model_.buffers[0].data;
        tinygltf::BufferView view;
        view.buffer = 0;
        view.byteOffset = data.size();
        view.byteLength = mesh_.vertices.size() * stride;
        view.byteStride = stride;
        view.target = TINYGLTF_TARGET_ARRAY_BUFFER;
        data.resize(data.size() + view.byteLength);
        unsigned char* to = data.data() + view.byteOffset;
        for (const mesh::Vertex& v : mesh_.vertices) {
            std::memcpy(to, v.position, 12);
            std::memcpy(to + 12, v.normal, 12);
            to += stride;
        }
        vertices_ = add(model_.bufferViews, std::move(view));
        indices_ = add(model_.bufferViews, {});  // filled by close_indices, since they follow one another
        index_bytes_.reserve(mesh_.triangle_count() * 12);
    }

    void add_organ(std::span<const Part> parts) {
        tinygltf::Mesh made;
        for (const Part& part : parts)
            if (part.count > 0) made.primitives.push_back(primitive_of(part));
        if (made.primitives.empty()) return;
        const Part& first = parts.front();
        tinygltf::Node node;
        node.extras = extras_of(vine_, shape_, first);
        node.name = node.extras.Get("kind").Get<std::string>() + " " + std::to_string(node.extras.Get("id").Get<int>());
        made.name = node.name;
        node.mesh = add(model_.meshes, std::move(made));
        const int index = add(model_.nodes, std::move(node));
        // What wood bears hangs under its node: a reader that takes a cane takes its buds along.
        const auto bearer = stem_nodes_.find(first.kind == PartKind::stem ? static_cast<std::uint32_t>(model_.nodes.back().extras.Get("parent").Get<int>()) : first.axis.value);
        if (first.kind == PartKind::stem) stem_nodes_.emplace(first.axis.value, index);
        if (bearer == stem_nodes_.end()) scene_.nodes.push_back(index);
        else model_.nodes[static_cast<std::size_t>(bearer->second)].children.push_back(index);
        ++file_.organs;
        if (first.kind == PartKind::bud) ++file_.buds;
    }

    tinygltf::Primitive primitive_of(const Part& part) {
        const auto& all = mesh_.indices[static_cast<std::size_t>(part.material)];
        const std::span<const std::uint32_t> indices(all.data() + part.first, part.count);
        const auto [low, high] = std::minmax_element(indices.begin(), indices.end());
        const std::uint32_t from = *low, count = *high - *low + 1;
        tinygltf::Accessor place;
        place.bufferView = vertices_;
        place.byteOffset = from * std::size_t{stride};
        place.componentType = TINYGLTF_COMPONENT_TYPE_FLOAT;
        place.type = TINYGLTF_TYPE_VEC3;
        place.count = count;
        place.minValues.assign(3, std::numeric_limits<double>::max());
        place.maxValues.assign(3, std::numeric_limits<double>::lowest());
        for (std::uint32_t v = from; v < from + count; ++v)
            for (std::size_t k = 0; k < 3; ++k) {  // of the rounded numbers that are written
                const double at = static_cast<double>(mesh_.vertices[v].position[k]);
                place.minValues[k] = std::min(place.minValues[k], at);
                place.maxValues[k] = std::max(place.maxValues[k], at);
            }
        tinygltf::Accessor normal = place;
        normal.byteOffset += 12;
        normal.minValues.clear();
        normal.maxValues.clear();
        tinygltf::Accessor list;
        list.bufferView = indices_;
        list.byteOffset = index_bytes_.size();
        list.componentType = TINYGLTF_COMPONENT_TYPE_UNSIGNED_INT;
        list.type = TINYGLTF_TYPE_SCALAR;
        list.count = part.count;
        for (const std::uint32_t i : indices) {
            const std::uint32_t own = i - from;
            for (int k = 0; k < 4; ++k) index_bytes_.push_back(static_cast<unsigned char>(own >> (8 * k)));  // little end first, as the format asks
        }
        file_.triangles += part.count / 3;
        tinygltf::Primitive made;
        made.attributes["POSITION"] = add(model_.accessors, std::move(place));
        made.attributes["NORMAL"] = add(model_.accessors, std::move(normal));
        made.indices = add(model_.accessors, std::move(list));
        const auto [material, fresh] = materials_.try_emplace(part.material, static_cast<int>(model_.materials.size()));
        if (fresh) model_.materials.push_back(material_of(part.material));
        made.material = material->second;
        made.mode = TINYGLTF_MODE_TRIANGLES;
        return made;
    }

    void close_indices() {
        auto& data = model_.buffers[0].data;
        tinygltf::BufferView& view = model_.bufferViews[static_cast<std::size_t>(indices_)];
        view.buffer = 0;
        view.byteOffset = data.size();
        view.byteLength = index_bytes_.size();
        view.target = TINYGLTF_TARGET_ELEMENT_ARRAY_BUFFER;
        data.insert(data.end(), index_bytes_.begin(), index_bytes_.end());
    }

    template <class T>
    static int add(std::vector<T>& list, T one) {
        list.push_back(std::move(one));
        return static_cast<int>(list.size()) - 1;
    }

    tinygltf::Model& model_;
    MaterialBook& materials_;
    GltfFile& file_;
    const Vine& vine_;
    shape::VineShape shape_;
    mesh::Mesh mesh_;
    tinygltf::Scene scene_;
    std::vector<unsigned char> index_bytes_;
    std::map<std::uint32_t, int> stem_nodes_;  // by axis
    int vertices_ = -1, indices_ = -1;
};

}  // namespace

GltfFile gltf_file(std::span<const GltfVariant> variants) {
    SPURWRIGHT_CHECK(variants.size(), >, std::size_t{0});
    GltfFile file;
    tinygltf::Model model;
    model.asset.version = "2.0";
    model.asset.generator = "Spurwright";
    model.buffers.emplace_back();
    MaterialBook materials;
    for (const GltfVariant& variant : variants) Variant(model, materials, file, variant);
    model.defaultScene = 0;
    std::ostringstream out;
    tinygltf::TinyGLTF writer;
    const bool written = writer.WriteGltfSceneToStream(&model, out, false, true);
    SPURWRIGHT_CHECK(written, ==, true);
    file.bytes = std::move(out).str();
    return file;
}

}  // namespace spurwright::app
