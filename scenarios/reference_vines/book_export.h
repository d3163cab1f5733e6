// The book written out: as the table that read_book_file reads, and as points on a map.
#pragma once

#include "scenarios/io/json.h"
#include "scenarios/reference_vines/book.h"

namespace spurwright::reference_vines {

struct Exported {
    std::string text;
    std::int64_t written = 0, left_out = 0; // weighings; of a map: vines, and vines with no point
};

Exported book_csv(const Book& book);

// A FeatureCollection (RFC 7946), longitude first: each vine with a point, and its last weight.
Exported book_geojson(const Book& book);

// Kilograms without loss: "0.680389".
std::string kg_text(Mass mass);

} // namespace spurwright::reference_vines
