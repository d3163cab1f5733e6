// The glTF file of a vine, read back by a library that had no part in writing it, and the verbs `export` and `turn`.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <map>

#ifdef SPURWRIGHT_HAS_ASSIMP
#include <assimp/Importer.hpp>
#include <assimp/postprocess.h>
#include <assimp/scene.h>
#endif

#include <nlohmann/json.hpp>

#include "render/app/gltf_file.h"
#include "sim/growth/history.h"
#include "sim/vine/vine_query.h"
#include "tests/scenarios/schema.h"
#include "tests/window/drawing_program.h"

using namespace spurwright;
using namespace spurwright::test;

namespace {

Vine grown(std::uint64_t seed) {
    growth::Site site;
    site.seed = seed;
    site.age = 12;
    return *growth::grow_vine(site);
}

std::uint32_t word_at(const std::string& bytes, std::size_t at) {
    std::uint32_t n = 0;
    for (std::size_t k = 4; k-- > 0;) n = n << 8 | static_cast<unsigned char>(bytes[at + k]);
    return n;
}

// The two chunks of a binary file.
struct Chunks {
    nlohmann::json json;
    std::string binary;
};

// As the format lays them out (glTF 2.0 of the Khronos Group, binary files; from memory).
Chunks chunks_of(const std::string& bytes) {
    Chunks out;
    REQUIRE(bytes.size() > 28);
    CHECK(bytes.substr(0, 4) == "glTF");
    CHECK(word_at(bytes, 4) == 2);
    CHECK(word_at(bytes, 8) == bytes.size());
    const std::size_t json = word_at(bytes, 12);
    CHECK(bytes.substr(16, 4) == "JSON");
    CHECK(json % 4 == 0);
    out.json = nlohmann::json::parse(bytes.substr(20, json));
    const std::size_t at = 20 + json;
    REQUIRE(bytes.size() >= at + 8);
    CHECK(word_at(bytes, at) % 4 == 0);
    CHECK(bytes.substr(at + 4, 4) == std::string("BIN\0", 4));
    CHECK(at + 8 + word_at(bytes, at) == bytes.size());
    out.binary = bytes.substr(at + 8);
    return out;
}

float number_at(const std::string& bytes, std::size_t at) {
    const std::uint32_t bits = word_at(bytes, at);
    float out;
    std::memcpy(&out, &bits, 4);
    return out;
}

#ifdef SPURWRIGHT_HAS_ASSIMP
// Every node with extras, by kind and id.
void gather(const aiNode* node, std::map<std::pair<std::string, int>, const aiNode*>& out) {
    aiString kind;
    std::int32_t id = 0;
    if (node->mMetaData && node->mMetaData->Get("kind", kind)) {
        if (!node->mMetaData->Get("id", id)) {
            std::uint64_t wide = 0;
            double number = 0;
            if (node->mMetaData->Get("id", wide)) id = static_cast<int>(wide);
            else if (node->mMetaData->Get("id", number)) id = static_cast<int>(number);
        }
        out[{kind.C_Str(), id}] = node;
    }
    for (unsigned i = 0; i < node->mNumChildren; ++i) gather(node->mChildren[i], out);
}

double metadata_number(const aiNode* node, const char* key) {
    double number = -1;
    if (node->mMetaData->Get(key, number)) return number;
    std::uint64_t wide = 0;
    if (node->mMetaData->Get(key, wide)) return static_cast<double>(wide);
    std::int32_t narrow = 0;
    return node->mMetaData->Get(key, narrow) ? narrow : -1;
}
#endif

}  // namespace

TEST_SUITE("window/export") {
    TEST_CASE("chunks, alignment, counts, bounds and indices of the file are what the format asks") {
        for (const std::uint64_t seed : {7u, 8u}) {
            const Vine vine = grown(seed);
            const app::GltfVariant variant{"as found", &vine};
            const app::GltfFile file = app::gltf_file({&variant, 1});
            const Chunks chunks = chunks_of(file.bytes);
            const auto& json = chunks.json;
            CHECK(json["asset"]["version"] == "2.0");
            CHECK(json.count("extensionsRequired") == 0);
            CHECK(json["buffers"].size() == 1);
            CHECK(json["buffers"][0]["byteLength"].get<std::size_t>() <= chunks.binary.size());
            std::size_t triangles = 0;
            for (const auto& mesh : json["meshes"])
                for (const auto& primitive : mesh["primitives"]) {
                    const auto& place = json["accessors"][primitive["attributes"]["POSITION"].get<std::size_t>()];
                    const auto& normal = json["accessors"][primitive["attributes"]["NORMAL"].get<std::size_t>()];
                    const auto& list = json["accessors"][primitive["indices"].get<std::size_t>()];
                    const auto start = [&](const nlohmann::json& accessor) {
                        const auto& view = json["bufferViews"][accessor["bufferView"].get<std::size_t>()];
                        return view.value("byteOffset", std::size_t{0}) + accessor.value("byteOffset", std::size_t{0});
                    };
                    const std::size_t count = place["count"], from = start(place);
                    CHECK(from % 4 == 0);
                    CHECK(normal["count"] == count);
                    float low[3]{1e9f, 1e9f, 1e9f}, high[3]{-1e9f, -1e9f, -1e9f};
                    bool unit = true;
                    for (std::size_t v = 0; v < count; ++v) {
                        double length = 0;
                        for (std::size_t k = 0; k < 3; ++k) {
                            const float at = number_at(chunks.binary, from + v * 24 + k * 4), n = number_at(chunks.binary, start(normal) + v * 24 + k * 4);
                            low[k] = std::min(low[k], at);
                            high[k] = std::max(high[k], at);
                            length += static_cast<double>(n) * static_cast<double>(n);
                        }
                        unit = unit && std::abs(std::sqrt(length) - 1) < 0.0005;
                    }
                    CHECK(unit);
                    for (std::size_t k = 0; k < 3; ++k) {
                        CHECK(place["min"][k].get<float>() == low[k]);
                        CHECK(place["max"][k].get<float>() == high[k]);
                    }
                    const std::size_t indices = list["count"], first = start(list);
                    CHECK(first % 4 == 0);
                    CHECK(indices % 3 == 0);
                    std::uint32_t least = ~0u, most = 0;
                    for (std::size_t i = 0; i < indices; ++i) {
                        const std::uint32_t v = word_at(chunks.binary, first + 4 * i);
                        least = std::min(least, v);
                        most = std::max(most, v);
                    }
                    CHECK(least == 0);
                    CHECK(most == count - 1);
                    triangles += indices / 3;
                }
            CHECK(triangles == file.triangles);
            // A tree: every node under one other or at the top.
            std::map<std::size_t, int> uses;
            for (const auto& n : json["scenes"][0]["nodes"]) ++uses[n];
            for (const auto& node : json["nodes"])
                if (node.count("children"))
                    for (const auto& child : node["children"]) ++uses[child];
            CHECK(uses.size() == json["nodes"].size());
            CHECK(std::all_of(uses.begin(), uses.end(), [](const auto& use) { return use.second == 1; }));
        }
    }
#ifdef SPURWRIGHT_HAS_ASSIMP
    TEST_CASE("read back by another library: the same buds, lengths and thicknesses within 0.1 mm, children under what bears them") {
        for (const std::uint64_t seed : {7u, 21u}) {
            const Vine vine = grown(seed);
            const app::GltfVariant variant{"as found", &vine};
            const app::GltfFile file = app::gltf_file({&variant, 1});
            Assimp::Importer importer;
            const aiScene* scene = importer.ReadFileFromMemory(file.bytes.data(), file.bytes.size(), 0, "glb");
            REQUIRE(scene != nullptr);
            std::map<std::pair<std::string, int>, const aiNode*> organs;
            gather(scene->mRootNode, organs);
            std::size_t buds = 0, stems = 0;
            for (const auto& [key, node] : organs) buds += key.first == "bud";
            CHECK(buds == file.buds);
            CHECK(organs.size() == file.organs);
            for (const Axis& axis : vine.axes) {
                const aiNode* node = nullptr;
                for (const char* kind : {"trunk", "sucker", "lateral", "cane", "laid cane of last winter", "spur of last winter", "arm"})
                    if (const auto at = organs.find({kind, static_cast<int>(axis.id.value)}); at != organs.end()) node = at->second;
                if (!node) continue;  // no wood of it stands
                ++stems;
                CHECK(metadata_number(node, "wood_age") == age(vine, axis));
                CHECK(std::abs(metadata_number(node, "diameter_mm") - in_mm(thickness(vine, axis))) < 0.1);
                // The length along the wood, node to node, against the places in the tables.
                double length = 0;
                const Node* last = nullptr;
                for (const Node& n : vine.nodes_of(axis)) {
                    if (n.removed) break;
                    if (last) length += std::sqrt(std::pow(n.place.x.count - last->place.x.count, 2.0) + std::pow(n.place.y.count - last->place.y.count, 2.0) + std::pow(n.place.z.count - last->place.z.count, 2.0)) / 1000;
                    last = &n;
                }
                CHECK(std::abs(metadata_number(node, "length_mm") - length) < 0.1);
                const double parent = metadata_number(node, "parent");
                if (parent > 0) CHECK(metadata_number(node->mParent, "id") == parent);
            }
            CHECK(stems > 20);
        }
    }
#endif
    TEST_CASE("the verb writes the vine as found, after a plan and after the best one, and says what it left out") {
        const Folder folder;
        const Ran ran = run_program_of(drawing_program, {"export", little_file, "--plan", "cut a5.1+20.0 shears", "-o", folder.file("x.glb")});
        CHECK(ran.status == 0);
        CHECK(ran.err.empty());
        CHECK(ran.out.find("Left out") != std::string::npos);
        const auto json = chunks_of(file_text(folder.file("x.glb"))).json;
        REQUIRE(json["scenes"].size() == 3);
        for (std::size_t i = 0; i < 3; ++i) CHECK(json["scenes"][i]["name"] == std::array{"as found", "mine", "best"}[i]);
        CHECK(json["scene"] == 0);
        const Ran asked = run_program_of(SPURWRIGHT_PROGRAM, {"export", little_file, "-o", folder.file("y.glb"), "--json"});
        CHECK(asked.status == 0);
        CHECK(schema_fault("verb-export", asked.out) == "");
        CHECK(run_program_of(drawing_program, {"export", little_file, "-o", folder.file("z.glb")}).status == 0);
        CHECK(file_text(folder.file("y.glb")) == file_text(folder.file("z.glb")));
    }
    TEST_CASE("an export of no vine, of a plan that is none, or to where nothing can be written leaves nothing behind") {
        const Folder folder;
        for (const std::vector<std::string>& words : {std::vector<std::string>{"export", "no-such-file.json", "-o", "x.glb"},
                                                      {"export", little_file, "--plan", "hack a5", "-o", "x.glb"},
                                                      {"export", little_file, "-o", "nowhere/x.glb"},
                                                      {"export", little_file}}) {
            const Ran ran = run_program_of(drawing_program, words, {}, folder.path());
            CHECK(ran.status == 2);
            CHECK(std::count(ran.err.begin(), ran.err.end(), '\n') == 1);
            CHECK(folder.files() == 0);
        }
    }
    TEST_CASE("once round a vine: so many pictures as asked, each from elsewhere, the first as the whole view without neighbours") {
        NEED_OFFSCREEN
        const Folder folder;
        const std::string round = folder.file("round");
        const Ran ran = run_program_of(drawing_program, {"turn", little_file, "--pictures", "4", "--size", "96x54", "-o", round});
        CHECK(ran.status == 0);
        std::vector<std::string> pictures;
        for (int i = 1; i <= 4; ++i) pictures.push_back(file_text(round + "/turn-00" + std::to_string(i) + ".png"));
        for (std::size_t i = 0; i < 4; ++i)
            for (std::size_t k = 0; k < i; ++k) CHECK(pictures[i] != pictures[k]);
        const Ran json = run_program_of(SPURWRIGHT_PROGRAM, {"turn", little_file, "--pictures", "2", "--size", "32x32", "-o", folder.file("two"), "--json"});
        CHECK(json.status == 0);
        CHECK(schema_fault("verb-turn", json.out) == "");
        CHECK(run_program_of(drawing_program, {"turn", little_file, "--pictures", "1", "-o", round}).status == 2);
        CHECK(run_program_of(drawing_program, {"turn", little_file, "--pictures", "2", "-o", round + "/turn-001.png"}).status == 2);
    }
}
