// sheet: a block sheet read whole, shown, turned into house rules for a vine's strength, and made into a page for the wall.
#include "scenarios/commands/verbs.h"
#include "scenarios/io/safe_file.h"
#include "scenarios/sheet/sheet_page.h"
#include "scenarios/words/layout.h"
#include "scenarios/words/load_words.h"
#include "sim/core/hash.h"

namespace spurwright::commands {
namespace {

using sheet::Strength;

Result<Strength> strength_asked(const Asked& asked) {
    const auto text = asked.value("--strength");
    if (!text) return Strength::middle;
    if (const auto strength = read_word<Strength>(*text)) return *strength;
    return failure(refusal(Fault::bad_text, "error.sheet.strength", {{"text", *text}}, "--strength"));
}

Result<void> write_asked(const Asked& asked, std::string_view option, const std::string& bytes) {
    const auto path = asked.value(option);
    return path ? io::write_file(*path, bytes) : Result<void>{};
}

Result<Answer> answer_sheet(const Asked& asked, const Surroundings& around) {
    const auto read = sheet::load_block_sheet(asked.subject);
    if (!read) return failure(read.error());
    const auto strength = strength_asked(asked);
    if (!strength) return failure(strength.error());
    const auto house = sheet::house_rules_of(*read, *strength, asked.subject, around.assets);
    if (!house) return failure(house.error());
    const bool english = around.words.language() == "en";
    const auto other = words::load_words(around.assets, english ? "es" : "en");
    if (!other) return failure(other.error());
    if (auto done = write_asked(asked, "--house", io::print_house_rules(*house)); !done) return failure(done.error());
    if (auto done = write_asked(asked, "--page", sheet::sheet_page(*read, around.words, *other)); !done)
        return failure(done.error());
    Answer answer;
    io::Json& o = answer.object;
    const auto path = [&](std::string_view option) {
        const auto value = asked.value(option);
        return value ? io::Json(*value) : io::Json();
    };
    io::Json lines = io::Json::list();
    o.set("block", read->block);
    o.set("strength", word_of(*strength));
    o.set("target", std::int64_t{*house->rules.bud_load.target});
    o.set("rule_set_hash", hash_text(rules::rule_set_hash(house->rules)));
    o.set("house", path("--house"));
    o.set("page", path("--page"));
    answer.text = read->block + "\n" + around.words("sheet.title") + "\n\n";
    words::Table table;
    table.rows.push_back({around.words("sheet.what"), around.words("sheet.value")});
    table.right = {false, false};
    for (const sheet::SheetLine& line : sheet::sheet_lines(*read, around.words)) {
        table.rows.push_back({line.what, line.value});
        io::Json one = io::Json::object();
        one.set("what", line.what);
        one.set("value", line.value);
        lines.push(std::move(one));
    }
    o.set("lines", std::move(lines));
    answer.text += words::table_text(table);
    answer.text += "\n" + words::wrapped(around.words("safety.line"));
    return answer;
}

} // namespace

Verb sheet_verb() {
    return {"sheet",
            "FILE",
            TextKey{"verb.sheet"},
            {{"--strength", "weak|middle|strong", TextKey{"option.strength"}},
             {"--house", "FILE", TextKey{"option.house-out"}},
             {"--page", "FILE", TextKey{"option.page"}}},
            answer_sheet};
}

} // namespace spurwright::commands
