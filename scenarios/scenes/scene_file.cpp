#include "scenarios/scenes/scene_file.h"

#include "scenarios/commands/formula_option.h"
#include "scenarios/io/json_fields.h"
#include "scenarios/io/safe_file.h"
#include "scenarios/scenes/switch_fields.h"
#include "sim/pruning/plan_text.h"
#include "sim/weather/climate.h"

namespace spurwright::scenes {
namespace {

constexpr std::string_view scene_kind = "spurwright-scene", order_kind = "spurwright-scene-order";
constexpr int scene_version = 2, order_version = 1;
// What a file may hold: our choice.
constexpr std::size_t longest_name = 60, longest_key = 60, longest_code = 40, longest_acts = 4'000;
constexpr int most_target = 200; // count buds
constexpr int most_winters = 20; // to grow on
constexpr int most_logged = 5;   // winters before this one
constexpr std::int64_t heaviest_tag = 10'000; // g
constexpr int most_draw = 1'000, most_kickers = 2, last_frost_day = 181;

// What the head of a file says; refused where it is not of this kind or from a newer program.
std::int64_t read_head(io::Fields& fields, std::string_view wanted, int newest) {
    io::Refusal& refusal = fields.refusal();
    const std::string kind = fields.text("kind", longest_name);
    if (!refusal.any() && kind != wanted)
        refusal.add("error.file.kind", {{"wanted", std::string(wanted)}, {"found", kind}}, fields.object());
    const std::int64_t version = fields.whole("version", 1, 1'000'000);
    if (version > newest)
        refusal.add("error.file.newer", {{"found", Count{version}}, {"newest", Count{newest}}}, fields.object(),
                    Fault::newer);
    return version;
}

std::string read_code_text(io::Fields& fields, const io::Json& value, std::string_view key) {
    std::string code = fields.text_of(value, key, longest_code);
    io::Refusal& refusal = fields.refusal();
    if (auto read = read_code(code); !read && !refusal.any()) {
        read.error().where = {refusal.source(), value.line, value.column, 0};
        refusal.add(std::move(read.error()));
    }
    return code;
}

Plan read_acts(io::Fields& fields) {
    const io::Json& value = fields.required("acts");
    auto plan = parse_plan(fields.text_of(value, "acts", longest_acts));
    if (plan) return *std::move(plan);
    io::Refusal& refusal = fields.refusal();
    if (!refusal.any()) {
        plan.error().where = {refusal.source(), value.line, value.column, 0};
        refusal.add(std::move(plan.error()));
    }
    return {};
}

SceneVine read_vine(io::Refusal& refusal, const io::Json& object) {
    io::Fields fields(refusal, object);
    SceneVine vine;
    vine.code = read_code_text(fields, fields.required("code"), "code");
    for (const io::Json& one : fields.list("switches", false)) vine.switches.push_back(read_switch(refusal, one));
    vine.spring = static_cast<int>(fields.whole("spring", 1, most_draw, 1));
    if (!fields.left_out("acts")) vine.acts = read_acts(fields);
    fields.end();
    return vine;
}

Frost read_frost(io::Refusal& refusal, const io::Json& object) {
    io::Fields fields(refusal, object);
    Frost frost;
    std::vector<std::string_view> climates;
    for (const weather::Climate& one : weather::climates()) climates.push_back(one.name);
    frost.climate = fields.known_word("climate", climates);
    frost.over_day = static_cast<int>(fields.whole("over_day", 1, last_frost_day));
    frost.kickers = static_cast<int>(fields.whole("kickers", 0, most_kickers, 1));
    fields.end();
    return frost;
}

WeighAsked read_weigh(io::Refusal& refusal, const io::Json& object) {
    io::Fields fields(refusal, object);
    WeighAsked weigh;
    weigh.formula = fields.text("formula", longest_name);
    if (auto formula = commands::read_formula(weigh.formula); !formula && !refusal.any()) refusal.add(std::move(formula.error()));
    weigh.winters = static_cast<int>(fields.whole("winters", 1, most_logged, 5));
    weigh.suckers = fields.yes("suckers", false);
    fields.end();
    return weigh;
}

void read_vines(io::Fields& fields, std::int64_t version, Scene& scene) {
    if (version == 1)
        for (const io::Json& code : fields.list("codes", true))
            scene.vines.push_back({read_code_text(fields, code, "codes"), {}});
    else
        for (const io::Json& vine : fields.list("vines", true))
            scene.vines.push_back(read_vine(fields.refusal(), vine));
    if (scene.vines.empty())
        fields.refusal().add("error.json.missing", {{"key", std::string(version == 1 ? "codes" : "vines")}},
                             fields.object());
}

// A scene of version 1 is "first": its texts have their keys by its name.
void read_texts(io::Fields& fields, std::int64_t version, Scene& scene) {
    const auto key = [&](const char* field) {
        return version == 1 ? "scene." + scene.name + "." + field : fields.text(field, longest_key);
    };
    scene.title_key = key("title");
    scene.task_key = key("task");
    scene.teaches_key = key("teaches");
    for (const io::Json& text : fields.list("learn", true))
        scene.learn_keys.push_back(fields.text_of(text, "learn", longest_key));
}

Result<io::Json> read_root(const std::string& path) {
    const auto text = io::read_file(path, io::largest_json);
    if (!text) return failure(text.error());
    return io::read_json(*text, path);
}

} // namespace

Result<Scene> load_scene(const io::Assets& assets, const std::string& name) {
    const std::string path = assets.path("scenes", name + ".json");
    const auto root = read_root(path);
    if (!root) return failure(root.error());
    io::Refusal refusal(path);
    io::Fields fields(refusal, *root);
    Scene scene;
    const std::int64_t version = read_head(fields, scene_kind, scene_version);
    scene.name = fields.text("name", longest_name);
    scene.house_rules = fields.text("house_rules", longest_name);
    read_texts(fields, version, scene);
    if (version > 1) {
        if (!fields.left_out("target")) scene.target = static_cast<std::int32_t>(fields.whole("target", 1, most_target));
        scene.grow_on = static_cast<int>(fields.whole("grow_on", 0, most_winters, 0));
        if (const io::Json* frost = fields.optional("frost")) scene.frost = read_frost(refusal, *frost);
        if (const io::Json* weigh = fields.optional("weigh")) scene.weigh = read_weigh(refusal, *weigh);
        scene.begins = fields.word("begins", std::optional<Begins>(Begins::own));
        if (!fields.left_out("tag_g")) scene.tag = Mass{static_cast<std::int32_t>(fields.whole("tag_g", 1, heaviest_tag) * 1'000)};
        for (const io::Json& word : fields.list("asks", false)) {
            const auto one = read_word<Ask>(fields.text_of(word, "asks", longest_name));
            if (!one) refusal.add("error.scene.ask", {{"text", word.text}}, word);
            else scene.asks.push_back(*one);
        }
    }
    read_vines(fields, version, scene);
    for (const io::Json& word : fields.list("beginner", true)) {
        const auto pruner = read_word<Pruner>(fields.text_of(word, "beginner", longest_name));
        if (!pruner) refusal.add("error.scene.pruner", {{"text", word.text}}, word);
        scene.beginner.push_back(pruner.value_or(Pruner::good));
    }
    fields.end();
    if (refusal.any()) return failure(refusal.take());
    return scene;
}

Result<std::vector<std::string>> load_scene_order(const io::Assets& assets) {
    const std::string path = assets.path("scenes", "order.json");
    const auto root = read_root(path);
    if (!root) return failure(root.error());
    io::Refusal refusal(path);
    io::Fields fields(refusal, *root);
    (void)read_head(fields, order_kind, order_version);
    std::vector<std::string> names;
    for (const io::Json& name : fields.list("scenes", true)) names.push_back(fields.text_of(name, "scenes", longest_name));
    if (names.empty()) refusal.add("error.json.missing", {{"key", std::string("scenes")}}, *root);
    fields.end();
    if (refusal.any()) return failure(refusal.take());
    return names;
}

} // namespace spurwright::scenes
