// Where a vine stands, as somebody types it: its row, its place in it, its point on the map. Read by what files are read
// by; kept as an act of its own, so that it is in the history and can be taken back.
#pragma once

#include "scenarios/reference_vines/book.h"

namespace spurwright::reference_vines {

// Degrees with a point, north and east above 0. An empty text: nothing is known.
struct TypedPlace {
    std::string row, place, latitude, longitude;
};
TypedPlace typed_place(const ReferenceVine& vine);

// The vine standing there. Refused (bad_text) as a file's cell would be; one coordinate without the other too.
[[nodiscard]] Result<ReferenceVine> stand_at(ReferenceVine vine, const TypedPlace& typed);

bool stand_alike(const ReferenceVine& a, const ReferenceVine& b);

// Metres north and east from one point of the map to another, on a plane: right to less than a percent.
struct Apart {
    double north_m = 0, east_m = 0;
};
struct MapPoint {
    std::int64_t latitude_e7 = 0, longitude_e7 = 0;
};
Apart apart(const MapPoint& from, const MapPoint& to);
MapPoint moved(const MapPoint& from, const Apart& by);

// The middle of the points that there are; nothing where there is none.
std::optional<MapPoint> middle_point(const std::vector<ReferenceVine>& vines);

// One act.
[[nodiscard]] Result<void> keep_place(records::Store& store, std::int64_t block, ReferenceVine vine, const std::string& when_utc);

} // namespace spurwright::reference_vines
