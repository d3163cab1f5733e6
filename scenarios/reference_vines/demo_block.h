// An invented block, to learn with: 60 vines of three rows over 8 winters, grown by the model in the same weather, each
// row pruned by another policy. Weighed as somebody would: the one-year wood that came off, to 10 g. Every text says that
// it is invented. Must not know: the store.
#pragma once

#include <functional>
#include <string>

#include "scenarios/reference_vines/book.h"

namespace spurwright::reference_vines {

inline constexpr int demo_vines = 60, demo_rows = 3, demo_winters = 8;

// How many buds a row's pruner leaves. Numbers our choice: a little over a half and one and a half times what the space of
// a vine holds.
enum class DemoPolicy : unsigned char { by_weight, few_buds, many_buds };
constexpr auto words_of(DemoPolicy) { return std::to_array<std::string_view>({"by-weight", "few-buds", "many-buds"}); }

struct DemoWish {
    int last_winter = 2026;
    std::uint64_t seed = 1;
    std::function<void(int done, int of)> progress;
};

// The block and its table, as read_book_file reads it. Refused as the growth model refuses.
struct DemoBlock {
    Block block;
    std::string csv;
};
[[nodiscard]] Result<DemoBlock> demo_block(const DemoWish& wish);

} // namespace spurwright::reference_vines
