// records export, replay, check, backup, due, drop: what was kept of answers and quizzes.
#include "scenarios/commands/own_store.h"
#include "scenarios/commands/quantities.h"
#include "scenarios/commands/verbs.h"
#include "scenarios/io/safe_file.h"
#include "scenarios/records/clock.h"
#include "scenarios/records/people.h"
#include "scenarios/records/record_export.h"
#include "scenarios/records/restore.h"
#include "scenarios/records/sign_off.h"
#include "scenarios/words/layout.h"

namespace spurwright::commands {
namespace {

constexpr std::int64_t largest_event = 9'000'000'000'000'000;

Result<records::Store> store_that_is_there(std::string_view verb) {
    auto store = own_store_to_read();
    if (!store) return failure(store.error());
    if (!*store) return failure(refusal(Fault::not_allowed, "error.records.none", {}, std::string(verb)));
    return std::move(**store);
}

// Nothing where it was not asked.
Result<std::optional<std::int64_t>> whole_asked(const Asked& asked, std::string_view option, std::int64_t most) {
    const auto text = asked.value(option);
    if (!text) return std::optional<std::int64_t>();
    const auto number = read_whole(*text, option, 1, most);
    if (!number) return failure(number.error());
    return std::optional(*number);
}

Result<Answer> answer_records_export(const Asked& asked, const Surroundings& around) {
    const std::string file = *asked.value("-o");
    if (!file.ends_with(".csv") && !file.ends_with(".json")) return failure(refusal(Fault::bad_text, "error.crew.export-kind", {{"text", file}}, "-o"));
    records::ExportWish wish;
    wish.kind = asked.value("--kind").value_or("");
    wish.with_vines = asked.has("--with-vines");
    if (wish.with_vines && file.ends_with(".csv")) return failure(refusal(Fault::bad_text, "error.records.vines-in-json", {}, "--with-vines"));
    const auto person = whole_asked(asked, "--person", records::highest_number);
    if (!person) return failure(person.error());
    wish.person = *person;
    auto store = store_that_is_there("records export");
    if (!store) return failure(store.error());
    const auto exported = file.ends_with(".csv") ? records::records_csv(*store, wish, around.words) : records::records_json(*store, wish, around.words);
    if (!exported) return failure(exported.error());
    if (auto done = io::write_file(file, exported->text); !done) return failure(done.error());
    Answer answer;
    answer.object.set("file", file);
    answer.object.set("written", exported->written);
    answer.object.set("left_out", exported->left_out);
    answer.object.set("rows", exported->rows);
    answer.object.set("rule_sets", exported->rule_sets);
    answer.object.set("vines", exported->vines);
    answer.text = words::wrapped(around.words("records.exported", {{"n", Count{exported->written}}, {"rows", Count{exported->rows}}, {"left", Count{exported->left_out}}, {"file", file}})) +
                  words::wrapped(around.words("screen.wall.not-for-pay"));
    return answer;
}

io::Json replayed_object(const records::Replayed& one, const words::Words& words) {
    io::Json o = io::Json::object();
    o.set("id", one.id);
    o.set("kind", one.kind);
    o.set("when_utc", one.when_utc);
    o.set("outcome", word_of(one.outcome));
    o.set("was", one.was);
    o.set("is", one.is);
    o.set("keys_proved", one.keys_proved);
    o.set("why", one.why.name.empty() ? io::Json() : io::Json(words.sentence(one.why)));
    return o;
}

Result<Answer> answer_records_replay(const Asked& asked, const Surroundings& around) {
    const auto id = whole_asked(asked, "--id", largest_event);
    if (!id) return failure(id.error());
    auto store = store_that_is_there("records replay");
    if (!store) return failure(store.error());
    const auto all = records::replay(*store, *id, [&](int done, int of) {
        if (around.progress) around.progress(done, of);
    });
    if (!all) return failure(all.error());
    Answer answer;
    io::Json list = io::Json::list();
    std::int64_t same = 0, different = 0, unreadable = 0;
    for (const records::Replayed& one : *all) {
        same += one.outcome == records::Outcome::same;
        different += one.outcome == records::Outcome::different;
        unreadable += one.outcome == records::Outcome::unreadable;
        list.push(replayed_object(one, around.words));
        if (one.outcome == records::Outcome::same && !*id) continue;
        const std::string head = std::to_string(one.id) + "  " + one.when_utc.substr(0, 10) + "  ";
        const std::string said = one.outcome == records::Outcome::unreadable ? around.words.sentence(one.why)
                                 : one.outcome == records::Outcome::same
                                     ? around.words("records.same-line", {{"text", one.was}})
                                     : around.words(one.outcome == records::Outcome::different ? "records.differs-line" : "records.other-judge-line", {{"was", one.was}, {"is", one.is}});
        answer.text += words::hanging(head, said, 4);
    }
    answer.object.set("replayed", static_cast<std::int64_t>(all->size()));
    answer.object.set("same", same);
    answer.object.set("different", different);
    answer.object.set("unreadable", unreadable);
    answer.object.set("records", std::move(list));
    answer.text += words::wrapped(
        around.words("records.replayed", {{"n", Count{static_cast<std::int64_t>(all->size())}}, {"same", Count{same}}, {"different", Count{different}}, {"lost", Count{unreadable}}}));
    answer.status = different + unreadable == 0 ? 0 : 1;
    return answer;
}

Result<Answer> answer_records_check(const Asked&, const Surroundings& around) {
    auto store = store_that_is_there("records check");
    if (!store) return failure(store.error());
    const auto checked = records::check_records(*store);
    if (!checked) return failure(checked.error());
    Answer answer;
    io::Json damaged = io::Json::list();
    for (const records::Damage& damage : checked->damaged) {
        io::Json o = io::Json::object();
        o.set("where", damage.where);
        o.set("what", around.words.sentence(damage.what));
        damaged.push(std::move(o));
        answer.text += words::hanging(damage.where + ": ", around.words.sentence(damage.what), 4);
    }
    answer.object.set("store", store->path());
    answer.object.set("events", checked->events);
    answer.object.set("vines", checked->vines);
    answer.object.set("rule_sets", checked->rule_sets);
    answer.object.set("backups", static_cast<std::int64_t>(checked->backups));
    answer.object.set("damaged", std::move(damaged));
    answer.text += words::wrapped(around.words(checked->damaged.empty() ? "records.sound" : "records.unsound", {{"n", Count{checked->events}},
                                                                                                              {"vines", Count{checked->vines}},
                                                                                                              {"copies", Count{static_cast<std::int64_t>(checked->backups)}},
                                                                                                              {"damaged", Count{static_cast<std::int64_t>(checked->damaged.size())}}}));
    answer.status = checked->damaged.empty() ? 0 : 1;
    return answer;
}

Result<Answer> answer_records_backup(const Asked& asked, const Surroundings& around) {
    const std::string file = *asked.value("-o");
    auto store = store_that_is_there("records backup");
    if (!store) return failure(store.error());
    if (auto sound = store->check(); !sound) return failure(sound.error());
    if (auto copied = records::write_copy(*store, file); !copied) return failure(copied.error());
    Answer answer;
    answer.object.set("file", file);
    answer.text = words::wrapped(around.words("records.copied", {{"file", file}}));
    return answer;
}

Result<Answer> answer_records_due(const Asked&, const Surroundings& around) {
    auto store = own_store();
    if (!store) return failure(store.error());
    const auto due = records::show_due(*store, records::today());
    if (!due) return failure(due.error());
    Answer answer;
    io::Json list = io::Json::list();
    for (const records::DueEvent& one : *due) {
        io::Json o = io::Json::object();
        o.set("id", one.id);
        o.set("person", one.person);
        o.set("kind", one.kind);
        o.set("until", records::day_text(one.until));
        list.push(std::move(o));
        answer.text += std::to_string(one.id) + "  " + std::to_string(one.person) + "  " + one.kind + "  " + records::day_text(one.until) + "\n";
    }
    answer.text += words::wrapped(around.words("records.due", {{"n", Count{static_cast<std::int64_t>(due->size())}}, {"days", Count{records::days_of_notice}}}));
    answer.object.set("due", std::move(list));
    return answer;
}

Result<Answer> answer_records_drop(const Asked&, const Surroundings& around) {
    auto store = own_store();
    if (!store) return failure(store.error());
    const auto dropped = records::drop_due(*store, records::today(), records::utc_now());
    if (!dropped) return failure(dropped.error());
    Answer answer;
    answer.object.set("dropped", *dropped);
    answer.text = words::wrapped(around.words("records.dropped", {{"n", Count{*dropped}}}));
    return answer;
}

} // namespace

Verb records_export_verb() {
    return {"records export", "", TextKey{"verb.records-export"},
            {{"-o", "FILE", TextKey{"option.output"}, true},
             {"--kind", "NAME", TextKey{"option.records-kind"}},
             {"--person", "NUMBER", TextKey{"option.records-person"}},
             {"--with-vines", "", TextKey{"option.with-vines"}}},
            answer_records_export};
}
Verb records_replay_verb() { return {"records replay", "", TextKey{"verb.records-replay"}, {{"--id", "NUMBER", TextKey{"option.records-id"}}}, answer_records_replay}; }
Verb records_check_verb() { return {"records check", "", TextKey{"verb.records-check"}, {}, answer_records_check}; }
Verb records_backup_verb() { return {"records backup", "", TextKey{"verb.records-backup"}, {{"-o", "FILE", TextKey{"option.output"}, true}}, answer_records_backup}; }
Verb records_due_verb() { return {"records due", "", TextKey{"verb.records-due"}, {}, answer_records_due}; }
Verb records_drop_verb() { return {"records drop", "", TextKey{"verb.records-drop"}, {}, answer_records_drop}; }

} // namespace spurwright::commands
