#include "scenarios/commands/judgement_text.h"

#include <algorithm>

#include "scenarios/commands/error_text.h"
#include "scenarios/words/layout.h"
#include "sim/rules/rule_list.h"

namespace spurwright::commands {
namespace {

using io::Json;
using rules::Finding;

Json thousandths(const std::optional<std::int64_t>& value) { return value ? Json::decimal(*value, 3) : Json(); }

Json wanted(const std::optional<rules::Wanted>& range) {
    if (!range) return {};
    Json list = Json::list();
    list.push(thousandths(range->low));
    list.push(thousandths(range->high));
    return list;
}

std::string joined(const std::vector<std::string_view>& keys) {
    std::string all;
    for (const std::string_view key : keys) all += (all.empty() ? "" : ", ") + std::string(key);
    return all;
}

Json finding_object(const Finding& f, const words::Words& words) {
    const auto sources = rules::source_keys(*f.rule);
    Json o = Json::object();
    o.set("rule", f.rule->key());
    o.set("on", f.on);
    o.set("side", word_of(f.side));
    o.set("points", f.points);
    o.set("out_of", f.out_of);
    o.set("measured", thousandths(f.said.measured));
    o.set("measured_word", f.said.measured_word.empty() ? Json() : Json(f.said.measured_word));
    o.set("unit", word_of(f.said.unit));
    o.set("full", wanted(f.said.full));
    o.set("half", wanted(f.said.half));
    o.set("source", words.sentence(rules::source_line(*f.rule, f.status), {{"sources", joined(sources)}}));
    Json keys = Json::list();
    for (const std::string_view key : sources) keys.push(key);
    o.set("sources", std::move(keys));
    o.set("status", word_of(f.status));
    o.set("mend", word_of(f.mend));
    o.set("step", word_of(f.step));
    o.set("key", f.said.key.name);
    o.set("arguments", arguments_object(f.said.arguments));
    o.set("sentence", words.sentence(f.said.key, f.said.arguments));
    return o;
}

Json findings_list(const std::vector<Finding>& findings, const words::Words& words) {
    Json list = Json::list();
    for (const Finding& f : findings) list.push(finding_object(f, words));
    return list;
}

// "-3.5  Cane a12 is 6.9 mm thick ... (next winter)"
std::string lost_line(const Finding& f, const words::Words& words) {
    const std::string head = words::padded_left(words::points_text(-f.lost(), words.numbers()), 6) + "  ";
    std::string text = words.sentence(f.said.key, f.said.arguments);
    if (f.mend != rules::Mend::nothing) text += " (" + words("mend." + std::string(word_of(f.mend))) + ")";
    return words::hanging(head, text, 8);
}

} // namespace

void set_judgement(Json& object, const rules::Judgement& judgement, const words::Words& words) {
    object.set("points", judgement.points);
    object.set("points_before_caps", judgement.points_before_caps);
    Json caps = Json::list();
    for (const rules::Cap& cap : judgement.caps) {
        Json o = Json::object();
        o.set("cap", cap.cap);
        o.set("limit", cap.limit);
        o.set("on", cap.on);
        o.set("sentence", words.sentence(cap.key, cap.arguments));
        caps.push(std::move(o));
    }
    object.set("caps", std::move(caps));
    object.set("findings", findings_list(judgement.findings, words));
    object.set("remarks", findings_list(judgement.remarks, words));
}

std::string judgement_text(const rules::Judgement& judgement, const words::Words& words) {
    std::string out;
    if (!judgement.caps.empty()) {
        out += words("judge.before-caps", {{"points", judgement.points_before_caps}}) + "\n";
        for (const rules::Cap& cap : judgement.caps)
            out += words::hanging("  ", words.sentence(cap.key, cap.arguments), 4);
        out += "\n";
    }
    std::vector<const Finding*> lost;
    std::string kept;
    for (const Finding& f : judgement.findings)
        if (f.lost().count > 0) lost.push_back(&f);
    for (const rules::Rule* rule : rules::all_rules) {
        const auto of_rule = [&](const Finding& f) { return f.rule == rule; };
        const bool any = std::any_of(judgement.findings.begin(), judgement.findings.end(), of_rule);
        const bool whole = std::none_of(judgement.findings.begin(), judgement.findings.end(),
                                        [&](const Finding& f) { return f.rule == rule && f.lost().count > 0; });
        if (any && whole) kept += (kept.empty() ? "" : ", ") + words("rule." + std::string(rule->key()) + ".name");
    }
    if (lost.empty())
        out += words("judge.nothing-lost") + "\n";
    else
        out += words("judge.lost") + "\n";
    std::stable_sort(lost.begin(), lost.end(),
                     [](const Finding* a, const Finding* b) { return a->lost() > b->lost(); });
    for (const Finding* f : lost) out += lost_line(*f, words);
    if (!kept.empty()) out += "\n" + words("judge.kept") + "\n" + words::hanging("  ", kept, 2);
    if (!judgement.remarks.empty()) out += "\n" + words("judge.remarks") + "\n";
    for (const Finding& f : judgement.remarks)
        out += words::hanging("  ", words.sentence(f.said.key, f.said.arguments), 4);
    return out;
}

} // namespace spurwright::commands
