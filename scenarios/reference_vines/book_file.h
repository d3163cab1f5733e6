// Weighings as a file: a row a vine and winter. Read before anything is written; good rows go in, the others are named by
// line, column and reason.
//   block,row,tag,place,winter,date,weight_kg,canes,buds,crop_kg,latitude,longitude,note
// The weight's unit stands in the heading (weight_kg, weight_g, weight_lb) or, under `weight`, in every cell, the same one
// down the column.
#pragma once

#include "scenarios/records/table_import.h"
#include "scenarios/reference_vines/book.h"

namespace spurwright::reference_vines {

inline constexpr std::size_t largest_book_file = 64u << 20; // bytes
inline constexpr std::size_t most_book_rows = 250'000;      // 10,000 vines of 25 winters
inline constexpr double least_kg = 0.01, most_kg = 20;      // of one vine's prunings; 7.1 is the most of 352 weighed [coombe-2019]; our choice
inline constexpr double most_crop_kg = 100;                 // of one vine; our choice
inline constexpr int first_winter = 1950;

struct BookRow {
    int line = 0;
    records::RowFate fate{};
    std::size_t block = 0; // row of the book
    std::size_t vine = 0;  // row of `vines`
    Weighing weighing;
};

// A vine that rows of the file name, as it will be.
struct NamedVine {
    std::size_t block = 0;
    ReferenceVine vine;    // id 0: new
    bool changed = false;  // its place or its point on the map
    int line = 0;          // where it is named first
};

// A weight that stands apart from the others of its vine, or of its block in that winter: asked about, never refused.
struct OddWeight {
    int line = 0;
    std::string block, tag;
    int winter = 0;
    Mass prunings{};
    Mass usual{}; // the median it was held against
    bool of_vine = false;
};

struct BookFile {
    std::vector<NamedVine> vines;
    std::vector<BookRow> rows;
    std::vector<records::RefusedRow> refused;
    std::vector<OddWeight> odd;
    records::ImportCounts counts;
    std::string heading;
};

// What a file would do to this book. Refused whole (bad_file): what CsvReader and Columns refuse, two columns of weights,
// more rows than most_book_rows.
[[nodiscard]] Result<BookFile> read_book_file(std::string_view text, const std::string& source, const Book& book, const records::Day& today);

// Puts the good rows in, all in one act; none where nothing is new.
[[nodiscard]] Result<void> take_in(records::Store& store, const Book& book, const BookFile& file, const std::string& when_utc);

// A block with its table, as one that is new to the book is put in: the block, unless one of its name is there, and then
// the rows of the table; all in two acts. What became of the rows.
[[nodiscard]] Result<BookFile> take_in_block(records::Store& store, Block block, std::string_view csv, const std::string& source, const records::Day& today, const std::string& when_utc);

// The last winter that has begun on a day: it begins on 1 October of the year before (our choice: no pruning is weighed
// about then, in the north or the south).
int winter_of(const records::Day& day);

} // namespace spurwright::reference_vines
