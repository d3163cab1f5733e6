#include "scenarios/scenes/scene_file.h"

#include "scenarios/io/json_fields.h"
#include "scenarios/io/safe_file.h"

namespace spurwright::scenes {
namespace {

constexpr std::string_view scene_kind = "spurwright-scene";
constexpr int scene_version = 1;

} // namespace

Result<Scene> load_scene(const io::Assets& assets, const std::string& name) {
    const std::string path = assets.path("scenes", name + ".json");
    const auto text = io::read_file(path, io::largest_json);
    if (!text) return failure(text.error());
    const auto root = io::read_json(*text, path);
    if (!root) return failure(root.error());
    io::Refusal refusal(path);
    io::Fields fields(refusal, *root);
    Scene scene;
    const std::string kind = fields.text("kind", 60);
    if (!refusal.any() && kind != scene_kind)
        refusal.add("error.file.kind", {{"wanted", std::string(scene_kind)}, {"found", kind}}, *root);
    const std::int64_t version = fields.whole("version", 1, 1'000'000);
    if (version > scene_version)
        refusal.add("error.file.newer", {{"found", Count{version}}, {"newest", Count{scene_version}}}, *root,
                    Fault::newer);
    scene.name = fields.text("name", 60);
    scene.house_rules = fields.text("house_rules", 60);
    for (const io::Json& code : fields.list("codes", true)) {
        scene.codes.push_back(fields.text_of(code, "codes", 40));
        if (auto read = read_code(scene.codes.back()); !read && !refusal.any()) {
            read.error().where = {path, code.line, code.column, 0};
            refusal.add(std::move(read.error()));
        }
    }
    if (scene.codes.empty()) refusal.add("error.json.missing", {{"key", std::string("codes")}}, *root);
    for (const io::Json& word : fields.list("beginner", true)) {
        const auto pruner = read_word<Pruner>(fields.text_of(word, "beginner", 40));
        if (!pruner) refusal.add("error.scene.pruner", {{"text", word.text}}, word);
        scene.beginner.push_back(pruner.value_or(Pruner::good));
    }
    for (const io::Json& key : fields.list("learn", true)) scene.learn_keys.push_back(fields.text_of(key, "learn", 60));
    fields.end();
    if (refusal.any()) return failure(refusal.take());
    return scene;
}

} // namespace spurwright::scenes
