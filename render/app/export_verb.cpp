#include "render/app/export_verb.h"

#include <optional>

#include "render/app/gltf_file.h"
#include "scenarios/commands/drawn_verbs.h"
#include "scenarios/commands/house_rules_option.h"
#include "scenarios/commands/judged.h"
#include "scenarios/commands/vine_source.h"
#include "scenarios/io/safe_file.h"
#include "scenarios/words/layout.h"
#include "sim/planning/cordon.h"

namespace spurwright::app {
namespace {

using commands::Answer;
using commands::Asked;

// The vine after its best plan; nothing where it has none or none is asked of a vine in that state.
Result<std::optional<Vine>> best_of(const Vine& vine, const Asked& asked, const commands::Surroundings& around) {
    const auto house = commands::house_rules_asked(asked, around, vine.system);
    if (!house) return failure(house.error());
    if (!commands::can_be_judged(vine, asked.subject)) return std::optional<Vine>();
    std::optional<Plan> plan;
    if (vine.system == System::cordon) plan = planning::best_of_cordon(vine, house->rules).plan;
    else if (auto best = planning::Planning(vine, house->rules).best()) plan = std::move(best->plan);
    if (!plan) return std::optional<Vine>();
    auto after = prune(vine, *plan);
    if (!after) return failure(std::move(after.error()));
    return std::optional<Vine>(*std::move(after));
}

Result<Answer> answer(const Asked& asked, const commands::Surroundings& around) {
    const auto found = commands::find_vine(asked.subject);
    if (!found) return failure(found.error());
    std::vector<GltfVariant> variants{{"as found", &found->vine}};
    std::optional<Vine> mine;
    if (const auto plan = asked.value("--plan")) {
        auto pruned = commands::prune_by_text(found->vine, *plan);
        if (!pruned) return failure(std::move(pruned.error()));
        mine = std::move(pruned->after);
        variants.push_back({"mine", &*mine});
    }
    const auto best = best_of(found->vine, asked, around);
    if (!best) return failure(best.error());
    if (*best) variants.push_back({"best", &**best});
    const GltfFile file = gltf_file(variants);
    const std::string path = *asked.value("-o");
    if (auto written = io::write_file(path, file.bytes); !written) return failure(std::move(written.error()));
    Answer done;
    io::Json scenes = io::Json::list();
    for (const GltfVariant& variant : variants) scenes.push(variant.name);
    done.object.set("file", path);
    done.object.set("scenes", std::move(scenes));
    done.object.set("organs", static_cast<std::int64_t>(file.organs));
    done.object.set("buds", static_cast<std::int64_t>(file.buds));
    done.object.set("triangles", static_cast<std::int64_t>(file.triangles));
    const auto count = [](std::size_t n) { return Count{static_cast<std::int64_t>(n)}; };
    done.text = words::wrapped(around.words("export.done", {{"file", path}, {"scenes", count(variants.size())}, {"organs", count(file.organs)}, {"buds", count(file.buds)}, {"triangles", count(file.triangles)}})) +
                words::wrapped(around.words(*best ? "export.left-out" : "export.left-out-best"));
    return done;
}

}  // namespace

commands::Verb exporting() {
    commands::Verb verb = commands::export_verb();
    verb.answer = answer;
    return verb;
}

}  // namespace spurwright::app
