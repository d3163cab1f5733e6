#include "scenarios/io/csv.h"

#include <algorithm>
#include <array>

namespace spurwright::io {
namespace {

constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";

Error refused_table(std::string_view key, const std::string& source, int line, Arguments arguments = {}) {
    return {Fault::bad_file, TextKey{key}, std::move(arguments), {source, line, 0, 0}};
}

// The one of comma, semicolon and tab that the first line has most of, outside quotation marks.
char separator_of(std::string_view text) {
    constexpr std::array<char, 3> known{',', ';', '\t'};
    std::array<int, 3> found{};
    bool quoted = false;
    for (const char c : text) {
        if (c == '"') quoted = !quoted;
        if (c == '\n' && !quoted) break;
        for (std::size_t i = 0; i < known.size(); ++i) found[i] += !quoted && c == known[i];
    }
    return known[static_cast<std::size_t>(std::max_element(found.begin(), found.end()) - found.begin())];
}

void trim(std::string& cell) {
    while (!cell.empty() && cell.back() == ' ') cell.pop_back();
    cell.erase(0, std::min(cell.find_first_not_of(' '), cell.size()));
}

} // namespace

Result<CsvReader> CsvReader::of(std::string_view text, const std::string& source) {
    if (text.starts_with("\xFF\xFE") || text.starts_with("\xFE\xFF"))
        return failure(refused_table("error.csv.not-utf8", source, 1));
    if (const auto zero = text.find('\0'); zero != std::string_view::npos)
        return failure(refused_table("error.csv.zero", source,
                                     1 + static_cast<int>(std::count(text.begin(), text.begin() + static_cast<std::ptrdiff_t>(zero), '\n'))));
    if (text.starts_with(byte_order_mark)) text.remove_prefix(byte_order_mark.size());
    CsvReader reader(text, source);
    reader.separator_ = separator_of(text);
    CsvRow heading;
    const auto there = reader.read_row(heading);
    if (!there) return failure(there.error());
    if (!*there || (heading.cells.size() == 1 && heading.cells[0].empty()))
        return failure(refused_table("error.csv.no-heading", source, 1));
    if (heading.fault) return failure(refused_table(heading.fault->name, source, 1));
    for (std::string& cell : heading.cells) {
        std::transform(cell.begin(), cell.end(), cell.begin(), [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c + 32) : c; });
        if (cell.empty()) return failure(refused_table("error.csv.empty-heading", source, 1));
        if (std::count(heading.cells.begin(), heading.cells.end(), cell) > 1)
            return failure(refused_table("error.csv.heading-twice", source, 1, {{"column", cell}}));
    }
    reader.headings_ = std::move(heading.cells);
    reader.heading_line_ = heading.raw;
    return reader;
}

Result<bool> CsvReader::next(CsvRow& row) {
    while (true) {
        auto there = read_row(row);
        if (!there || !*there) return there;
        const bool blank = !row.fault && std::all_of(row.cells.begin(), row.cells.end(), [](const std::string& cell) { return cell.empty(); });
        if (!blank) return true;
    }
}

// From the opening quotation mark to what follows the closing one; npos where there is none.
std::size_t CsvReader::quoted_cell(CsvRow& row, std::string& cell) {
    std::size_t at = at_ + 1;
    while (true) {
        const std::size_t mark = text_.find('"', at);
        if (mark == std::string_view::npos) return mark;
        cell.append(text_.substr(at, mark - at));
        at = mark + 1;
        if (at >= text_.size() || text_[at] != '"') break;
        cell.push_back('"');
        ++at;
    }
    while (at < text_.size() && (text_[at] == ' ' || text_[at] == '\r')) ++at;
    if (at < text_.size() && text_[at] != separator_ && text_[at] != '\n') {
        if (!row.fault) row.fault = TextKey{"error.csv.after-quote"};
        while (at < text_.size() && text_[at] != separator_ && text_[at] != '\n') ++at;
    }
    return at;
}

std::size_t CsvReader::plain_cell(CsvRow& row, std::string& cell) {
    std::size_t at = at_;
    while (at < text_.size() && text_[at] != separator_ && text_[at] != '\n') {
        if (text_[at] == '"' && !row.fault) row.fault = TextKey{"error.csv.quote-inside"};
        ++at;
    }
    cell.assign(text_.substr(at_, at - at_));
    if ((at == text_.size() || text_[at] == '\n') && !cell.empty() && cell.back() == '\r') cell.pop_back();
    return at;
}

Result<bool> CsvReader::read_row(CsvRow& row) {
    row.cells.clear();
    row.fault.reset();
    row.line = line_;
    row.raw = {};
    if (at_ >= text_.size()) return false;
    const std::size_t begun = at_;
    while (true) {
        std::string& cell = row.cells.emplace_back();
        while (at_ < text_.size() && text_[at_] == ' ') ++at_;
        const bool quoted = at_ < text_.size() && text_[at_] == '"';
        const std::size_t end = quoted ? quoted_cell(row, cell) : plain_cell(row, cell);
        if (end == std::string_view::npos) return failure(refused_table("error.csv.open-quote", source_, row.line));
        if (!quoted) trim(cell);
        line_ += static_cast<int>(std::count(text_.begin() + static_cast<std::ptrdiff_t>(at_), text_.begin() + static_cast<std::ptrdiff_t>(end), '\n'));
        at_ = end;
        if (at_ >= text_.size() || text_[at_] == '\n') break;
        ++at_;
    }
    row.raw = text_.substr(begun, at_ - begun);
    if (row.raw.ends_with('\r')) row.raw.remove_suffix(1);
    if (at_ < text_.size()) ++at_, ++line_;
    return true;
}

bool looks_like_formula(std::string_view cell) {
    return !cell.empty() && std::string_view("=+-@\t\r").find(cell.front()) != std::string_view::npos;
}

std::string csv_text(std::string_view text) {
    std::string cell = looks_like_formula(text) ? "'" : "";
    cell += text;
    const bool edge = !cell.empty() && (cell.front() == ' ' || cell.back() == ' ');
    if (!edge && cell.find_first_of(",;\t\"\r\n") == std::string::npos) return cell;
    std::string quoted = "\"";
    for (const char c : cell) {
        if (c == '"') quoted.push_back('"');
        quoted.push_back(c);
    }
    return quoted + '"';
}

std::string_view without_guard(std::string_view cell) {
    return cell.size() > 1 && cell.front() == '\'' && looks_like_formula(cell.substr(1)) ? cell.substr(1) : cell;
}

} // namespace spurwright::io
