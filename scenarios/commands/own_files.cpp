// variety, site: one that ships or one of one's own, read whole and shown value by value; with -o written as a file to
// change and to give to `grow` and `ahead`.
#include "scenarios/commands/verbs.h"
#include "scenarios/io/safe_file.h"
#include "scenarios/io/site_file.h"
#include "scenarios/io/variety_file.h"
#include "scenarios/words/layout.h"
#include "sim/vine/words_of.h"

namespace spurwright::commands {
namespace {

// One line a value: {"climate": {"mean_c": 11}} prints as "climate.mean_c".
void add_lines(const io::Json& object, const std::string& before, words::Table& table) {
    for (std::size_t i = 0; i < object.keys.size(); ++i) {
        const io::Json& value = object.items[i];
        if (value.is(io::Json::Kind::object) && !value.find("value")) {
            add_lines(value, before + object.keys[i] + ".", table);
            continue;
        }
        const io::Json* plain = value.find("value");
        const io::Json *status = value.find("status"), *source = value.find("source");
        std::string from = status ? status->text : "";
        if (source) from += ", " + source->text;
        const io::Json& shown = plain ? *plain : value;
        table.rows.push_back({before + object.keys[i],
                              shown.is(io::Json::Kind::text) ? shown.text : io::print_json_line(shown), from});
    }
}

// The file as it is written, its values one a line.
Result<Answer> answer_of(const Asked& asked, const std::string& file, const words::Words& words) {
    auto values = io::read_json(file, "values");
    if (!values) return failure(std::move(values.error()));
    const auto path = asked.value("-o");
    if (path)
        if (auto done = io::write_file(*path, file); !done) return failure(std::move(done.error()));
    Answer answer;
    words::Table table;
    table.rows.push_back({words("constants.name"), words("constants.value"), words("constants.origin")});
    table.right = {false, false, false};
    add_lines(*values, "", table);
    answer.text = words::table_text(table);
    if (path) answer.text += words("show.written", {{"file", *path}}) + "\n";
    answer.object.set("values", *std::move(values));
    answer.object.set("file", path ? io::Json(*path) : io::Json());
    return answer;
}

Result<Answer> answer_variety(const Asked& asked, const Surroundings& around) {
    const auto variety = io::load_variety(asked.subject, "variety");
    if (!variety) return failure(variety.error());
    return answer_of(asked, io::print_variety(**variety), around.words);
}

Result<Answer> answer_site(const Asked& asked, const Surroundings& around) {
    const auto site = io::load_site(asked.subject, "site");
    if (!site) return failure(site.error());
    return answer_of(asked, io::print_site(*site), around.words);
}

} // namespace

Verb variety_verb() {
    return {"variety", "NAME|FILE", TextKey{"verb.variety"}, {{"-o", "FILE", TextKey{"option.output-own"}}}, answer_variety};
}

Verb site_verb() {
    return {"site", "NAME|FILE", TextKey{"verb.site"}, {{"-o", "FILE", TextKey{"option.output-own"}}}, answer_site};
}

} // namespace spurwright::commands
