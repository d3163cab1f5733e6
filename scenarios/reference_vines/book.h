// The reference vines of a house: blocks, their marked vines, and what each weighed winter by winter, as they lie in the
// store. Must not know: files, statistics, sentences.
#pragma once

#include "scenarios/records/store.h"
#include "sim/core/units.h"

namespace spurwright::reference_vines {

struct Block {
    std::int64_t id = 0; // given by the store
    std::string name;
    Length spacing{};            // from trunk to trunk
    std::optional<Length> rows;  // from row to row
    std::string formula;         // "20+20"; empty: the usual one
    bool invented = false;       // from the growth model, for learning
};

// One vine's prunings in one winter. `winter` is the year of the spring that follows: 2026 for those of winter 2025/26 in
// the north and of winter 2026 in the south.
struct Weighing {
    int winter = 0;
    Mass prunings{};             // of one-year wood
    std::string typed;           // as it was written: "1.5 lb"
    std::string day;             // "2026-01-31"; empty: not told
    std::optional<std::int64_t> canes, buds; // kept
    std::optional<Mass> crop;    // of the summer before
    std::string crop_typed, note;
};

struct ReferenceVine {
    std::int64_t id = 0; // given by the store
    std::string tag, row;
    std::optional<std::int64_t> place;
    std::optional<std::int64_t> latitude_e7, longitude_e7; // both or neither
    std::vector<Weighing> winters;                         // by winter
};

struct BlockBook {
    Block block;
    std::vector<ReferenceVine> vines; // in walking order: row, place, tag
};
using Book = std::vector<BlockBook>; // by name

// All of it, or one block, or one row of that block. Refused (unknown_part): no block of that name, with the nearest there
// is.
[[nodiscard]] Result<Book> book_of(records::Store& store, const std::optional<std::string>& block = std::nullopt, const std::optional<std::string>& row = std::nullopt);

// What the list of blocks tells, without reading every weighing.
struct BlockCounts {
    Block block;
    std::int64_t vines = 0, weighings = 0;
    int first_winter = 0, last_winter = 0; // 0 where nothing was weighed
};
[[nodiscard]] Result<std::vector<BlockCounts>> block_counts(records::Store& store);
Error unknown_block(const std::string& name, const Book& book);

// Long enough for any name of a block, short enough for a line; our choice.
inline constexpr std::size_t longest_block_name = 60;
// From trunk to trunk, metres: wider than any row that is pruned by hand; our choice.
inline constexpr double least_spacing_m = 0.3, most_spacing_m = 10;
// Refused (bad_text): a name that cannot be printed, has blanks around it, begins like a formula or is too long.
[[nodiscard]] Result<void> may_be_named(const std::string& block);

// New, or in place of the one of that id; the id is set.
[[nodiscard]] Result<void> put_block(records::Store& store, Block& block);
[[nodiscard]] Result<void> put_vine(records::Store& store, std::int64_t block, ReferenceVine& vine);
[[nodiscard]] Result<void> put_weighing(records::Store& store, std::int64_t vine, const Weighing& weighing);

// Rows and places are walked by their numbers: row 2 before row 10.
bool walked_before(const ReferenceVine& a, const ReferenceVine& b);

} // namespace spurwright::reference_vines
