// fingerprint: one number over 64 fixed vines, equal in every build type, compiler and folder. Any change of growth,
// rules or search that can move a mark moves it.
#include "scenarios/commands/fingerprint.h"

#include "scenarios/commands/verbs.h"
#include "sim/core/hash.h"
#include "sim/growth/history.h"
#include "sim/planning/fingerprint.h"
#include "sim/rules/house_rules.h"

namespace spurwright::commands {

std::vector<CodedSite> fingerprint_sites() {
    std::vector<CodedSite> sites;
    for (int i = 0; i < 64; ++i) {
        CodedSite site;
        site.recipe = newest_recipe;
        site.age = 3 + (i * 5) % 28;
        site.vigour = i % 4 == 1 ? Vigour::low : i % 4 == 3 ? Vigour::high : Vigour::moderate;
        site.frost = i % 8 == 5;
        site.spacing_step = 12 + (i * 7) % 29;
        site.wire_step = 1 + i % 6;
        site.pruner = static_cast<Pruner>(i % 3 == 0 ? (i / 3) % 8 : 0);
        site.missing_left = i % 16 == 7;
        site.missing_right = i % 16 == 11;
        site.seed = static_cast<std::uint64_t>(1 + i) * 0x9e3779b9u;
        sites.push_back(site);
    }
    return sites;
}

Result<std::string> fingerprint_lines(std::size_t count) {
    std::string lines;
    const rules::HouseRules house;
    for (const CodedSite& coded : fingerprint_sites()) {
        if (count-- == 0) break;
        const auto site = growth::site_of(coded);
        if (!site) return failure(site.error());
        const auto vine = growth::grow_vine(*site);
        if (!vine) return failure(vine.error());
        lines += planning::fingerprint_line(*vine, house);
    }
    return lines;
}

namespace {

Result<Answer> answer_fingerprint(const Asked&, const Surroundings& around) {
    const std::size_t count = fingerprint_sites().size();
    const auto lines = fingerprint_lines(count);
    if (!lines) return failure(lines.error());
    const std::string number = hash_text(hash_of(*lines));
    Answer answer;
    answer.object.set("fingerprint", number);
    answer.object.set("vines", static_cast<int>(count));
    answer.object.set("recipe", newest_recipe);
    answer.object.set("judge_version", rules::judge_version);
    answer.text = around.words("fingerprint.line", {{"fingerprint", number},
                                                    {"n", Count{static_cast<std::int64_t>(count)}},
                                                    {"recipe", Count{newest_recipe}},
                                                    {"judge", Count{rules::judge_version}}}) +
                  "\n";
    return answer;
}

} // namespace

Verb fingerprint_verb() { return {"fingerprint", "", TextKey{"verb.fingerprint"}, {}, answer_fingerprint}; }

} // namespace spurwright::commands
