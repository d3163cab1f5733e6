#include "scenarios/records/table_import.h"

#include <algorithm>
#include <charconv>
#include <cmath>

#include "scenarios/io/utf8.h"

namespace spurwright::records {
namespace {

Error heading_error(std::string_view key, std::string column, const std::string& source) {
    return {Fault::bad_file, TextKey{key}, {{"column", std::move(column)}}, {source, 1, 0, 0}};
}

std::size_t characters(std::string_view text) {
    return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), [](char c) { return (static_cast<unsigned char>(c) & 0xc0) != 0x80; }));
}

// How many letters must be changed, put in or taken out to make one of the other.
std::size_t steps_between(std::string_view a, std::string_view b) {
    std::vector<std::size_t> row(b.size() + 1);
    for (std::size_t j = 0; j <= b.size(); ++j) row[j] = j;
    for (std::size_t i = 1; i <= a.size(); ++i) {
        std::size_t corner = row[0];
        row[0] = i;
        for (std::size_t j = 1; j <= b.size(); ++j) {
            const std::size_t above = row[j];
            row[j] = std::min({above + 1, row[j - 1] + 1, corner + (a[i - 1] == b[j - 1] ? 0u : 1u)});
            corner = above;
        }
    }
    return row[b.size()];
}

} // namespace

Result<Columns> Columns::of(const std::vector<std::string>& headings, const std::vector<ColumnName>& known, const std::string& source) {
    Columns columns;
    columns.at_.assign(known.size(), -1);
    columns.headings_.resize(known.size());
    columns.count_ = headings.size();
    for (std::size_t k = 0; k < known.size(); ++k) columns.headings_[k] = known[k].name;
    for (std::size_t i = 0; i < headings.size(); ++i) {
        if (!io::is_utf8(headings[i])) return failure(heading_error("error.csv.not-utf8", "", source));
        const auto at = std::find_if(known.begin(), known.end(), [&](const ColumnName& one) {
            return one.name == headings[i] || std::find(one.also.begin(), one.also.end(), headings[i]) != one.also.end();
        });
        if (at == known.end()) {
            std::string all;
            for (const ColumnName& one : known) all += (all.empty() ? "" : ", ") + std::string(one.name);
            Error error = heading_error("error.import.unknown-column", headings[i].substr(0, longest_cell), source);
            error.arguments.push_back({"words", std::move(all)});
            return failure(std::move(error));
        }
        const auto k = static_cast<std::size_t>(at - known.begin());
        if (columns.at_[k] >= 0) return failure(heading_error("error.csv.heading-twice", headings[i], source));
        columns.at_[k] = static_cast<int>(i);
        columns.headings_[k] = headings[i];
    }
    for (std::size_t k = 0; k < known.size(); ++k)
        if (known[k].required && columns.at_[k] < 0) return failure(heading_error("error.import.column-missing", std::string(known[k].name), source));
    return columns;
}

std::string_view Columns::cell(const io::CsvRow& row, std::size_t known) const {
    const int at = at_[known];
    return at < 0 || static_cast<std::size_t>(at) >= row.cells.size() ? std::string_view() : std::string_view(row.cells[static_cast<std::size_t>(at)]);
}

RowReader::RowReader(const io::CsvRow& row, const Columns& columns) : row_(row), columns_(columns) {
    const auto as_a_whole = [&](std::string_view key, Arguments arguments) { refusal_ = RefusedRow{row.line, "", TextKey{key}, std::move(arguments), std::string(row.raw)}; };
    if (row.fault) as_a_whole(row.fault->name, {});
    else if (row.cells.size() != columns.count())
        as_a_whole("error.import.cells", {{"found", Count{static_cast<std::int64_t>(row.cells.size())}}, {"wanted", Count{static_cast<std::int64_t>(columns.count())}}});
}

void RowReader::refuse(std::size_t column, std::string_view reason, Arguments arguments) {
    if (!refusal_) refusal_ = RefusedRow{row_.line, columns_.heading(column), TextKey{reason}, std::move(arguments), std::string(row_.raw)};
}

std::string RowReader::text(std::size_t column) {
    const std::string_view cell = columns_.cell(row_, column);
    if (!io::is_utf8(cell)) return refuse(column, "error.import.not-utf8"), "";
    if (characters(cell) > longest_cell) return refuse(column, "error.import.long", {{"most", Count{static_cast<std::int64_t>(longest_cell)}}}), "";
    if (io::looks_like_formula(cell)) return refuse(column, "error.import.formula", {{"text", std::string(cell.substr(0, 20))}}), "";
    for (const char c : cell)
        if (static_cast<unsigned char>(c) < 0x20 || c == 0x7f) return refuse(column, "error.import.control"), "";
    return std::string(io::without_guard(cell));
}

std::optional<std::int64_t> RowReader::whole(std::size_t column, std::int64_t low, std::int64_t high) {
    const std::string_view cell = columns_.cell(row_, column);
    if (cell.empty()) return std::nullopt;
    if (!io::is_utf8(cell)) return refuse(column, "error.import.not-utf8"), std::nullopt;
    std::int64_t value = 0;
    const auto [end, fault] = std::from_chars(cell.data(), cell.data() + cell.size(), value);
    if (end != cell.data() + cell.size() || fault == std::errc::invalid_argument)
        return refuse(column, "error.value.whole", {{"text", std::string(cell.substr(0, 40))}}), std::nullopt;
    if (fault != std::errc{} || value < low || value > high)
        return refuse(column, "error.value.range", {{"text", std::string(cell.substr(0, 40))}, {"low", std::to_string(low)}, {"high", std::to_string(high)}}), std::nullopt;
    return value;
}

std::optional<double> RowReader::number(std::size_t column, double low, double high) {
    const std::string_view cell = columns_.cell(row_, column);
    if (cell.empty()) return std::nullopt;
    if (!io::is_utf8(cell)) return refuse(column, "error.import.not-utf8"), std::nullopt;
    double value = 0;
    const auto [end, fault] = std::from_chars(cell.data(), cell.data() + cell.size(), value);
    const std::string_view rest(end, static_cast<std::size_t>(cell.data() + cell.size() - end));
    const std::string shown(cell.substr(0, 40));
    if (fault == std::errc{} && rest.starts_with(',')) return refuse(column, "error.value.comma", {{"text", shown}}), std::nullopt;
    if (fault != std::errc{} || !rest.empty() || !std::isfinite(value)) return refuse(column, "error.import.number", {{"text", shown}}), std::nullopt;
    if (value < low || value > high) return refuse(column, "error.import.range", {{"text", shown}, {"low", Ratio{low}}, {"high", Ratio{high}}}), std::nullopt;
    return value;
}

std::optional<Day> RowReader::day(std::size_t column) {
    const std::string_view cell = columns_.cell(row_, column);
    if (cell.empty()) return std::nullopt;
    if (!io::is_utf8(cell)) return refuse(column, "error.import.not-utf8"), std::nullopt;
    const auto day = read_day(cell);
    if (!day) refuse(column, "error.import.day", {{"text", std::string(cell.substr(0, 40))}});
    return day;
}

std::string_view nearest(std::string_view text, const std::vector<std::string_view>& words) {
    std::string_view best;
    std::size_t fewest = 3; // from three letters on it is another word; our choice
    for (const std::string_view word : words) {
        const std::size_t steps = steps_between(text.substr(0, 60), word.substr(0, 60));
        if (steps < fewest && steps < std::max(text.size(), word.size())) best = word, fewest = steps;
    }
    return best;
}

} // namespace spurwright::records
