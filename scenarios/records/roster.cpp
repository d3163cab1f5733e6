#include "scenarios/records/roster.h"

#include <algorithm>
#include <map>

#include "scenarios/records/act.h"

namespace spurwright::records {
namespace {

enum RosterColumn : std::size_t { number_column, name_column, language_column, crew_column, start_column };

const std::vector<ColumnName>& roster_columns() {
    static const std::vector<ColumnName> columns{{"number", {"número", "numero"}, true},
                                                 {"name", {"nombre"}, false},
                                                 {"language", {"idioma"}, true},
                                                 {"crew", {"cuadrilla"}, false},
                                                 {"start", {"inicio"}, false}};
    return columns;
}

// What people write for a language they mean.
std::string_view meant_language(std::string_view text, const std::vector<std::string_view>& languages) {
    std::string lower(text);
    std::transform(lower.begin(), lower.end(), lower.begin(), [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c + 32) : c == '_' ? '-' : c; });
    for (const std::string_view language : languages) {
        std::string known(language);
        std::transform(known.begin(), known.end(), known.begin(), [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c + 32) : c; });
        if (known == lower) return language;
    }
    constexpr std::array<std::pair<std::string_view, std::string_view>, 9> usual{
        {{"sp", "es"}, {"esp", "es"}, {"spa", "es"}, {"spanish", "es"}, {"español", "es"}, {"espanol", "es"}, {"eng", "en"}, {"english", "en"}, {"inglés", "en"}}};
    for (const auto& [word, language] : usual)
        if (word == lower && std::find(languages.begin(), languages.end(), language) != languages.end()) return language;
    return nearest(lower, languages);
}

class RosterRows {
public:
    RosterRows(const std::vector<Person>& people, const std::vector<std::string_view>& languages) : languages_(languages) {
        for (const Person& person : people) known_.emplace(person.number, person);
    }

    void take(const io::CsvRow& row, const Columns& columns, Roster& roster) {
        RowReader cells(row, columns);
        Person person;
        if (!cells.refused()) read(cells, columns, person);
        if (!cells.refused()) {
            const auto [at, first] = lines_.emplace(person.number, row.line);
            if (!first)
                cells.refuse(number_column, "error.crew.number-twice",
                             {{"n", std::to_string(person.number)}, {"line", std::to_string(at->second)}});
        }
        if (cells.refused()) {
            roster.refused.push_back(cells.refusal());
            return;
        }
        const auto old = known_.find(person.number);
        const RowFate fate = old == known_.end() ? RowFate::added : old->second == person ? RowFate::same : RowFate::changed;
        roster.counts.count(fate);
        roster.rows.push_back({row.line, fate, std::move(person)});
    }

private:
    void read(RowReader& cells, const Columns& columns, Person& person) const {
        const auto number = cells.whole(number_column, 1, highest_number);
        if (!number) cells.refuse(number_column, "error.import.missing");
        person.number = number.value_or(0);
        // A column that a file lacks says nothing about those who are in the list.
        const auto old = known_.find(person.number);
        if (old != known_.end()) person = old->second;
        if (columns.has(name_column)) person.name = cells.text(name_column);
        const std::string language = cells.text(language_column);
        if (language.empty()) cells.refuse(language_column, "error.import.missing");
        else if (std::find(languages_.begin(), languages_.end(), language) == languages_.end()) refuse_language(cells, language);
        person.language = language;
        if (columns.has(crew_column)) person.crew = cells.text(crew_column);
        if (columns.has(start_column)) {
            const auto day = cells.day(start_column);
            person.start = day ? day_text(*day) : std::string();
        }
    }
    void refuse_language(RowReader& cells, const std::string& language) const {
        const std::string_view meant = meant_language(language, languages_);
        if (!meant.empty()) return cells.refuse(language_column, "error.crew.language-near", {{"text", language.substr(0, 40)}, {"near", std::string(meant)}});
        std::string all;
        for (const std::string_view one : languages_) all += (all.empty() ? "" : ", ") + std::string(one);
        cells.refuse(language_column, "error.crew.language", {{"text", language.substr(0, 40)}, {"words", std::move(all)}});
    }

    const std::vector<std::string_view>& languages_;
    std::map<std::int64_t, Person> known_;
    std::map<std::int64_t, int> lines_; // where a number stood first
};

} // namespace

Result<Roster> read_roster(std::string_view text, const std::string& source, const std::vector<Person>& people, const std::vector<std::string_view>& languages) {
    auto reader = io::CsvReader::of(text, source);
    if (!reader) return failure(reader.error());
    const auto columns = Columns::of(reader->headings(), roster_columns(), source);
    if (!columns) return failure(columns.error());
    Roster roster;
    roster.heading = reader->heading_line();
    RosterRows rows(people, languages);
    io::CsvRow row;
    while (true) {
        const auto there = reader->next(row);
        if (!there) return failure(there.error());
        if (!*there) return roster;
        if (roster.rows.size() + roster.refused.size() == most_people)
            return failure({Fault::bad_file, TextKey{"error.import.many"}, {{"most", Count{static_cast<std::int64_t>(most_people)}}}, {source, row.line, 0, 0}});
        rows.take(row, *columns, roster);
    }
}

Result<void> take_in(Store& store, const Roster& roster, const std::string& when_utc) {
    if (roster.counts.added + roster.counts.changed == 0) return {};
    const auto act = Act::begin(store, "crew-import", when_utc);
    if (!act) return failure(act.error());
    for (const RosterRow& row : roster.rows)
        if (row.fate != RowFate::same)
            if (auto done = put_person(store, row.person); !done) return done;
    return (*act)->commit();
}

std::string roster_csv(const std::vector<Person>& people) {
    std::string text = "number,name,language,crew,start" + std::string(io::csv_line_end);
    for (const Person& person : people)
        text += std::to_string(person.number) + "," + io::csv_text(person.name) + "," + io::csv_text(person.language) + "," + io::csv_text(person.crew) + "," + person.start +
                std::string(io::csv_line_end);
    return text;
}

} // namespace spurwright::records
