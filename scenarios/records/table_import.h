// What the imports of lists share: which column is which, cells read by what they must be, and what became of each row.
// A row is taken whole or refused with its line, its column and its reason; the rows beside it do not suffer.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "scenarios/io/csv.h"
#include "scenarios/records/clock.h"

namespace spurwright::records {

inline constexpr std::size_t longest_cell = 200;          // characters; our choice
inline constexpr std::size_t largest_list = 16u << 20;    // bytes of a roster

enum class RowFate : unsigned char { added, changed, same };

struct RefusedRow {
    int line = 0;
    std::string column; // as it is headed; empty: the row as a whole
    TextKey reason;
    Arguments arguments;
    std::string raw; // as it stood, to be mended
};

struct ImportCounts {
    std::int64_t added = 0, changed = 0, same = 0;
    void count(RowFate fate) { ++(fate == RowFate::added ? added : fate == RowFate::changed ? changed : same); }
};

// A column and what else it may be headed.
struct ColumnName {
    std::string_view name;
    std::vector<std::string_view> also;
    bool required = false;
};

// Where each known column stands. Refuses (bad_file, line 1) a required one that is missing, one that nobody knows (what
// is written there would be lost), two that are the same.
class Columns {
public:
    [[nodiscard]] static Result<Columns> of(const std::vector<std::string>& headings, const std::vector<ColumnName>& known, const std::string& source);
    bool has(std::size_t known) const { return at_[known] >= 0; }
    // The cell of a known column; empty where there is no such column.
    std::string_view cell(const io::CsvRow& row, std::size_t known) const;
    const std::string& heading(std::size_t known) const { return headings_[known]; } // as it stands in the file
    std::size_t count() const { return count_; }

private:
    std::vector<int> at_;
    std::vector<std::string> headings_;
    std::size_t count_ = 0;
};

// Reads the cells of one row; the first that cannot be read refuses the row.
class RowReader {
public:
    RowReader(const io::CsvRow& row, const Columns& columns);
    bool refused() const { return refusal_.has_value(); }
    const RefusedRow& refusal() const { return *refusal_; }
    void refuse(std::size_t column, std::string_view reason, Arguments arguments = {});

    bool given(std::size_t column) const { return !columns_.cell(row_, column).empty(); }
    // UTF-8 without control characters, at most longest_cell characters, no formula; a guarded one without its guard.
    std::string text(std::size_t column);
    // Digits only, in [low, high]; nothing where the cell is empty.
    std::optional<std::int64_t> whole(std::size_t column, std::int64_t low, std::int64_t high);
    // A number with a point and no unit, in [low, high]; nothing where the cell is empty.
    std::optional<double> number(std::size_t column, double low, double high);
    std::optional<Day> day(std::size_t column);

private:
    const io::CsvRow& row_;
    const Columns& columns_;
    std::optional<RefusedRow> refusal_;
};

// The one of `words` that a mistyped one most likely meant; empty where none is near.
std::string_view nearest(std::string_view text, const std::vector<std::string_view>& words);

} // namespace spurwright::records
