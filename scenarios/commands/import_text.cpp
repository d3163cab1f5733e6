#include "scenarios/commands/import_text.h"

#include "scenarios/io/safe_file.h"
#include "scenarios/words/layout.h"

namespace spurwright::commands {
namespace {

constexpr std::size_t most_shown = 20; // refused rows on a console; --json and --refused hold all. Our choice

} // namespace

ImportWish import_wish(const Asked& asked) { return {asked.has("--dry-run"), asked.has("--all-or-none"), asked.value("--refused")}; }

std::vector<VerbOption> import_options() {
    return {{"--dry-run", "", TextKey{"option.dry-run"}}, {"--all-or-none", "", TextKey{"option.all-or-none"}}, {"--refused", "FILE", TextKey{"option.refused"}}};
}

io::Json refused_list(const std::vector<records::RefusedRow>& refused, const words::Words& words) {
    io::Json list = io::Json::list();
    for (const records::RefusedRow& row : refused) {
        io::Json o = io::Json::object();
        o.set("line", row.line);
        o.set("column", row.column);
        o.set("reason", words.sentence(row.reason, row.arguments));
        list.push(std::move(o));
    }
    return list;
}

std::string refused_text(const std::vector<records::RefusedRow>& refused, const std::string& file, const words::Words& words) {
    std::string text;
    for (std::size_t i = 0; i < refused.size() && i < most_shown; ++i) {
        const records::RefusedRow& row = refused[i];
        const std::string reason = words.sentence(row.reason, row.arguments);
        const std::string_view key = row.column.empty() ? "import.refused-row" : "import.refused";
        text += words::wrapped(words(key, {{"file", file}, {"line", std::to_string(row.line)}, {"column", row.column}, {"reason", reason}}));
    }
    if (refused.size() > most_shown) text += words("import.more", {{"n", Count{static_cast<std::int64_t>(refused.size() - most_shown)}}}) + "\n";
    return text;
}

std::string counts_text(const records::ImportCounts& counts, std::size_t refused, const ImportWish& wish, const words::Words& words) {
    const Arguments numbers{{"added", Count{counts.added}}, {"changed", Count{counts.changed}}, {"same", Count{counts.same}}, {"refused", Count{static_cast<std::int64_t>(refused)}}};
    return words("import.counts", numbers) + "\n" +
           words::wrapped(words(wish.dry_run ? "import.dry" : wish.writes(refused) ? (counts.added + counts.changed > 0 ? "import.written" : "import.nothing-new") : "import.none"));
}

Result<void> write_refused(const ImportWish& wish, const std::string& heading, const std::vector<records::RefusedRow>& refused) {
    if (!wish.refused_file) return {};
    std::string text = heading + std::string(io::csv_line_end);
    for (const records::RefusedRow& row : refused) text += row.raw + std::string(io::csv_line_end);
    return io::write_file(*wish.refused_file, text);
}

} // namespace spurwright::commands
