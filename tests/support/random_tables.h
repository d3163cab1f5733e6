// Tables of the whole shape that the exact search allows, drawn at random: sides, hard bans, suckers, lengths that
// differ by axis, missing pieces, caps, load classes. Small score ranges force ties, large ones force caps.
#pragma once

#include "sim/planning/tables.h"

namespace spurwright::test {

struct TableWishes {
    int left = 3, right = 3;          // candidates by side of their wood
    int cuts_low = 1, cuts_high = 5;  // cut nodes
    int range = 60;                   // each worth lies in 0 to this
    bool single = false;              // one cane and one spur in all
    bool plain = false;               // every axis lies either way, is a spur of 3 lengths and no sucker but the last
};
planning::Tables random_tables(std::uint64_t seed, const TableWishes& wishes);

// Instance `number` of the small set: 2-6 candidates on random sides, ranges 3, 12, 60, 200, 420 in turn.
planning::Tables small_tables(std::uint32_t number, bool single = false);

// The reference set of the benchmarks: candidates by side, `cuts` cut nodes each, three spur lengths, one sucker.
planning::Tables reference_tables(std::uint64_t seed, int left, int right, int cuts);

}  // namespace spurwright::test
