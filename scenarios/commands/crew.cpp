// crew import, list, export, show, forget: the people of the roster.
#include "scenarios/commands/import_text.h"
#include "scenarios/commands/own_store.h"
#include "scenarios/commands/quantities.h"
#include "scenarios/commands/verbs.h"
#include "scenarios/io/safe_file.h"
#include "scenarios/practice/quiz_journals.h"
#include "scenarios/records/events.h"
#include "scenarios/records/forgetting.h"
#include "scenarios/records/roster.h"
#include "scenarios/words/layout.h"
#include "scenarios/settings/folders.h"
#include "scenarios/words/load_words.h"

namespace spurwright::commands {
namespace {

using records::Person;

std::vector<std::string_view> crew_languages() { return {words::languages.begin(), words::languages.end()}; }

Result<std::vector<Person>> people_kept() {
    auto store = own_store_to_read();
    if (!store) return failure(store.error());
    if (!*store) return std::vector<Person>();
    return records::people_of(**store);
}

io::Json rows_of(const records::Roster& roster, records::RowFate fate) {
    io::Json list = io::Json::list();
    for (const records::RosterRow& row : roster.rows) {
        if (row.fate != fate) continue;
        io::Json o = io::Json::object();
        o.set("line", row.line);
        o.set("number", row.person.number);
        list.push(std::move(o));
    }
    return list;
}

Result<Answer> answer_crew_import(const Asked& asked, const Surroundings& around) {
    const auto text = io::read_file(asked.subject, records::largest_list);
    if (!text) return failure(text.error());
    const auto people = people_kept();
    if (!people) return failure(people.error());
    const auto roster = records::read_roster(*text, asked.subject, *people, crew_languages());
    if (!roster) return failure(roster.error());
    const ImportWish wish = import_wish(asked);
    if (auto done = write_refused(wish, roster->heading, roster->refused); !done) return failure(done.error());
    const bool writes = wish.writes(roster->refused.size());
    if (writes && roster->counts.added + roster->counts.changed > 0) {
        auto store = own_store();
        if (!store) return failure(store.error());
        if (auto done = records::take_in(*store, *roster, records::utc_now()); !done) return failure(done.error());
    }
    Answer answer;
    answer.object.set("file", asked.subject);
    answer.object.set("written", writes);
    answer.object.set("new", rows_of(*roster, records::RowFate::added));
    answer.object.set("changed", rows_of(*roster, records::RowFate::changed));
    answer.object.set("same", rows_of(*roster, records::RowFate::same));
    answer.object.set("refused", refused_list(roster->refused, around.words));
    answer.text = counts_text(roster->counts, roster->refused.size(), wish, around.words) + refused_text(roster->refused, asked.subject, around.words);
    answer.status = roster->refused.empty() ? 0 : 2;
    return answer;
}

io::Json person_object(const Person& person) {
    io::Json o = io::Json::object();
    o.set("number", person.number);
    o.set("name", person.name);
    o.set("language", person.language);
    o.set("crew", person.crew);
    o.set("start", person.start.empty() ? io::Json() : io::Json(person.start));
    return o;
}

io::Json people_object(const std::vector<Person>& people) {
    io::Json list = io::Json::list();
    for (const Person& person : people) list.push(person_object(person));
    io::Json o = io::Json::object();
    o.set("people", std::move(list));
    return o;
}

Result<Answer> answer_crew_list(const Asked&, const Surroundings& around) {
    const auto people = people_kept();
    if (!people) return failure(people.error());
    Answer answer;
    answer.object = people_object(*people);
    if (people->empty()) {
        answer.text = words::wrapped(around.words("crew.nobody"));
        return answer;
    }
    words::Table table;
    table.right = {true, false, false, false, false};
    table.rows.push_back({around.words("crew.number"), around.words("crew.name"), around.words("crew.language"), around.words("crew.crew"), around.words("crew.start")});
    for (const Person& person : *people) table.rows.push_back({std::to_string(person.number), person.name, person.language, person.crew, person.start});
    answer.text = words::table_text(table) + around.words("crew.count", {{"n", Count{static_cast<std::int64_t>(people->size())}}}) + "\n";
    return answer;
}

Result<Answer> answer_crew_export(const Asked& asked, const Surroundings& around) {
    const auto people = people_kept();
    if (!people) return failure(people.error());
    const std::string file = *asked.value("-o");
    if (!file.ends_with(".csv") && !file.ends_with(".json"))
        return failure(refusal(Fault::bad_text, "error.crew.export-kind", {{"text", file}}, "-o"));
    const std::string text = file.ends_with(".csv") ? records::roster_csv(*people) : io::print_json(people_object(*people));
    if (auto done = io::write_file(file, text); !done) return failure(done.error());
    const Count written{static_cast<std::int64_t>(people->size())};
    Answer answer;
    answer.object.set("file", file);
    answer.object.set("written", written.value);
    answer.text = around.words("crew.exported", {{"n", written}, {"file", file}}) + "\n";
    return answer;
}

// Everything that is held about a number, to read or to hand over.
Result<Answer> answer_crew_show(const Asked& asked, const Surroundings& around) {
    const auto number = read_whole(asked.subject, "crew show", 1, records::highest_number);
    if (!number) return failure(number.error());
    auto store = own_store_to_read();
    if (!store) return failure(store.error());
    io::Json person, events = io::Json::list();
    std::string text;
    if (*store) {
        const auto people = records::people_of(**store);
        if (!people) return failure(people.error());
        for (const Person& one : *people)
            if (one.number == *number) {
                person = person_object(one);
                text = std::to_string(one.number) + "  " + one.name + "  " + one.language + "  " + one.crew + "  " + one.start + "\n";
            }
        auto read = records::each_event_of(**store, *number, [&](const records::Event& event) {
            io::Json o = io::Json::object();
            o.set("id", event.id);
            o.set("kind", event.kind);
            o.set("version", event.version);
            o.set("when_utc", event.when_utc);
            auto body = io::read_json(event.body, "event");
            o.set("body", body ? std::move(*body) : io::Json(event.body));
            o.set("corrects", event.corrects ? io::Json(*event.corrects) : io::Json());
            events.push(std::move(o));
            text += std::to_string(event.id) + "  " + event.when_utc + "  " + event.kind + "  " + event.body + "\n";
        });
        if (!read) return failure(read.error());
    }
    if (person.is(io::Json::Kind::null) && events.items.empty())
        return failure(refusal(Fault::unknown_part, "error.crew.nobody", {{"n", std::to_string(*number)}}, "crew show"));
    Answer answer;
    answer.text = text + around.words("crew.events", {{"n", Count{static_cast<std::int64_t>(events.items.size())}}}) + "\n";
    answer.object.set("number", *number);
    answer.object.set("person", std::move(person));
    answer.object.set("events", std::move(events));
    if (const auto file = asked.value("-o"))
        if (auto done = io::write_file(*file, file->ends_with(".json") ? io::print_json(answer.object) : answer.text); !done) return failure(done.error());
    return answer;
}

Result<Answer> answer_crew_forget(const Asked& asked, const Surroundings& around) {
    const auto number = read_whole(asked.subject, "crew forget", 1, records::highest_number);
    if (!number) return failure(number.error());
    const std::string work = settings::own_folders().work_folder;
    if (auto may = practice::may_forget_in_journals(work); !may) return failure(may.error());
    auto store = own_store();
    if (!store) return failure(store.error());
    const auto known = records::is_known(*store, *number);
    if (!known) return failure(known.error());
    // The journals first: whoever is stopped between can still be asked to be forgotten again.
    if (*known)
        if (const auto cleared = practice::forget_in_journals(work, *number); !cleared) return failure(cleared.error());
    const auto forgotten = records::forget_person(*store, *number, asked.has("--keep-results"), records::utc_now());
    if (!forgotten) return failure(forgotten.error());
    Answer answer;
    answer.object.set("number", *number);
    answer.object.set("removed", forgotten->events_removed);
    answer.object.set("kept", forgotten->events_kept);
    answer.text = words::wrapped(around.words("crew.forgotten", {{"number", std::to_string(*number)}, {"removed", Count{forgotten->events_removed}}, {"kept", Count{forgotten->events_kept}}}));
    return answer;
}

} // namespace

Verb crew_import_verb() { return {"crew import", "FILE.csv", TextKey{"verb.crew-import"}, import_options(), answer_crew_import}; }
Verb crew_list_verb() { return {"crew list", "", TextKey{"verb.crew-list"}, {}, answer_crew_list}; }
Verb crew_export_verb() { return {"crew export", "", TextKey{"verb.crew-export"}, {{"-o", "FILE", TextKey{"option.output"}, true}}, answer_crew_export}; }
Verb crew_show_verb() { return {"crew show", "NUMBER", TextKey{"verb.crew-show"}, {{"-o", "FILE", TextKey{"option.crew-show-output"}}}, answer_crew_show}; }
Verb crew_forget_verb() { return {"crew forget", "NUMBER", TextKey{"verb.crew-forget"}, {{"--keep-results", "", TextKey{"option.keep-results"}}}, answer_crew_forget}; }

} // namespace spurwright::commands
