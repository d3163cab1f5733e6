// bud-kill: buds to leave where winter killed some, by one of four published schools.
#include "scenarios/commands/cite.h"
#include "scenarios/commands/quantities.h"
#include "scenarios/commands/verbs.h"
#include "scenarios/words/layout.h"
#include "sim/balance/bud_injury.h"
#include "sim/balance/bud_target.h"

namespace spurwright::commands {
namespace {

using balance::InjuryMethod;

Result<Answer> answer_bud_kill(const Asked& asked, const Surroundings& around) {
    const auto of = read_whole(*asked.value("--of"), "--of", 1, 100'000);
    if (!of) return failure(of.error());
    const auto dead = read_whole(*asked.value("--dead"), "--dead", 0, *of);
    if (!dead) return failure(dead.error());
    const auto target = read_whole(*asked.value("--target"), "--target", 1, 1'000);
    if (!target) return failure(target.error());
    InjuryMethod method = InjuryMethod::cornell;
    if (const auto word = asked.value("--method")) {
        const auto read = read_choice<InjuryMethod>(*word, "--method");
        if (!read) return failure(read.error());
        method = *read;
    }
    const double share = static_cast<double>(*dead) / static_cast<double>(*of);
    const auto found = balance::more_for_killed(method, share, static_cast<double>(*target));
    const std::string_view advice = balance::words_of(found.advice)[static_cast<std::size_t>(found.advice)];
    Answer answer;
    answer.object.set("killed_share", io::Json::number(share, 6));
    answer.object.set("buds", io::Json::number(found.buds, 6));
    answer.object.set("live_buds", io::Json::number(found.live_buds, 6));
    answer.object.set("arithmetic", "additive");
    answer.object.set("advice", advice);
    answer.object.set("source", found.source);
    answer.object.set("cite", cite_json(found.source));
    answer.object.set("status", found.remembered ? "memory" : "read");

    const words::Words& words = around.words;
    const bool number = found.advice == balance::Advice::as_usual || found.advice == balance::Advice::leave_more;
    answer.text = words("bud-kill.share", {{"share", PerMille{rounded(share * 1000)}}, {"n", Count{*dead}}, {"of", Count{*of}}}) + "\n" +
                  words::wrapped(words("bud-kill." + std::string(advice)));
    if (number) answer.text += words("bud-kill.leave", {{"n", Count{balance::whole_buds(found.buds)}}, {"live", Count{balance::whole_buds(found.live_buds)}}}) + "\n";
    if (*of < 50) answer.text += words("bud-kill.few") + "\n"; // at least 50 are asked [growingproduce-buds]
    answer.text += found.remembered ? words("bud-kill.from-memory") + "\n" : words::wrapped(words("buds.source", {{"text", cite_text(found.source)}}));
    answer.text += words::wrapped(words("buds.not-advice"));
    return answer;
}

} // namespace

Verb bud_kill_verb() {
    return {"bud-kill", "", TextKey{"verb.bud-kill"},
            {{"--dead", "N", TextKey{"option.dead"}, true},
             {"--of", "N", TextKey{"option.of"}, true},
             {"--target", "N", TextKey{"option.target"}, true},
             {"--method", "NAME", TextKey{"option.injury-method"}, false}},
            answer_bud_kill};
}

} // namespace spurwright::commands
