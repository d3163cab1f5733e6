// The supervisor's page for one block ("kind": "spurwright-block-sheet"): which system, how many canes and buds by the
// strength of the vine, spurs, heights, spare, tie, brush. It fills house rules, so that what hangs on the shed's wall and
// what marks are given by is one thing. Schema: assets/schemas/block-sheet-1.json. Must not know: sentences.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>

#include "scenarios/io/house_rules_file.h"

namespace spurwright::sheet {

inline constexpr std::string_view block_sheet_kind = "spurwright-block-sheet";
inline constexpr int block_sheet_version = 1;

enum class Strength : unsigned char { weak, middle, strong };
constexpr auto words_of(Strength) { return std::to_array<std::string_view>({"weak", "middle", "strong"}); }

// Lengths as on the page. Texts that are no rule are printed and nothing else. On a cordon no cane is laid: of the pieces
// its sheet says the spurs alone, and how far apart they stand.
struct BlockSheet {
    std::string block, date, by;
    System system = System::two_cane;
    Length spacing{1'800'000}, rows{2'400'000}, wire{900'000};
    std::array<std::int32_t, 3> buds{};  // to leave, by Strength
    std::string told_by;                 // how the strength is told
    std::int32_t canes = 2, spurs = 2, spur_buds = 2; // of a cordon 0, 0: as many spurs as the buds ask
    rules::Range<Length> apart{{76'000}, {152'000}};  // of a cordon's spurs along the arm, as in the shipped set
    rules::Range<Length> thickness{{8'000}, {12'000}}, heights{{50'000}, {200'000}}, gap{{50'000}, {150'000}};
    std::string head = "close-head";     // a shipped set: the house's way with the head
    rules::NoNeighbour no_neighbour = rules::NoNeighbour::stop;
    std::int32_t spares = 0, kickers = 0;
    std::string kicker_until;            // a date, as written; empty: none
    std::int32_t half_wraps = 2;
    std::string tie_with, brush, tools, order, notes;
    bool operator==(const BlockSheet&) const = default;
};

// Faults: bad_file with line, column and key; newer.
[[nodiscard]] Result<BlockSheet> read_block_sheet(std::string_view text, const std::string& source);
[[nodiscard]] Result<BlockSheet> load_block_sheet(const std::string& path);
std::string print_block_sheet(const BlockSheet& sheet);

// The house's rules for a vine of this strength: the sheet's way with the head as a base, and over it what the sheet says.
// Faults: bad_file where the rules cannot be used (crossed bands), named by the sheet's own source.
[[nodiscard]] Result<io::HouseRulesFile> house_rules_of(const BlockSheet& sheet, Strength strength, const std::string& source,
                                                        const io::Assets& assets);

} // namespace spurwright::sheet
