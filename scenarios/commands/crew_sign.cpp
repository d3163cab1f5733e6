// crew sign, unsign, signed, consent: what one named person says of another's skill, and a yes to a name being kept.
#include "scenarios/commands/own_store.h"
#include "scenarios/commands/quantities.h"
#include "scenarios/commands/verbs.h"
#include "scenarios/records/people.h"
#include "scenarios/records/sign_off.h"
#include "scenarios/words/layout.h"
#include "sim/rules/rule_list.h"

namespace spurwright::commands {
namespace {

Result<records::Day> day_asked(const Asked& asked, std::string_view option, const records::Day& other) {
    const auto text = asked.value(option);
    if (!text) return other;
    const auto day = records::read_day(*text);
    if (!day) return failure(refusal(Fault::bad_text, "error.crew.no-day", {{"text", *text}}, std::string(option)));
    return *day;
}

Result<std::string> skill_asked(const Asked& asked) {
    const std::string text = *asked.value("--skill");
    std::string all;
    for (const rules::Rule* rule : rules::all_rules) {
        if (rule->key() == text) return text;
        all += (all.empty() ? "" : ", ") + std::string(rule->key());
    }
    return failure(unknown_word(text, "--skill", std::move(all)));
}

io::Json sign_object(const records::SignOff& sign) {
    io::Json o = io::Json::object();
    o.set("id", sign.id);
    o.set("person", sign.person);
    o.set("by", sign.by);
    o.set("skill", sign.skill);
    o.set("saw", sign.saw);
    o.set("on", records::day_text(sign.on));
    o.set("until", records::day_text(sign.until));
    return o;
}

Result<Answer> answer_crew_sign(const Asked& asked, const Surroundings& around) {
    records::SignOff sign;
    const auto number = read_whole(asked.subject, "crew sign", 1, records::highest_number), by = read_whole(*asked.value("--by"), "--by", 1, records::highest_number);
    if (!number) return failure(number.error());
    if (!by) return failure(by.error());
    auto skill = skill_asked(asked);
    if (!skill) return failure(skill.error());
    sign.person = *number;
    sign.by = *by;
    sign.skill = *skill;
    sign.saw = *asked.value("--saw");
    const auto on = day_asked(asked, "--on", records::today());
    if (!on) return failure(on.error());
    sign.on = *on;
    const auto until = day_asked(asked, "--until", records::days_after(*on, records::sign_off_days));
    if (!until) return failure(until.error());
    sign.until = *until;
    auto store = own_store();
    if (!store) return failure(store.error());
    const auto id = records::sign_off(*store, sign, records::utc_now());
    if (!id) return failure(id.error());
    sign.id = *id;
    Answer answer;
    answer.object = sign_object(sign);
    answer.text = words::wrapped(around.words("crew.signed-off", {{"number", std::to_string(sign.person)},
                                                                  {"skill", around.words("rule." + sign.skill + ".name")},
                                                                  {"by", std::to_string(sign.by)},
                                                                  {"until", records::day_text(sign.until)},
                                                                  {"id", std::to_string(sign.id)}})) +
                  words::wrapped(around.words("crew.no-permit"));
    return answer;
}

Result<Answer> answer_crew_unsign(const Asked& asked, const Surroundings& around) {
    const auto id = read_whole(asked.subject, "crew unsign", 1, 9'000'000'000'000'000), by = read_whole(*asked.value("--by"), "--by", 1, records::highest_number);
    if (!id) return failure(id.error());
    if (!by) return failure(by.error());
    auto store = own_store();
    if (!store) return failure(store.error());
    const auto done = records::withdraw(*store, *id, *by, *asked.value("--reason"), records::utc_now());
    if (!done) return failure(done.error());
    Answer answer;
    answer.object.set("id", *done);
    answer.object.set("withdrawn", *id);
    answer.text = words::wrapped(around.words("crew.withdrawn", {{"id", std::to_string(*id)}}));
    return answer;
}

Result<Answer> answer_crew_signed(const Asked&, const Surroundings& around) {
    auto store = own_store_to_read();
    if (!store) return failure(store.error());
    Answer answer;
    io::Json list = io::Json::list();
    const records::Day today = records::today();
    std::int64_t lapsing = 0;
    if (*store) {
        const auto all = records::sign_offs(**store);
        if (!all) return failure(all.error());
        for (const records::SignOff& sign : *all) {
            io::Json o = sign_object(sign);
            const bool lapsed = sign.until < today, soon = !lapsed && sign.until <= records::days_after(today, 30);
            lapsing += lapsed || soon;
            o.set("lapsed", lapsed);
            o.set("lapses_in_30_days", soon);
            o.set("lapses_in_60_days", !lapsed && sign.until <= records::days_after(today, 60));
            o.set("lapses_in_90_days", !lapsed && sign.until <= records::days_after(today, 90));
            list.push(std::move(o));
            answer.text += std::to_string(sign.id) + "  " + std::to_string(sign.person) + "  " + around.words("rule." + sign.skill + ".name") + "  " + records::day_text(sign.on) + " - " +
                           records::day_text(sign.until) + (lapsed ? "  " + around.words("crew.lapsed") : "") + "\n";
        }
    }
    answer.text += words::wrapped(around.words("crew.signed-count", {{"n", Count{static_cast<std::int64_t>(list.items.size())}}, {"lapsing", Count{lapsing}}})) +
                   words::wrapped(around.words("crew.no-permit"));
    answer.object.set("signed", std::move(list));
    return answer;
}

// The notice to be read out or read, and what was said to it.
Result<Answer> answer_crew_consent(const Asked& asked, const Surroundings& around) {
    const auto number = read_whole(asked.subject, "crew consent", 1, records::highest_number);
    if (!number) return failure(number.error());
    std::optional<bool> yes;
    if (const auto text = asked.value("--answer")) {
        const auto read = read_yes(*text, "--answer");
        if (!read) return failure(read.error());
        yes = *read;
        auto store = own_store();
        if (!store) return failure(store.error());
        if (auto said = records::say_consent(*store, *number, *yes, around.words.language(), records::utc_now()); !said) return failure(said.error());
    } else if (auto store = own_store_to_read(); !store) {
        return failure(store.error());
    } else if (*store) {
        const auto said = records::consent_of(**store, *number);
        if (!said) return failure(said.error());
        yes = *said;
    }
    Answer answer;
    answer.object.set("number", *number);
    answer.object.set("notice", around.words("crew.notice"));
    answer.object.set("language", around.words.language());
    answer.object.set("answer", yes ? io::Json(*yes) : io::Json());
    answer.text = words::wrapped(around.words("crew.notice")) + "\n" + around.words(!yes ? "crew.consent-none" : *yes ? "crew.consent-yes" : "crew.consent-no") + "\n";
    return answer;
}

} // namespace

Verb crew_sign_verb() {
    return {"crew sign", "NUMBER", TextKey{"verb.crew-sign"},
            {{"--skill", "NAME", TextKey{"option.skill"}, true},
             {"--by", "NUMBER", TextKey{"option.signed-by"}, true},
             {"--saw", "TEXT", TextKey{"option.saw"}, true},
             {"--on", "DAY", TextKey{"option.signed-on"}},
             {"--until", "DAY", TextKey{"option.signed-until"}}},
            answer_crew_sign};
}
Verb crew_unsign_verb() {
    return {"crew unsign", "ID", TextKey{"verb.crew-unsign"}, {{"--by", "NUMBER", TextKey{"option.signed-by"}, true}, {"--reason", "TEXT", TextKey{"option.reason"}, true}}, answer_crew_unsign};
}
Verb crew_signed_verb() { return {"crew signed", "", TextKey{"verb.crew-signed"}, {}, answer_crew_signed}; }
Verb crew_consent_verb() { return {"crew consent", "NUMBER", TextKey{"verb.crew-consent"}, {{"--answer", "yes|no", TextKey{"option.consent-answer"}}}, answer_crew_consent}; }

} // namespace spurwright::commands
