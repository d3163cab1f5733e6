// Comma-separated values as people's programs write them, row by row: RFC 4180, with commas, semicolons or tabs (the
// heading says which), with or without a byte order mark, ends of lines LF or CRLF. A row that is not well formed is
// given with its fault, so that the others can still be read; what cannot be read at all is refused whole.
// Own, and no library: those there are tell no line and column of what they refuse.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "sim/core/error.h"

namespace spurwright::io {

struct CsvRow {
    int line = 0;                        // of the file where it begins; the heading is line 1
    std::vector<std::string> cells;      // without quotation marks and blanks around
    std::string_view raw;                // as it stood, without its end of line
    std::optional<TextKey> fault;        // why it is not well formed; then `cells` hold what stood before
};

class CsvReader {
public:
    // `text` must outlive the reader. Refused (Fault::bad_file): no heading, UTF-16, bytes of value 0, a heading that is
    // not well formed, an empty or repeated heading.
    [[nodiscard]] static Result<CsvReader> of(std::string_view text, const std::string& source);

    const std::vector<std::string>& headings() const { return headings_; } // lower case
    std::string_view heading_line() const { return heading_line_; }

    // The next row that is not blank; false at the end. Refused: a quotation mark that opens and never closes.
    [[nodiscard]] Result<bool> next(CsvRow& row);

private:
    CsvReader(std::string_view text, const std::string& source) : text_(text), source_(source) {}
    std::size_t quoted_cell(CsvRow& row, std::string& cell);
    std::size_t plain_cell(CsvRow& row, std::string& cell);
    Result<bool> read_row(CsvRow& row);

    std::string_view text_;
    std::string source_;
    std::size_t at_ = 0;
    int line_ = 1;
    char separator_ = ',';
    std::vector<std::string> headings_;
    std::string_view heading_line_;
};

// A cell that a table program would take for a formula: it begins with = + - @, a tab or a carriage return.
bool looks_like_formula(std::string_view cell);

// A text as a cell of an export: quoted where it must be, with ' before what looks like a formula. Numbers are written by
// type, so that -1.5 stays one.
std::string csv_text(std::string_view text);

// The text of a cell that csv_text guarded; any other as it is.
std::string_view without_guard(std::string_view cell);

inline constexpr std::string_view csv_line_end = "\r\n";

} // namespace spurwright::io
